package org.broodbench.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.UnaryOperator;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.junit.jupiter.api.Test;

/** Logs of hives under the right controller and under others, judged by the settings believed. */
class DecisionCheckTest {
  private static final int DAYS = 4;

  private static Calibration.Decisions under(long seed, UnaryOperator<Settings> other) {
    MadeLog made = new MadeLog(seed, DAYS, 0.3, s -> MadeLog.withSettings(s, other));
    return DecisionCheck.of(LogCleaner.clean(made.raw), made.believed.controller().settings());
  }

  @Test
  void theRightControllerIsFoundRight() {
    for (long seed : new long[] {1, 3, 7, 9}) {
      Calibration.Decisions d = under(seed, s -> s);
      assertTrue(d.startsLogged() >= 7, d.toString());
      assertEquals(List.of(), d.differences(), "seed " + seed);
      assertEquals(0, d.differedH());
      assertTrue(d.words().get(0).startsWith("Log and reference never disagree"));
    }
  }

  @Test
  void aLogWithoutVoltsIsJudgedAsWithAFullBattery() {
    MadeLog made = new MadeLog(1, DAYS, 0.3);
    Calibration.Decisions d =
        DecisionCheck.of(
            LogCleaner.clean(made.raw).without(LogColumn.BATTERY_V),
            made.believed.controller().settings());
    assertEquals(List.of(), d.differences());
    assertTrue(d.rests().contains("battery"), d.rests());
  }

  @Test
  void aWiderDifferentialIsTold() {
    Calibration.Decisions d = under(1, s -> s.with(Setting.HEAT_DIFFERENTIAL_CENTI_K, 250));
    assertTrue(d.differedH() > 1, d.toString());
    assertTrue(d.differences().get(0).contains("heater off where the reference has it on"));
    assertTrue(d.differences().get(0).contains("rule H7"), d.toString());
  }

  @Test
  void pausesWithoutTheMinimumOffAreTold() {
    Calibration.Decisions d =
        under(
            3,
            s ->
                s.with(Setting.RELAY_MIN_OFF_MILLIS, 0)
                    .with(Setting.RELAY_MIN_ON_MILLIS, 0)
                    .with(Setting.HEAT_DIFFERENTIAL_CENTI_K, 20));
    String all = String.join("\n", d.differences());
    assertTrue(all.contains("times the heater was off for less than the 300 s"), all);
  }

  @Test
  void shortRunsByOtherRulesAreTold() {
    Calibration.Decisions d = under(3, s -> s.with(Setting.HEAT_SET_POINT_CENTI_C, 3500));
    assertTrue(d.differedH() > 10, d.toString());
    assertTrue(d.startsReference() < d.startsLogged() / 10, d.toString());
  }

  /** Which of the two it is, nobody can tell from the log. */
  @Test
  void anotherSetPointLooksLikeAnotherProbe() {
    Calibration.Decisions d = under(7, s -> s.with(Setting.HEAT_SET_POINT_CENTI_C, 3350));
    assertEquals(1, d.differences().size(), d.toString());
    assertTrue(d.differences().get(0).contains("set point is 0.4 K higher"), d.toString());
  }
}
