package org.broodbench.controller;

/** Turns the wrapping counter into durations (rules T2, T3, T5). */
final class Ticker {
  /** The longest time that one step counts towards a release. */
  static final int RELEASE_MOST_MILLIS = 60000;

  private boolean started;
  private int lastMillis;
  private boolean backwards;
  private int tripMillis;
  private int releaseMillis;

  void step(int nowMillis) {
    // Wrapping subtraction; half the counter or more comes out negative.
    int difference = started ? nowMillis - lastMillis : 0;
    started = true;
    lastMillis = nowMillis;
    backwards = difference < 0;
    tripMillis = backwards ? 0 : difference;
    releaseMillis = tripMillis < RELEASE_MOST_MILLIS ? tripMillis : RELEASE_MOST_MILLIS;
  }

  /** The next step counts no time: after power-up and after a restore (rule T5). */
  void restart() {
    started = false;
  }

  boolean backwards() {
    return backwards;
  }

  /** Time since the last step, in full: for whatever takes away. */
  int tripMillis() {
    return tripMillis;
  }

  /** Time since the last step, at most 60 s: for whatever gives back. */
  int releaseMillis() {
    return releaseMillis;
  }
}
