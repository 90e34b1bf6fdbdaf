package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealVector;

/**
 * Profile intervals of 90 %: how far a knob can be turned, all others following, until the sum of
 * squares has risen by 1.645². The others follow by the covariance and one step of Gauss and
 * Newton; the length is then put right by what the sum really rose.
 */
final class Profile {
  /** Of a normal distribution: between −1.645 and 1.645 lie 90 %. */
  static final double Z90 = 1.6448536269514722;

  private Profile() {}

  /** Lower and upper end in z, by free knob. */
  static double[][] of(Fit fit) {
    int n = fit.point().length;
    List<double[]> points = new ArrayList<>();
    for (int j = 0; j < n; j++) {
      points.add(along(fit, j, -Z90));
      points.add(along(fit, j, Z90));
    }
    List<double[]> values = fit.misfit().values(points);
    List<double[]> better = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      better.add(follow(fit, i / 2, points.get(i), values.get(i)));
    }
    List<double[]> after = fit.misfit().values(better);
    double[][] ends = new double[n][2];
    for (int i = 0; i < points.size(); i++) {
      double rise = Math.min(Misfit.cost(values.get(i)), Misfit.cost(after.get(i))) - fit.cost();
      // a rise far off the parabola's is not followed beyond twice or half the length
      double meant = Z90 * fit.widened()[i / 2];
      double stretch = Math.max(0.5, Math.min(2, meant / Math.sqrt(Math.max(0.1, rise))));
      double sign = i % 2 == 0 ? -1 : 1;
      ends[i / 2][i % 2] = fit.point()[i / 2] + sign * Z90 * stretch * fit.sigma(i / 2);
    }
    return ends;
  }

  private static double[] along(Fit fit, int j, double t) {
    double[] p = fit.point().clone();
    for (int k = 0; k < p.length; k++) {
      p[k] += t * fit.sigma(j) * fit.follows(k, j);
      p[k] = Math.max(-Fit.FARTHEST, Math.min(Fit.FARTHEST, p[k]));
    }
    return p;
  }

  /** The other knobs a step nearer to their best at this value of one. */
  private static double[] follow(Fit fit, int held, double[] point, double[] value) {
    int n = point.length;
    double[][] normal = new double[n][n];
    double[] right = new double[n];
    for (int a = 0; a < n; a++) {
      double[] sa = fit.slopes()[a];
      for (int i = 0; i < value.length; i++) {
        right[a] -= sa[i] * value[i];
      }
      for (int b = 0; b < n; b++) {
        for (int i = 0; i < value.length; i++) {
          normal[a][b] += sa[i] * fit.slopes()[b][i];
        }
      }
    }
    for (int a = 0; a < n; a++) {
      normal[a][held] = 0;
      normal[held][a] = 0;
    }
    normal[held][held] = 1;
    right[held] = 0;
    RealVector step =
        new LUDecomposition(MatrixUtils.createRealMatrix(normal))
            .getSolver()
            .solve(MatrixUtils.createRealVector(right));
    double[] p = point.clone();
    for (int k = 0; k < n; k++) {
      p[k] = Math.max(-Fit.FARTHEST, Math.min(Fit.FARTHEST, p[k] + step.getEntry(k)));
    }
    return p;
  }
}
