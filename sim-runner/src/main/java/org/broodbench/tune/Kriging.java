package org.broodbench.tune;

import java.util.Arrays;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.optim.InitialGuess;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.SimpleBounds;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.nonlinear.scalar.ObjectiveFunction;
import org.hipparchus.optim.nonlinear.scalar.noderiv.BOBYQAOptimizer;

/**
 * A smooth function guessed from its values at some places, with the error to be expected: kriging
 * with a constant mean, as in D. R. Jones, M. Schonlau and W. J. Welch, "Efficient global
 * optimization of expensive black-box functions", Journal of Global Optimization 13 (1998) 455-492.
 * Correlation Matérn 5/2 with a length for every direction, and a share of noise; both are those of
 * the greatest likelihood, held to a length of about the whole range where the values say little.
 */
final class Kriging {
  /** Natural logarithms of the shortest and the longest length, in ranges of a direction. */
  private static final double SHORTEST = StrictMath.log(0.1);

  private static final double LONGEST = StrictMath.log(20);

  /** Natural logarithms of the least and the most noise, as shares of the variance. */
  private static final double LEAST_NOISE = StrictMath.log(1e-6);

  private static final double MOST_NOISE = StrictMath.log(0.3);

  /** Where lengths are drawn to, and how firmly (standard deviation); own choices. */
  private static final double USUAL_LENGTH = StrictMath.log(1.5);

  private static final double USUAL_SPREAD = 1.2;

  private static final double LEAST_PIVOT = 1e-12;
  private static final double SYMMETRY = 1e-10;
  private static final double ROOT_5 = StrictMath.sqrt(5);

  private final double[][] places;
  private final double[] logs;
  private final double[] perLength;
  private double[][] lower;
  private double[] weights;
  private double mean;
  private double variance;
  private double cost;
  private int fittedTo;

  private Kriging(double[][] places, double[] values, double[] logs) {
    this.places = places;
    this.logs = logs;
    int n = places.length;
    int d = logs.length - 1;
    perLength = new double[d];
    for (int k = 0; k < d; k++) {
      perLength[k] = StrictMath.exp(-logs[k]);
    }
    double noise = StrictMath.exp(logs[d]);
    double[][] c = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < i; j++) {
        c[i][j] = correlation(places[i], places[j]);
        c[j][i] = c[i][j];
      }
      c[i][i] = 1 + noise;
    }
    lower =
        new CholeskyDecomposition(new Array2DRowRealMatrix(c, false), SYMMETRY, LEAST_PIVOT)
            .getL()
            .getData();
    double[] ones = new double[n];
    Arrays.fill(ones, 1);
    double[] one = forth(ones);
    double[] y = forth(values);
    mean = dot(one, y) / dot(one, one);
    double logDet = 0;
    for (int i = 0; i < n; i++) {
      y[i] -= mean * one[i];
      logDet += 2 * StrictMath.log(lower[i][i]);
    }
    variance = Math.max(dot(y, y) / n, 1e-18);
    weights = back(y);
    cost = n * StrictMath.log(variance) + logDet;
    for (int k = 0; k < d; k++) {
      double off = (logs[k] - USUAL_LENGTH) / USUAL_SPREAD;
      cost += off * off;
    }
  }

  /**
   * Fits one.
   *
   * @param places coordinates, each from 0 to 1
   * @param values at the places
   * @param before one for about the same places, whose lengths are the first guess; null for none
   * @param most so many sets of lengths are looked at
   */
  static Kriging fit(double[][] places, double[] values, Kriging before, int most) {
    int d = places[0].length;
    double[] low = new double[d + 1];
    double[] high = new double[d + 1];
    Arrays.fill(low, SHORTEST);
    Arrays.fill(high, LONGEST);
    low[d] = LEAST_NOISE;
    high[d] = MOST_NOISE;
    double[] first = new double[d + 1];
    Arrays.fill(first, USUAL_LENGTH);
    first[d] = StrictMath.log(1e-3);
    if (before != null) {
      System.arraycopy(before.logs, 0, first, 0, d + 1);
    }
    Kriging[] best = {new Kriging(places, values, first)};
    if (most <= 1) {
      best[0].fittedTo = before == null ? places.length : before.fittedTo;
      return best[0];
    }
    try {
      new BOBYQAOptimizer(2 * (d + 1) + 1, 0.6, 0.03)
          .optimize(
              new MaxEval(most),
              GoalType.MINIMIZE,
              new InitialGuess(first),
              new SimpleBounds(low, high),
              new ObjectiveFunction(
                  logs -> {
                    Kriging k = new Kriging(places, values, logs.clone());
                    if (k.cost < best[0].cost) {
                      best[0] = k;
                    }
                    return k.cost;
                  }));
    } catch (MathRuntimeException e) {
      // it has looked at as many as it may; the best of them serves
      best[0].fittedTo = places.length;
      return best[0];
    }
    best[0].fittedTo = places.length;
    return best[0];
  }

  /** How many values its lengths were looked for with. */
  int fittedTo() {
    return fittedTo;
  }

  private double correlation(double[] a, double[] b) {
    double sum = 0;
    for (int k = 0; k < perLength.length; k++) {
      double off = (a[k] - b[k]) * perLength[k];
      sum += off * off;
    }
    double r = ROOT_5 * StrictMath.sqrt(sum);
    return (1 + r + r * r / 3) * StrictMath.exp(-r);
  }

  private static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  private double[] forth(double[] y) {
    double[] x = new double[y.length];
    for (int i = 0; i < x.length; i++) {
      double sum = y[i];
      double[] row = lower[i];
      for (int j = 0; j < i; j++) {
        sum -= row[j] * x[j];
      }
      x[i] = sum / row[i];
    }
    return x;
  }

  private double[] back(double[] y) {
    double[] x = y.clone();
    for (int i = x.length - 1; i >= 0; i--) {
      x[i] /= lower[i][i];
      for (int j = 0; j < i; j++) {
        x[j] -= lower[i][j] * x[i];
      }
    }
    return x;
  }

  /**
   * Guesses the value at a place.
   *
   * @param withError whether the standard error is wanted too, which takes much longer
   * @param valueAndError gets both; an error that is not wanted is 0
   */
  void at(double[] place, boolean withError, double[] valueAndError) {
    double[] c = new double[places.length];
    for (int i = 0; i < c.length; i++) {
      c[i] = correlation(place, places[i]);
    }
    valueAndError[0] = mean + dot(c, weights);
    valueAndError[1] = 0;
    if (withError) {
      double[] v = forth(c);
      valueAndError[1] = StrictMath.sqrt(Math.max(0, variance * (1 - dot(v, v))));
    }
  }
}
