package org.broodbench.calibrate;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.ValueAndJacobianFunction;
import org.hipparchus.util.Pair;

/**
 * The best point of a misfit by Levenberg and Marquardt, and the covariance of the knobs there.
 *
 * @param misfit what was made small
 * @param point z of its free knobs
 * @param cost sum of squares there
 * @param slopes derivatives there, one row a knob
 * @param covariance of the knobs in z, the prior counted in, widened
 * @param widened by what factor each standard deviation is wider than the curvature alone says,
 *     because deviations last and have long tails
 */
record Fit(
    Misfit misfit,
    double[] point,
    double cost,
    double[][] slopes,
    double[][] covariance,
    double[] widened) {
  /** A knob is not turned further than so many standard deviations of its prior; own choice. */
  static final double FARTHEST = 5;

  /**
   * Fits.
   *
   * @param start z of the free knobs
   * @param iterations most of them
   * @param enough an iteration that takes less than this share off the length of the misfit is the
   *     last
   * @param near how good the derivatives at the end must be; on the way those of {@link
   *     Misfit.Near#WAY} will do
   */
  static Fit of(Misfit misfit, double[] start, int iterations, double enough, Misfit.Near near) {
    LeastSquaresOptimizer.Optimum best =
        new LevenbergMarquardtOptimizer()
            .optimize(
                new LeastSquaresBuilder()
                    .start(start)
                    .model(new Lazy(misfit, near.reach() > 0.3 ? near : Misfit.Near.WAY))
                    .target(new double[misfit.size()])
                    .lazyEvaluation(true)
                    .maxEvaluations(1000)
                    .maxIterations(1000)
                    .parameterValidator(Fit::held)
                    .checker(
                        (i, before, now) ->
                            i >= iterations
                                || before.getCost() - now.getCost() < enough * now.getCost())
                    .build());
    double[] point = held(best.getPoint()).toArray();
    double[][] slopes = misfit.slopes(point, near);
    double[] value = misfit.value(point);
    double[][] covariance = covariance(slopes);
    double[] widened = Sandwich.widening(misfit, slopes, value, covariance);
    for (int a = 0; a < widened.length; a++) {
      for (int b = 0; b < widened.length; b++) {
        covariance[a][b] *= widened[a] * widened[b];
      }
    }
    return new Fit(misfit, point, Misfit.cost(value), slopes, covariance, widened);
  }

  private static RealVector held(RealVector point) {
    return point.map(x -> Math.max(-FARTHEST, Math.min(FARTHEST, x)));
  }

  /** Inverse of the normal matrix; the prior keeps it regular. */
  static double[][] covariance(double[][] slopes) {
    int n = slopes.length;
    double[][] normal = new double[n][n];
    for (int a = 0; a < n; a++) {
      for (int b = 0; b <= a; b++) {
        double sum = 0;
        for (int i = 0; i < slopes[a].length; i++) {
          sum += slopes[a][i] * slopes[b][i];
        }
        normal[a][b] = sum;
        normal[b][a] = sum;
      }
    }
    return new CholeskyDecomposition(MatrixUtils.createRealMatrix(normal))
        .getSolver()
        .getInverse()
        .getData();
  }

  /** All knobs at the best point. */
  double[] all() {
    return misfit.all(point);
  }

  /** How far a knob follows when another is turned by 1, so that the misfit rises least. */
  double follows(int k, int turned) {
    double together = covariance[k][turned] / covariance[turned][turned];
    return together * widened[turned] / widened[k];
  }

  /** Standard deviation of a free knob in z. */
  double sigma(int j) {
    return Math.sqrt(covariance[j][j]);
  }

  private record Lazy(Misfit misfit, Misfit.Near near) implements ValueAndJacobianFunction {
    @Override
    public Pair<RealVector, RealMatrix> value(RealVector point) {
      return new Pair<>(computeValue(point.toArray()), computeJacobian(point.toArray()));
    }

    @Override
    public RealVector computeValue(double[] point) {
      return new ArrayRealVector(misfit.value(point), false);
    }

    @Override
    public RealMatrix computeJacobian(double[] point) {
      return new Array2DRowRealMatrix(misfit.slopes(point, near), false).transpose();
    }
  }
}
