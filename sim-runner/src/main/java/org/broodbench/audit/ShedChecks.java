package org.broodbench.audit;

import static org.broodbench.audit.Words.of;
import static org.broodbench.audit.Words.set;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.Setting;
import org.broodbench.power.Battery;
import org.broodbench.power.OpenCircuit;
import org.broodbench.rig.Known;
import org.broodbench.rig.Scenario;

/** Thresholds of shedding against the sag of the volts, the cold and the kind of battery. */
final class ShedChecks {
  /** Points of charge by which a level may come early or late; own choice. */
  static final double MOST_OFF = 0.10;

  /** Charge above the locked one at which the heat should be gone; own choice. */
  static final double SPARE = 0.03;

  /** Least charge down to which a lead-acid battery is used; own choice, wear grows below. */
  static final double ACID_LEAST = 0.35;

  /** Volts that a cold battery may sag more than the keyed resistance says; own choice. */
  private static final double MOST_SPREAD_V = 0.08;

  private static final String[] LEVELS = {"set_back", "survival", "heat", "fan", "standby"};

  private final Facts f;
  private final Findings out;
  private final Supply p;

  ShedChecks(Facts f, Findings out) {
    this.f = f;
    this.out = out;
    p = f.supply;
  }

  void run() {
    if (f.heats()) {
      sag();
    }
    if (f.s.paper().keepsLatches() != Known.YES) {
      out.add(
          "keeps_latches",
          f.s.paper().keepsLatches() == Known.NO ? Severity.WARN : Severity.NOTE,
          "A loss of power forgets latches and the count of sheds",
          of(
              "after a brown-out the board starts anew: %d trips in a day lock the heat and from shed number %d on the delay doubles, counted from nothing again",
              f.setting(Setting.LIMIT_TRIPS_TO_LATCH), f.setting(Setting.SHED_DOUBLE_FROM)),
          "Keep them in memory that outlives the power, and say so",
          List.of("controller.keeps_latches=yes"),
          "the controller's rules, SPEC.md section on power-up");
    }
  }

  private void sag() {
    Scenario s = f.s;
    double coldC = p.coldBatteryC();
    double locked = Battery.lockedShare(p.chemistry(), coldC);
    double shed = p.heatShedCharge(Math.min(25, Math.max(coldC, -40)));
    double late = Math.min(shed, p.heatShedCharge(25));
    double meant = p.meant(Setting.SHED_HEAT_ENTER_MILLI_V, Setting.SHED_HEAT_ENTER_PERMILLE);
    boolean byVolts = !p.byCharge();
    boolean blind = p.byCharge() && !s.sensors().stateOfCharge();
    boolean wrongKind = byVolts && !p.chemistry().leadAcid();
    boolean dry = late < locked + SPARE;
    boolean never = byVolts && p.heatShedRestedV(25) >= p.rested().volts(1);
    boolean off = byVolts && (shed - meant > MOST_OFF || meant - late > MOST_OFF);
    boolean deep = p.chemistry().leadAcid() && meant < ACID_LEAST;
    if (!blind && !wrongKind && !dry && !never && !off && !deep) {
      return;
    }
    double a = p.restA() + p.heaterA(p.workV());
    String sum =
        byVolts
            ? of(
                "heat is shed at %.2f V corrected, meant as %.0f %% of charge; %.2f A x %.0f mOhm (battery at %.0f °C, leads) = %.2f V of sag, of which the controller adds back all but %.2f V: it sheds at %.2f V at rest, %.0f %%",
                f.setting(Setting.SHED_HEAT_ENTER_MILLI_V) / 1000.0,
                100 * meant,
                a,
                1000 * p.sourceOhm(coldC),
                coldC,
                a * p.sourceOhm(coldC),
                p.readsLowV(a, coldC),
                p.heatShedRestedV(coldC),
                100 * shed)
            : of("heat is shed at %.0f %% of charge", 100 * meant);
    sum += of("; cold locks up %.0f %% at %.0f °C", 100 * locked, coldC);
    if (blind) {
      sum += "; no charge counter is fitted, so the controller is blind";
    }
    if (wrongKind) {
      sum += "; lithium's volts lie flat from 20 to 70 %, 0.2 V are 50 points";
    }
    if (deep) {
      sum += of("; lead-acid wears fast below %.0f %%", 100 * ACID_LEAST);
    }
    out.add(
        "shed_sag",
        never || dry || blind ? Severity.STOP : Severity.WARN,
        never
            ? "Sag sheds the heat while the battery is full"
            : dry
                ? "The battery is empty before the heat is shed"
                : blind
                    ? "The controller sheds by a charge that nobody measures"
                    : wrongKind
                        ? "Lithium is shed by volts"
                        : off
                            ? "Sag moves the shed levels"
                            : "The shed levels are too low for this battery",
        sum,
        "Key in the resistance that there is, and levels for this battery and its cold",
        cure(locked, blind || wrongKind),
        "rested volts by state of charge, cold: data sheets (see the model's description); Ohm's law");
  }

  /** Correction, and levels in even steps over what cold locks up. */
  private List<String> cure(double locked, boolean counter) {
    List<String> cure = new ArrayList<>();
    double lowest = Math.max(locked + SPARE + 0.04, p.chemistry().leadAcid() ? 0.40 : 0.20);
    if (counter || p.byCharge()) {
      if (counter) {
        cure.add("sensor.state_of_charge=true");
        cure.add("controller.shed.by_charge=true");
      }
      double[] share = {
        lowest + 0.15, lowest + 0.10, lowest + 0.05, Math.max(0.05, lowest - 0.05), lowest - 0.10
      };
      for (int i = 0; i < LEVELS.length; i++) {
        double percent = Math.rint(1000 * Math.max(0.02, share[i])) / 10;
        cure.add(set("controller.shed." + LEVELS[i] + "_enter_charge", percent, 1, "%"));
        cure.add(set("controller.shed." + LEVELS[i] + "_leave_charge", percent + 10, 1, "%"));
      }
      return cure;
    }
    double scale = p.scale();
    OpenCircuit rested = p.rested();
    // between the warm and the cold battery, so that both are half as far off
    double ohm = 0.5 * (p.sourceOhm(25) + p.sourceOhm(Math.min(25, p.coldBatteryC())));
    double a = p.restA() + p.heaterA(p.workV());
    double spreadOhm = p.sourceOhm(Math.min(25, p.coldBatteryC())) - ohm;
    double bearableOhm = MOST_SPREAD_V * scale / a;
    if (spreadOhm > bearableOhm) {
      // cold moves the sag of this battery more than one number can follow: a sound one
      double share = bearableOhm / spreadOhm;
      double leadOhm = f.s.wiring().batteryLeadOhm();
      ohm = leadOhm + share * (ohm - leadOhm);
      double soundOhm = Math.max(1e-4, share * f.s.battery().resistanceOhm());
      cure.add(set("battery.resistance", 1000 * soundOhm, 1, "mOhm"));
    }
    cure.add(set("controller.battery.resistance", Math.ceil(1000 * ohm), 0, "mOhm"));
    cure.add(set("controller.battery.worst_resistance", Math.ceil(2000 * ohm), 0, "mOhm"));
    cure.add(set("controller.battery.base_load", p.restA(), 2, "A"));
    cure.add(set("controller.battery.heater_current", p.heaterA(p.workV()), 2, "A"));
    double heatV = Math.max(12.05 * scale, rested.volts(Math.max(lowest, 0.42)) + 0.04 * scale);
    heatV = Math.ceil(100 * heatV) / 100;
    double[] levelV = {
      heatV + 0.2 * scale, heatV + 0.1 * scale, heatV, heatV - 0.25 * scale, heatV - 0.45 * scale
    };
    // the worst resistance, rebound and reading error must not end a shed by themselves
    double mostA = a + f.s.fan().powerW() / p.workV();
    double gapV = Words.up(Math.max(0.45 * scale, 1.1 * mostA * ohm + 0.1 * scale), 0.05);
    for (int i = 0; i < LEVELS.length; i++) {
      cure.add(set("controller.shed." + LEVELS[i] + "_enter_volts", levelV[i], 2, "V"));
      cure.add(set("controller.shed." + LEVELS[i] + "_leave_volts", levelV[i] + gapV, 2, "V"));
    }
    return cure;
  }
}
