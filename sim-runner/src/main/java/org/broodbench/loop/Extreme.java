package org.broodbench.loop;

/** A lowest or highest value and when it was reached; not a number and −1 until a value came. */
public final class Extreme {
  private final boolean highest;
  private double value = Double.NaN;
  private double atS = -1;

  Extreme(boolean highest) {
    this.highest = highest;
  }

  /** Takes a value; true where it is the new extreme. */
  boolean take(double candidate, double timeS) {
    boolean better = highest ? candidate > value : candidate < value;
    if (better || Double.isNaN(value)) {
      value = candidate;
      atS = timeS;
      return true;
    }
    return false;
  }

  /** The value. */
  public double value() {
    return value;
  }

  /** When it was reached, s since the start of the run. */
  public double atS() {
    return atS;
  }
}
