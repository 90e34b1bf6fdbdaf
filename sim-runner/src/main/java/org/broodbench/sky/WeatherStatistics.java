package org.broodbench.sky;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Locale;

/**
 * What matters of a season's weather for heat and sun, to compare made weather with a record. Daily
 * values of UTC days; anomalies are from the mean of the calendar month.
 *
 * @param days number of days
 * @param meanC mean temperature
 * @param meanLowC mean of the daily lowest
 * @param meanHighC mean of the daily highest
 * @param dailySdK standard deviation of the anomalies of the daily mean
 * @param memory correlation of an anomaly with that of the next day
 * @param coldTenthC daily mean that one day in ten is below
 * @param ghiKWhM2Day mean irradiation
 * @param ghiSdShare standard deviation of the month's irradiation anomalies over their mean
 * @param warmSun correlation of the anomalies of temperature and irradiation
 * @param wetDays share of days with at least 0.1 mm; NaN without precipitation
 * @param precipMmDay mean precipitation
 * @param windMS mean wind
 * @param hardestWeekKWh hardest seven days for a small rig
 */
public record WeatherStatistics(
    int days,
    double meanC,
    double meanLowC,
    double meanHighC,
    double dailySdK,
    double memory,
    double coldTenthC,
    double ghiKWhM2Day,
    double ghiSdShare,
    double warmSun,
    double wetDays,
    double precipMmDay,
    double windMS,
    double hardestWeekKWh) {

  /** Of a whole series. */
  public static WeatherStatistics of(WeatherSeries w) {
    DailySums d = DailySums.of(w);
    int n = d.days();
    double[] warm = anomalies(d, d.meanC());
    double[] sun = anomalies(d, d.ghiKWhM2());
    double wet = 0;
    for (double mm : d.precipMm()) {
      wet += Double.isNaN(mm) ? Double.NaN : mm >= 0.1 ? 1 : 0;
    }
    double[] sorted = d.meanC().clone();
    Arrays.sort(sorted);
    double ghi = mean(d.ghiKWhM2());
    var hardest = WorstWindows.find(w, 1);
    return new WeatherStatistics(
        n,
        mean(d.meanC()),
        mean(d.lowC()),
        mean(d.highC()),
        StrictMath.sqrt(product(warm, warm, 0)),
        product(warm, warm, 1) / product(warm, warm, 0),
        sorted[n / 10],
        ghi,
        StrictMath.sqrt(product(sun, sun, 0)) / ghi,
        product(warm, sun, 0) / StrictMath.sqrt(product(warm, warm, 0) * product(sun, sun, 0)),
        wet / n,
        mean(d.precipMm()),
        mean(d.windMS()),
        hardest.isEmpty() ? Double.NaN : hardest.get(0).hardnessKWh());
  }

  private static double[] anomalies(DailySums d, double[] x) {
    double[] sum = new double[12];
    int[] count = new int[12];
    int[] month = new int[x.length];
    for (int k = 0; k < x.length; k++) {
      month[k] = LocalDate.ofEpochDay(d.firstEpochDay() + k).getMonthValue() - 1;
      if (!Double.isNaN(x[k])) {
        sum[month[k]] += x[k];
        count[month[k]]++;
      }
    }
    double[] out = new double[x.length];
    for (int k = 0; k < x.length; k++) {
      out[k] = x[k] - sum[month[k]] / count[month[k]];
    }
    return out;
  }

  private static double mean(double[] x) {
    double sum = 0;
    int n = 0;
    for (double v : x) {
      if (!Double.isNaN(v)) {
        sum += v;
        n++;
      }
    }
    return n == 0 ? Double.NaN : sum / n;
  }

  /** Mean product of a day's value and that of {@code lag} days later. */
  private static double product(double[] a, double[] b, int lag) {
    double sum = 0;
    int n = 0;
    for (int k = 0; k + lag < a.length; k++) {
      double p = a[k] * b[k + lag];
      if (!Double.isNaN(p)) {
        sum += p;
        n++;
      }
    }
    return n == 0 ? Double.NaN : sum / n;
  }

  /** One line of a comparison table. */
  public String row(String name) {
    return String.format(
        Locale.ROOT,
        "| %s | %d | %.1f | %.1f | %.1f | %.1f | %.2f | %.1f | %.2f | %.2f | %.2f | %.2f | %.1f |"
            + " %.1f | %.2f |",
        name,
        days,
        meanC,
        meanLowC,
        meanHighC,
        dailySdK,
        memory,
        coldTenthC,
        ghiKWhM2Day,
        ghiSdShare,
        warmSun,
        wetDays,
        precipMmDay,
        windMS,
        hardestWeekKWh);
  }

  /** Header of the comparison table. */
  public static String header() {
    return "| weather | days | mean degC | low | high | sd K | memory | cold tenth | kWh/m2/d |"
        + " sun sd/mean | warm-sun | wet days | mm/d | wind m/s | hardest week kWh |\n"
        + "| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |"
        + " --- |";
  }
}
