package org.broodbench.output;

import java.util.List;
import java.util.Locale;
import org.broodbench.sky.RigClass;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSummary;
import org.broodbench.sky.WorstWindows;

/** The description of a weather file on a screen of text. */
public final class WeatherText {
  private WeatherText() {}

  /** The text; temperatures in °F where asked for. */
  public static String of(
      WeatherSummary w, List<WorstWindows.Window> worst, RigClass rig, boolean fahrenheit) {
    StringBuilder t = new StringBuilder();
    line(t, "%s (format %s)", w.source(), w.formatId());
    line(
        t,
        "%s to %s, %d records of %d min",
        Stamps.of(w.fromEpochS(), 0),
        Stamps.of(w.toEpochS(), 0),
        w.rows(),
        w.stepS() / 60);
    StringBuilder missing = new StringBuilder();
    for (Variable v : Variable.values()) {
      int n = w.missing().get(v);
      if (n > 0) {
        missing.append(missing.isEmpty() ? "" : ", ").append(v.column()).append(' ');
        missing.append(n == w.rows() ? "not in the file" : String.valueOf(n));
      }
    }
    line(
        t, "Missing: %s; filled: %.1f h", missing.isEmpty() ? "nothing" : missing, w.filledHours());
    line(
        t,
        "Mean air %s, sun %.2f kWh/m² a day, precipitation %.0f mm",
        SummaryText.temperature(w.meanAirC(), fahrenheit),
        w.meanGhiKWhM2Day(),
        w.precipMm());
    t.append('\n');
    line(
        t,
        "%-8s %18s %10s %8s %8s",
        "month",
        "air mean (min/max)",
        "sun kWh/m²d",
        "rain mm",
        "wind m/s");
    for (WeatherSummary.Month m : w.monthly()) {
      line(
          t,
          "%-8s %18s %10.2f %8.1f %8.1f",
          m.month(),
          range(m.meanAirC(), m.minAirC(), m.maxAirC(), fahrenheit),
          m.ghiKWhM2Day(),
          m.precipMm(),
          m.meanWindMS());
    }
    t.append('\n');
    line(
        t,
        "Hardest windows by heat need minus sun (%.2f W/K below %.0f °C, %.3f kWh harvested per kWh/m²):",
        rig.conductanceWPerK(),
        rig.baseC(),
        rig.harvestKWh());
    for (WorstWindows.Window x : worst) {
      line(
          t,
          "  %s, %d days: air %s, sun %.2f kWh/m² a day, precipitation %.1f mm, %.2f kWh",
          Stamps.of(x.fromEpochS(), 0).substring(0, 10),
          x.days(),
          range(x.stats().meanAirC(), x.stats().minAirC(), x.stats().maxAirC(), fahrenheit),
          x.stats().ghiKWhM2Day(),
          x.stats().precipMm(),
          x.hardnessKWh());
    }
    for (String warning : w.warnings()) {
      line(t, "Warning: %s", warning);
    }
    return t.toString();
  }

  private static String range(double mean, double low, double high, boolean fahrenheit) {
    double scale = fahrenheit ? 1.8 : 1;
    double zero = fahrenheit ? 32 : 0;
    return String.format(
        Locale.ROOT,
        "%.1f (%.1f/%.1f)",
        mean * scale + zero,
        low * scale + zero,
        high * scale + zero);
  }

  private static void line(StringBuilder t, String pattern, Object... values) {
    t.append(String.format(Locale.ROOT, pattern, values)).append('\n');
  }
}
