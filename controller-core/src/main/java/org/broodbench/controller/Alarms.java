package org.broodbench.controller;

/** Raise delay, clear delay and a latched twin for each alarm (rules A1 to A4). */
final class Alarms implements Part {
  private static final int CLEAR_SOON_MILLIS = 60000;
  private static final int PROBE_RAISE_MILLIS = 120000;
  private static final int APART_RAISE_MILLIS = 600000;
  private static final int LONGEST_MILLIS = 172800000;

  private final int[] raiseMillis = new int[Alarm.COUNT];
  private final int[] clearMillis = new int[Alarm.COUNT];
  private final Delay[] delay = new Delay[Alarm.COUNT];

  // One bit an alarm.
  private int active;
  private int latched;

  /** Alarms whose delay may have begun; all others are at rest, so a quiet step costs nothing. */
  private int begun;

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

  /**
   * One step of all alarms.
   *
   * @param conditions the condition of every alarm in this step, one bit each
   */
  void step(int conditions, int tripMillis, int releaseMillis) {
    int differing = conditions ^ active;
    int left = differing | begun;
    begun = differing;
    while (left != 0) {
      int alarm = Integer.numberOfTrailingZeros(left);
      int bit = 1 << alarm;
      left ^= bit;
      if ((differing & bit) == 0) {
        delay[alarm].reset();
      } else if ((conditions & bit) != 0) {
        if (delay[alarm].step(true, tripMillis, raiseMillis[alarm])) {
          active |= bit;
          latched |= bit;
          delay[alarm].reset();
        }
      } else if (delay[alarm].step(true, releaseMillis, clearMillis[alarm])) {
        active ^= bit;
        delay[alarm].reset();
      }
    }
  }

  /** Clears the latched twin of every alarm that is not active. */
  void clearLatched() {
    latched = active;
  }

  int activeBits() {
    return active;
  }

  int latchedBits() {
    return latched;
  }

  @Override
  public void reset() {
    active = 0;
    latched = 0;
    begun = 0;
    for (int i = 0; i < Alarm.COUNT; i++) {
      delay[i].reset();
    }
  }

  @Override
  public void save(Words out) {
    for (int i = 0; i < Alarm.COUNT; i++) {
      out.put((active >> i & 1) != 0);
      out.put((latched >> i & 1) != 0);
      delay[i].save(out);
    }
  }

  @Override
  public void restore(Words in) {
    reset();
    for (int i = 0; i < Alarm.COUNT; i++) {
      active |= in.takeFlag() ? 1 << i : 0;
      latched |= in.takeFlag() ? 1 << i : 0;
      delay[i].restore(in);
      begun |= 1 << i;
    }
  }
}
