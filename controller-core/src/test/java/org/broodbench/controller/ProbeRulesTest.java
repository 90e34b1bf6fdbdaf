package org.broodbench.controller;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Rules P1 to P7 and W1 to W7 through the whole controller. */
@Tag("fast")
class ProbeRulesTest {
  private static final int NONE = Commands.NO_TEMPERATURE;

  private static Bench trusted(Settings settings) {
    return new Bench(settings).step(0).run(60_000, 1000);
  }

  @Test
  void nothingIsTrustedBeforeItHasBeenGoodForAMinute() {
    Bench bench = new Bench(Bench.comb()).step(0).run(59_000, 1000);
    assertEquals(NONE, bench.out.governingCentiC);
    assertEquals(Reason.TRUST, bench.out.heaterReason);
    bench.step(1000);
    assertEquals(3000, bench.out.governingCentiC);
  }

  @ParameterizedTest
  @ValueSource(ints = {8500, -12_700, 12_501, -5501, Integer.MAX_VALUE, Integer.MIN_VALUE})
  void codesAndValuesOutOfRangeHoldTheLastGoodValueForThirtySeconds(int value) {
    Bench bench = trusted(Bench.comb().with(Setting.FALLBACK_ALLOWED, false));
    bench.in.broodA.put(value);
    bench.run(30_000, 1000);
    assertEquals(3000, bench.out.governingCentiC);
    bench.step(1000);
    assertEquals(NONE, bench.out.governingCentiC);
    assertEquals(Reason.TRUST, bench.out.heaterReason);
    bench.run(119_000, 1000);
    assertFalse(bench.alarm(Alarm.BROOD_PROBE));
    bench.step(1000);
    assertTrue(bench.alarm(Alarm.BROOD_PROBE));
  }

  @Test
  void aSampleOlderThanAMinuteIsMissing() {
    Bench bench = trusted(Bench.comb());
    bench.in.broodA.ageMillis = 60_000;
    bench.run(40_000, 1000);
    assertEquals(3000, bench.out.governingCentiC);
    bench.in.broodA.ageMillis = 60_001;
    bench.run(31_000, 1000);
    assertEquals(NONE, bench.out.governingCentiC);
  }

  @Test
  void aJumpFasterThanTheProbeCanMoveIsHeldUntilTimeExplainsIt() {
    Bench bench = trusted(Bench.comb());
    // 2 K at once and 0.5 K for each second since the last good sample.
    bench.in.broodA.put(3500);
    bench.run(5000, 1000);
    assertEquals(3000, bench.out.governingCentiC);
    bench.step(1000);
    assertEquals(3500, bench.out.governingCentiC);
    bench.in.broodA.put(3250);
    bench.step(1000);
    assertEquals(3250, bench.out.governingCentiC);
  }

  @Test
  void aProbeWithoutAnyChangeWhileAnotherMovedIsStuck() {
    Settings settings = Bench.comb().with(Setting.FITTED_OUTDOOR, true);
    Bench bench = new Bench(settings).step(0);
    int sixHours = 21_600_000;
    for (int at = 0; at < sixHours + 600_000; at += 20_000) {
      bench.in.outdoor.put(500 + at / 40_000);
      bench.in.pan.put(2500 + at / 20_000 % 2);
      bench.step(20_000);
      boolean stuck = at + 20_000 >= sixHours;
      assertEquals(stuck ? NONE : 3000, at < 60_000 ? 3000 : bench.out.governingCentiC, "at " + at);
    }
    assertTrue(bench.alarm(Alarm.PROBE_STUCK));
    // One change, and a minute of being good.
    bench.in.broodA.put(3001);
    bench.step(20_000).step(20_000).step(20_000);
    assertEquals(NONE, bench.out.governingCentiC);
    bench.step(20_000);
    assertEquals(3001, bench.out.governingCentiC);
  }

  @Test
  void aConstantProbeAmongConstantProbesIsNotStuck() {
    Bench bench = trusted(Bench.combFull()).run(30_000_000, 60_000);
    assertFalse(bench.alarm(Alarm.PROBE_STUCK));
    assertEquals(3000, bench.out.governingCentiC);
  }

  @Test
  void aRawReadingAtItsLimitStopsHeatThoughTheProbeIsNotTrusted() {
    Bench bench = new Bench(Bench.combFull()).step(0).untilHeaterOn();
    bench.in.broodB.clear();
    bench.run(60_000, 1000);
    assertTrue(bench.out.heater);
    bench.in.broodB.put(3650);
    bench.step(1000);
    assertFalse(bench.out.heater);
    assertEquals(Reason.BROOD_LIMIT, bench.out.heaterStopReason);
  }

  @Test
  void lowerCallsAndHigherStops() {
    Bench bench = trusted(Bench.combFull());
    bench.in.broodA.put(3100);
    bench.in.broodB.put(3200);
    bench.step(1000);
    assertEquals(3100, bench.out.governingCentiC);
    assertEquals(3200, bench.out.governingHighCentiC);
    bench.in.broodA.put(3250);
    bench.step(1000);
    assertEquals(3200, bench.out.governingCentiC);
    assertEquals(3250, bench.out.governingHighCentiC);
  }

  @Test
  void probesFurtherApartThanStatedFollowTheWarmer() {
    Bench bench = trusted(Bench.combFull());
    bench.in.broodB.put(3180);
    bench.step(1000);
    bench.in.broodB.put(3300);
    bench.step(1000);
    assertEquals(3000, bench.out.governingCentiC);
    bench.in.broodB.put(3301);
    bench.step(1000);
    assertEquals(3301, bench.out.governingCentiC);
    bench.run(599_000, 1000);
    assertFalse(bench.alarm(Alarm.PROBES_APART));
    bench.step(1000);
    assertTrue(bench.alarm(Alarm.PROBES_APART));
  }

  @Test
  void aProbeAtAnotherPlaceNeverGovernsButItsLimitActs() {
    Settings settings =
        Bench.combFull()
            .with(Setting.BROOD_B_LIKE_PLACE, false)
            .with(Setting.LIMIT_BROOD_B_CENTI_C, 3000);
    Bench bench = new Bench(settings);
    bench.in.broodB.put(2000);
    bench.step(0).untilHeaterOn();
    assertEquals(3000, bench.out.governingCentiC);
    bench.in.broodB.put(3000);
    bench.step(1000);
    assertFalse(bench.out.heater);
    bench.in.broodA.clear();
    bench.in.broodB.put(2000);
    bench.run(40_000, 1000);
    assertEquals(NONE, bench.out.governingCentiC);
  }

  @Test
  void probeBAloneGovernsWhenProbeAIsLost() {
    Bench bench = trusted(Bench.combFull());
    bench.in.broodA.clear();
    bench.in.broodB.put(3050);
    bench.run(31_000, 1000);
    assertEquals(3050, bench.out.governingCentiC);
    assertEquals(3050, bench.out.governingHighCentiC);
  }

  @Test
  void fallbackHoldsThePanWhenNoBroodProbeIsTrusted() {
    Bench bench = new Bench(Bench.comb());
    bench.in.broodA.clear();
    bench.step(0).untilHeaterOn();
    assertEquals(Reason.FALLBACK, bench.out.heaterReason);
    assertTrue(bench.alarm(Alarm.FALLBACK));
    bench.run(180_000, 1000);
    bench.in.pan.put(2699);
    bench.step(1000);
    bench.in.pan.put(2880);
    bench.step(1000);
    bench.in.pan.put(2999);
    bench.step(1000);
    assertTrue(bench.out.heater);
    bench.in.pan.put(3000);
    bench.step(1000);
    assertFalse(bench.out.heater);
    bench.in.pan.put(2901);
    bench.run(400_000, 1000);
    assertFalse(bench.out.heater);
    bench.in.pan.put(2900);
    bench.step(1000);
    assertTrue(bench.out.heater);
  }

  @Test
  void noFallbackWhereItIsNotAllowed() {
    Bench bench = new Bench(Bench.comb().with(Setting.FALLBACK_ALLOWED, false));
    bench.in.broodA.clear();
    bench.step(0).run(600_000, 1000);
    assertFalse(bench.out.heater);
    assertEquals(Reason.TRUST, bench.out.heaterReason);
  }

  @Test
  void workingSetPointStartsAnewWhenTheBroodIsKnownAgain() {
    Bench bench = new Bench(Bench.comb()).step(0).run(60_000, 1000);
    assertEquals(3100, bench.out.workingSetPointCentiC);
    bench.in.broodA.clear();
    bench.run(31_000, 1000);
    assertEquals(NONE, bench.out.workingSetPointCentiC);
    bench.in.broodA.put(2000);
    bench.run(61_000, 1000);
    assertEquals(2100, bench.out.workingSetPointCentiC);
  }
}
