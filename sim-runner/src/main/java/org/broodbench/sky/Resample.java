package org.broodbench.sky;

import java.util.Arrays;

/** Longer intervals out of short ones. */
public final class Resample {
  private Resample() {}

  /**
   * Joins groups of {@code factor} records, from the first on; a last, incomplete group is dropped.
   * A mean needs half of its values, a sum all of them; else it is missing.
   */
  public static WeatherSeries coarser(WeatherSeries w, int factor) {
    int n = w.n() / factor;
    WeatherSeries.Builder b = new WeatherSeries.Builder(w.startEpochS(), w.stepS() * factor, n);
    byte[] filled = new byte[n];
    for (Variable v : Variable.values()) {
      if (!w.has(v)) {
        continue;
      }
      double[] column = new double[w.n()];
      for (int i = 0; i < w.n(); i++) {
        column[i] = w.value(v, i);
        if (w.quality(v, i) == Quality.FILLED && i / factor < n) {
          filled[i / factor] |= (byte) (1 << v.ordinal());
        }
      }
      b.column(
          v,
          Arrays.copyOf(groups(column, w.n(), factor, isSum(v)), n),
          stand(w.stand(v), w.stepS(), factor));
    }
    return b.filledBits(filled).about(w).build();
  }

  /** True for what adds up over time. */
  public static boolean isSum(Variable v) {
    return v == Variable.PRECIPITATION;
  }

  /** Where a value stands after the joining: the mean of spot values stands in their middle. */
  public static Stand stand(Stand stand, int stepS, int factor) {
    return stand.mean()
        ? stand
        : Stand.instant(stand.offsetS() + 0.5 * (factor - 1) * (double) stepS);
  }

  /** The joined values of the first n of a column, in a new array of n/factor values. */
  public static double[] groups(double[] column, int n, int factor, boolean sum) {
    double[] out = new double[n / factor];
    for (int g = 0; g < out.length; g++) {
      double total = 0;
      int count = 0;
      for (int i = g * factor; i < (g + 1) * factor; i++) {
        if (!Double.isNaN(column[i])) {
          total += column[i];
          count++;
        }
      }
      boolean enough = sum ? count == factor : 2 * count >= factor;
      out[g] = enough ? (sum ? total : total / count) : Double.NaN;
    }
    return out;
  }
}
