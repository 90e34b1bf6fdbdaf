package org.broodbench.controller;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Rules F, K, A and Y through the whole controller. */
@Tag("fast")
class FanAndButtonRulesTest {
  private static Bench warm(int broodCentiC, int outdoorCentiC) {
    Bench bench = new Bench(Bench.combFull());
    bench.in.broodA.put(broodCentiC);
    bench.in.broodB.put(broodCentiC);
    bench.in.pan.put(broodCentiC);
    bench.in.outdoor.put(outdoorCentiC);
    return bench.step(0).run(180_000, 1000);
  }

  private static void brood(Bench bench, int centiC) {
    bench.in.broodA.put(centiC);
    bench.in.broodB.put(centiC);
  }

  @Test
  void coolsFromThirtySevenUntilThirtySix() {
    Bench bench = warm(3699, 2000);
    assertFalse(bench.out.fan);
    brood(bench, 3700);
    bench.step(1000);
    assertTrue(bench.out.fan);
    brood(bench, 3601);
    bench.run(120_000, 1000);
    assertTrue(bench.out.fan);
    brood(bench, 3600);
    bench.step(1000);
    assertFalse(bench.out.fan);
    brood(bench, 3700);
    bench.run(119_000, 1000);
    assertFalse(bench.out.fan);
    assertEquals(Reason.MIN_OFF, bench.out.fanReason);
    bench.step(1000);
    assertTrue(bench.out.fan);
  }

  @Test
  void minimumOnHoldsTheFanAndKeepsTheHeaterOff() {
    Bench bench = warm(3700, 2000);
    assertTrue(bench.out.fan);
    brood(bench, 3600);
    bench.run(120_000, 1000);
    assertFalse(bench.out.fan);
    brood(bench, 3700);
    bench.run(130_000, 1000);
    brood(bench, 3590);
    bench.run(1000, 1000);
    assertEquals(bench.out.fan ? Reason.MIN_ON : Reason.NONE, bench.out.fanReason);
  }

  @Test
  void warmOutdoorsLocksCoolingOut() {
    Bench bench = warm(3750, 3651);
    assertFalse(bench.out.fan);
    assertEquals(Reason.WARM_OUTDOORS, bench.out.fanReason);
    bench.in.outdoor.put(3650);
    bench.step(1000);
    assertTrue(bench.out.fan);
    bench.in.outdoor.put(3651);
    bench.step(1000);
    assertFalse(bench.out.fan);
  }

  @Test
  void coldOutdoorsLimitsTheFanToFiveMinutesInThirty() {
    Bench bench = warm(3750, 499);
    boolean spent = false;
    int on = 0;
    for (int s = 0; s < 3600; s++) {
      bench.step(1000);
      on += bench.out.fan ? 1 : 0;
      spent = spent || bench.out.fanReason == Reason.COLD_SHARE;
    }
    assertTrue(on <= 601 && on >= 480, "on for " + on + " s");
    assertTrue(spent);
  }

  @Test
  void dampAirIsPurgedForThreeMinutesAnHour() {
    Bench bench = warm(3350, 1000);
    bench.in.humidity.put(849);
    bench.run(200_000, 1000);
    assertFalse(bench.out.fan);
    bench.in.humidity.put(850);
    bench.step(1000);
    assertTrue(bench.out.fan);
    assertEquals(Reason.PURGE, bench.out.fanReason);
    bench.in.humidity.put(751);
    int on = 0;
    for (int s = 0; s < 7200; s++) {
      bench.step(1000);
      on += bench.out.fan ? 1 : 0;
    }
    assertEquals(360, on, 4);
    bench.in.humidity.put(750);
    bench.run(4_000_000, 1000);
    assertFalse(bench.out.fan);
  }

  @Test
  void noPurgeInTheColdOrWithACallForHeat() {
    Bench cold = warm(3350, 999);
    cold.in.humidity.put(900);
    cold.run(10_000, 1000);
    assertFalse(cold.out.fan);
    Bench shed = warm(2500, 1500);
    shed.in.battery.put(12_000);
    shed.in.humidity.put(900);
    shed.run(300_000, 1000);
    assertEquals(ShedLevel.HEAT_SHED, shed.out.shedLevel);
    assertFalse(shed.out.fan);
    // Above set point minus differential, but the thermostat still calls.
    Bench calling = warm(3200, 1500).untilHeaterOn();
    brood(calling, 3250);
    calling.in.humidity.put(900);
    calling.run(10_000, 1000);
    assertFalse(calling.out.fan);
    Bench low = warm(3000, 1500);
    low.in.humidity.put(900);
    low.run(10_000, 1000);
    assertFalse(low.out.fan);
  }

  @Test
  void aWetSensorIsNotBelieved() {
    Bench bench = warm(3350, 999);
    bench.in.humidity.put(990);
    bench.run(21_600_000, 60_000);
    assertFalse(bench.alarm(Alarm.HUMIDITY_WET));
    bench.step(60_000);
    assertTrue(bench.alarm(Alarm.HUMIDITY_WET));
    // Less than 5 K from before: a larger move would find the constant brood probe stuck.
    bench.in.outdoor.put(1400);
    bench.run(600_000, 1000);
    assertFalse(bench.out.fan);
    bench.in.humidity.put(989);
    bench.run(62_000, 1000);
    assertTrue(bench.out.fan);
  }

  @Test
  void timedPurgeRunsOnceAPeriod() {
    Settings settings = Bench.combFull().with(Setting.PURGE_TIMED_EVERY_MILLIS, 3_600_000);
    Bench bench = new Bench(settings);
    brood(bench, 3350);
    bench.in.outdoor.put(1500);
    bench.step(0);
    int on = 0;
    for (int s = 0; s < 4 * 3600 - 1; s++) {
      bench.step(1000);
      on += bench.out.fan ? 1 : 0;
      boolean due = s > 200 && bench.nowMillis % 3_600_000 < 60_000;
      assertEquals(due, bench.out.fan, "after " + s);
    }
    // The first one falls into minimum off.
    assertEquals(180, on);
  }

  @Test
  void heaterGoesFirstMinimumOnNotwithstanding() {
    Settings settings =
        Bench.combFull()
            .with(Setting.RELAY_MIN_ON_MILLIS, 180_000)
            .with(Setting.FITTED_FAN, true)
            .with(Setting.TRUST_STEP_CENTI_K, 2000);
    Bench bench = new Bench(settings).step(0).untilHeaterOn();
    brood(bench, 3700);
    bench.step(1000);
    assertFalse(bench.out.heater);
    assertFalse(bench.out.fan);
    assertEquals(Reason.HEATER_FIRST, bench.out.fanReason);
    bench.step(1000);
    assertTrue(bench.out.fan);
  }

  @Test
  void fanShedAndStandbyStopTheFan() {
    Bench bench = warm(3750, 2000);
    bench.in.battery.put(11_700);
    bench.run(61_000, 1000);
    assertFalse(bench.out.fan);
    assertEquals(Reason.SHED, bench.out.fanReason);
  }

  @Test
  void aShortPressHoldsForServiceAndASecondOneEndsIt() {
    Bench bench = new Bench(Bench.combFull()).step(0).untilHeaterOn();
    bench.press(300);
    assertFalse(bench.out.heater);
    assertEquals(Reason.SERVICE, bench.out.heaterStopReason);
    assertEquals(1_800_000, bench.out.serviceRemainingMillis);
    bench.run(1_799_000, 1000);
    assertFalse(bench.out.heater);
    bench.run(2000, 1000);
    assertTrue(bench.out.heater);
    bench.press(300);
    bench.run(100_000, 1000);
    bench.press(300);
    assertEquals(0, bench.out.serviceRemainingMillis);
  }

  @Test
  void aShortPressStartsTheDailyLookAnew() {
    Bench bench = new Bench(Bench.comb()).step(0).untilHeaterOn();
    bench.run(100_500, 500);
    bench.in.broodA.put(3100);
    bench.step(500);
    assertEquals(3000, bench.out.lowestBroodCentiC);
    assertEquals(3100, bench.out.highestBroodCentiC);
    assertEquals(101, bench.out.heaterSeconds);
    assertEquals(1, bench.out.heaterStarts);
    bench.press(300);
    assertEquals(3100, bench.out.lowestBroodCentiC);
    assertEquals(0, bench.out.heaterStarts);
  }

  @Test
  void aPressOfOverAMinuteIsIgnoredWithAnAlarm() {
    Bench bench = new Bench(Bench.comb()).step(0).untilHeaterOn();
    bench.in.button = true;
    bench.step(1000).run(59_000, 1000);
    assertFalse(bench.alarm(Alarm.BUTTON_STUCK));
    bench.step(1000);
    assertTrue(bench.alarm(Alarm.BUTTON_STUCK));
    bench.in.button = false;
    bench.step(1000);
    assertTrue(bench.out.heater);
    assertEquals(0, bench.out.serviceRemainingMillis);
  }

  @Test
  void aButtonDownAtPowerUpIsNoPress() {
    Bench bench = new Bench(Bench.comb());
    bench.in.button = true;
    bench.step(0).run(1000, 100);
    bench.in.button = false;
    bench.step(100);
    assertEquals(0, bench.out.serviceRemainingMillis);
    bench.press(300);
    assertTrue(bench.out.serviceRemainingMillis > 0);
  }

  @Test
  void aLongPressClearsTheTwinsOfAlarmsThatAreOver() {
    Bench bench = new Bench(Bench.comb()).step(0).step(-5);
    assertTrue(bench.latchedAlarm(Alarm.TIME));
    bench.press(5000);
    assertTrue(bench.latchedAlarm(Alarm.TIME), "refused while the alarm lasts");
    bench.run(70_000, 1000);
    assertFalse(bench.alarm(Alarm.TIME));
    assertTrue(bench.latchedAlarm(Alarm.TIME));
    bench.press(5000);
    assertFalse(bench.latchedAlarm(Alarm.TIME));
  }

  @Test
  void testRunsHeaterThenFanForAMinuteEach() {
    Bench bench = warm(3350, 1500).run(300_000, 1000);
    assertFalse(bench.out.heater);
    bench.in.testRequest = true;
    bench.step(1000);
    assertTrue(bench.out.heater);
    assertEquals(Reason.TEST, bench.out.heaterReason);
    bench.run(59_000, 1000);
    assertTrue(bench.out.heater);
    bench.step(1000);
    assertFalse(bench.out.heater);
    assertEquals(Reason.SERVICE, bench.out.heaterStopReason);
    assertTrue(bench.out.fan);
    assertEquals(2, bench.out.testPhase);
    bench.run(59_000, 1000);
    assertTrue(bench.out.fan);
    bench.step(1000);
    assertFalse(bench.out.fan);
    assertEquals(0, bench.out.testPhase);
    bench.run(1_000_000, 1000);
    assertFalse(bench.out.heater);
  }

  @Test
  void testStaysWithinTheLimits() {
    Bench bench = warm(3350, 1500).run(300_000, 1000);
    bench.in.pan.put(3520);
    bench.step(1000);
    bench.in.pan.put(3700);
    bench.step(1000);
    bench.in.pan.put(3800);
    bench.in.testRequest = true;
    bench.run(100_000, 1000);
    assertFalse(bench.out.heater);
    assertEquals(Reason.PAN_LIMIT, bench.out.heaterReason);
    bench.run(801_000, 1000);
    assertEquals(2, bench.out.testPhase);
  }

  @Test
  void broodLowIsRaisedAfterSixHoursAndHotAtOnce() {
    Bench bench = warm(3199, 500);
    bench.run(21_600_000 - 200_000, 60_000);
    assertFalse(bench.alarm(Alarm.BROOD_LOW));
    bench.run(200_000, 60_000);
    assertTrue(bench.alarm(Alarm.BROOD_LOW));
    brood(bench, 3801);
    bench.step(60_000);
    assertTrue(bench.alarm(Alarm.BROOD_HIGH));
  }
}
