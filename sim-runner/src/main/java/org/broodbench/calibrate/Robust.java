package org.broodbench.calibrate;

import java.util.Arrays;

/** Figures that a few wild values do not move. */
final class Robust {
  /** Of a normal distribution: standard deviation over median absolute deviation. */
  private static final double SIGMA_OF_MAD = 1.4826;

  private Robust() {}

  /** The values that are there. */
  static double[] there(double[] v) {
    return Arrays.stream(v).filter(x -> !Double.isNaN(x)).toArray();
  }

  /** Middle value; not a number where there is none. */
  static double median(double[] v) {
    return quantile(v, 0.5);
  }

  /** A quantile by straight lines between the sorted values. */
  static double quantile(double[] v, double share) {
    double[] sorted = there(v);
    if (sorted.length == 0) {
      return Double.NaN;
    }
    Arrays.sort(sorted);
    double x = share * (sorted.length - 1);
    int i = (int) x;
    return i + 1 < sorted.length ? sorted[i] + (x - i) * (sorted[i + 1] - sorted[i]) : sorted[i];
  }

  /** Standard deviation as the middle absolute deviation from the middle tells it. */
  static double sigma(double[] v) {
    double middle = median(v);
    return SIGMA_OF_MAD * median(Arrays.stream(v).map(x -> Math.abs(x - middle)).toArray());
  }

  /** Root of the mean square. */
  static double rms(double[] v) {
    double sum = 0;
    int n = 0;
    for (double x : v) {
      if (!Double.isNaN(x)) {
        sum += x * x;
        n++;
      }
    }
    return n == 0 ? Double.NaN : Math.sqrt(sum / n);
  }
}
