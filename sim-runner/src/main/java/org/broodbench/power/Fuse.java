package org.broodbench.power;

/**
 * A blade or bolt fuse: its wire collects (I/rating)⁴ − 1.1⁴ over time, never less than nothing,
 * and melts at 40 s. It carries 110 % for ever and melts after 21 s at 135 %, 2.8 s at 200 % and
 * 0.3 s at 350 %; ISO 8820-3 allows 0.75 to 600 s, 0.15 to 5 s and 0.08 to 0.5 s there (from
 * memory). Only a new fuse closes the circuit.
 */
final class Fuse {
  private static final double MELTS_S = 40;
  private static final double CARRIES = 1.1 * 1.1 * 1.1 * 1.1;

  private final double ratingA;
  private final CutOut cutOut;
  private double heatS;
  private double aboveShare;

  /** A fuse of a rating, A; 0 for none, which never melts. */
  Fuse(String name, double ratingA) {
    this.ratingA = ratingA;
    cutOut = new CutOut(name, "the fuse has blown: more current than it carries", false, 0, 0);
  }

  boolean fitted() {
    return ratingA > 0;
  }

  void judge(double currentA) {
    double x = ratingA > 0 ? currentA / ratingA : 0;
    aboveShare = x * x * x * x - CARRIES;
    cutOut.judge(false, false);
  }

  void accept(double seconds) {
    heatS += aboveShare * seconds;
    heatS = heatS > 0 ? heatS : 0;
    if (heatS >= MELTS_S) {
      cutOut.force();
    }
    cutOut.accept(seconds);
  }

  /** Blows by a cause of its own, or is replaced by a new one. */
  void set(boolean blown) {
    heatS = 0;
    cutOut.set(blown);
  }

  CutOut cutOut() {
    return cutOut;
  }
}
