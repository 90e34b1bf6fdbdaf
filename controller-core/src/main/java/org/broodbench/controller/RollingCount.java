package org.broodbench.controller;

/**
 * How many events lie in a rolling window, held as one remaining duration an event. The number of
 * places is fixed, so the layout of written state does not depend on settings. When every place is
 * taken the event that would leave first makes room.
 */
final class RollingCount implements Part {
  private final int windowMillis;
  private final int[] remainingMillis;

  RollingCount(int places, int windowMillis) {
    this.windowMillis = windowMillis;
    this.remainingMillis = new int[places];
  }

  /** Lets time pass. */
  void step(int dtMillis) {
    for (int i = 0; i < remainingMillis.length; i++) {
      remainingMillis[i] = Span.down(remainingMillis[i], dtMillis);
    }
  }

  /** Adds an event now. */
  void add() {
    int first = 0;
    for (int i = 1; i < remainingMillis.length; i++) {
      if (remainingMillis[i] < remainingMillis[first]) {
        first = i;
      }
    }
    remainingMillis[first] = windowMillis;
  }

  /** Events in the window. */
  int count() {
    int count = 0;
    for (int i = 0; i < remainingMillis.length; i++) {
      if (remainingMillis[i] > 0) {
        count++;
      }
    }
    return count;
  }

  @Override
  public void reset() {
    for (int i = 0; i < remainingMillis.length; i++) {
      remainingMillis[i] = 0;
    }
  }

  @Override
  public void save(Words out) {
    for (int i = 0; i < remainingMillis.length; i++) {
      out.put(remainingMillis[i]);
    }
  }

  @Override
  public void restore(Words in) {
    for (int i = 0; i < remainingMillis.length; i++) {
      remainingMillis[i] = in.take(0, windowMillis);
    }
  }
}
