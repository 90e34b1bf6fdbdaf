package org.broodbench.sky;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;

/** Whole years of weather that resemble a record. */
public final class MadeYears {
  private MadeYears() {}

  /** How years are made. */
  public enum Way {
    /** Runs of days of the record, set together anew ({@link BlockResampler}). */
    RUNS,
    /** From the months of the record alone ({@link WeatherGenerator}). */
    NORMALS;

    /** The word for it on the command line. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * Makes them; gaps of the record are bridged first.
   *
   * @param record at least 40 days for runs; every month and a place for normals
   * @param years how many, 1 to 100, from 1 January of the first
   * @param seed equal seeds give equal weather
   * @throws IllegalArgumentException in words, where the record does not do
   */
  public static WeatherSeries of(
      WeatherSeries record, Way way, int firstYear, int years, long seed) {
    if (years < 1 || years > 100) {
      throw new IllegalArgumentException("1 to 100 years, not " + years);
    }
    long first = LocalDate.of(firstYear, 1, 1).toEpochDay();
    int days = (int) (LocalDate.of(firstYear + years, 1, 1).toEpochDay() - first);
    if (way == Way.RUNS) {
      WeatherSeries whole = GapBridge.over(record, seed);
      return new BlockResampler(whole).season(BlockResampler.Draw.of(seed, first, days));
    }
    // the altitude moves the clearest sky alone, by a fortieth a kilometre: taken as 0 if unknown
    Place place =
        record
            .place()
            .or(
                () ->
                    record.coordinates().map(c -> new Place(c.latitudeDeg(), c.longitudeDeg(), 0)))
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "the record does not say its place (latitude, longitude)"));
    WeatherSeries made =
        WeatherGenerator.generate(
            new GeneratorSettings(
                seed,
                place,
                MonthlyNormals.of(record),
                first,
                days,
                List.of(),
                GeneratorSettings.Stress.NONE));
    WeatherSeries.Builder known = made.toBuilder();
    for (Variable v : Variable.values()) {
      if (made.has(v) && !record.has(v)) {
        // the record says nothing of it, so its months do not either
        known.column(v, null, made.stand(v));
      }
    }
    return known.build();
  }
}
