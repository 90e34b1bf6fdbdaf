package org.broodbench.matter;

/**
 * Functions for the simulation step that use +, −, ×, ÷ and √ alone, so that every machine computes
 * the same bits. They are compared with {@link StrictMath} in the tests.
 */
public final class Portable {
  /** 1.5 times two to the 52nd: a double this large has no fraction. */
  private static final double NO_FRACTION = 6755399441055744.0;

  private static final double WHOLE_FROM = 1L << 51;

  private Portable() {}

  /**
   * The nearest whole number, half to even, as {@link Math#rint} gives it; but 0 is never negative.
   * Two additions, where the first compiler of the virtual machine makes a call of the other.
   */
  public static double rint(double x) {
    return x > -WHOLE_FROM && x < WHOLE_FROM ? (x + NO_FRACTION) - NO_FRACTION : Math.rint(x);
  }

  private static final double LOG2_E = 1.4426950408889634;

  /** ln 2 in two parts; the first has so few digits that whole multiples of it are exact. */
  private static final double LN2_HIGH = 0.693147180369123816490;

  private static final double LN2_LOW = 1.90821492927058770002e-10;

  /** Adding and taking away 1.5 times 2 to the 52 rounds to a whole number, ties to even. */
  private static final double ROUNDER = 6755399441055744.0;

  /**
   * e to the x as 2ᵏ eʳ with |r| ≤ ln2/2 and the Taylor polynomial of degree 10 for eʳ. Relative
   * error below 1e-12; x is held at ±40 (e⁻⁴⁰ is 4e-18: nothing in the model can tell it from 0).
   */
  public static double exp(double x) {
    double held = x > 40 ? 40 : x < -40 ? -40 : x;
    double k = held * LOG2_E + ROUNDER - ROUNDER;
    double r = held - k * LN2_HIGH - k * LN2_LOW;
    double r2 = r * r;
    double r4 = r2 * r2;
    double low = 1 + r + r2 * (0.5 + r * (1.0 / 6));
    double middle = 1.0 / 24 + r * (1.0 / 120) + r2 * (1.0 / 720 + r * (1.0 / 5040));
    double high = 1.0 / 40_320 + r * (1.0 / 362_880) + r2 * (1.0 / 3_628_800);
    double power = Double.longBitsToDouble((long) ((int) k + 1023) << 52);
    return power * (low + r4 * (middle + r4 * high));
  }

  /** The logistic function 1/(1+e⁻ˣ). */
  public static double logistic(double x) {
    return 1 / (1 + exp(-x));
  }

  /**
   * A square root that keeps the sign and has a finite slope at 0: x/(x²+δ²)^¼. For |x| ≥ 100 δ it
   * differs from the true root by less than 3e-5 of its value.
   */
  public static double signedRoot(double x, double delta) {
    return x / Math.sqrt(Math.sqrt(x * x + delta * delta)); // Math.sqrt is exact by its contract
  }

  /**
   * The positive part of x, rounded off within about δ of 0 so that its slope is continuous; never
   * negative.
   */
  public static double positivePart(double x, double delta) {
    double p = 0.5 * (x + Math.sqrt(x * x + delta * delta)); // Math.sqrt is exact by its contract
    return p > 0 ? p : 0;
  }
}
