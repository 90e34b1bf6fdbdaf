package org.broodbench.sky;

import java.util.List;

/**
 * The usual weather of a place, month by month; the middle of each month holds its numbers and a
 * straight line joins them.
 *
 * @param months twelve, January first
 */
public record MonthlyNormals(List<Month> months) {
  /**
   * One month.
   *
   * @param meanMaxC mean of the daily highest temperature
   * @param meanMinC mean of the daily lowest temperature
   * @param dailySdK standard deviation of a day's mean temperature
   * @param clearness mean daily global irradiation over extraterrestrial, 0 to 1
   * @param wetDays share of days with rain or snow, 0 to 1
   * @param wetDayMm mean precipitation of such a day, mm
   * @param windMS mean wind at 10 m
   */
  public record Month(
      double meanMaxC,
      double meanMinC,
      double dailySdK,
      double clearness,
      double wetDays,
      double wetDayMm,
      double windMS) {}

  /** Checks that there are twelve. */
  public MonthlyNormals {
    months = List.copyOf(months);
    if (months.size() != 12) {
      throw new IllegalArgumentException("twelve months are needed, not " + months.size());
    }
  }

  /**
   * An upland valley at 47 degrees north and 900 m that does not exist: invented, own choice, in
   * the range that climate tables give for inner valleys of the Alps' rim.
   */
  public static final MonthlyNormals UPLAND_VALLEY =
      new MonthlyNormals(
          List.of(
              new Month(1.5, -7.0, 4.5, 0.40, 0.40, 5.0, 1.6),
              new Month(3.5, -6.5, 4.5, 0.45, 0.38, 5.0, 1.8),
              new Month(8.0, -2.5, 4.0, 0.46, 0.40, 5.5, 2.0),
              new Month(11.5, 0.5, 3.4, 0.44, 0.45, 6.0, 2.2),
              new Month(16.5, 4.8, 3.2, 0.46, 0.50, 7.0, 2.0),
              new Month(20.0, 8.5, 3.0, 0.47, 0.53, 9.0, 1.9),
              new Month(22.3, 10.5, 2.8, 0.49, 0.50, 9.5, 1.8),
              new Month(22.0, 10.2, 2.8, 0.48, 0.48, 9.5, 1.7),
              new Month(18.0, 6.8, 3.0, 0.47, 0.40, 8.0, 1.6),
              new Month(13.0, 2.6, 3.4, 0.44, 0.36, 6.5, 1.5),
              new Month(6.5, -1.8, 4.0, 0.38, 0.40, 6.0, 1.5),
              new Month(2.0, -6.0, 4.4, 0.36, 0.42, 5.5, 1.5)));

  /** The numbers of a day of the year, 1 to 366. */
  public Month at(int dayOfYear) {
    double x = (dayOfYear - 0.5) / 365.25 * 12 - 0.5;
    int i = (int) Math.floor(x);
    double f = x - i;
    Month a = months.get(Math.floorMod(i, 12));
    Month b = months.get(Math.floorMod(i + 1, 12));
    return new Month(
        mix(a.meanMaxC, b.meanMaxC, f),
        mix(a.meanMinC, b.meanMinC, f),
        mix(a.dailySdK, b.dailySdK, f),
        mix(a.clearness, b.clearness, f),
        mix(a.wetDays, b.wetDays, f),
        mix(a.wetDayMm, b.wetDayMm, f),
        mix(a.windMS, b.windMS, f));
  }

  private static double mix(double a, double b, double f) {
    return a + f * (b - a);
  }
}
