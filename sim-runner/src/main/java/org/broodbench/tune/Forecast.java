package org.broodbench.tune;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * What candidates would score over all seasons, guessed from those that ran on a few seasons and
 * from the fewer that ran on all: M. C. Kennedy and A. O'Hagan, "Predicting the output from a
 * complex computer code when fast approximations are available", Biometrika 87 (2000) 1-13. One
 * {@link Kriging} tells the scores over the few seasons, another how the score over all differs
 * from a straight line of it. Both work on logarithms, which starts and doses call for: they range
 * over powers of ten.
 */
final class Forecast {
  /** From so many candidates known on all seasons on the difference is more than its mean. */
  private static final int ENOUGH_FOR_LINE = 6;

  /** Sets of lengths that are looked at, the first time and later. */
  private static final int TRIALS = 70;

  private static final int TRIALS_AGAIN = 40;

  /** Lengths are looked for anew once there are so many times as many values; own choice. */
  private static final double GROWN = 1.2;

  /** Score over all seasons and how much better it may well be. */
  record Guess(Scores middle, Scores hoped) {}

  private final Kriging[] few = new Kriging[Aim.values().length];
  private final Kriging[] rest = new Kriging[Aim.values().length];
  private final double[] level = new double[Aim.values().length];
  private final double[] slope = new double[Aim.values().length];
  private final double[] low = new double[Aim.values().length];

  /**
   * Fits both.
   *
   * @param places of all candidates
   * @param onFew their scores over the few seasons
   * @param onAll the scores over all seasons of those that are known there, by their index
   * @param before an earlier forecast, to begin from; null for none
   */
  Forecast(List<double[]> places, List<Scores> onFew, Map<Integer, Scores> onAll, Forecast before) {
    double[][] at = places.toArray(double[][]::new);
    for (Aim aim : Aim.values()) {
      int a = aim.ordinal();
      double[] x = onFew.stream().mapToDouble(s -> log(aim, s.get(aim))).toArray();
      low[a] = x[0];
      if (varies(x)) {
        few[a] = fit(at, x, before == null ? null : before.few[a]);
      }
      List<double[]> place = new ArrayList<>();
      List<double[]> pairs = new ArrayList<>();
      onAll.forEach(
          (i, s) -> {
            place.add(at[i]);
            pairs.add(new double[] {x[i], log(aim, s.get(aim))});
          });
      line(a, pairs);
      double[] off = pairs.stream().mapToDouble(p -> p[1] - level[a] - slope[a] * p[0]).toArray();
      if (off.length >= ENOUGH_FOR_LINE && varies(off)) {
        rest[a] = fit(place.toArray(double[][]::new), off, before == null ? null : before.rest[a]);
      }
    }
  }

  private static Kriging fit(double[][] places, double[] values, Kriging old) {
    if (old == null) {
      return Kriging.fit(places, values, null, TRIALS);
    }
    boolean grown = places.length >= GROWN * old.fittedTo();
    return Kriging.fit(places, values, old, grown ? TRIALS_AGAIN : 1);
  }

  private static boolean varies(double[] x) {
    for (double v : x) {
      if (Math.abs(v - x[0]) > 1e-9) {
        return true;
      }
    }
    return false;
  }

  /** The straight line of least squares; parallel to the scores while there are few pairs. */
  private void line(int a, List<double[]> pairs) {
    double meanX = pairs.stream().mapToDouble(p -> p[0]).average().orElse(0);
    double meanY = pairs.stream().mapToDouble(p -> p[1]).average().orElse(0);
    double xx = pairs.stream().mapToDouble(p -> (p[0] - meanX) * (p[0] - meanX)).sum();
    double xy = pairs.stream().mapToDouble(p -> (p[0] - meanX) * (p[1] - meanY)).sum();
    slope[a] = pairs.size() >= ENOUGH_FOR_LINE && xx > 1e-9 ? xy / xx : 1;
    level[a] = meanY - slope[a] * meanX;
  }

  private static double log(Aim aim, double score) {
    return StrictMath.log(score + aim.grain());
  }

  private static double back(Aim aim, double log) {
    return Math.max(0, StrictMath.exp(log) - aim.grain());
  }

  /**
   * Guesses the scores of a candidate over all seasons.
   *
   * @param onFew its scores over the few seasons; null where it was not run
   * @param hope how many standard errors better the hoped scores are
   */
  Guess of(double[] place, Scores onFew, double hope) {
    List<Double> middle = new ArrayList<>();
    List<Double> hoped = new ArrayList<>();
    double[] v = new double[2];
    for (Aim aim : Aim.values()) {
      int a = aim.ordinal();
      double x = low[a];
      double square = 0;
      if (onFew != null) {
        x = log(aim, onFew.get(aim));
      } else if (few[a] != null) {
        few[a].at(place, hope > 0, v);
        x = v[0];
        square = slope[a] * slope[a] * v[1] * v[1];
      }
      double y = level[a] + slope[a] * x;
      if (rest[a] != null) {
        rest[a].at(place, hope > 0, v);
        y += v[0];
        square += v[1] * v[1];
      }
      middle.add(back(aim, y));
      hoped.add(back(aim, y - hope * StrictMath.sqrt(square)));
    }
    return new Guess(new Scores(middle), new Scores(hoped));
  }
}
