package org.broodbench.serve;

/**
 * Holds requests to a rate: so many at once, refilled by so many a second. Looks at a clock: what
 * it decides is no result.
 */
final class Pacer {
  private final double perSecond;
  private final double most;
  private double left;
  private long lastNanos = System.nanoTime();

  Pacer(double perSecond, double most) {
    this.perSecond = perSecond;
    this.most = most;
    left = most;
  }

  /** Whether one more may be answered now. */
  synchronized boolean admits() {
    long now = System.nanoTime();
    left = Math.min(most, left + (now - lastNanos) * 1e-9 * perSecond);
    lastNanos = now;
    if (left < 1) {
      return false;
    }
    left--;
    return true;
  }
}
