package org.broodbench.study;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.loop.RunResult;
import org.broodbench.rig.Scenario;

/** Things about a run as a whole that a keeper should know before reading numbers. */
final class Flags {
  /** Loaded comb begins to sag, °C; from memory, medium confidence. */
  private static final double WAX_SOFTENS_C = 40;

  /** Losses and the way of the heat through a pan leave about a third of a rise; own choice. */
  private static final double RISE_FOR_PROOF = 3;

  private Flags() {}

  static List<String> of(Scenario s, RunResult main) {
    List<String> flags = new ArrayList<>();
    int month =
        Instant.ofEpochSecond(s.window().fromEpochS()).atZone(ZoneOffset.UTC).getMonthValue();
    int northern = s.place().latitudeDeg() >= 0 ? month : (month + 5) % 12 + 1;
    boolean winter = northern >= 11 || northern <= 2;
    if (winter && s.colony().broodCells() > 0) {
      flags.add(
          "The weather is of winter, the colony is of spring (it has brood): read this as a stress test, not as a"
              + " forecast. Colonies have little or no brood in that season.");
    }
    if (s.colony().broodCells() == 0 && s.heater().powerW() > 0) {
      flags.add(
          "The colony has no brood: held warm it eats more and gains nothing. Broodless colonies want 5 to 10 °C and"
              + " quiet.");
    }
    if (main.brood().high().value() > WAX_SOFTENS_C) {
      flags.add(
          "The brood comb went above 40 °C, where brood dies within hours and loaded comb sags.");
    }
    if (!main.hot().contactWithin()) {
      flags.add("What bees and comb touch above the heater was hotter than it may be.");
    }
    if (!main.hot().plateWithin()) {
      flags.add("The heater plate was hotter, or its heat denser, than it may be.");
    }
    if (main.battery().wentDead()) {
      flags.add(
          "The battery could not carry the loads at some time: everything, the controller included, went off.");
    }
    if (main.colony().beesEnd() == 0 && main.colony().beesStart() > 0) {
      flags.add(
          main.events().stream()
              .filter(e -> e.what().equals("colony") && e.to().equals("dead"))
              .map(e -> "The colony died: " + e.reason() + ".")
              .findFirst()
              .orElse("The colony died."));
    }
    if (main.events().stream().anyMatch(e -> e.what().equals("queen"))) {
      flags.add(
          "The nest was so hot for so long that the queen's store of sperm may have suffered.");
    }
    addHiddenHeater(flags, s, main);
    return flags;
  }

  /** A share of heat so short that a sound heater cannot clear itself. */
  private static void addHiddenHeater(List<String> flags, Scenario s, RunResult main) {
    Settings c = s.controller().settings();
    double panJK = s.heater().pan().heatJK();
    boolean unproven =
        main.events().stream()
            .anyMatch(e -> e.what().equals("alarm effect") && e.to().equals("raised"));
    if (!unproven || panJK == 0 || c.is(Setting.FITTED_HEATER_CURRENT)) {
      return;
    }
    double shareS = c.get(Setting.EFFECT_SHARE_ON_MILLIS) / 1000.0;
    double riseK = s.heater().powerW() * shareS / panJK;
    double neededK = c.get(Setting.EFFECT_RISE_CENTI_K) / 100.0;
    if (riseK < RISE_FOR_PROOF * neededK) {
      flags.add(
          String.format(
              Locale.ROOT,
              "The controller found the heater without effect, and even a sound one could not prove itself: in its"
                  + " share of %.0f min it lifts this pan by %.1f K at most, and losses leave about a third of that"
                  + " where %.1f K are needed. A heavy pan wants longer times, such as controller.effect.judge ="
                  + " \"30 min\", share_on = \"20 min\", share_window = \"80 min\".",
              shareS / 60,
              riseK,
              neededK));
    }
  }
}
