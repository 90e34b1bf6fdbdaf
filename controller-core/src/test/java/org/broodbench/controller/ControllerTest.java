package org.broodbench.controller;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("fast")
class ControllerTest {
  @Test
  void firstStartComesWhenMinimumOffIsOver() {
    Bench bench = new Bench(Bench.comb()).step(0);
    assertFalse(bench.out.heater);
    bench.run(299_000, 1000);
    assertFalse(bench.out.heater);
    assertEquals(Reason.MIN_OFF, bench.out.heaterReason);
    assertEquals(1000, bench.out.minOffRemainingMillis);
    bench.step(1000);
    assertTrue(bench.out.heater);
    assertEquals(Reason.NONE, bench.out.heaterReason);
  }

  @Test
  void workingSetPointStartsAtReadingPlusDifferentialAndRampsTwoKelvinAnHour() {
    Bench bench = new Bench(Bench.comb());
    bench.in.broodA.put(2500);
    bench.step(0).run(60_000, 1000);
    assertEquals(2600, bench.out.workingSetPointCentiC);
    bench.untilHeaterOn();
    int at = bench.out.workingSetPointCentiC;
    bench.run(3_600_000, 1000);
    assertEquals(at + 200, bench.out.workingSetPointCentiC);
  }

  @Test
  void minimumOnHoldsARunThatIsNoLongerWanted() {
    Bench bench = new Bench(Bench.comb()).step(0).untilHeaterOn();
    bench.in.broodA.put(3150);
    bench.step(1000);
    assertTrue(bench.out.heater);
    assertEquals(Reason.MIN_ON, bench.out.heaterReason);
    bench.run(178_000, 1000);
    assertTrue(bench.out.heater);
    bench.step(1000);
    assertFalse(bench.out.heater);
    assertEquals(Reason.NONE, bench.out.heaterStopReason);
    assertEquals(300_000, bench.out.minOffRemainingMillis);
  }

  @Test
  void panLimitEndsARunAtOnceAndNeverLatches() {
    Bench bench = new Bench(Bench.comb()).step(0).untilHeaterOn();
    bench.in.pan.put(3800);
    bench.step(1000);
    assertFalse(bench.out.heater);
    assertEquals(Reason.PAN_LIMIT, bench.out.heaterReason);
    assertEquals(Reason.PAN_LIMIT, bench.out.heaterStopReason);
    assertEquals(0, bench.out.alarms);
  }

  @Test
  void lowVoltsShedHeatAfterTheEnterDelay() {
    Bench bench = new Bench(Bench.comb()).step(0).untilHeaterOn();
    // 5.1 A through 30 mOhm: corrected volts are 153 mV above the reading.
    bench.in.battery.put(12050 - 153);
    bench.run(60_000, 1000);
    assertTrue(bench.out.heater);
    bench.step(1000);
    assertFalse(bench.out.heater);
    assertEquals(ShedLevel.HEAT_SHED, bench.out.shedLevel);
    assertEquals(Reason.SHED, bench.out.heaterReason);
    assertEquals(1, bench.out.sheds);
  }

  @Test
  void heaterGoesBeforeTheFanCools() {
    Settings settings = Bench.comb().with(Setting.FITTED_OUTDOOR, true);
    Bench bench = new Bench(settings).step(0).untilHeaterOn();
    bench.in.outdoor.put(1000);
    bench.run(60_000, 1000);
    bench.in.broodA.put(3600);
    bench.run(180_000, 1000);
    bench.in.broodA.put(3700);
    bench.run(120_000, 1000);
    assertTrue(bench.out.fan);
    assertFalse(bench.out.heater);
    assertEquals(Reason.COOLING, bench.out.fanReason);
  }
}
