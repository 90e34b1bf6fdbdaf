package org.broodbench.tune;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * How much of a box of scores a set of trade-offs beats, and how much a further one would add: the
 * hypervolume of E. Zitzler and L. Thiele, IEEE Transactions on Evolutionary Computation 3 (1999)
 * 257-271, by seeded random points, all of them the same for every comparison. Aims in which the
 * box has no width are left out. Not to be used by several threads at once.
 */
final class Dominated {
  /** How far a box reaches beyond the worst of its scores, as a share of its width; own choice. */
  private static final double BEYOND = 0.1;

  /** Points whose sets are kept ready: one in so many, so that they stay in the cache. */
  private static final int BLOCK = 64;

  private final int[] aims;

  /** By aim: the coordinates in rising order, and whose they are. */
  private final double[][] coordinates;

  private final int[][] order;

  /** By aim and block: the points from the first of the block on, as bits. */
  private final long[][][] from;

  /** The points that nothing taken so far beats, as bits. */
  private final long[] left;

  private final long[] beaten;
  private final long[] ofAim;

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
    double[][] points = new double[aims.length][count];
    for (int p = 0; p < count; p++) {
      for (int k = 0; k < aims.length; k++) {
        int a = aims[k];
        points[k][p] = low[a] + random.nextDouble() * (1 + BEYOND) * (high[a] - low[a]);
      }
    }
    left = new long[(count + Long.SIZE - 1) / Long.SIZE];
    for (int p = 0; p < count; p++) {
      set(left, p);
    }
    beaten = new long[left.length];
    ofAim = new long[left.length];
    coordinates = new double[aims.length][];
    order = new int[aims.length][];
    from = new long[aims.length][][];
    for (int k = 0; k < aims.length; k++) {
      double[] x = points[k];
      order[k] =
          IntStream.range(0, count)
              .boxed()
              .sorted(Comparator.comparingDouble(p -> x[p]))
              .mapToInt(Integer::intValue)
              .toArray();
      coordinates[k] = Arrays.stream(order[k]).mapToDouble(p -> x[p]).toArray();
      from[k] = suffixes(order[k]);
    }
  }

  private long[][] suffixes(int[] order) {
    int blocks = (order.length + BLOCK - 1) / BLOCK;
    long[][] sets = new long[blocks + 1][];
    sets[blocks] = new long[left.length];
    for (int b = blocks - 1; b >= 0; b--) {
      sets[b] = sets[b + 1].clone();
      for (int i = b * BLOCK; i < Math.min(order.length, (b + 1) * BLOCK); i++) {
        set(sets[b], order[i]);
      }
    }
    return sets;
  }

  private Dominated(Dominated other) {
    aims = other.aims;
    coordinates = other.coordinates;
    order = other.order;
    from = other.from;
    left = other.left.clone();
    beaten = new long[left.length];
    ofAim = new long[left.length];
  }

  /** The same as it stands now. */
  Dominated copy() {
    return new Dominated(this);
  }

  private static void set(long[] bits, int i) {
    bits[i / Long.SIZE] |= 1L << i % Long.SIZE;
  }

  /** Marks the points that are left and that scores beat: as good or better in every aim. */
  private void beat(Scores s) {
    System.arraycopy(left, 0, beaten, 0, left.length);
    for (int k = 0; k < aims.length; k++) {
      int first = firstNotBelow(coordinates[k], s.values().get(aims[k]));
      int block = (first + BLOCK - 1) / BLOCK;
      System.arraycopy(from[k][block], 0, ofAim, 0, ofAim.length);
      for (int i = first; i < Math.min(order[k].length, block * BLOCK); i++) {
        set(ofAim, order[k][i]);
      }
      for (int w = 0; w < beaten.length; w++) {
        beaten[w] &= ofAim[w];
      }
    }
  }

  private static int firstNotBelow(double[] sorted, double x) {
    int low = 0;
    int high = sorted.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (sorted[middle] < x) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** How many points it beats that nothing taken so far does. */
  int gain(Scores s) {
    beat(s);
    int sum = 0;
    for (long bits : beaten) {
      sum += Long.bitCount(bits);
    }
    return sum;
  }

  /** Takes one in: what it beats counts for no other. */
  void take(Scores s) {
    beat(s);
    for (int w = 0; w < left.length; w++) {
      left[w] &= ~beaten[w];
    }
  }
}
