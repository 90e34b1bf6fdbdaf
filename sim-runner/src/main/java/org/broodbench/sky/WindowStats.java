package org.broodbench.sky;

/**
 * Some records of a series summed up. Means are over the values that are there; NaN where there is
 * none.
 *
 * @param fromEpochS start of the first record
 * @param toEpochS end of the last
 */
public record WindowStats(
    long fromEpochS,
    long toEpochS,
    double meanAirC,
    double minAirC,
    double maxAirC,
    double ghiKWhM2Day,
    double precipMm,
    double meanRhPercent,
    double meanWindMS) {

  /** The records whose intervals lie in the window of time. */
  public static WindowStats between(WeatherSeries w, long fromEpochS, long toEpochS) {
    int first = (int) -Math.floorDiv(w.startEpochS() - fromEpochS, (long) w.stepS());
    int last = (int) Math.floorDiv(toEpochS - w.startEpochS(), (long) w.stepS());
    if (first < 0 || last > w.n() || last <= first) {
      throw new IllegalArgumentException("the window lies outside the series");
    }
    return of(w, first, last);
  }

  /** The records from {@code first} to before {@code end}. */
  static WindowStats of(WeatherSeries w, int first, int end) {
    double low = Double.NaN;
    double high = Double.NaN;
    for (int i = first; i < end; i++) {
      double t = w.value(Variable.AIR, i);
      if (!Double.isNaN(t)) {
        low = Double.isNaN(low) ? t : Math.min(low, t);
        high = Double.isNaN(high) ? t : Math.max(high, t);
      }
    }
    double rain = mean(w, Variable.PRECIPITATION, first, end, true);
    return new WindowStats(
        w.startEpochS() + (long) first * w.stepS(),
        w.startEpochS() + (long) end * w.stepS(),
        mean(w, Variable.AIR, first, end, false),
        low,
        high,
        mean(w, Variable.GHI, first, end, false) * 0.024,
        rain,
        mean(w, Variable.HUMIDITY, first, end, false),
        mean(w, Variable.WIND, first, end, false));
  }

  private static double mean(WeatherSeries w, Variable v, int first, int end, boolean sumOnly) {
    double sum = 0;
    int count = 0;
    for (int i = first; i < end; i++) {
      double x = w.value(v, i);
      if (!Double.isNaN(x)) {
        sum += x;
        count++;
      }
    }
    return count == 0 ? Double.NaN : sumOnly ? sum : sum / count;
  }
}
