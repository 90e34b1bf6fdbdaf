package org.broodbench.sky;

/**
 * Where in its interval a value stands. With t0 the start of the interval and d its length, a mean
 * (or a sum) is that of (t0 + offset, t0 + offset + d] and an instant is t0 + offset.
 *
 * @param mean true for a mean or sum over the interval, false for a spot value
 * @param offsetS seconds from the start of the interval
 */
public record Stand(boolean mean, double offsetS) {
  /** Mean or sum over exactly the interval of the record. */
  public static final Stand MEAN = new Stand(true, 0);

  /** A spot value this many seconds after the start of the interval. */
  public static Stand instant(double offsetS) {
    return new Stand(false, offsetS);
  }

  /** The time that stands for the value, seconds after the start of an interval of this length. */
  public double centreS(double stepS) {
    return mean ? offsetS + 0.5 * stepS : offsetS;
  }
}
