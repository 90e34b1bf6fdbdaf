package org.broodbench.calibrate;

/**
 * How much wider the knobs scatter than the curvature of the misfit says, where deviations last and
 * have long tails: covariance H⁻¹ M H⁻¹ with M from the products of the slopes and deviations of
 * bins up to half a day apart, falling off linearly (W. K. Newey and K. D. West, Econometrica 55
 * (1987) 703-708). The prior counts in M as it does in H.
 */
final class Sandwich {
  /** Bins over which deviations of a simulation may hang together; own choice. */
  private static final int LAGS = 72;

  private Sandwich() {}

  /** Factors of at least 1, by free knob. */
  static double[] widening(
      Misfit misfit, double[][] slopes, double[] value, double[][] covariance) {
    int n = slopes.length;
    int[] bins = misfit.bins();
    int last = 0;
    for (int b : bins) {
      last = Math.max(last, b);
    }
    double[][] score = new double[last + 1][n];
    for (int i = 0; i < bins.length; i++) {
      if (bins[i] >= 0) {
        for (int j = 0; j < n; j++) {
          score[bins[i]][j] += slopes[j][i] * value[i];
        }
      }
    }
    double[][] middle = middle(score, n);
    double[] out = new double[n];
    for (int j = 0; j < n; j++) {
      double variance = 0;
      for (int a = 0; a < n; a++) {
        for (int b = 0; b < n; b++) {
          variance += covariance[j][a] * middle[a][b] * covariance[b][j];
        }
      }
      out[j] = Math.sqrt(Math.max(1, variance / covariance[j][j]));
    }
    return out;
  }

  private static double[][] middle(double[][] score, int n) {
    double[][] m = new double[n][n];
    int lags = Math.min(LAGS, score.length / 8);
    for (int lag = 0; lag <= lags; lag++) {
      double weight = (lag == 0 ? 0.5 : 1) * (1 - lag / (lags + 1.0));
      for (int t = lag; t < score.length; t++) {
        double[] now = score[t];
        double[] then = score[t - lag];
        for (int a = 0; a < n; a++) {
          double x = weight * now[a];
          for (int b = 0; b < n; b++) {
            m[a][b] += x * then[b];
          }
        }
      }
    }
    double[][] out = new double[n][n];
    for (int a = 0; a < n; a++) {
      for (int b = 0; b < n; b++) {
        out[a][b] = m[a][b] + m[b][a] + (a == b ? 1 : 0);
      }
    }
    return out;
  }
}
