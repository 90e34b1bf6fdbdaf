package org.broodbench.sky;

import java.util.List;
import java.util.Locale;

/** A day of a record over and over, to ask how long a battery lasts in such weather. */
public final class RepeatedDay {
  private static final int DAY_S = 86_400;

  private RepeatedDay() {}

  /**
   * Repeats the 24 hours from a time on.
   *
   * @param w a record whose step divides the day and that holds the day
   * @param fromEpochS start of the day that is repeated; taken down to the record's grid
   * @param before whole days put before it
   * @param after whole days put after it
   * @param warmerByK added to every temperature, the relative humidity kept
   */
  public static WeatherSeries of(
      WeatherSeries w, long fromEpochS, int before, int after, double warmerByK) {
    if (DAY_S % w.stepS() != 0) {
      throw new IllegalArgumentException("the step must divide the day");
    }
    int perDay = DAY_S / w.stepS();
    long first = Math.floorDiv(fromEpochS - w.startEpochS(), (long) w.stepS());
    if (first < 0 || first + perDay > w.n()) {
      throw new IllegalArgumentException("the record does not hold the whole day");
    }
    int n = perDay * (before + 1 + after);
    long start = w.startEpochS() + first * w.stepS() - (long) before * DAY_S;
    WeatherSeries.Builder b = new WeatherSeries.Builder(start, w.stepS(), n).about(w);
    for (Variable v : Variable.values()) {
      if (!w.has(v)) {
        continue;
      }
      double[] column = new double[n];
      for (int i = 0; i < n; i++) {
        double value = w.value(v, (int) first + i % perDay);
        column[i] = v == Variable.AIR ? value + warmerByK : value;
      }
      b.column(v, column, w.stand(v));
    }
    return b.typicalYear(false)
        .warnings(
            List.of(
                String.format(Locale.ROOT, "one day repeated, %+.1f K from its record", warmerByK)))
        .build();
  }
}
