package org.broodbench.controller;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The core and a naive evaluation of SPEC.md give the same commands, step for step. */
class OracleTest {
  private static final int STEPS_A_RUN = 2500;

  /** The first difference over so many steps, or null. */
  private static String firstDifference(SpecTables spec, long steps, long seed) {
    for (long done = 0, run = 0; done < steps; done += STEPS_A_RUN, run++) {
      int rig = (int) (run % Rigs.COUNT);
      String difference = compare(spec, rig, STEPS_A_RUN, seed + run);
      if (difference != null) {
        return "rig " + rig + ", seed " + (seed + run) + ": " + difference;
      }
    }
    return null;
  }

  private static String compare(SpecTables spec, int rig, int steps, long seed) {
    Settings settings = Rigs.of(rig);
    Settings defaults = Settings.defaults(settings.place(), settings.chemistry());
    Map<String, Integer> changes = new HashMap<>();
    for (Setting setting : Setting.values()) {
      if (settings.get(setting) != defaults.get(setting)) {
        changes.put(setting.key(), settings.get(setting));
      }
    }
    String column =
        switch (settings.place()) {
          case BROOD_COMB -> "";
          case NEST_EDGE -> "nest edge";
          case BOX_AIR -> "box air";
        };
    boolean lithium = settings.chemistry() == Chemistry.LITHIUM_IRON_PHOSPHATE;
    Oracle oracle = new Oracle(spec, column, lithium, changes);
    Controller controller = new Controller(settings);
    RandomReadings random = new RandomReadings(new Random(seed));
    Readings in = random.readings();
    Commands expected = new Commands();
    Commands found = new Commands();
    int now = (int) seed * 7919;
    for (int step = 0; step < steps; step++) {
      now += random.next(found);
      oracle.step(now, in, expected);
      controller.step(now, in, found);
      if (!Show.same(expected, found)) {
        return "step " + step + " " + Show.difference(expected, found);
      }
    }
    return null;
  }

  /** A short form with every rig. */
  @Test
  @Tag("fast")
  void coreAndSpecificationAgreeForAWhile() {
    assertNull(firstDifference(SpecTables.read(), 60_000, 500));
  }

  @Test
  void coreAndSpecificationAgreeForAHundredThousandSteps() {
    assertNull(firstDifference(SpecTables.read(), 150_000, 1));
  }

  @Test
  @Tag("campaign")
  void coreAndSpecificationAgreeForTenMillionSteps() {
    assertNull(firstDifference(SpecTables.read(), Campaign.share(10_000_000), 1_000_000));
  }

  /** Disagreements planted in the specification are found: the comparison is not asleep. */
  @Test
  void plantedDisagreementsAreFound() {
    plant(
        "| relay_min_off_millis | 0 | 3600000 | 300000 |",
        "| relay_min_off_millis | 0 | 3600000 | 301000 |");
    plant("| R2 | on | off | not wish and min_on_over |", "| R2 | on | off | not wish |");
    plant(
        "| 4 | brood_limit | brood_high |\n| 5 | pan_limit | pan_high |",
        "| 4 | pan_limit | pan_high |\n| 5 | brood_limit | brood_high |");
    plant(
        "| L2 | pan_high | off | pan_at_or_below_release |",
        "| L2 | pan_high | off | not raw_pan_at_limit |");
    plant("| S6 | decide | best_is_other and dwell_over |", "| S6 | decide | best_is_other |");
    plant("| 16 | no_supply | 60000 |", "| 16 | no_supply | 0 |");
    plant("| shed_double_from | 2 | 8 | 4 |", "| shed_double_from | 2 | 8 | 3 |");
  }

  private static void plant(String right, String wrong) {
    String text = SpecTables.text();
    assertTrue(text.contains(right), "SPEC.md lacks: " + right);
    String difference = firstDifference(new SpecTables(text.replace(right, wrong)), 300_000, 1);
    assertTrue(difference != null, "not found: " + wrong);
    System.out.println(
        "planted \"" + wrong.lines().findFirst().orElseThrow() + "\": " + difference);
  }

  @Test
  void randomReadingsReachEveryReasonAndAlarm() {
    int alarms = 0;
    int heaterReasons = 0;
    int fanReasons = 0;
    int levels = 0;
    for (int run = 0; run < 120; run++) {
      Controller controller = new Controller(Rigs.of(run % Rigs.COUNT));
      RandomReadings random = new RandomReadings(new Random(run));
      Commands out = new Commands();
      int now = 0;
      for (int step = 0; step < STEPS_A_RUN; step++) {
        now += random.next(out);
        controller.step(now, random.readings(), out);
        alarms |= out.alarms;
        heaterReasons |= 1 << out.heaterReason;
        fanReasons |= 1 << out.fanReason;
        levels |= 1 << out.shedLevel;
      }
    }
    assertEquals((1 << Alarm.COUNT) - 1, alarms, () -> "alarms");
    assertEquals((1 << Reason.FALLBACK + 1) - 1, heaterReasons, () -> "heater reasons");
    assertEquals(0x3f, levels);
    int fan =
        1 << Reason.NONE
            | 1 << Reason.SUPPLY
            | 1 << Reason.SHED
            | 1 << Reason.SERVICE
            | 1 << Reason.COOLING
            | 1 << Reason.MIN_OFF
            | 1 << Reason.MIN_ON
            | 1 << Reason.TEST
            | 1 << Reason.WARM_OUTDOORS
            | 1 << Reason.COLD_SHARE
            | 1 << Reason.PURGE
            | 1 << Reason.TIMED_PURGE;
    assertEquals(fan, fanReasons & fan, () -> "fan reasons");
  }
}
