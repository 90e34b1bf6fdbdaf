package org.broodbench.input.weather;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.broodbench.sky.Place;
import org.broodbench.sky.Quality;
import org.broodbench.sky.Resample;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;

/**
 * Puts files together: different subjects over the time they share, at the longest of their steps;
 * or years of one station one after another.
 */
final class SeriesMerge {
  private SeriesMerge() {}

  /** True where each series begins after the one before has ended. */
  static boolean follow(List<WeatherSeries> files) {
    for (int i = 1; i < files.size(); i++) {
      if (files.get(i).startEpochS() < files.get(i - 1).endEpochS()) {
        return false;
      }
    }
    return true;
  }

  /** Joins series that follow one another, such as the years of one station. */
  static WeatherSeries join(List<WeatherSeries> files, ReadContext context) {
    ProblemList problems = context.problems();
    WeatherSeries head = files.get(0);
    WeatherSeries tail = files.get(files.size() - 1);
    int stepS = head.stepS();
    long rows = (tail.endEpochS() - head.startEpochS()) / stepS;
    if (rows > 4L * SeriesCollector.MOST_ROWS) {
      throw problems.fatal(0, 0, "time", rows + " records", "fewer", "Read fewer files.");
    }
    int n = (int) rows;
    double[][] columns = new double[Variable.values().length][];
    byte[] filled = new byte[n];
    List<String> warnings = new ArrayList<>();
    for (WeatherSeries w : files) {
      boolean same = w.stepS() == stepS && (w.startEpochS() - head.startEpochS()) % stepS == 0;
      int shift = (int) ((w.startEpochS() - head.startEpochS()) / stepS);
      for (String text : w.warnings()) {
        if (!warnings.contains(text)) {
          warnings.add(text);
        }
      }
      for (Variable v : Variable.values()) {
        if (!w.has(v)) {
          continue;
        }
        same &= w.stand(v).equals(head.stand(v)) && w.windHeightM() == head.windHeightM();
        int o = v.ordinal();
        if (columns[o] == null) {
          columns[o] = new double[n];
          Arrays.fill(columns[o], Double.NaN);
        }
        for (int i = 0; same && i < w.n(); i++) {
          columns[o][i + shift] = w.value(v, i);
          if (w.quality(v, i) == Quality.FILLED) {
            filled[i + shift] |= (byte) (1 << o);
          }
        }
      }
      if (!same) {
        throw problems.fatal(
            0, 0, "time", "files of different layouts", "files of one station and layout", "");
      }
      if (w.place().isPresent() && head.place().isPresent()) {
        warnOfDistance(head.place().get(), w.place().get(), warnings);
      }
    }
    Gaps gaps = new Gaps(context, head.startEpochS(), stepS, n, new int[n], filled);
    gaps.bridge(columns);
    problems.throwIfAny();
    warnings.addAll(gaps.warnings());
    WeatherSeries.Builder b = new WeatherSeries.Builder(head.startEpochS(), stepS, n).about(head);
    for (Variable v : Variable.values()) {
      if (columns[v.ordinal()] != null) {
        b.column(v, columns[v.ordinal()], head.stand(v));
      }
    }
    return b.filledBits(filled).warnings(warnings).build();
  }

  /** A variable comes from the first part that has it. */
  static WeatherSeries merge(List<WeatherSeries> files, ReadContext context) {
    ProblemList problems = context.problems();
    int stepS = files.stream().mapToInt(WeatherSeries::stepS).max().orElseThrow();
    List<WeatherSeries> parts = new ArrayList<>();
    for (WeatherSeries w : files) {
      parts.add(onStep(w, stepS, problems));
    }
    long start = parts.stream().mapToLong(WeatherSeries::startEpochS).max().orElseThrow();
    long end = parts.stream().mapToLong(WeatherSeries::endEpochS).min().orElseThrow();
    int n = (int) ((end - start) / stepS);
    if (n < 1) {
      throw problems.fatal(0, 0, "time", "files that share no time", "overlapping files", "");
    }
    double[][] columns = new double[Variable.values().length][];
    byte[] filled = new byte[n];
    List<String> warnings = new ArrayList<>();
    Optional<Place> place = Optional.empty();
    StringBuilder source = new StringBuilder();
    WeatherSeries.Builder b = new WeatherSeries.Builder(start, stepS, n);
    for (WeatherSeries w : parts) {
      if ((start - w.startEpochS()) % stepS != 0) {
        throw problems.fatal(
            0, 0, "time", "intervals that start at other minutes", "files on one grid", "");
      }
      int shift = (int) ((start - w.startEpochS()) / stepS);
      warnings.addAll(w.warnings());
      if (place.isPresent() && w.place().isPresent()) {
        warnOfDistance(place.get(), w.place().get(), warnings);
      }
      place = place.or(w::place);
      if (source.indexOf(w.source()) < 0) {
        source.append(source.length() > 0 ? "; " : "").append(w.source());
      }
      for (Variable v : Variable.values()) {
        int o = v.ordinal();
        if (columns[o] != null || !w.has(v)) {
          continue;
        }
        columns[o] = new double[n];
        for (int i = 0; i < n; i++) {
          columns[o][i] = w.value(v, i + shift);
          if (w.quality(v, i + shift) == Quality.FILLED) {
            filled[i] |= (byte) (1 << o);
          }
        }
        b.column(v, columns[o], w.stand(v));
        if (v == Variable.WIND) {
          b.windHeightM(w.windHeightM());
        }
      }
    }
    Gaps gaps = new Gaps(context, start, stepS, n, new int[n], filled);
    gaps.bridge(columns);
    problems.throwIfAny();
    warnings.addAll(gaps.warnings());
    return b.filledBits(filled)
        .place(place)
        .source(source.toString())
        .formatId(files.get(0).formatId())
        .warnings(warnings)
        .build();
  }

  private static WeatherSeries onStep(WeatherSeries w, int stepS, ProblemList problems) {
    if (stepS == w.stepS()) {
      return w;
    }
    // a series that starts within an interval of the longer step loses its beginning
    int skip = (int) Math.floorMod(-w.startEpochS(), (long) stepS) / w.stepS();
    boolean fits = stepS % w.stepS() == 0 && w.startEpochS() % w.stepS() == 0;
    if (!fits || w.n() - skip < stepS / w.stepS()) {
      throw problems.fatal(
          0, 0, "time", "a step of " + w.stepS() + " s", "steps that divide " + stepS + " s", "");
    }
    return Resample.coarser(from(w, skip), stepS / w.stepS());
  }

  private static WeatherSeries from(WeatherSeries w, int skip) {
    WeatherSeries.Builder b =
        new WeatherSeries.Builder(
            w.startEpochS() + (long) skip * w.stepS(), w.stepS(), w.n() - skip);
    for (Variable v : Variable.values()) {
      if (w.has(v)) {
        double[] c = new double[w.n() - skip];
        for (int i = 0; i < c.length; i++) {
          c[i] = w.value(v, i + skip);
        }
        b.column(v, c, w.stand(v));
      }
    }
    return b.about(w).build();
  }

  private static void warnOfDistance(Place a, Place b, List<String> warnings) {
    double north = (a.latitudeDeg() - b.latitudeDeg()) * 111.2;
    double east =
        (a.longitudeDeg() - b.longitudeDeg())
            * 111.2
            * StrictMath.cos(StrictMath.toRadians(a.latitudeDeg()));
    double km = StrictMath.sqrt(north * north + east * east);
    if (km > 5) {
      warnings.add(String.format(Locale.ROOT, "the files come from places %.0f km apart", km));
    }
  }
}
