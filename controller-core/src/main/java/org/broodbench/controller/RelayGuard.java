package org.broodbench.controller;

/**
 * The only part that drives a relay (rules R1 to R7): minimum on, minimum off, most starts an hour.
 *
 * <pre>
 *  OFF -> ON   permit and wish and minimum off over and starts left
 *  ON  -> OFF  no permit, or no wish and minimum on over
 * </pre>
 */
final class RelayGuard implements Part {
  /** Places for starts in the rolling hour; the most that may be set. */
  static final int START_PLACES = 12;

  private final int minOnMillis;
  private final int minOffMillis;
  private final int startsMost;

  private boolean on;
  private int minOnRemainingMillis;
  private int minOffRemainingMillis;
  private final RollingCount starts;

  /**
   * @param startsMost most starts in a rolling window; 0 for no bound
   */
  RelayGuard(int minOnMillis, int minOffMillis, int startsMost, int windowMillis) {
    this.minOnMillis = minOnMillis;
    this.minOffMillis = minOffMillis;
    this.startsMost = startsMost;
    this.starts = new RollingCount(startsMost > 0 ? START_PLACES : 0, windowMillis);
  }

  /** Lets time pass; call once a step before {@link #drive}. */
  void pass(int releaseMillis) {
    minOnRemainingMillis = Span.down(minOnRemainingMillis, releaseMillis);
    minOffRemainingMillis = Span.down(minOffRemainingMillis, releaseMillis);
    starts.step(releaseMillis);
  }

  /** Drives the relay and answers whether it is closed. */
  boolean drive(boolean permit, boolean wish) {
    if (on) {
      if (!permit || (!wish && minOnRemainingMillis == 0)) {
        open();
      }
    } else if (permit && wish && minOffRemainingMillis == 0 && startsLeft()) {
      on = true;
      minOnRemainingMillis = minOnMillis;
      if (startsMost > 0) {
        starts.add();
      }
    }
    return on;
  }

  /** Opens the relay and starts minimum off anew. */
  void open() {
    on = false;
    minOnRemainingMillis = 0;
    minOffRemainingMillis = minOffMillis;
  }

  boolean startsLeft() {
    return startsMost == 0 || starts.count() < startsMost;
  }

  boolean on() {
    return on;
  }

  int minOnRemainingMillis() {
    return minOnRemainingMillis;
  }

  int minOffRemainingMillis() {
    return minOffRemainingMillis;
  }

  /** Minimum off starts anew at power-up (rule R6). */
  @Override
  public void reset() {
    open();
    starts.reset();
  }

  @Override
  public void save(Words out) {
    out.put(on);
    out.put(minOnRemainingMillis);
    out.put(minOffRemainingMillis);
    starts.save(out);
  }

  @Override
  public void restore(Words in) {
    on = in.takeFlag();
    minOnRemainingMillis = in.takeMillis();
    minOffRemainingMillis = in.takeMillis();
    starts.restore(in);
  }
}
