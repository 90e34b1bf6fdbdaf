package org.broodbench.controller;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Rules T2 to T7. */
@Tag("fast")
class TimeTest {
  @Test
  void wrapOfTheCounterIsNotSeen() {
    Bench plain = new Bench(Bench.comb()).step(0);
    Bench wraps = new Bench(Bench.comb());
    wraps.nowMillis = -150_000;
    wraps.step(0);
    Bench turns = new Bench(Bench.comb());
    turns.nowMillis = Integer.MAX_VALUE - 150_000;
    turns.step(0);
    for (int i = 0; i < 900; i++) {
      String expected = Show.commands(plain.step(1000).out);
      assertEquals(expected, Show.commands(wraps.step(1000).out));
      assertEquals(expected, Show.commands(turns.step(1000).out));
    }
    assertTrue(plain.out.heater);
  }

  @Test
  void timeThatRunsBackwardsCountsNothingAndRaisesAnAlarm() {
    Bench bench = new Bench(Bench.comb()).step(0).run(100_000, 1000).step(-1);
    assertEquals(200_000, bench.out.minOffRemainingMillis);
    assertTrue(bench.alarm(Alarm.TIME));
    bench.step(Integer.MIN_VALUE);
    assertEquals(200_000, bench.out.minOffRemainingMillis);
    bench.run(59_000, 1000);
    assertTrue(bench.alarm(Alarm.TIME));
    bench.run(2000, 1000);
    assertFalse(bench.alarm(Alarm.TIME));
    assertTrue(bench.latchedAlarm(Alarm.TIME));
  }

  @Test
  void aLongGapReleasesSixtySecondsAlone() {
    Bench bench = new Bench(Bench.comb()).step(0).step(250_000);
    assertEquals(240_000, bench.out.minOffRemainingMillis);
    assertFalse(bench.alarm(Alarm.TIME));
  }

  @Test
  void aLongGapCountsInFullTowardsATrip() {
    Bench bench = new Bench(Bench.comb()).step(0).run(120_000, 1000);
    bench.in.battery.put(11_900);
    bench.step(1000);
    assertEquals(ShedLevel.FULL, bench.out.shedLevel);
    bench.step(60_000);
    assertEquals(ShedLevel.HEAT_SHED, bench.out.shedLevel);
  }

  /** 25 days, and 50 and 100 which pass once or twice round the counter. */
  @ParameterizedTest
  @ValueSource(longs = {25, 50, 100})
  void longIdleNeitherHurtsNorReleases(long days) {
    Bench bench = new Bench(Bench.comb()).step(0).untilHeaterOn();
    bench.in.broodA.put(3400);
    bench.run(200_000, 1000);
    assertFalse(bench.out.heater);
    int left = bench.out.minOffRemainingMillis;
    bench.step((int) (days * 86_400_000L));
    assertTrue(bench.out.minOffRemainingMillis >= left - 60_000);
    bench.in.broodA.put(3000);
    bench.step(1000);
    assertFalse(bench.out.heater);
    bench.run(600_000, 1000);
    assertTrue(bench.out.heater);
  }

  @ParameterizedTest
  @ValueSource(ints = {100, 250, 1000, 7000, 30_000, 60_000})
  void anyTickStartsTheHeaterOnTime(int tickMillis) {
    Bench bench = new Bench(Bench.comb()).step(0);
    int elapsed = 0;
    while (!bench.out.heater && elapsed < 1_000_000) {
      bench.step(tickMillis);
      elapsed += tickMillis;
    }
    assertTrue(elapsed >= 300_000 && elapsed < 300_000 + tickMillis, "after " + elapsed);
  }
}
