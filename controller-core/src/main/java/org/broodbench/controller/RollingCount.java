package org.broodbench.controller;

/**
 * How many events lie in a rolling window, held as one remaining duration an event. The number of
 * places is fixed, so the layout of written state does not depend on settings. When every place is
 * taken the event that would leave first makes room.
 */
final class RollingCount implements Part {
  private final int windowMillis;
  private final int[] remainingMillis;

  /** Events in the window, and what the first of them to leave has left. */
  private int count;

  private int firstMillis;

  /** Time that passed and is not yet taken off the places; always less than the first has left. */
  private int passedMillis;

  RollingCount(int places, int windowMillis) {
    this.windowMillis = windowMillis;
    this.remainingMillis = new int[places];
  }

  /** Lets time pass; the places are looked at only when one runs out. */
  void step(int dtMillis) {
    if (count > 0) {
      passedMillis += dtMillis;
      if (passedMillis >= firstMillis) {
        settle();
      }
    }
  }

  /** Takes the time that passed off every place and looks at them anew. */
  private void settle() {
    count = 0;
    firstMillis = windowMillis;
    for (int i = 0; i < remainingMillis.length; i++) {
      int left = Span.down(remainingMillis[i], passedMillis);
      remainingMillis[i] = left;
      if (left > 0) {
        count++;
        firstMillis = left < firstMillis ? left : firstMillis;
      }
    }
    passedMillis = 0;
  }

  /** Adds an event now. */
  void add() {
    settle();
    int first = 0;
    for (int i = 1; i < remainingMillis.length; i++) {
      if (remainingMillis[i] < remainingMillis[first]) {
        first = i;
      }
    }
    remainingMillis[first] = windowMillis;
    settle();
  }

  /** Events in the window. */
  int count() {
    return count;
  }

  @Override
  public void reset() {
    for (int i = 0; i < remainingMillis.length; i++) {
      remainingMillis[i] = 0;
    }
    settle();
  }

  @Override
  public void save(Words out) {
    for (int i = 0; i < remainingMillis.length; i++) {
      out.put(Span.down(remainingMillis[i], passedMillis));
    }
  }

  @Override
  public void restore(Words in) {
    for (int i = 0; i < remainingMillis.length; i++) {
      remainingMillis[i] = in.take(0, windowMillis);
    }
    passedMillis = 0;
    settle();
  }
}
