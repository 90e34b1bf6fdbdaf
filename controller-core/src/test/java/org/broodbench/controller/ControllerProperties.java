package org.broodbench.controller;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.RandomDistribution;
import net.jqwik.api.Tag;

/** C1 to C10 over random histories that reach thresholds, codes, gaps, wraps and restores. */
class ControllerProperties {
  @Provide
  Arbitrary<Trace> traces() {
    return Trace.traces(25);
  }

  /** C1 to C6, C8, C9 and C10: no reading throws, and the watched rules hold in every step. */
  @Property(tries = 300)
  void whatAlwaysHolds(@ForAll("traces") Trace trace) {
    Player player = new Player(trace);
    player.play(new Invariants(player.settings()));
  }

  /** So many traces that over 200 tries 20,000 are played, or the share of them. */
  @Provide
  Arbitrary<List<Trace>> manyTraces() {
    int mean = (int) Campaign.share(100);
    return Trace.traces(25)
        .list()
        .ofMinSize(1)
        .ofMaxSize(2 * mean - 1)
        .withSizeDistribution(RandomDistribution.uniform());
  }

  @Tag("campaign")
  @Property(tries = 200, edgeCases = EdgeCasesMode.NONE)
  void whatAlwaysHoldsCampaign(@ForAll("manyTraces") List<Trace> traces) {
    traces.forEach(this::whatAlwaysHolds);
  }

  /** C7: words written out and restored have the future of the one that wrote them. */
  @Property(tries = 100)
  void restoredStateHasTheSameFuture(
      @ForAll("traces") Trace before, @ForAll("traces") Trace after) {
    Player first = new Player(before);
    first.play((trueMillis, counted, in, out) -> {});
    int[] words = new int[first.controller.stateWords()];
    first.controller.save(words);
    // Counters differ between the twins; the one event that aims at a counter is left out.
    List<Trace.Segment> segments =
        after.segments().stream()
            .filter(s -> s.channel() != Trace.Channel.TIME || s.value() != Trace.NEAR_WRAP)
            .toList();
    Player again = new Player(new Trace(before.rig(), 77, segments));
    Player twin = new Player(new Trace(before.rig(), 999_999_999, segments));
    assertTrue(again.controller.restore(words));
    assertTrue(twin.controller.restore(words));
    StringBuilder one = new StringBuilder();
    StringBuilder two = new StringBuilder();
    again.play((trueMillis, counted, in, out) -> one.append(Show.commands(out)).append('\n'));
    twin.play((trueMillis, counted, in, out) -> two.append(Show.commands(out)).append('\n'));
    assertEquals(one.toString(), two.toString());
    int[] wordsOne = new int[words.length];
    int[] wordsTwo = new int[words.length];
    again.controller.save(wordsOne);
    twin.controller.save(wordsTwo);
    org.junit.jupiter.api.Assertions.assertArrayEquals(wordsOne, wordsTwo);
  }

  /** C7, N3: the saved controller itself, its next step counting no time, goes the same way. */
  @Property(tries = 60)
  void savedControllerAndRestoredOneGoTheSameWay(@ForAll("traces") Trace before) {
    Player player = new Player(before);
    player.play((trueMillis, counted, in, out) -> {});
    int[] words = new int[player.controller.stateWords()];
    player.controller.save(words);
    Controller restored = new Controller(player.settings());
    assertTrue(restored.restore(words));
    Commands one = new Commands();
    Commands two = new Commands();
    Readings in = player.readings();
    int now = 5_000_000;
    Player.Watcher none = (trueMillis, counted, readings, out) -> {};
    one = player.step(0, true, none);
    restored.step(now, in, two);
    assertEquals(Show.commands(one), Show.commands(two));
    for (int i = 0; i < 50; i++) {
      one = player.step(20_000, true, none);
      now += 20_000;
      restored.step(now, in, two);
      assertEquals(Show.commands(one), Show.commands(two));
    }
  }

  /**
   * C9: whatever happened before, a day of calm and a long press leave no trace, and a cold brood
   * is heated.
   */
  @Property(tries = 60)
  void calmAndColdIsHeatedWhateverWentBefore(@ForAll("traces") Trace trace) {
    Player player = new Player(trace);
    Invariants invariants = new Invariants(player.settings());
    player.play(invariants);
    player.release();
    Readings in = player.readings();
    boolean battery = player.settings().is(Setting.FITTED_BATTERY);
    boolean on = false;
    int target = player.settings().get(Setting.HEAT_SET_POINT_CENTI_C);
    int heated = 0;
    for (int minute = 0; minute < 32 * 60; minute++) {
      Bench.calm(in);
      in.batteryCurrent.put(500);
      in.panelPower.put(9000);
      in.battery.put(12_900);
      in.shorePresent = !battery;
      int dither = minute % 3;
      in.broodA.put(1950 + dither);
      in.broodB.put(1950 + dither);
      in.pan.put((on ? 2900 : 2000) + dither);
      in.outdoor.put(1200 + dither);
      in.top.put(2000 + dither);
      in.heaterCurrent.put(on ? 5000 : 0);
      // A long press needs two samples down; ticks of 20 s make one.
      boolean pressing = minute == 600;
      in.button = pressing;
      Commands out = player.step(20_000, true, invariants);
      out = player.step(20_000, true, invariants);
      in.button = false;
      out = player.step(20_000, true, invariants);
      on = out.heater;
      if (minute > 1800) {
        assertEquals(0, out.alarms & ~(1 << Alarm.BROOD_LOW), () -> "alarms");
        assertEquals(ShedLevel.FULL, out.shedLevel);
        assertTrue(on || out.minOffRemainingMillis > 0, "off: " + Reason.name(out.heaterReason));
        assertEquals(target, out.workingSetPointCentiC);
        heated++;
      }
    }
    assertTrue(heated > 100);
  }

  /** The watcher is not asleep: over all rigs heat starts and sheds are seen. */
  @net.jqwik.api.Example
  void generatorsReachStartsAndSheds() {
    int starts = 0;
    int sheds = 0;
    int live = 0;
    List<Trace> sample = new java.util.ArrayList<>();
    Trace.traces(25).generator(1000, true).stream(new java.util.Random(7))
        .limit(200)
        .forEach(shrinkable -> sample.add(shrinkable.value()));
    for (Trace trace : sample) {
      Player player = new Player(trace);
      Invariants invariants = new Invariants(player.settings());
      player.play(invariants);
      starts += invariants.startsSeen;
      sheds += invariants.shedsSeen;
      live += invariants.livenessSeen;
    }
    System.out.println(
        "200 traces: " + starts + " heater starts, " + sheds + " sheds, " + live + " steps of C9");
    assertTrue(live > 500, "steps of C9 " + live);
    assertTrue(starts > 100, "starts " + starts);
    assertTrue(sheds > 20, "sheds " + sheds);
  }

  /** The bound that the defaults give by arithmetic. */
  @net.jqwik.api.Example
  void defaultsAllowAtMostEightShedsInADay() {
    assertEquals(8, Invariants.shedBound(Bench.comb()));
  }
}
