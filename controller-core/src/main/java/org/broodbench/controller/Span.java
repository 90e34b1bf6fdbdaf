package org.broodbench.controller;

/** Arithmetic on durations that saturates instead of wrapping (rule T4). */
final class Span {
  private Span() {}

  /** What is left of {@code remainingMillis} after {@code dtMillis}; never below zero. */
  static int down(int remainingMillis, int dtMillis) {
    return remainingMillis > dtMillis ? remainingMillis - dtMillis : 0;
  }

  /**
   * {@code elapsedMillis + dtMillis}, at most {@code capMillis}. All three are at least zero, so
   * the subtraction cannot leave 32 bits.
   */
  static int up(int elapsedMillis, int dtMillis, int capMillis) {
    return elapsedMillis >= capMillis - dtMillis ? capMillis : elapsedMillis + dtMillis;
  }
}
