package org.broodbench.sky;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What matters of a season's weather for heat and sun, to compare made weather with a record. Daily
 * values of UTC days; anomalies are from the mean of the calendar month. Extremes are means over
 * years (a record of less than a year and a half is one), so that records of different length
 * compare.
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
 * @param wetSun correlation of wet days with the anomalies of irradiation; NaN without
 *     precipitation
 * @param windSun correlation of the anomalies of wind and irradiation
 * @param spellDays longest run of days of a year that are both colder and dimmer than their month
 * @param yearLowC lowest temperature of a year
 * @param hardestWeekKWh hardest seven days of a year for a small rig
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
    double wetSun,
    double windSun,
    double spellDays,
    double yearLowC,
    double hardestWeekKWh) {
  private static final double YEAR_DAYS = 365.25;

  /** Of a whole series. */
  public static WeatherStatistics of(WeatherSeries w) {
    DailySums d = DailySums.of(w);
    int n = d.days();
    double[] warm = anomalies(d, d.meanC());
    double[] sun = anomalies(d, d.ghiKWhM2());
    double[] wind = anomalies(d, d.windMS());
    double[] wet = new double[n];
    for (int k = 0; k < n; k++) {
      double mm = d.precipMm()[k];
      wet[k] = Double.isNaN(mm) ? Double.NaN : mm >= 0.1 ? 1 : 0;
    }
    double[] wetter = anomalies(d, wet);
    double[] sorted = d.meanC().clone();
    Arrays.sort(sorted);
    double ghi = mean(d.ghiKWhM2());
    int years = (int) Math.max(1, Math.round(n / YEAR_DAYS));
    double spells = 0;
    double lows = 0;
    double hardest = 0;
    for (int y = 0; y < years; y++) {
      int a = (int) ((long) n * y / years);
      int b = (int) ((long) n * (y + 1) / years);
      spells += (double) longestSpell(warm, sun, a, b) / years;
      lows += lowest(d.lowC(), a, b) / years;
      long from = (d.firstEpochDay() + a) * 86400 - w.stepS() / 2;
      long to = (d.firstEpochDay() + b) * 86400 + w.stepS() / 2;
      var worst = WorstWindows.find(years == 1 ? w : w.between(from, to), 1);
      hardest += worst.isEmpty() ? Double.NaN : worst.get(0).hardnessKWh() / years;
    }
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
        correlation(warm, sun),
        mean(wet),
        mean(d.precipMm()),
        mean(d.windMS()),
        correlation(wetter, sun),
        correlation(wind, sun),
        spells,
        lows,
        hardest);
  }

  private static int longestSpell(double[] warm, double[] sun, int a, int b) {
    int longest = 0;
    int run = 0;
    for (int k = a; k < b; k++) {
      run = warm[k] < 0 && sun[k] < 0 ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
    return longest;
  }

  private static double lowest(double[] x, int a, int b) {
    double low = Double.NaN;
    for (int k = a; k < b; k++) {
      low = low <= x[k] ? low : x[k];
    }
    return low;
  }

  private static double correlation(double[] a, double[] b) {
    return product(a, b, 0) / StrictMath.sqrt(product(a, a, 0) * product(b, b, 0));
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

  /** The numbers by name, units in the names, in the order of a table. */
  public Map<String, Double> byName() {
    Map<String, Double> m = new LinkedHashMap<>();
    m.put("days", (double) days);
    m.put("mean_air_c", meanC);
    m.put("mean_low_c", meanLowC);
    m.put("mean_high_c", meanHighC);
    m.put("daily_sd_k", dailySdK);
    m.put("day_to_day_correlation", memory);
    m.put("cold_tenth_c", coldTenthC);
    m.put("year_low_c", yearLowC);
    m.put("ghi_kwh_m2_day", ghiKWhM2Day);
    m.put("ghi_sd_share", ghiSdShare);
    m.put("warm_sun_correlation", warmSun);
    m.put("wet_days_share", wetDays);
    m.put("precip_mm_day", precipMmDay);
    m.put("wet_sun_correlation", wetSun);
    m.put("wind_m_s", windMS);
    m.put("wind_sun_correlation", windSun);
    m.put("cold_dim_spell_days", spellDays);
    m.put("hardest_week_kwh", hardestWeekKWh);
    return m;
  }
}
