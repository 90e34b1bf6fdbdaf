package org.broodbench.tune;

import java.util.List;
import java.util.SplittableRandom;

/**
 * Share of a box of scores that a front beats: the measure of E. Zitzler and L. Thiele, IEEE
 * Transactions on Evolutionary Computation 3 (1999) 257-271, by seeded random points.
 */
final class Hypervolume {
  private static final int POINTS = 200_000;

  private Hypervolume() {}

  /**
   * The share of the box from {@code best} to {@code worst} that is no better than some point.
   *
   * @param front scores, less is better
   */
  static double share(List<double[]> front, double[] best, double[] worst) {
    SplittableRandom random = new SplittableRandom(1);
    int beaten = 0;
    double[] x = new double[best.length];
    for (int i = 0; i < POINTS; i++) {
      for (int k = 0; k < x.length; k++) {
        x[k] = best[k] + random.nextDouble() * (worst[k] - best[k]);
      }
      boolean any = false;
      for (int f = 0; f < front.size() && !any; f++) {
        any = true;
        for (int k = 0; k < x.length && any; k++) {
          any = front.get(f)[k] <= x[k];
        }
      }
      beaten += any ? 1 : 0;
    }
    return (double) beaten / POINTS;
  }
}
