package org.broodbench.card;

/**
 * Lowest and highest of something; both not a number where it never was.
 *
 * @param low lowest
 * @param high highest
 */
public record Range(double low, double high) {
  /** Of nothing yet. */
  public static final Range NONE = new Range(Double.NaN, Double.NaN);

  /** The same widened to hold a value. */
  public Range with(double value) {
    if (Double.isNaN(value)) {
      return this;
    }
    return new Range(low <= value ? low : value, high >= value ? high : value);
  }

  /** The same widened to hold another. */
  public Range with(Range other) {
    return with(other.low).with(other.high);
  }

  /** Whether it holds nothing. */
  public boolean none() {
    return Double.isNaN(low);
  }
}
