package org.broodbench.controller;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Rules H, L, D, E, G and R through the whole controller. */
@Tag("fast")
class HeaterRulesTest {
  /** On, with the ramp complete: the working set point is the set point. */
  private static Bench heating(Settings settings) {
    Bench bench = new Bench(settings);
    bench.in.broodA.put(3200);
    bench.in.broodB.put(3200);
    bench.in.pan.put(3400);
    bench.step(0).untilHeaterOn();
    assertEquals(3300, bench.out.workingSetPointCentiC);
    return bench;
  }

  @Test
  void aColdNestIsWarmedFromEighteenDegreesUpwards() {
    Bench bench = new Bench(Bench.comb());
    bench.in.broodA.put(500);
    bench.step(0).run(60_000, 1000);
    assertEquals(1800, bench.out.workingSetPointCentiC);
  }

  @Test
  void anHourWithoutHeatStartsTheRampAnew() {
    Bench bench = heating(Bench.comb());
    bench.in.broodA.put(3300);
    bench.run(200_000, 1000);
    assertFalse(bench.out.heater);
    // Heat is kept away by the fan shed; the nest cools.
    bench.in.battery.put(11_700);
    bench.run(70_000, 1000);
    bench.in.broodA.put(3250);
    bench.run(3_000_000, 1000);
    assertEquals(1800, bench.out.workingSetPointCentiC);
    bench.in.broodA.put(2500);
    bench.run(1_000_000, 1000);
    assertEquals(1800, bench.out.workingSetPointCentiC);
  }

  @Test
  void setBackActsAtOnceAndRecoversByTheRamp() {
    Bench bench = heating(Bench.comb());
    bench.in.battery.put(12_250 - 153);
    bench.run(61_000, 1000);
    assertEquals(ShedLevel.SET_BACK, bench.out.shedLevel);
    assertEquals(3000, bench.out.workingSetPointCentiC);
    bench.in.battery.put(12_900);
    bench.run(1_801_000, 1000);
    assertEquals(ShedLevel.FULL, bench.out.shedLevel);
    bench.run(1_800_000, 1000);
    assertEquals(3100, bench.out.workingSetPointCentiC);
  }

  @Test
  void soakRaisesTheSetPointWhileTheChargerIsFull() {
    Bench bench = heating(Bench.comb().with(Setting.HEAT_SOAK_CENTI_K, 100));
    bench.in.chargerFull = true;
    bench.run(1_800_000, 1000);
    assertEquals(3400, bench.out.workingSetPointCentiC);
    bench.in.chargerFull = false;
    bench.step(1000);
    assertEquals(3300, bench.out.workingSetPointCentiC);
  }

  @Test
  void startsInARollingHourAreCounted() {
    Settings settings =
        Bench.comb()
            .with(Setting.RELAY_STARTS_PER_HOUR, 2)
            .with(Setting.RELAY_MIN_ON_MILLIS, 10_000)
            .with(Setting.RELAY_MIN_OFF_MILLIS, 100_000);
    Bench bench = heating(settings);
    for (int start = 1; start < 2; start++) {
      bench.in.broodA.put(3300);
      bench.run(20_000, 1000);
      bench.in.broodA.put(3200);
      bench.untilHeaterOn();
    }
    bench.in.broodA.put(3300);
    bench.run(20_000, 1000);
    bench.in.broodA.put(3200);
    bench.run(200_000, 1000);
    assertFalse(bench.out.heater);
    assertEquals(Reason.STARTS, bench.out.heaterReason);
    int waited = 0;
    while (!bench.out.heater) {
      bench.step(1000);
      waited++;
    }
    assertTrue(waited > 3000 && waited < 3600, "waited " + waited);
  }

  @Test
  void panControlLimitHasADifferentialAndNeverLatches() {
    Bench bench = heating(Bench.comb());
    for (int night = 0; night < 5; night++) {
      bench.in.pan.put(3800);
      bench.run(400_000, 1000);
      assertFalse(bench.out.heater);
      bench.in.pan.put(3601);
      bench.step(1000);
      assertFalse(bench.out.heater);
      assertEquals(Reason.PAN_LIMIT, bench.out.heaterReason);
      bench.in.pan.put(3600);
      bench.run(2000, 1000);
      assertTrue(bench.out.heater, "night " + night);
    }
    assertEquals(0, bench.out.latchedAlarms & (1 << Alarm.PAN_TRIP | 1 << Alarm.TRIP_LATCHED));
  }

  private static void trip(Bench bench) {
    bench.in.pan.put(4300);
    bench.step(60_000);
    assertTrue(bench.alarm(Alarm.PAN_TRIP));
    bench.in.pan.put(3600);
    bench.step(60_000).step(60_000);
  }

  @Test
  void threePanTripsInADayLatchUntilALongPress() {
    Bench bench = heating(Bench.comb());
    trip(bench);
    trip(bench);
    bench.run(400_000, 1000);
    assertTrue(bench.out.heater);
    trip(bench);
    bench.run(400_000, 1000);
    assertFalse(bench.out.heater);
    assertEquals(Reason.TRIP_LATCHED, bench.out.heaterReason);
    assertTrue(bench.alarm(Alarm.TRIP_LATCHED));
    // Refused while the cause lasts.
    bench.in.pan.put(3800);
    bench.press(6000);
    bench.in.pan.put(3600);
    bench.step(1000);
    assertEquals(Reason.TRIP_LATCHED, bench.out.heaterReason);
    bench.press(6000);
    bench.step(1000);
    assertTrue(bench.out.heater);
  }

  @Test
  void tripsOlderThanADayAreForgotten() {
    Bench bench = heating(Bench.comb());
    trip(bench);
    trip(bench);
    bench.run(86_400_000 - 120_000, 60_000);
    trip(bench);
    assertFalse(bench.alarm(Alarm.TRIP_LATCHED));
  }

  /** C10: a probe that falls silent at its limit holds heat off as long as its value is trusted. */
  @Test
  void aHeldValueAtTheLimitHoldsHeatOff() {
    Bench bench = heating(Bench.comb().with(Setting.RELAY_MIN_OFF_MILLIS, 0));
    bench.in.broodA.put(3650);
    bench.in.testRequest = true;
    bench.step(60_000);
    assertEquals(3650, bench.out.governingHighCentiC);
    bench.in.broodA.clear();
    for (int second = 1; second <= 30; second++) {
      bench.step(1000);
      assertEquals(3650, bench.out.governingHighCentiC);
      assertFalse(bench.out.heater);
      assertEquals(Reason.BROOD_LIMIT, bench.out.heaterReason);
    }
  }

  @Test
  void broodLimitCountsOnlyWhenItEndsARun() {
    Bench bench = heating(Bench.comb());
    for (int i = 0; i < 5; i++) {
      bench.in.broodA.put(3650);
      bench.step(60_000);
      bench.in.broodA.put(3600);
      bench.step(60_000);
    }
    // The first one ended a run, the others found the heater off.
    bench.in.broodA.put(3200);
    bench.step(20_000).untilHeaterOn();
    assertFalse(bench.alarm(Alarm.TRIP_LATCHED));
    for (int i = 0; i < 2; i++) {
      bench.in.broodA.put(3650);
      bench.step(20_000);
      bench.in.broodA.put(3200);
      bench.step(20_000);
      if (i == 0) {
        bench.untilHeaterOn();
      }
    }
    assertTrue(bench.alarm(Alarm.TRIP_LATCHED));
  }

  private static Bench withCurrent() {
    Bench bench = new Bench(Bench.combFull().with(Setting.FITTED_HEATER_CURRENT, true));
    bench.in.broodA.put(3200);
    bench.in.broodB.put(3200);
    bench.in.heaterCurrent.put(0);
    return bench.step(0);
  }

  @Test
  void currentTwoSecondsAfterOffIsAWeldedRelay() {
    Bench bench = withCurrent().untilHeaterOn();
    bench.in.heaterCurrent.put(5000);
    bench.in.broodA.put(3300);
    bench.run(180_000, 1000);
    assertFalse(bench.out.heater);
    bench.step(1000);
    assertTrue(bench.out.isolation);
    // A sample from before off proves nothing.
    bench.in.heaterCurrent.ageMillis = 1001;
    bench.step(2000);
    assertTrue(bench.out.isolation);
    bench.in.heaterCurrent.ageMillis = 2000;
    bench.step(1000);
    assertFalse(bench.out.isolation, "4 s after off less 2 s of age");
    bench.in.heaterCurrent.ageMillis = 0;
    assertTrue(bench.alarm(Alarm.WELDED));
    bench.press(6000);
    assertFalse(bench.out.isolation);
    bench.in.heaterCurrent.put(2500);
    bench.step(1000);
    bench.press(6000);
    assertTrue(bench.out.isolation);
  }

  @Test
  void aPanThatStaysWarmLongAfterOffIsAWeldedRelay() {
    Bench bench = heating(Bench.comb());
    bench.in.broodA.put(3300);
    bench.run(181_000, 1000);
    bench.in.pan.put(3799);
    // Blanking of 60 min, then a look of 10 min.
    bench.run(3_600_000 + 590_000, 1000);
    assertTrue(bench.out.isolation);
    bench.run(20_000, 1000);
    assertTrue(bench.out.isolation, "4.99 K above the brood");
    bench.in.pan.put(3798);
    bench.in.broodA.put(3298);
    bench.run(610_000, 1000);
    assertFalse(bench.out.isolation);
    bench.in.broodA.put(3100);
    bench.run(20_000, 1000);
    assertEquals(Reason.ISOLATION, bench.out.heaterReason);
  }

  @Test
  void aFallingPanIsNoWeldedRelay() {
    Bench bench = heating(Bench.comb());
    bench.in.broodA.put(3300);
    bench.run(181_000, 1000);
    for (int at = 0; at < 12_000_000; at += 60_000) {
      bench.in.pan.put(4200 - at / 60_000);
      bench.step(60_000);
    }
    assertTrue(bench.out.isolation);
  }

  @Test
  void aRunWithoutAnyRiseOfThePanIsUnproven() {
    Bench bench = heating(Bench.comb());
    bench.run(1_199_000, 1000);
    bench.in.pan.put(3499);
    bench.step(0);
    assertFalse(bench.alarm(Alarm.EFFECT));
    bench.step(1000);
    assertTrue(bench.alarm(Alarm.EFFECT));
    // Its share is long used up: five minutes in twenty from here on.
    assertFalse(bench.out.heater);
    assertEquals(Reason.EFFECT, bench.out.heaterStopReason);
    bench.run(899_000, 1000);
    assertFalse(bench.out.heater);
    bench.step(1000);
    assertTrue(bench.out.heater);
    bench.run(299_000, 1000);
    assertTrue(bench.out.heater);
    bench.step(1000);
    assertFalse(bench.out.heater);
    assertEquals(Reason.EFFECT, bench.out.heaterReason);
  }

  @Test
  void aRiseOfOneKelvinProves() {
    Bench bench = heating(Bench.comb());
    bench.in.pan.put(3500);
    bench.step(1000);
    bench.in.pan.put(3450);
    bench.run(1_300_000, 1000);
    assertFalse(bench.alarm(Alarm.EFFECT));
    assertTrue(bench.out.heater);
  }

  /** Heat takes minutes through a deep pan: its top goes on falling, then rises. */
  @Test
  void aRiseOfOneKelvinFromTheLowestOfTheRunProves() {
    for (int riseC : new int[] {99, 100}) {
      Bench bench = heating(Bench.comb());
      for (int minute = 0; minute < 4; minute++) {
        bench.in.pan.put(3390 - 10 * minute);
        bench.run(60_000, 1000);
      }
      bench.in.pan.put(3360 + riseC);
      bench.run(1_000_000, 1000);
      assertEquals(riseC < 100, bench.alarm(Alarm.EFFECT), "rise " + riseC);
      assertEquals(riseC >= 100, bench.out.heater);
    }
  }

  /** The pan over a dead element only falls, and is found however warm it was. */
  @Test
  void aPanThatOnlyFallsProvesNothing() {
    Bench bench = heating(Bench.comb());
    for (int minute = 0; minute < 20; minute++) {
      assertFalse(bench.alarm(Alarm.EFFECT));
      bench.in.pan.put(3400 - 15 * minute);
      bench.run(60_000, 1000);
    }
    assertTrue(bench.alarm(Alarm.EFFECT));
    assertFalse(bench.out.heater);
  }

  @Test
  void aPanWellAboveBroodAndOutdoorsProves() {
    Settings settings = Bench.comb().with(Setting.FITTED_OUTDOOR, true);
    Bench bench = new Bench(settings);
    bench.in.broodA.put(2800);
    bench.in.pan.put(3600);
    bench.in.outdoor.put(2801);
    bench.step(0).untilHeaterOn();
    bench.run(1_199_000, 1000);
    bench.step(1000);
    assertTrue(bench.alarm(Alarm.EFFECT), "7.99 K above outdoors");
    bench.in.outdoor.put(2800);
    bench.run(900_000, 1000);
    bench.step(1000);
    assertTrue(bench.out.heater);
    bench.run(70_000, 1000);
    assertFalse(bench.alarm(Alarm.EFFECT));
  }

  @Test
  void currentProvesWhateverThePanSays() {
    Bench bench = withCurrent().untilHeaterOn();
    bench.in.heaterCurrent.put(2499);
    bench.run(1_201_000, 1000);
    assertTrue(bench.alarm(Alarm.EFFECT));
    Bench other = withCurrent().untilHeaterOn();
    other.in.heaterCurrent.put(2500);
    other.run(1_201_000, 1000);
    assertFalse(other.alarm(Alarm.EFFECT));
    assertTrue(other.out.heater);
  }

  @Test
  void withoutAPanProbeHeatRunsInItsShare() {
    Bench bench = new Bench(Bench.comb().with(Setting.FITTED_PAN, false));
    bench.in.broodA.put(2500);
    bench.step(0).untilHeaterOn();
    bench.run(300_000, 1000);
    assertFalse(bench.out.heater);
    assertEquals(Reason.EFFECT, bench.out.heaterStopReason);
    int off = 0;
    while (!bench.out.heater) {
      bench.step(1000);
      off++;
    }
    assertEquals(900, off);
  }
}
