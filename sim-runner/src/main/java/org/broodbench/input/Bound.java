package org.broodbench.input;

/**
 * One end of the range of a key.
 *
 * @param base in the base unit, or the bare number
 * @param text as people write it
 * @param open whether the bound itself is refused
 */
public record Bound(double base, String text, boolean open) {
  /** Room for the rounding of a unit conversion; far below any digit that people write. */
  private static final double ROUNDING = 1e-9;

  private double slack() {
    return ROUNDING * Math.abs(base);
  }

  boolean refusesBelow(double value) {
    return open ? value <= base : value < base - slack();
  }

  boolean refusesAbove(double value) {
    return open ? value >= base : value > base + slack();
  }
}
