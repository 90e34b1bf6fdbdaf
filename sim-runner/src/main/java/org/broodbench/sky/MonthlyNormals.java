package org.broodbench.sky;

import java.time.LocalDate;
import java.util.ArrayList;
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

  /**
   * The normals of a record, to make more weather like it.
   *
   * @param w a year or more, with a place or coordinates; every month must be in it
   */
  public static MonthlyNormals of(WeatherSeries w) {
    double latitude =
        w.coordinates()
            .orElseThrow(() -> new IllegalArgumentException("a record without coordinates"))
            .latitudeDeg();
    DailySums d = DailySums.of(w);
    double toTenM = w.windHeightM() > 0.1 ? Wind.logRatio(w.windHeightM(), 10, 0.03) : 1;
    double[][] sums = new double[12][7];
    int[] days = new int[12];
    double[] meanC = new double[12];
    for (int pass = 0; pass < 2; pass++) {
      for (int k = 0; k < d.days(); k++) {
        LocalDate date = LocalDate.ofEpochDay(d.firstEpochDay() + k);
        int m = date.getMonthValue() - 1;
        if (Double.isNaN(d.meanC()[k]) || Double.isNaN(d.ghiKWhM2()[k])) {
          continue;
        }
        if (pass == 1) {
          double off = d.meanC()[k] - meanC[m] / days[m];
          sums[m][2] += off * off;
          continue;
        }
        int n = date.getDayOfYear();
        double outside =
            Almanac.dailyMJ(
                    latitude,
                    Almanac.cooperDeclinationDeg(n),
                    Irradiance.SOLAR_CONSTANT_W_M2 * Irradiance.spencerDistanceFactor(n))
                / 3.6;
        double mm = d.precipMm()[k];
        days[m]++;
        meanC[m] += d.meanC()[k];
        sums[m][0] += d.highC()[k];
        sums[m][1] += d.lowC()[k];
        sums[m][3] += d.ghiKWhM2()[k] / Math.max(outside, 0.05);
        sums[m][4] += mm >= 0.1 ? 1 : 0;
        sums[m][5] += mm >= 0.1 ? mm : 0;
        sums[m][6] += Double.isNaN(d.windMS()[k]) ? 2 : d.windMS()[k] * toTenM;
      }
    }
    List<Month> months = new ArrayList<>();
    for (int m = 0; m < 12; m++) {
      if (days[m] == 0) {
        throw new IllegalArgumentException("the record has no day of month " + (m + 1));
      }
      double[] s = sums[m];
      int n = days[m];
      months.add(
          new Month(
              s[0] / n,
              s[1] / n,
              StrictMath.sqrt(s[2] / n),
              s[3] / n,
              s[4] / n,
              s[4] > 0 ? s[5] / s[4] : 0,
              s[6] / n));
    }
    return new MonthlyNormals(months);
  }

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
