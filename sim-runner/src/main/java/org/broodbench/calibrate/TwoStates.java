package org.broodbench.calibrate;

/**
 * Tells two states by a number that is normally distributed around one of two middles: expectation
 * and maximisation, fifty rounds, with one spread for both.
 *
 * @param low middle of the lower state
 * @param high middle of the higher
 * @param sigma spread
 */
record TwoStates(double low, double high, double sigma) {
  private static final int ROUNDS = 50;

  static TwoStates of(double[] feature) {
    double low = Robust.quantile(feature, 0.1);
    double high = Robust.quantile(feature, 0.9);
    double sigma = Math.max(1e-6, (high - low) / 4);
    double share = 0.5;
    for (int r = 0; r < ROUNDS; r++) {
      double sumHigh = 0;
      double sumLow = 0;
      double weightHigh = 0;
      double weightLow = 0;
      double square = 0;
      for (double x : feature) {
        if (Double.isNaN(x)) {
          continue;
        }
        double odds = (x - (low + high) / 2) * (high - low) / (sigma * sigma);
        double p = share / (share + (1 - share) * StrictMath.exp(-Math.min(700, odds)));
        weightHigh += p;
        weightLow += 1 - p;
        sumHigh += p * x;
        sumLow += (1 - p) * x;
        double up = x - high;
        double down = x - low;
        // wild values do not widen the spread
        square +=
            p * Math.min(up * up, 9 * sigma * sigma)
                + (1 - p) * Math.min(down * down, 9 * sigma * sigma);
      }
      double n = weightHigh + weightLow;
      if (weightHigh < 1 || weightLow < 1) {
        break;
      }
      high = sumHigh / weightHigh;
      low = sumLow / weightLow;
      sigma = Math.max(1e-6, Math.sqrt(square / n));
      share = weightHigh / n;
    }
    return new TwoStates(low, high, sigma);
  }

  /** Distance of the middles in spreads. */
  double apart() {
    return (high - low) / sigma;
  }

  /** Logarithm of the odds of the higher state, held to what a single row can tell. */
  double logOdds(double x) {
    if (Double.isNaN(x)) {
      return 0;
    }
    double odds = (x - (low + high) / 2) * (high - low) / (sigma * sigma);
    return Math.max(-6, Math.min(6, odds));
  }
}
