package org.broodbench.controller;

/**
 * At most so much on-time in any window (rule G1). On-time adds up; it is forgotten after an
 * unbroken pause of window minus allowance. Two groups of on-time are therefore always that pause
 * apart, and no window holds more than the allowance (plus the length of one late tick).
 */
final class DutyGate implements Part {
  private final int allowMillis;
  private final int pauseMillis;
  private int usedMillis;
  private int idleMillis;

  /** Allowance must be smaller than the window. */
  DutyGate(int allowMillis, int windowMillis) {
    this.allowMillis = allowMillis;
    this.pauseMillis = windowMillis - allowMillis;
  }

  /** Counts the interval that ends now, in which the output was {@code wasOn}. */
  void step(boolean wasOn, int tripMillis, int releaseMillis) {
    if (wasOn) {
      usedMillis = Span.up(usedMillis, tripMillis, allowMillis);
      idleMillis = 0;
    } else {
      idleMillis = Span.up(idleMillis, releaseMillis, pauseMillis);
      if (idleMillis >= pauseMillis) {
        usedMillis = 0;
      }
    }
  }

  /** Whether a run may go on. */
  boolean mayRun() {
    return usedMillis < allowMillis;
  }

  /** Whether a run of at least {@code needMillis} may start. */
  boolean mayStart(int needMillis) {
    return usedMillis == 0 || usedMillis <= allowMillis - needMillis;
  }

  @Override
  public void reset() {
    usedMillis = 0;
    idleMillis = 0;
  }

  @Override
  public void save(Words out) {
    out.put(usedMillis);
    out.put(idleMillis);
  }

  @Override
  public void restore(Words in) {
    usedMillis = in.takeMillis();
    idleMillis = in.takeMillis();
  }
}
