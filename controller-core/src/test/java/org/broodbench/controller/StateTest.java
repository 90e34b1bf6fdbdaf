package org.broodbench.controller;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Rules N1 to N5, R7: state written out, refused and restored. */
@Tag("fast")
class StateTest {
  private static int[] words(Controller controller) {
    int[] words = new int[controller.stateWords()];
    controller.save(words);
    return words;
  }

  /** A controller that has seen a little of everything. */
  private static Controller busy(long seed) {
    return busy(seed, 1);
  }

  private static Controller busy(long seed, int rig) {
    Controller controller = new Controller(Rigs.of(rig));
    RandomReadings random = new RandomReadings(new Random(seed));
    Commands out = new Commands();
    int now = 0;
    for (int i = 0; i < 3000; i++) {
      now += random.next(out);
      controller.step(now, random.readings(), out);
    }
    return controller;
  }

  @Test
  void everyWordSurvives() {
    for (long seed = 1; seed < 9; seed++) {
      int[] words = words(busy(seed));
      Controller other = new Controller(Rigs.of(1));
      assertTrue(other.restore(words));
      assertArrayEquals(words, words(other));
    }
  }

  @Test
  void layoutDoesNotDependOnSettings() {
    int count = new Controller(Rigs.of(0)).stateWords();
    for (int rig = 1; rig < Rigs.COUNT; rig++) {
      assertEquals(count, new Controller(Rigs.of(rig)).stateWords());
    }
  }

  @Test
  void anyDamagedWordIsRefusedAndLeavesPowerUpState() {
    int[] powerUp = words(new Controller(Rigs.of(1)));
    int[] words = words(busy(3, 1));
    Controller other = new Controller(Rigs.of(1));
    for (int i = 0; i < words.length; i++) {
      int[] damaged = words.clone();
      damaged[i] ^= i % 2 == 0 ? 1 : 0x4000_0000;
      assertTrue(other.restore(words));
      assertFalse(other.restore(damaged), "word " + i);
      assertArrayEquals(powerUp, words(other));
    }
  }

  @Test
  void refusalClearsEveryPart() {
    for (int seed = 1; seed < 25; seed++) {
      int rig = seed % 4;
      int[] powerUp = words(new Controller(Rigs.of(rig)));
      Controller controller = busy(seed, rig);
      assertFalse(controller.restore(new int[0]));
      assertArrayEquals(powerUp, words(controller), "seed " + seed);
    }
  }

  @Test
  void aStateSavedUnderALongerPeriodStartsTheShorterOne() {
    Settings settings = Bench.combFull().with(Setting.PURGE_TIMED_EVERY_MILLIS, 40_000_000);
    Bench bench = new Bench(settings).step(0).run(1_000_000, 1000);
    int[] words = words(bench.controller);
    Bench other = new Bench(settings.with(Setting.PURGE_TIMED_EVERY_MILLIS, 1_000_000));
    other.in.broodA.put(3350);
    other.in.broodB.put(3350);
    other.in.outdoor.put(1500);
    assertTrue(other.controller.restore(words));
    other.step(0).run(200_000, 1000);
    int on = 0;
    for (int s = 0; s < 1000; s++) {
      other.step(1000);
      on += other.out.fan ? 1 : 0;
    }
    assertEquals(60, on);
  }

  @Test
  void missingAndShortWordsAreRefused() {
    Controller controller = new Controller(Rigs.of(1));
    assertFalse(controller.restore(null));
    assertFalse(controller.restore(new int[0]));
    assertFalse(controller.restore(new int[controller.stateWords() - 1]));
    int[] longer = new int[controller.stateWords() + 5];
    controller.save(longer);
    assertTrue(controller.restore(longer));
    assertThrows(
        IllegalArgumentException.class,
        () -> controller.save(new int[controller.stateWords() - 1]));
  }

  /** The same checksum as the core's, over words whose content was changed. */
  private static int[] sealed(int[] words) {
    int sum = 0x5A17;
    for (int i = 0; i < words.length - 1; i++) {
      sum = ((sum << 5) | (sum >>> 27)) + words[i];
    }
    words[words.length - 1] = sum;
    return words;
  }

  @Test
  void otherVersionOrCountIsRefusedThoughTheChecksumFits() {
    int[] words = words(busy(5));
    assertTrue(new Controller(Rigs.of(1)).restore(sealed(words.clone())));
    for (int at = 0; at < 2; at++) {
      int[] other = words.clone();
      other[at]++;
      assertFalse(new Controller(Rigs.of(1)).restore(sealed(other)));
    }
  }

  /**
   * Words out of their range are refused one by one though the checksum fits: every word is either
   * free (any number means something) or refuses both an absurd low and an absurd high.
   */
  @Test
  void wordsOutOfRangeAreRefused() {
    int[] words = words(busy(6));
    int refusedLow = 0;
    int refusedHigh = 0;
    for (int i = 2; i < words.length - 1; i++) {
      int[] low = words.clone();
      low[i] = -2_000_000_000;
      refusedLow += new Controller(Rigs.of(1)).restore(sealed(low)) ? 0 : 1;
      int[] high = words.clone();
      high[i] = 2_000_000_000;
      refusedHigh += new Controller(Rigs.of(1)).restore(sealed(high)) ? 0 : 1;
    }
    int inner = words.length - 3;
    assertTrue(refusedLow > inner * 7 / 10, refusedLow + " of " + inner);
    assertTrue(refusedHigh > inner * 5 / 10, refusedHigh + " of " + inner);
  }

  @Test
  void restoredStateCountsNoTimeInItsFirstStep() {
    Bench bench = new Bench(Bench.comb()).step(0).run(200_000, 1000);
    int left = bench.out.minOffRemainingMillis;
    assertEquals(100_000, left);
    int[] words = words(bench.controller);
    Bench other = new Bench(Bench.comb());
    other.nowMillis = 2_000_000_000;
    assertTrue(other.controller.restore(words));
    other.step(0);
    assertEquals(left, other.out.minOffRemainingMillis);
    other.step(1000);
    assertEquals(left - 1000, other.out.minOffRemainingMillis);
  }

  @Test
  void restoreIntoAUsedControllerCountsNoTimeEither() {
    Bench bench = new Bench(Bench.comb()).step(0).run(100_000, 1000);
    int[] words = words(bench.controller);
    bench.run(50_000, 1000);
    assertTrue(bench.controller.restore(words));
    bench.step(60_000);
    assertEquals(200_000, bench.out.minOffRemainingMillis);
  }

  @Test
  void runGoesOnAfterARestoreButNotAfterALossOfPower() {
    Bench bench = new Bench(Bench.comb()).step(0).untilHeaterOn();
    int[] words = words(bench.controller);
    Bench same = new Bench(Bench.comb());
    assertTrue(same.controller.restore(words));
    same.step(0);
    assertTrue(same.out.heater);
    Bench dark = new Bench(Bench.comb());
    assertTrue(dark.controller.restore(words));
    dark.controller.powerWasLost();
    dark.step(0);
    assertFalse(dark.out.heater);
    assertEquals(Reason.NONE, dark.out.heaterStopReason, "no permit was lost");
    assertEquals(300_000, dark.out.minOffRemainingMillis);
    dark.run(299_000, 1000);
    assertFalse(dark.out.heater);
    dark.step(1000);
    assertTrue(dark.out.heater);
  }

  @Test
  void lossOfPowerOpensFanAndSupplyToo() {
    Settings settings =
        Bench.combFull()
            .with(Setting.FITTED_SUPPLY_SELECT, true)
            .with(Setting.FITTED_OUTDOOR, true);
    Bench bench = new Bench(settings);
    bench.in.broodA.put(3750);
    bench.in.broodB.put(3750);
    bench.step(0).run(300_000, 1000);
    assertTrue(bench.out.fan);
    bench.controller.powerWasLost();
    bench.step(100);
    assertFalse(bench.out.fan);
    assertEquals(Commands.SUPPLY_NONE, bench.out.supply);
  }

  @Test
  void savingChangesNothing() {
    Controller controller = busy(8);
    int[] one = words(controller);
    assertArrayEquals(one, words(controller));
    assertNotEquals(0, one[one.length - 1]);
  }
}
