package org.broodbench.audit;

import static org.broodbench.audit.Words.of;
import static org.broodbench.audit.Words.set;
import static org.broodbench.audit.Words.up;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.power.Inverter;
import org.broodbench.power.LoadSpec;

/** What the day takes against what it gives: inverter idle share, budget, autonomy. */
final class EnergyChecks {
  /** Share of idle draw that is worth a warning; own choice. */
  static final double IDLE_WARN = 0.10;

  /** Share of idle draw that is a stop where the budget fails; own choice. */
  static final double IDLE_STOP = 0.25;

  /** What a battery gives back of what the panel puts in; own choice, 0.95 x 12.2/13.5. */
  static final double THROUGH_BATTERY = 0.86;

  /** By how much the sums of light may be too low; own choice. */
  static final double LIGHT_HIGH = 1.1;

  /** Days without sun that practice asks for at least. */
  static final double AUTONOMY_DAYS = 3;

  /** A night of early spring, h; own choice. */
  static final double NIGHT_H = 14;

  private static final String SIZING =
      "sizing practice: array over load in the worst month, 3 to 7 days of autonomy";

  private final Facts f;
  private final Findings out;

  EnergyChecks(Facts f, Findings out) {
    this.f = f;
    this.out = out;
  }

  void run() {
    budget();
    idleShare();
    autonomy();
  }

  /** Usable energy between a state of charge and the level at which the heat is shed, Wh. */
  static double usableWh(Facts f, double from) {
    double to = Math.max(0, f.supply.heatShedCharge(25));
    return f.supply.energyWh(to, from);
  }

  /** What a day gives at most, Wh: in frost a lithium battery takes none of it. */
  static double mostGivenWh(Facts f) {
    Budget b = f.weekBudget;
    double wh = b.panelWh() * LIGHT_HIGH + b.shoreWh();
    return frostLocked(f) ? Math.min(wh, 0.5 * b.leastWh()) : wh;
  }

  /** Whether lithium stays locked against charging through the whole worst week. */
  static boolean frostLocked(Facts f) {
    return f.s.battery().frostCutOff() && f.supply.batteryC(f.season.worstWeek().meanAirC()) < 0;
  }

  /** How much the worst week lacks in the favourable case, Wh; negative where it does not. */
  static double lackWh(Facts f) {
    Budget b = f.weekBudget;
    return b.days() * (b.leastWh() - mostGivenWh(f)) - usableWh(f, f.s.battery().initialSoc());
  }

  /** The same at the scenario's own heat loss, with what the battery itself takes. */
  static double ownLackWh(Facts f) {
    Budget b = f.weekBudget;
    double given = frostLocked(f) ? mostGivenWh(f) : THROUGH_BATTERY * b.givesWh();
    return b.days() * (b.ownWh() - given) - usableWh(f, f.s.battery().initialSoc());
  }

  private void budget() {
    Budget w = f.weekBudget;
    Budget m = f.monthBudget;
    double stored = usableWh(f, f.s.battery().initialSoc());
    double lack = lackWh(f);
    boolean locked = frostLocked(f);
    double given = locked ? 0 : w.givesWh() * THROUGH_BATTERY;
    double lackMost = w.days() * (w.mostWh() - given) - stored;
    boolean monthShort = m.ownWh() > m.givesWh();
    if (lack <= 0 && lackMost <= 0 && !monthShort) {
      return;
    }
    StringBuilder text = new StringBuilder();
    text.append(
        of(
            "%s: %s; takes %.0f Wh a day (%.0f to %.0f); gives %s; ",
            w.stretch(), takes(w), w.ownWh(), w.leastWh(), w.mostWh(), w.gives()));
    if (locked) {
      text.append("of which lithium in frost stores nothing; ");
    }
    text.append(
        of(
            "the battery holds %.0f Wh down to the level that sheds the heat. Favourable: %d x (%.0f - %.0f) - %.0f = %.0f Wh short; unfavourable: %.0f Wh short. In the %s: takes %.0f Wh, gives %.0f Wh a day.",
            stored,
            w.days(),
            w.leastWh(),
            mostGivenWh(f),
            stored,
            lack,
            lackMost,
            m.stretch(),
            m.ownWh(),
            m.givesWh()));
    out.add(
        "energy_budget",
        lack > 0 ? Severity.STOP : Severity.WARN,
        lack > 0
            ? "The worst week takes more than panel and battery give"
            : "The days may take more than panel and battery give",
        text.toString(),
        "Give more than is taken",
        budgetCure(locked),
        SIZING);
  }

  private static String takes(Budget b) {
    StringBuilder text = new StringBuilder();
    for (Budget.Take t : b.takes()) {
      text.append(text.isEmpty() ? "" : "; ").append(t.name()).append(' ').append(t.arithmetic());
    }
    return text.toString();
  }

  /** A panel that carries both stretches with a tenth to spare, or a mains charger. */
  private List<String> budgetCure(boolean locked) {
    Budget w = f.weekBudget;
    Budget m = f.monthBudget;
    List<String> cure = new ArrayList<>();
    if (locked) {
      cure.add("battery.place=hive");
    }
    double shoreWh = w.shoreWh();
    double weekPerW = f.s.pv().groups().isEmpty() ? 0 : f.perWattWh(f.season.worstWeek());
    double monthPerW = f.s.pv().groups().isEmpty() ? 0 : f.perWattWh(f.season.darkestMonth());
    double forWeek = (1.1 * w.mostWh() / THROUGH_BATTERY - shoreWh) / Math.max(weekPerW, 1e-9);
    double forMonth = (1.1 * m.ownWh() - shoreWh) / Math.max(monthPerW, 1e-9);
    double panelW = up(Math.max(forWeek, forMonth), 10);
    if (panelW <= 2000) {
      cure.add(set("pv.power", Math.max(panelW, f.s.pv().powerW()), 0, "W"));
    } else {
      double wh = Math.max(1.1 * w.mostWh() / THROUGH_BATTERY, 1.1 * m.ownWh());
      cure.add(set("shore.power", Math.min(3000, up(wh / 24, 5)), 0, "W"));
      cure.add("shore.present=true");
    }
    return cure;
  }

  private void idleShare() {
    if (!f.supply.inverterUsed() || f.supply.idleW() <= 0) {
      return;
    }
    double idle = 24 * f.supply.idleW();
    double useful = usefulWh();
    double share = idle / (idle + useful);
    if (share <= IDLE_WARN) {
      return;
    }
    Budget w = f.weekBudget;
    boolean stop = share >= IDLE_STOP && ownLackWh(f) > 0;
    out.add(
        "inverter_idle_share",
        stop ? Severity.STOP : Severity.WARN,
        "The inverter takes much of what it passes on",
        of(
            "%.1f W x 24 h = %.0f Wh a day idle; its loads take %.0f Wh a day: share %.0f / (%.0f + %.0f) = %.0f %%, and %.0f %% of the %.0f Wh a day that the %s, gives",
            f.supply.idleW(),
            idle,
            useful,
            idle,
            idle,
            useful,
            100 * share,
            100 * idle / Math.max(1, w.givesWh()),
            w.givesWh(),
            w.stretch()),
        f.supply.acLoadsW() > 0
            ? "Take an inverter that idles on less"
            : "Heat straight from the battery, without an inverter",
        idleCure(useful),
        "losses of inverters: makers' sheets; limit of 10 % own choice");
  }

  /** What the loads on the inverter take through it, its idle draw apart, Wh a day. */
  private double usefulWh() {
    double wh = 0;
    if (f.supply.onInverter() && f.heats()) {
      double perWatt = f.supply.heaterInputW(f.supply.workV()) / f.s.heater().powerW();
      wh += 24 * perWatt * Math.min(f.week.ownW(), f.s.heater().powerW());
    }
    for (LoadSpec l : f.s.loads()) {
      if (l.onInverter()) {
        wh +=
            (Inverter.inputW(f.s.inverter(), l.powerW()) - f.s.inverter().idleW())
                * Supply.hours(l);
      }
    }
    return wh;
  }

  private List<String> idleCure(double useful) {
    if (f.supply.acLoadsW() > 0) {
      double idleW = Words.down(IDLE_WARN / (1 - IDLE_WARN) * useful / 24, 0.1);
      boolean searches = f.s.inverter().search().wakeW() > 0;
      return List.of(
          set(searches ? "inverter.search_power" : "inverter.idle", Math.max(0, idleW), 1, "W"));
    }
    List<String> cure = new ArrayList<>();
    if (f.supply.onInverter()) {
      cure.add("heater.supply=dc");
      cure.add(set("heater.rated_volts", f.s.battery().nominalV(), 0, "V"));
    }
    cure.add("inverter.rated_power=0 W");
    return cure;
  }

  private void autonomy() {
    double full = usableWh(f, 1);
    Budget w = f.weekBudget;
    double days = full / Math.max(1e-9, w.ownWh());
    if (days >= AUTONOMY_DAYS || full <= 0) {
      return;
    }
    double nightH = 24 * full / Math.max(1e-9, w.leastWh());
    boolean stop = nightH < NIGHT_H && w.shoreWh() < w.leastWh();
    double perAh = full / f.s.battery().capacityAh();
    double ah = up(1.02 * AUTONOMY_DAYS * w.ownWh() / perAh, 5);
    out.add(
        "autonomy",
        stop ? Severity.STOP : days < 1 ? Severity.WARN : Severity.NOTE,
        "The battery alone does not last long",
        of(
            "%.0f Ah hold %.0f Wh from full down to the level that sheds the heat (%.0f %% of charge); %.0f Wh a day in the %s: %.0f / %.0f = %.1f days, at most %.0f h",
            f.s.battery().capacityAh(),
            full,
            100 * f.supply.heatShedCharge(25),
            w.ownWh(),
            w.stretch(),
            full,
            w.ownWh(),
            days,
            nightH),
        "Take a battery for three days",
        List.of(set("battery.capacity", Math.min(5000, ah), 0, "Ah")),
        SIZING);
  }
}
