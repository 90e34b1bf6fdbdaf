package org.broodbench.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.loop.RunResult;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Requirement;
import org.broodbench.rig.Scenario;

/** Changes that are keyed in or moved by hand; they cost nothing. Steps are own choices. */
final class ControllerChanges {
  private static final List<String> LEVELS = List.of("set_back", "survival", "heat");
  private static final List<Setting> ENTER_MILLI_V =
      List.of(
          Setting.SHED_SET_BACK_ENTER_MILLI_V,
          Setting.SHED_SURVIVAL_ENTER_MILLI_V,
          Setting.SHED_HEAT_ENTER_MILLI_V);
  private static final List<Setting> ENTER_PERMILLE =
      List.of(
          Setting.SHED_SET_BACK_ENTER_PERMILLE,
          Setting.SHED_SURVIVAL_ENTER_PERMILLE,
          Setting.SHED_HEAT_ENTER_PERMILLE);

  private final Scenario s;
  private final Settings settings;
  private final Set<Need> needs;
  private final RunResult r;
  private final List<Change> out = new ArrayList<>();

  private ControllerChanges(Scenario scenario, Set<Need> needs, RunResult run) {
    s = scenario;
    settings = scenario.controller().settings();
    this.needs = needs;
    r = run;
  }

  static List<Change> of(Scenario s, Set<Need> needs, RunResult r) {
    ControllerChanges c = new ControllerChanges(s, needs, r);
    if (s.heater().powerW() > 0) {
      c.differential();
      c.relay();
      c.setPoint();
      c.sparing();
    }
    c.fan();
    c.probe();
    return c.out;
  }

  private void differential() {
    double nowK = settings.get(Setting.HEAT_DIFFERENTIAL_CENTI_K) / 100.0;
    if (needs.contains(Need.CALM)) {
      // below half a kelvin twice as much is still narrow
      differential(nowK, nowK < 0.5 ? 1 : Math.min(10, 2 * nowK));
    }
    if (needs.contains(Need.WARMTH) && nowK >= 0.5) {
      differential(nowK, nowK / 2);
    }
  }

  private void differential(double fromK, double toK) {
    out.add(
        Change.of(
            text("Set a differential of %s K instead of %s K", number(toK), number(fromK)),
            text("controller.heat.differential=%s K", number(toK))));
  }

  /** Minimum times as long as what is required of them, or twice as long. */
  private void relay() {
    if (!needs.contains(Need.CALM)) {
      return;
    }
    minimum("off", Setting.RELAY_MIN_OFF_MILLIS, Requirement.Kind.SHORTEST_OFF);
    minimum("on", Setting.RELAY_MIN_ON_MILLIS, Requirement.Kind.SHORTEST_ON);
  }

  private void minimum(String which, Setting setting, Requirement.Kind kind) {
    long nowS = settings.get(setting) / 1000;
    long wantedS = Math.max(60, 2 * nowS);
    for (Requirement q : s.requirements()) {
      if (q.kind() == kind) {
        wantedS = Math.max(wantedS, (long) q.limit() + 1);
      }
    }
    wantedS = Math.min(3600, wantedS);
    if (wantedS > nowS) {
      out.add(
          Change.of(
              text("Set a minimum %s of %d s instead of %d s", which, wantedS, nowS),
              text("controller.heat.min_%s=%d s", which, wantedS)));
    }
  }

  private void setPoint() {
    double nowC = settings.get(Setting.HEAT_SET_POINT_CENTI_C) / 100.0;
    if (needs.contains(Need.WARMTH) && nowC + 1 <= 36) {
      setPoint(nowC, nowC + 1);
    }
    boolean less =
        needs.contains(Need.COOLING)
            || needs.contains(Need.MOISTURE)
            || needs.contains(Need.COOL_PAN)
            || needs.contains(Need.CHARGE);
    if (less && r.heaterCommanded().starts() > 0) {
      setPoint(nowC, nowC - 1);
    }
  }

  private void setPoint(double fromC, double toC) {
    out.add(
        Change.of(
            text("Set the heat to %s °C instead of %s °C", number(toC), number(fromC)),
            text("controller.heat.set_point=%s degC", number(toC))));
  }

  /** How early and how far the controller spares the battery. */
  private void sparing() {
    if (!needs.contains(Need.CHARGE)) {
      return;
    }
    double backK = settings.get(Setting.HEAT_SET_BACK_CENTI_K) / 100.0;
    if (needs.contains(Need.WARMTH) && backK > 1) {
      out.add(
          Change.of(
              text("Lower the set point by 1 K only to spare charge, not by %s K", number(backK)),
              "controller.heat.set_back=1 K"));
    }
    boolean low =
        s.requirements().stream()
            .anyMatch(q -> q.kind() == Requirement.Kind.LOWEST_SOC && Shortfall.of(q, r, s) > 0);
    if (low) {
      shedBy(1, "Spare the battery earlier");
    }
    if (needs.contains(Need.WARMTH) || r.sheds() > 0) {
      shedBy(-1, "Spare the battery later");
    }
  }

  /** All three levels of sparing heat moved by 0.1 V at 12 V, or by 10 points of charge. */
  private void shedBy(int sign, String words) {
    boolean byCharge = settings.get(Setting.SHED_BY_STATE_OF_CHARGE) != 0;
    int step = byCharge ? 100 : (int) Math.round(100 * s.battery().nominalV() / 12);
    List<String> keys = new ArrayList<>();
    for (int i = 0; i < LEVELS.size(); i++) {
      int moved = settings.get((byCharge ? ENTER_PERMILLE : ENTER_MILLI_V).get(i)) + sign * step;
      keys.add(
          byCharge
              ? text("controller.shed.%s_enter_charge=%s %%", LEVELS.get(i), number(moved / 10.0))
              : text("controller.shed.%s_enter_volts=%s V", LEVELS.get(i), number(moved / 1000.0)));
    }
    String by = byCharge ? "10 points of charge" : number(step / 1000.0) + " V";
    out.add(
        new Change(
            text("%s: every level of it %s %s", words, by, sign > 0 ? "higher" : "lower"), keys));
  }

  private void fan() {
    if (s.fan().powerW() == 0) {
      return;
    }
    double onC = settings.get(Setting.FAN_ON_CENTI_C) / 100.0;
    double offC = settings.get(Setting.FAN_OFF_CENTI_C) / 100.0;
    if (needs.contains(Need.COOLING)) {
      fan(onC, onC - 1, offC - 1);
    }
    if (needs.contains(Need.MOISTURE) && r.fan().starts() > 0) {
      fan(onC, onC + 1, offC + 1);
    }
    if (needs.contains(Need.DRYNESS) && s.sensors().humidity()) {
      double nowPercent = settings.get(Setting.PURGE_ON_PERMILLE) / 10.0;
      if (nowPercent > 70) {
        out.add(
            Change.of(
                text("Dry with the fan from 70 %% humidity on, not %s %%", number(nowPercent)),
                "controller.purge.on_above=70 %",
                "controller.purge.off_below=60 %"));
      }
    }
  }

  private void fan(double fromC, double onC, double offC) {
    out.add(
        Change.of(
            text("Let the fan cool from %s °C on instead of %s °C", number(onC), number(fromC)),
            text("controller.fan.on_above=%s degC", number(onC)),
            text("controller.fan.off_below=%s degC", number(offC))));
  }

  /** A probe in the comb tells what the brood feels. */
  private void probe() {
    ProbeSpec a = s.probe(ProbeSpec.Role.BROOD_A);
    boolean here =
        needs.contains(Need.CALM) || needs.contains(Need.WARMTH) || needs.contains(Need.COOLING);
    if (here && a != null && a.place() != ProbeSpec.Place.BROOD_COMB) {
      out.add(
          Change.of(
              "Hang the probe between the brood combs and set the heat to 33 °C",
              "probe.brood_a.place=brood_comb",
              "controller.heat.set_point=33 degC"));
    }
  }

  /** A number without needless digits. */
  static String number(double value) {
    return java.math.BigDecimal.valueOf(Math.rint(value * 1000) / 1000)
        .stripTrailingZeros()
        .toPlainString();
  }

  static String text(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
