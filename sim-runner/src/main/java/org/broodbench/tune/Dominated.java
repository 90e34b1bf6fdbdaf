package org.broodbench.tune;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/**
 * How much of a box of scores a set of trade-offs beats, and how much a further one would add: the
 * hypervolume of E. Zitzler and L. Thiele, IEEE Transactions on Evolutionary Computation 3 (1999)
 * 257-271, by seeded random points, all of them the same for every comparison. Aims in which the
 * box has no width are left out.
 */
final class Dominated {
  /** How far a box reaches beyond the worst of its scores, as a share of its width; own choice. */
  private static final double BEYOND = 0.1;

  private final double[] points;
  private final int[] aims;
  private int left;

  /**
   * @param box scores that the box must hold
   * @param count how many points
   */
  Dominated(List<Scores> box, int count) {
    int all = Aim.values().length;
    double[] low = new double[all];
    double[] high = new double[all];
    Arrays.fill(low, Double.POSITIVE_INFINITY);
    Arrays.fill(high, Double.NEGATIVE_INFINITY);
    for (Scores s : box) {
      for (Aim aim : Aim.values()) {
        low[aim.ordinal()] = Math.min(low[aim.ordinal()], s.get(aim));
        high[aim.ordinal()] = Math.max(high[aim.ordinal()], s.get(aim));
      }
    }
    aims =
        Arrays.stream(Aim.values())
            .mapToInt(Aim::ordinal)
            .filter(a -> high[a] - low[a] > Aim.values()[a].grain())
            .toArray();
    SplittableRandom random = new SplittableRandom(1);
    points = new double[count * aims.length];
    for (int p = 0; p < points.length; p++) {
      int a = aims[p % aims.length];
      points[p] = low[a] + random.nextDouble() * (1 + BEYOND) * (high[a] - low[a]);
    }
    left = count;
  }

  private Dominated(Dominated other) {
    points = other.points.clone();
    aims = other.aims;
    left = other.left;
  }

  /** The same as it stands now. */
  Dominated copy() {
    return new Dominated(this);
  }

  private boolean beats(double[] own, int point) {
    for (int k = 0; k < own.length; k++) {
      if (own[k] > points[point * own.length + k]) {
        return false;
      }
    }
    return true;
  }

  private double[] own(Scores s) {
    return Arrays.stream(aims).mapToDouble(a -> s.values().get(a)).toArray();
  }

  /** How many points it beats that nothing taken so far does. */
  int gain(Scores s) {
    double[] own = own(s);
    int sum = 0;
    for (int p = 0; p < left; p++) {
      sum += beats(own, p) ? 1 : 0;
    }
    return sum;
  }

  /** Takes one in: what it beats counts for no other. */
  void take(Scores s) {
    double[] own = own(s);
    int kept = 0;
    for (int p = 0; p < left; p++) {
      if (!beats(own, p)) {
        System.arraycopy(points, p * own.length, points, kept++ * own.length, own.length);
      }
    }
    left = kept;
  }
}
