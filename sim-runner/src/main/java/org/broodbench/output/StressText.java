package org.broodbench.output;

import java.util.Locale;
import org.broodbench.stress.StressReport;
import org.broodbench.stress.StressRow;
import org.broodbench.stress.StressWeek;

/** A stress study on a screen of text: each fault in the week where it is worst. */
public final class StressText {
  private static final String PATTERN = "%-34s %-12s %-48s %-24s %-17s %s";

  private StressText() {}

  /** The text. */
  public static String of(StressReport r) {
    StringBuilder t = new StringBuilder();
    line(
        t,
        "%s (%s), %s",
        r.scenario().title(),
        r.scenario().fileName(),
        Counted.of(r.weeks().size(), "week"));
    line(t, "Weather: %s", r.weather());
    for (StressWeek w : r.weeks()) {
      line(
          t,
          "  week of %s: air %.1f °C (lowest %.1f °C), sun %.2f kWh/m² a day",
          w.label(),
          w.stats().meanAirC(),
          w.stats().minAirC(),
          w.stats().ghiKWhM2Day());
    }
    t.append('\n');
    if (!r.whole()) {
      line(
          t,
          "STOPPED after %d of %d rows; the same command goes on.",
          r.rows().size(),
          r.planned());
    }
    long met = r.rows().stream().filter(StressRow::met).count();
    line(t, "%d of %d rows meet every requirement.", met, r.rows().size());
    line(
        t,
        "Each fault begins at nightfall of the first day, just after the keeper left, who comes every %.0f h.",
        r.scenario().run().visitEveryS() / 3600);
    boolean losses = r.plan().allLosses();
    line(t, losses ? "Its worst week and heat loss of the colony:" : "Its worst week:");
    t.append('\n');
    line(
        t,
        PATTERN,
        "fault",
        "harm after",
        "first to fail",
        "alarm",
        "seen in time",
        losses ? "loss" : "");
    for (StressRow row : StressWords.worst(r)) {
      line(
          t,
          PATTERN,
          row.title(),
          StressWords.harm(row),
          StressWords.first(row),
          StressWords.alarm(row),
          StressWords.inTime(row),
          losses ? row.loss().key() : "");
    }
    return t.toString();
  }

  private static void line(StringBuilder t, String pattern, Object... values) {
    t.append(String.format(Locale.ROOT, pattern, values).stripTrailing()).append('\n');
  }
}
