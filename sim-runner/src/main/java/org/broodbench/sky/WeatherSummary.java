package org.broodbench.sky;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What is in a weather series. Means are over the values that are there; NaN where there is none.
 *
 * @param formatId layout of the file
 * @param source who measured it
 * @param rows number of records
 * @param stepS length of a record
 * @param fromEpochS start of the first
 * @param toEpochS end of the last
 * @param missing records without a value, for each variable
 * @param filledHours hours in which a value was put in
 * @param meanAirC mean air temperature
 * @param meanGhiKWhM2Day mean daily global irradiation
 * @param precipMm sum of the precipitation
 * @param monthly the months in order of time, by UTC
 * @param warnings of the reader and of {@link SeriesCheck}
 */
public record WeatherSummary(
    String formatId,
    String source,
    int rows,
    int stepS,
    long fromEpochS,
    long toEpochS,
    Map<Variable, Integer> missing,
    double filledHours,
    double meanAirC,
    double meanGhiKWhM2Day,
    double precipMm,
    List<Month> monthly,
    List<String> warnings) {

  /**
   * One month.
   *
   * @param month as 2000-01
   */
  public record Month(
      String month,
      double meanAirC,
      double minAirC,
      double maxAirC,
      double ghiKWhM2Day,
      double precipMm,
      double meanRhPercent,
      double meanWindMS) {}

  /** Copies the collections. */
  public WeatherSummary {
    missing = Map.copyOf(missing);
    monthly = List.copyOf(monthly);
    warnings = List.copyOf(warnings);
  }

  /** Sums a series up. */
  public static WeatherSummary of(WeatherSeries w) {
    Map<Variable, Integer> missing = new EnumMap<>(Variable.class);
    for (Variable v : Variable.values()) {
      missing.put(v, w.missing(v));
    }
    List<Month> months = new ArrayList<>();
    int from = 0;
    LocalDate date = date(w, 0);
    for (int i = 1; i <= w.n(); i++) {
      LocalDate next = i == w.n() ? null : date(w, i);
      if (next == null || next.getMonthValue() != date.getMonthValue()) {
        WindowStats s = WindowStats.of(w, from, i);
        months.add(
            new Month(
                date.toString().substring(0, 7),
                s.meanAirC(),
                s.minAirC(),
                s.maxAirC(),
                s.ghiKWhM2Day(),
                s.precipMm(),
                s.meanRhPercent(),
                s.meanWindMS()));
        from = i;
        date = next;
      }
    }
    WindowStats all = WindowStats.of(w, 0, w.n());
    return new WeatherSummary(
        w.formatId(),
        w.source(),
        w.n(),
        w.stepS(),
        w.startEpochS(),
        w.endEpochS(),
        missing,
        w.filledHours(),
        all.meanAirC(),
        all.ghiKWhM2Day(),
        all.precipMm(),
        months,
        w.warnings());
  }

  /** Day in which the middle of a record lies. */
  private static LocalDate date(WeatherSeries w, int i) {
    long middle = w.startEpochS() + (long) i * w.stepS() + w.stepS() / 2;
    return Instant.ofEpochSecond(middle).atOffset(ZoneOffset.UTC).toLocalDate();
  }
}
