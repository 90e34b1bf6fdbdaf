package org.broodbench.sky;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;

/** Puts a typical year on the calendar of a real window. */
public final class TypicalYear {
  private static final long DAY_S = 86400;

  private TypicalYear() {}

  /**
   * A series that covers the window and a day on either side by repeating the typical year: a date
   * takes the records of the same month, day and hour, 29 February those of the 28th.
   *
   * @param year a series of a whole year whose year number is a label; any other is handed back as
   *     it is
   */
  public static WeatherSeries covering(WeatherSeries year, long fromEpochS, long toEpochS) {
    int step = year.stepS();
    long length = (long) year.n() * step;
    if (length < 364 * DAY_S || length > 366 * DAY_S) {
      return year;
    }
    int labelYear = date(year.startEpochS() + 180 * DAY_S).getYear();
    long grid = Math.floorMod(year.startEpochS(), (long) step);
    long start = Math.floorDiv(fromEpochS - DAY_S - grid, (long) step) * step + grid;
    int n = (int) ((toEpochS + DAY_S - start) / step) + 1;
    int[] from = new int[n];
    for (int i = 0; i < n; i++) {
      long t = start + (long) i * step;
      LocalDate d = date(t);
      boolean leap = d.getMonthValue() == 2 && d.getDayOfMonth() == 29;
      long label =
          LocalDate.of(labelYear, d.getMonthValue(), leap ? 28 : d.getDayOfMonth()).toEpochDay();
      long inYear = label * DAY_S + Math.floorMod(t, DAY_S) - year.startEpochS();
      from[i] = (int) (Math.floorMod(inYear, 365 * DAY_S) / step) % year.n();
    }
    WeatherSeries.Builder b = new WeatherSeries.Builder(start, step, n).about(year);
    for (Variable v : Variable.values()) {
      if (year.has(v)) {
        double[] column = new double[n];
        for (int i = 0; i < n; i++) {
          column[i] = year.value(v, from[i]);
        }
        b.column(v, column, year.stand(v));
      }
    }
    byte[] filled = new byte[n];
    for (int i = 0; i < n; i++) {
      for (Variable v : Variable.values()) {
        if (year.quality(v, from[i]) == Quality.FILLED) {
          filled[i] |= (byte) (1 << v.ordinal());
        }
      }
    }
    return b.filledBits(filled).build();
  }

  private static LocalDate date(long epochS) {
    return Instant.ofEpochSecond(epochS).atOffset(ZoneOffset.UTC).toLocalDate();
  }
}
