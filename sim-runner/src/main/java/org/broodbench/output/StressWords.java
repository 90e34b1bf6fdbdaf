package org.broodbench.output;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.broodbench.stress.Gauge;
import org.broodbench.stress.StressReport;
import org.broodbench.stress.StressRow;

/** How a row of a stress study is told. */
final class StressWords {
  private StressWords() {}

  /**
   * The worst row first: harm that the fault does or hastens, soonest first; then harm that comes
   * anyway; then most requirements missed.
   */
  static final Comparator<StressRow> WORST_FIRST =
      Comparator.comparing(StressWords::anyway)
          .thenComparingDouble(x -> orLast(x.hoursToHarm()))
          .thenComparingInt(x -> -x.missed().size())
          .thenComparingDouble(x -> orLast(x.hoursToFirst()))
          .thenComparingDouble(x -> x.figures().inBandPercent());

  /** For each fault its worst row, of whatever week and heat loss. */
  static List<StressRow> worst(StressReport r) {
    Map<String, StressRow> worst = new LinkedHashMap<>();
    for (StressRow row : r.rows()) {
      worst.merge(row.fault(), row, (a, b) -> WORST_FIRST.compare(b, a) < 0 ? b : a);
    }
    return new ArrayList<>(worst.values());
  }

  static double orLast(double hours) {
    return Double.isNaN(hours) ? Double.POSITIVE_INFINITY : hours;
  }

  static String hours(double h) {
    return Double.isNaN(h) ? "–" : String.format(Locale.ROOT, h < 10 ? "%.1f h" : "%.0f h", h);
  }

  /** Hours to harm; said where it comes without the fault as well. */
  static String harm(StressRow row) {
    if (Double.isNaN(row.hoursToHarm())) {
      return "none";
    }
    return hours(row.hoursToHarm()) + (anyway(row) && !row.fault().equals("none") ? " anyway" : "");
  }

  /** Whether there is harm, but hardly sooner than without the fault. */
  private static boolean anyway(StressRow row) {
    return row.hoursToHarmWithout() <= row.hoursToHarm() + 1;
  }

  static String first(StressRow row) {
    return row.firstFails() == null
        ? "nothing more"
        : row.firstFails().words() + " after " + hours(row.hoursToFirst());
  }

  static String alarm(StressRow row) {
    return row.alarm() == null ? "none" : row.alarm() + " after " + hours(row.hoursToAlarm());
  }

  /** Whether the keeper would have seen it in time. */
  static String inTime(StressRow row) {
    if (row.inTime() == null) {
      return row.sees().isEmpty() ? "no harm, not seen" : "no harm";
    }
    return row.inTime() ? "yes" : row.sees().isEmpty() ? "no, not seen" : "no, too late";
  }

  static String gauge(Gauge g) {
    if (g.dark()) {
      return "dark";
    }
    return String.format(
        Locale.ROOT,
        "%s (%s to %s), %s, %.1f h of heat",
        value(g.broodC(), "°C"),
        value(g.broodLowC(), "°C"),
        value(g.broodHighC(), "°C"),
        value(g.volts(), "V"),
        g.heaterH());
  }

  private static String value(double x, String unit) {
    return Double.isNaN(x) ? "no " + unit : String.format(Locale.ROOT, "%.1f %s", x, unit);
  }
}
