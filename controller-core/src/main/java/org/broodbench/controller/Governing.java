package org.broodbench.controller;

/**
 * Which temperature counts (rules W1 to W4). Two trusted probes of like place: the lower calls for
 * heat, the higher stops it; further apart than stated, the warmer one does both. One: that one.
 */
final class Governing {
  /** No trusted brood probe. */
  static final int NONE = 0;

  /** Probe A alone. */
  static final int A = 1;

  /** Probe B alone. */
  static final int B = 2;

  /** Both, agreeing. */
  static final int PAIR = 3;

  /** Both, further apart than stated. */
  static final int APART = 4;

  private final boolean alike;
  private final int pairCentiK;
  private int mode;
  private int callCentiC;
  private int stopCentiC;

  Governing(boolean alike, int pairCentiK) {
    this.alike = alike;
    this.pairCentiK = pairCentiK;
  }

  void step(SampleJudge a, SampleJudge b) {
    boolean aTrusted = a.trusted();
    boolean bTrusted = b.trusted() && alike;
    if (aTrusted && bTrusted) {
      int low = a.value() < b.value() ? a.value() : b.value();
      int high = a.value() < b.value() ? b.value() : a.value();
      mode = high - low > pairCentiK ? APART : PAIR;
      callCentiC = mode == APART ? high : low;
      stopCentiC = high;
    } else if (aTrusted) {
      one(A, a.value());
    } else if (bTrusted) {
      one(B, b.value());
    } else {
      one(NONE, 0);
    }
  }

  private void one(int newMode, int centiC) {
    mode = newMode;
    callCentiC = centiC;
    stopCentiC = centiC;
  }

  /** One of the constants above. */
  int mode() {
    return mode;
  }

  boolean known() {
    return mode != NONE;
  }

  /** The temperature that calls for heat. */
  int callCentiC() {
    return callCentiC;
  }

  /** The temperature that stops heat and drives the fan. */
  int stopCentiC() {
    return stopCentiC;
  }
}
