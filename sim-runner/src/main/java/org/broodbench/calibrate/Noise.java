package org.broodbench.calibrate;

import java.util.Arrays;

/**
 * How far the means of a column scatter around a good fit, and how long a deviation lasts. Both are
 * taken from the residuals. The time that deviations last widens the intervals: with τ bins from
 * one independent value to the next the column counts as 1/τ of its bins.
 *
 * @param sigma standard deviation of a mean, by compared column
 * @param tau integrated time of autocorrelation in bins, at least 1, by compared column
 */
record Noise(double[] sigma, double[] tau) {
  /** Window of the integrated time in units of itself; A. Sokal's rule of five. */
  private static final double WINDOW = 5;

  /** Bins over which the simulation may be off to one side: six hours; own choice. */
  private static final int BELIEF_BINS = 36;

  /** What is expected before anything is fitted; own choice. */
  static Noise before(Observations seen) {
    double[] sigma = new double[seen.channels().size()];
    for (int c = 0; c < sigma.length; c++) {
      sigma[c] =
          switch (seen.channels().get(c).sort()) {
            case VOLTAGE -> 0.05;
            case CURRENT -> 0.2;
            case PERCENT -> 4;
            default -> 0.3;
          };
    }
    double[] tau = new double[sigma.length];
    Arrays.fill(tau, 1);
    return new Noise(sigma, tau);
  }

  /** Least scatter that is believed: roundings and the model's own steps. */
  private static double least(LogColumn c) {
    return switch (c.sort()) {
      case VOLTAGE -> 0.006;
      case CURRENT -> 0.005;
      case PERCENT -> 0.2;
      default -> 0.02;
    };
  }

  /** The same with deviations that last no longer than some bins. */
  Noise lastingAtMost(double bins) {
    return new Noise(sigma, Arrays.stream(tau).map(t -> Math.min(bins, t)).toArray());
  }

  /** The same, but no column tighter than by some factor against another. */
  Noise tightenedAtMost(Noise before, double factor) {
    double[] held = sigma.clone();
    for (int c = 0; c < held.length; c++) {
      held[c] = Math.max(held[c], before.sigma[c] / factor);
    }
    return new Noise(held, tau);
  }

  /**
   * How far the simulation itself may be off for {@link #BELIEF_BINS}: steps of a minute, relays
   * known to the minute, air known at one place. Own choice, by the share of made hives that were
   * found inside their intervals.
   */
  private static double belief(LogColumn c) {
    return switch (c.sort()) {
      case VOLTAGE -> 0.01;
      case CURRENT -> 0.02;
      case PERCENT -> 1;
      default -> 0.06;
    };
  }

  /** From the residuals of a fit, by compared column and bin. */
  static Noise of(Observations seen, double[][] residuals) {
    double[] sigma = new double[residuals.length];
    double[] tau = new double[residuals.length];
    for (int c = 0; c < residuals.length; c++) {
      double s = Robust.sigma(residuals[c]);
      sigma[c] = Math.max(least(seen.channels().get(c)), Double.isNaN(s) ? 0 : s);
      double off = belief(seen.channels().get(c)) / sigma[c];
      tau[c] = tau(residuals[c], 4 * sigma[c]) + BELIEF_BINS * off * off;
    }
    return new Noise(sigma, tau);
  }

  /** Autocorrelation at some lag; deviations beyond a bound count as the bound. */
  static double correlation(double[] residuals, int lag, double bound) {
    double mean = 0;
    int n = 0;
    for (double r : residuals) {
      if (!Double.isNaN(r)) {
        mean += clip(r, bound);
        n++;
      }
    }
    mean /= Math.max(1, n);
    double square = 0;
    double product = 0;
    int pairs = 0;
    for (int i = 0; i < residuals.length; i++) {
      if (Double.isNaN(residuals[i])) {
        continue;
      }
      double a = clip(residuals[i], bound) - mean;
      square += a * a;
      if (i + lag < residuals.length && !Double.isNaN(residuals[i + lag])) {
        product += a * (clip(residuals[i + lag], bound) - mean);
        pairs++;
      }
    }
    return square == 0 || pairs == 0 ? 0 : product / pairs / (square / n);
  }

  private static double clip(double r, double bound) {
    return Math.max(-bound, Math.min(bound, r));
  }

  static double tau(double[] residuals, double bound) {
    double tau = 1;
    for (int lag = 1; lag < residuals.length / 4 && lag < WINDOW * tau; lag++) {
      tau += 2 * correlation(residuals, lag, bound);
    }
    return Math.max(1, tau);
  }
}
