package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.broodbench.plant.Plant;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.ForcingSettings;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;

/**
 * The weather that a log went through: its own outdoor probe and sun where it has them, a record
 * for the rest.
 *
 * @param forcing over the observations
 * @param airMeasured whether the air comes from the log
 * @param sunMeasured whether the sun comes from the log or a measured record
 * @param notes where what came from
 */
record LogWeather(Forcing forcing, boolean airMeasured, boolean sunMeasured, List<String> notes) {
  private static final int STEP_S = 600;

  /** Holes of the outdoor probe up to this length are bridged by a straight line, s; own choice. */
  private static final long BRIDGE_S = 2 * 3600;

  /** A shaded probe answers to ten minutes of air; shorter swings are noise, s; own choice. */
  private static final long SMOOTH_S = 300;

  /** Copies the notes. */
  LogWeather {
    notes = List.copyOf(notes);
  }

  /**
   * Puts it together.
   *
   * @param record a weather record over the log, or null where the log has air and sun
   * @param measured whether the record was measured; otherwise it is made up
   * @throws LogRefused where air or sun are missing
   */
  static LogWeather of(
      FieldLog log,
      Observations seen,
      Scenario scenario,
      WeatherSeries record,
      boolean measured,
      ForcingSettings settings) {
    List<String> notes = new ArrayList<>();
    boolean air = log.has(LogColumn.OUTDOOR);
    boolean sun = log.has(LogColumn.SUN);
    if (record == null && !(air && sun)) {
      throw new LogRefused(
          0,
          "",
          air ? "no sunlight in the log" : "no outdoor temperature in the log",
          "a weather record beside it",
          "Give a weather file of the same time with --weather.");
    }
    WeatherSeries series = sun && (air || record != null) ? own(log, seen, record) : record;
    long toS = seen.startS() + (long) seen.steps() * Observations.STEP_S;
    Forcing forcing =
        Forcing.of(series, scenario.place(), seen.startS(), toS, Plant.planes(scenario), settings);
    if (air) {
      forcing = forcing.withAir(outdoor(log, forcing));
    }
    notes.add(
        air
            ? "outdoor air: the log's own probe"
            : "outdoor air: " + source(record) + ", as good as it is near");
    notes.add(
        sun
            ? "sun: the log's own"
            : "sun: "
                + source(record)
                + (measured ? "" : "; it was not measured, so solar gain and panel are not told"));
    return new LogWeather(forcing, air, sun || measured, notes);
  }

  private static String source(WeatherSeries record) {
    return record == null ? "none" : record.source();
  }

  /** Air, sun and wind of the log in even steps; holes of the sun take the mean day. */
  private static WeatherSeries own(FieldLog log, Observations seen, WeatherSeries record) {
    long start = Math.floorDiv(seen.startS(), (long) STEP_S) * STEP_S;
    long end = seen.startS() + (long) seen.steps() * Observations.STEP_S;
    int n = (int) ((end - start + STEP_S - 1) / STEP_S);
    double[] air = bins(log, LogColumn.OUTDOOR, start, n);
    fill(air);
    double[] sun = bins(log, LogColumn.SUN, start, n);
    int day = 86_400 / STEP_S;
    for (int i = 0; i < n; i++) {
      if (Double.isNaN(sun[i])) {
        double sum = 0;
        int there = 0;
        for (int j = i % day; j < n; j += day) {
          if (!Double.isNaN(sun[j])) {
            sum += sun[j];
            there++;
          }
        }
        sun[i] = there == 0 ? 0 : sum / there;
      }
    }
    if (record != null && !log.has(LogColumn.OUTDOOR)) {
      for (int i = 0; i < n; i++) {
        long at = start + (long) i * STEP_S;
        int r = (int) ((at - record.startEpochS()) / record.stepS());
        air[i] = r < 0 || r >= record.n() ? Double.NaN : record.value(Variable.AIR, r);
      }
    }
    WeatherSeries.Builder b =
        new WeatherSeries.Builder(start, STEP_S, n)
            .column(Variable.AIR, air, Stand.MEAN)
            .column(Variable.GHI, sun, Stand.MEAN)
            .source("the log's own probes")
            .formatId("field_log");
    if (log.has(LogColumn.WIND)) {
      double[] wind = bins(log, LogColumn.WIND, start, n);
      fill(wind);
      b.column(Variable.WIND, wind, Stand.MEAN).windHeightM(1);
    }
    return b.build();
  }

  private static double[] bins(FieldLog log, LogColumn c, long start, int n) {
    double[] sum = new double[n];
    int[] count = new int[n];
    double[] v = log.column(c);
    for (int i = 0; i < v.length; i++) {
      // a state at the stamp stands for the time around it
      int b = (int) Math.floorDiv(log.epochS()[i] - start, (long) STEP_S);
      if (b >= 0 && b < n && !Double.isNaN(v[i])) {
        sum[b] += v[i];
        count[b]++;
      }
    }
    for (int b = 0; b < n; b++) {
      sum[b] = count[b] == 0 ? Double.NaN : sum[b] / count[b];
    }
    return sum;
  }

  /** Straight lines over holes, level beyond the ends. */
  static void fill(double[] v) {
    int before = -1;
    for (int i = 0; i <= v.length; i++) {
      if (i < v.length && Double.isNaN(v[i])) {
        continue;
      }
      for (int k = before + 1; k < i; k++) {
        if (before < 0) {
          v[k] = i < v.length ? v[i] : Double.NaN;
        } else if (i == v.length) {
          v[k] = v[before];
        } else {
          v[k] = v[before] + (v[i] - v[before]) * (k - before) / (i - before);
        }
      }
      before = i;
    }
  }

  /** Air at the edges of the cells: the probe, across long holes the record moved onto it. */
  private static double[] outdoor(FieldLog log, Forcing base) {
    double[] record = base.edgeAirC();
    double[] shift = new double[record.length];
    Arrays.fill(shift, Double.NaN);
    double[] v = log.column(LogColumn.OUTDOOR);
    long[] at = log.epochS();
    long reach = Math.max(SMOOTH_S, log.stepS());
    int from = 0;
    double[] near = new double[record.length];
    Arrays.fill(near, Double.NaN);
    for (int k = 0; k < record.length; k++) {
      long t = base.startEpochS() + (long) k * Forcing.CELL_S;
      while (from < at.length && at[from] < t - reach) {
        from++;
      }
      double sum = 0;
      double weights = 0;
      for (int i = from; i < at.length && at[i] <= t + reach; i++) {
        if (!Double.isNaN(v[i])) {
          double w = 1 - Math.abs(at[i] - t) / (reach + 1.0);
          sum += w * v[i];
          weights += w;
        }
      }
      near[k] = weights == 0 ? Double.NaN : sum / weights;
      shift[k] = near[k] - record[k];
    }
    double[] straight = near.clone();
    fill(straight);
    fill(shift);
    int hole = 0;
    double[] out = new double[record.length];
    for (int k = 0; k < out.length; k++) {
      hole = Double.isNaN(near[k]) ? hole + 1 : 0;
      out[k] = straight[k];
      if ((long) hole * Forcing.CELL_S > BRIDGE_S) {
        for (int j = k - hole + 1; j <= k; j++) {
          out[j] = record[j] + shift[j];
        }
      }
    }
    return out;
  }
}
