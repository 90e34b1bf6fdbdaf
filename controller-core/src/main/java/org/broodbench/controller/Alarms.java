package org.broodbench.controller;

/** Raise delay, clear delay and a latched twin for each alarm (rules A1 to A4). */
final class Alarms implements Part {
  private static final int CLEAR_SOON_MILLIS = 60000;
  private static final int PROBE_RAISE_MILLIS = 120000;
  private static final int APART_RAISE_MILLIS = 600000;
  private static final int LONGEST_MILLIS = 172800000;

  private final int[] raiseMillis = new int[Alarm.COUNT];
  private final int[] clearMillis = new int[Alarm.COUNT];
  private final boolean[] active = new boolean[Alarm.COUNT];
  private final boolean[] latched = new boolean[Alarm.COUNT];
  private final Delay[] delay = new Delay[Alarm.COUNT];

  // Of this step only.
  private int tripMillis;
  private int releaseMillis;

  Alarms(int broodLowMillis) {
    for (int i = 0; i < Alarm.COUNT; i++) {
      clearMillis[i] = CLEAR_SOON_MILLIS;
      delay[i] = new Delay(LONGEST_MILLIS);
    }
    raiseMillis[Alarm.BROOD_PROBE] = PROBE_RAISE_MILLIS;
    raiseMillis[Alarm.PAN_PROBE] = PROBE_RAISE_MILLIS;
    raiseMillis[Alarm.OUTDOOR_PROBE] = PROBE_RAISE_MILLIS;
    raiseMillis[Alarm.FALLBACK] = PROBE_RAISE_MILLIS;
    raiseMillis[Alarm.PROBES_APART] = APART_RAISE_MILLIS;
    raiseMillis[Alarm.BROOD_LOW] = broodLowMillis;
    raiseMillis[Alarm.NO_SUPPLY] = CLEAR_SOON_MILLIS;
  }

  /** Time since the last step, for every {@link #step} that follows. */
  void pass(int newTripMillis, int newReleaseMillis) {
    tripMillis = newTripMillis;
    releaseMillis = newReleaseMillis;
  }

  /** One alarm's condition in this step. */
  void step(int alarm, boolean condition) {
    if (condition == active[alarm]) {
      delay[alarm].reset();
    } else if (delay[alarm].step(
        true,
        condition ? tripMillis : releaseMillis,
        condition ? raiseMillis[alarm] : clearMillis[alarm])) {
      active[alarm] = condition;
      latched[alarm] = latched[alarm] || condition;
      delay[alarm].reset();
    }
  }

  /** Clears the latched twin of every alarm that is not active. */
  void clearLatched() {
    for (int i = 0; i < Alarm.COUNT; i++) {
      latched[i] = active[i];
    }
  }

  int activeBits() {
    return bits(active);
  }

  int latchedBits() {
    return bits(latched);
  }

  private static int bits(boolean[] flags) {
    int bits = 0;
    for (int i = 0; i < flags.length; i++) {
      if (flags[i]) {
        bits |= 1 << i;
      }
    }
    return bits;
  }

  @Override
  public void reset() {
    for (int i = 0; i < Alarm.COUNT; i++) {
      active[i] = false;
      latched[i] = false;
      delay[i].reset();
    }
  }

  @Override
  public void save(Words out) {
    for (int i = 0; i < Alarm.COUNT; i++) {
      out.put(active[i]);
      out.put(latched[i]);
      delay[i].save(out);
    }
  }

  @Override
  public void restore(Words in) {
    for (int i = 0; i < Alarm.COUNT; i++) {
      active[i] = in.takeFlag();
      latched[i] = in.takeFlag();
      delay[i].restore(in);
    }
  }
}
