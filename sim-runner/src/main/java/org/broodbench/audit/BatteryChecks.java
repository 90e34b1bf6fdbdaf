package org.broodbench.audit;

import static org.broodbench.audit.Finding.PRACTICE;
import static org.broodbench.audit.Words.of;
import static org.broodbench.audit.Words.set;
import static org.broodbench.audit.Words.up;

import java.util.List;
import java.util.Locale;
import org.broodbench.power.Battery;
import org.broodbench.power.BatterySpec;
import org.broodbench.power.Chemistry;
import org.broodbench.power.Electrolyte;
import org.broodbench.power.OpenCircuit;
import org.broodbench.rig.PaperSpec;

/** Battery: strangers side by side, frost, gas. */
final class BatteryChecks {
  /** Charge above which lead-acid is safe in frost: a maker's rule. */
  static final double FROST_LEAST = 0.60;

  /** Current between like batteries that is worth a word, share of the capacity an hour. */
  static final double MOST_CIRCULATING = 0.1;

  /** Gassing current at boost volts, A/Ah: IEC 62485-2, from memory. */
  static final double FLOODED_GAS = 0.020;

  static final double VALVE_GAS = 0.008;

  private final Facts f;
  private final Findings out;
  private final Supply p;
  private final BatterySpec b;

  BatteryChecks(Facts f, Findings out) {
    this.f = f;
    this.out = out;
    p = f.supply;
    b = f.s.battery();
  }

  void run() {
    mixed();
    frostCharge();
    frostLow();
    gas();
  }

  private void mixed() {
    if (f.s.paper().beside().isEmpty()) {
      return;
    }
    PaperSpec.Beside o = f.s.paper().beside().get();
    double here = p.rested().volts(b.initialSoc());
    double there = new OpenCircuit(o.chemistry(), b.nominalV()).volts(o.charge());
    double ohm = b.resistanceOhm() + o.resistanceOhm() + f.s.wiring().batteryLeadOhm();
    double a = Math.abs(here - there) / ohm;
    boolean kinds = o.chemistry() != b.chemistry();
    boolean sizes = Math.abs(o.capacityAh() - b.capacityAh()) > 0.1 * b.capacityAh();
    boolean flows = a > MOST_CIRCULATING * Math.min(b.capacityAh(), o.capacityAh());
    if (!kinds && !sizes && !flows) {
      return;
    }
    out.add(
        "mixed_chemistry",
        kinds ? Severity.STOP : Severity.WARN,
        kinds ? "Unlike batteries side by side" : "Batteries of unlike size or charge side by side",
        of(
            "%s %.0f Ah at %.0f %%: %.2f V; %s %.0f Ah at %.0f %%: %.2f V; when joined |%.2f - %.2f| V / (%.1f + %.1f + %.1f) mOhm = %.1f A flow between them with no load",
            word(b.chemistry()),
            b.capacityAh(),
            100 * b.initialSoc(),
            here,
            word(o.chemistry()),
            o.capacityAh(),
            100 * o.charge(),
            there,
            here,
            there,
            1000 * b.resistanceOhm(),
            1000 * o.resistanceOhm(),
            1000 * f.s.wiring().batteryLeadOhm(),
            a),
        "Keep one battery, or like ones of like age at like charge",
        List.of("battery.beside.chemistry=none"),
        "rested volts: data sheets; the rule " + PRACTICE);
  }

  private static String word(Chemistry c) {
    return c.name().toLowerCase(Locale.ROOT);
  }

  private void frostCharge() {
    double coldC = p.coldBatteryC();
    boolean sources = f.s.pv().powerW() > 0 || f.s.shore().powerW() > 0;
    if (b.chemistry().leadAcid() || coldC >= 0 || !sources) {
      return;
    }
    out.add(
        "frost_charge",
        b.frostCutOff() ? Severity.WARN : Severity.STOP,
        b.frostCutOff()
            ? "Lithium takes no charge in frost"
            : "Lithium is charged in frost, which ruins it",
        of(
            "outdoors down to %.1f °C; its place is warmed %.0f %% of the way to the 25 °C of a hive: battery at %.1f °C, on the mean of the worst week at %.1f °C; below 0 °C lithium plates out%s",
            p.coldestC(),
            100 * b.warmedShare(),
            coldC,
            p.batteryC(f.season.worstWeek().meanAirC()),
            b.frostCutOff()
                ? of(
                    "; charging stops, and up to %.0f Wh a day of the panel are lost",
                    f.weekBudget.panelWh())
                : "; nothing stops the charging"),
        "Keep the battery above 0 °C, behind a wall from the bees",
        List.of("battery.place=hive", "battery.warmed_share=100 %", "battery.frost_cut_off=true"),
        "cell sheets: no charging below 0 °C");
  }

  /** Lowest charge of the worst week by the daily sums, 0 to 1. */
  static double lowestCharge(Facts f) {
    Budget w = f.weekBudget;
    double sunk = w.days() * Math.max(0, w.ownWh() - EnergyChecks.THROUGH_BATTERY * w.givesWh());
    double night = w.shoreWh() > w.ownWh() ? 0 : 0.6 * w.ownWh();
    double full = f.supply.energyWh(0, 1);
    double low = f.s.battery().initialSoc() - (sunk + night) / full;
    double kept = Battery.lockedShare(f.supply.chemistry(), f.supply.coldBatteryC());
    double stays = Math.max(kept, f.supply.heatShedCharge(25));
    return Math.max(low, Math.min(f.s.battery().initialSoc(), stays));
  }

  /** Coldest that the battery itself gets: it follows the swing of a day behind a low pass, °C. */
  private double laggedC() {
    double turn = 2 * Math.PI / 86_400 * b.timeConstantS();
    double meanC = p.batteryC(f.season.worstWeek().meanAirC());
    double lowC = p.batteryC(f.season.worstWeek().minAirC());
    return meanC + (lowC - meanC) / Math.sqrt(1 + turn * turn);
  }

  private void frostLow() {
    double coldC = p.coldBatteryC();
    double low = lowestCharge(f);
    if (!b.chemistry().leadAcid() || coldC >= 0 || low >= FROST_LEAST) {
      return;
    }
    double freezesC = Electrolyte.freezesC(Electrolyte.gravity(low));
    Budget w = f.weekBudget;
    double used = (b.initialSoc() - low) * p.energyWh(0, 1);
    double perAh = p.energyWh(0, 1) / b.capacityAh();
    double sunk = w.days() * Math.max(0, w.ownWh() - EnergyChecks.THROUGH_BATTERY * w.givesWh());
    double night = w.shoreWh() > w.ownWh() ? 0 : 0.6 * w.ownWh();
    double ah = up(1.03 * (sunk + night) / (1 - FROST_LEAST) / perAh, 5);
    out.add(
        "frost_low_charge",
        freezesC > laggedC() ? Severity.STOP : Severity.WARN,
        "Lead-acid may be low in frost",
        of(
            "place of the battery down to %.1f °C, itself, %.1f h behind, down to %.1f °C; %.0f %% at the start less %.0f Wh of %.0f Wh = %.0f %% (at least %.0f %%); specific gravity %.3f freezes at %.1f °C",
            coldC,
            b.timeConstantS() / 3600,
            laggedC(),
            100 * b.initialSoc(),
            used,
            p.energyWh(0, 1),
            100 * low,
            100 * FROST_LEAST,
            Electrolyte.gravity(low),
            freezesC),
        "Start full, with a battery that stays above 60 %",
        List.of(
            "battery.initial_charge=100 %",
            set("battery.capacity", Math.min(5000, Math.max(b.capacityAh(), ah)), 0, "Ah")),
        "above 60 % below 0 °C: a maker's rule; freezing points: TM 5-1185 table III");
  }

  /** Free area of each vent that carries off the hydrogen of charging, cm²; and the air, m³/h. */
  static double gasM3H(BatterySpec b) {
    double perAh = b.chemistry() == Chemistry.FLOODED ? FLOODED_GAS : VALVE_GAS;
    return 0.05 * (b.nominalV() / 2) * perAh * b.capacityAh();
  }

  private void gas() {
    if (!b.chemistry().leadAcid()) {
      return;
    }
    double airM3H = gasM3H(b);
    double needCm2 = 28 * airM3H;
    double haveCm2 = 1e4 * f.s.paper().boxVentM2();
    boolean inHive = b.place() == BatterySpec.Place.HIVE;
    if (!inHive && haveCm2 >= needCm2) {
      return;
    }
    String vent = set("battery.box_vent", up(needCm2, 1), 0, "cm2");
    out.add(
        "battery_gas",
        Severity.STOP,
        inHive ? "Lead-acid inside the hive" : "Gas of charging gathers in the battery's box",
        of(
            "0.05 x %.0f cells x %.0f mA/Ah x %.0f Ah = %.2f m³/h of air; 28 x %.2f = %.1f cm² for each of two vents, %.1f cm² are there%s; hydrogen explodes from 4 %%",
            b.nominalV() / 2,
            1000 * (b.chemistry() == Chemistry.FLOODED ? FLOODED_GAS : VALVE_GAS),
            b.capacityAh(),
            airM3H,
            airM3H,
            needCm2,
            haveCm2,
            inHive ? ", and the gas goes to the bees" : ""),
        inHive ? "Put it outdoors in a ventilated case" : "Open vents below and above",
        inHive ? List.of("battery.place=outdoors", vent) : List.of(vent),
        "ventilation of batteries: IEC 62485-2, from memory");
  }
}
