package org.broodbench.audit;

import static org.broodbench.audit.Words.of;
import static org.broodbench.audit.Words.set;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.Setting;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Scenario;

/** Fan against set point, broodless colonies, probes that cannot see brood. */
final class BeeChecks {
  /** Least distance from set point to where the fan stops, K; own choice: overshoot and error. */
  static final double FAN_APART_K = 1;

  /** Above this the fan comes too late for brood at a comb probe, °C. */
  static final double FAN_LATE_C = 38;

  /** A broodless cluster wants no more, °C: at a comb probe, and elsewhere. */
  static final double BROODLESS_COMB_C = 20;

  static final double BROODLESS_AIR_C = 12;

  private final Facts f;
  private final Findings out;

  BeeChecks(Facts f, Findings out) {
    this.f = f;
    this.out = out;
  }

  void run() {
    fan();
    if (f.heats()) {
      broodless();
      probe();
    }
  }

  private boolean comb() {
    return f.s.probe(ProbeSpec.Role.BROOD_A).place() == ProbeSpec.Place.BROOD_COMB;
  }

  private void fan() {
    if (f.s.fan().powerW() <= 0) {
      return;
    }
    double onC = f.setting(Setting.FAN_ON_CENTI_C) / 100.0;
    double offC = f.setting(Setting.FAN_OFF_CENTI_C) / 100.0;
    double apart = offC - f.setPointC;
    boolean near = apart < FAN_APART_K - 1e-9;
    boolean late = comb() && onC > FAN_LATE_C;
    if (!near && !late) {
      return;
    }
    double newOff = Words.up(f.setPointC + FAN_APART_K, 0.1);
    double newOn = newOff + 1;
    List<String> cure = new ArrayList<>();
    cure.add(
        set("controller.fan.off_below", near ? newOff : Math.min(offC, FAN_LATE_C - 1), 1, "degC"));
    cure.add(
        set(
            "controller.fan.on_above",
            near ? Math.max(newOn, late ? 0 : onC) : FAN_LATE_C,
            1,
            "degC"));
    out.add(
        "fan_set_point",
        apart <= 0 ? Severity.STOP : Severity.WARN,
        near ? "The fan blows out what the heater brings" : "The fan comes too late",
        of(
            "heat up to %.1f °C; the fan runs from %.1f °C down to %.1f °C: %.1f - %.1f = %.1f K apart (at least %.1f K)%s",
            f.setPointC,
            onC,
            offC,
            offC,
            f.setPointC,
            apart,
            FAN_APART_K,
            late ? of("; brood is harmed before %.1f °C", onC) : ""),
        "Keep the two apart",
        cure,
        "distance: own choice; brood above 38 °C: half dead after 13.5 h at 40 °C");
  }

  private static boolean broodComes(Scenario s) {
    for (EventSpec e : s.events()) {
      if (e instanceof EventSpec.InstallColony in && in.broodCells() > 0) {
        return true;
      }
    }
    return false;
  }

  private void broodless() {
    double limit = comb() ? BROODLESS_COMB_C : BROODLESS_AIR_C;
    if (f.s.colony().broodCells() > 0 || broodComes(f.s) || f.setPointC <= limit) {
      return;
    }
    List<String> cure = new ArrayList<>();
    cure.add(set("controller.heat.set_point", comb() ? 18 : 10, 0, "degC"));
    for (int i = 0; i < f.s.events().size(); i++) {
      if (f.s.events().get(i) instanceof EventSpec.SetPoint p && p.setPointC() > limit) {
        cure.add(set("event." + i + ".set_point", comb() ? 18 : 10, 0, "degC"));
      }
    }
    out.add(
        "broodless_heated",
        Severity.WARN,
        "A colony without brood is held warm",
        of(
            "0 brood cells, set point %.1f °C; a broodless cluster is quiet and eats least with air of 5 to 10 °C, and needs no more than %.0f °C at this probe; on the mean of the worst week the heater gives %.1f W for nothing",
            f.setPointC, limit, f.week.ownW()),
        "Lower the set point until there is brood",
        cure,
        "lowest consumption at 5 to 10 °C of hive air: from memory, medium confidence");
  }

  /** What the brood has while the probe has its set point, against the band of the scenario. */
  private void probe() {
    if (f.s.colony().broodCells() <= 0 && !broodComes(f.s)) {
      return;
    }
    double cold = f.week.coldestNestC();
    double warm = f.week.warmestNestC();
    boolean blind = f.s.probe(ProbeSpec.Role.BROOD_A).place() == ProbeSpec.Place.BOX_AIR;
    boolean chills = warm < f.s.run().bandLowC() - 0.5;
    // a nest that is warm without the heater is cooled by its bees, which the balance leaves out
    boolean cooks = !comb() && f.week.leastW() > 0 && cold > f.s.run().bandHighC() + 1;
    if (!blind && !chills && !cooks) {
      return;
    }
    out.add(
        "probe_place",
        chills || cooks ? Severity.STOP : Severity.WARN,
        chills
            ? "At this set point the brood is chilled"
            : cooks ? "At this set point the brood is cooked" : "The probe cannot see the brood",
        of(
            "the probe hangs at %s and is held at %.1f °C; with %.1f °C outdoors the brood then stands at %.1f to %.1f °C, by the cluster's heat loss; its band is %.0f to %.0f °C",
            f.s.probe(ProbeSpec.Role.BROOD_A).place().name().toLowerCase(java.util.Locale.ROOT),
            f.setPointC,
            f.week.outsideC(),
            cold,
            warm,
            f.s.run().bandLowC(),
            f.s.run().bandHighC()),
        "Hang it between the brood combs, with the set point of brood",
        List.of(
            "probe.brood_a.place=brood_comb",
            "controller.heat.set_point=33 degC",
            "controller.limit.brood=36.5 degC",
            "controller.fan.off_below=36 degC",
            "controller.fan.on_above=37 degC"),
        "steady balance of nest, air and pan; brood combs 33 to 36 °C, edge of the nest 18 to 25 °C: trade judgement");
  }
}
