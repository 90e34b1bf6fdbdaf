package org.broodbench.controller;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Bits that stand for many alarms or probes are written out and read back one by one. */
@Tag("fast")
class SavedBitsTest {
  private static final int WORDS = 400;

  private static void carry(Part from, Part to) {
    int[] words = new int[WORDS];
    Words out = new Words();
    out.open(words, 0);
    from.save(out);
    Words in = new Words();
    in.open(words, 0);
    to.restore(in);
    assertFalse(in.bad());
  }

  private static Alarms alarms(int conditions) {
    Alarms alarms = new Alarms(1000);
    alarms.reset();
    alarms.step(conditions, 0, 0);
    alarms.step(conditions, 1_000_000, 0);
    return alarms;
  }

  @Test
  void alarmsComeBackAsTheyWereWhateverStoodThere() {
    int first = 1 << 1 | 1 << 5 | 1 << Alarm.COUNT - 1;
    Alarms alarms = alarms(first);
    assertEquals(first, alarms.activeBits());
    // one of them clears and leaves its latched twin
    alarms.step(first ^ 1 << 5, 0, 1_000_000);
    alarms.step(first ^ 1 << 5, 0, 1_000_000);
    assertEquals(first ^ 1 << 5, alarms.activeBits());
    assertEquals(first, alarms.latchedBits());
    Alarms other = alarms((1 << Alarm.COUNT) - 1);
    carry(alarms, other);
    assertEquals(alarms.activeBits(), other.activeBits());
    assertEquals(alarms.latchedBits(), other.latchedBits());
  }

  /** A delay that had begun is forgotten where its condition is gone after the return. */
  @Test
  void delaysThatHadBegunAreResetAfterTheReturn() {
    for (int alarm : new int[] {Alarm.BROOD_PROBE, Alarm.PAN_PROBE, Alarm.PROBES_APART}) {
      int bit = 1 << alarm;
      Alarms before = new Alarms(1000);
      before.reset();
      before.step(bit, 0, 0);
      before.step(bit, 119_999, 0);
      Alarms after = new Alarms(1000);
      after.reset();
      carry(before, after);
      after.step(0, 1, 1);
      after.step(bit, 1, 0);
      after.step(bit, 100_000, 0);
      assertEquals(0, after.activeBits(), "alarm " + alarm);
    }
  }

  private static SampleJudge[] judges() {
    SampleJudge[] judges = new SampleJudge[3];
    for (int i = 0; i < judges.length; i++) {
      judges[i] =
          SampleJudge.temperature(
              Bench.comb()
                  .with(Setting.TRUST_GAIN_MILLIS, 0)
                  .with(Setting.TRUST_HOLD_MILLIS, 0)
                  .with(Setting.TRUST_STEP_CENTI_K, 0));
    }
    return judges;
  }

  private static void show(SampleJudge[] judges, StuckWatch watch, int ms, int... values) {
    for (int i = 0; i < judges.length; i++) {
      SmallModels.show(judges[i], values[i]);
    }
    watch.step(ms);
  }

  /** The last probe is stuck, or on its way there, or not at all: each comes back as it was. */
  @Test
  void aStuckProbeComesBackAsItWas() {
    SampleJudge[] judges = judges();
    StuckWatch stuck = new StuckWatch(judges, 60_000, 500);
    stuck.reset();
    show(judges, stuck, 0, 2000, 2100, 2200);
    show(judges, stuck, 30_000, 2001, 2101, 2200);
    show(judges, stuck, 30_000, 2000, 2600, 2200);
    assertTrue(stuck.any());

    SampleJudge[] free = judges();
    StuckWatch none = new StuckWatch(free, 60_000, 500);
    none.reset();
    show(free, none, 0, 2000, 2100, 2200);

    StuckWatch copy = new StuckWatch(free, 60_000, 500);
    copy.reset();
    carry(stuck, copy);
    assertTrue(copy.any());
    carry(none, copy);
    assertFalse(copy.any());
  }

  @Test
  void thatAnotherProbeMovedIsNotForgotten() {
    for (boolean moves : new boolean[] {true, false}) {
      SampleJudge[] judges = judges();
      StuckWatch watch = new StuckWatch(judges, 60_000, 500);
      watch.reset();
      show(judges, watch, 0, 2000, 2100, 2200);
      // the second probe goes away and comes back before the time is over
      show(judges, watch, 10_000, 2000, moves ? 2700 : 2102, 2200);
      StuckWatch copy = new StuckWatch(judges, 60_000, 500);
      copy.reset();
      carry(watch, copy);
      show(judges, copy, 10_000, 2001, 2103, 2200);
      show(judges, copy, 50_000, 2002, 2104, 2200);
      assertEquals(moves, copy.any(), "moved " + moves);
    }
  }
}
