package org.broodbench.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.size.SizeReport;
import org.broodbench.size.Trial;
import org.broodbench.study.Cautions;

/** What sizing found, on a screen of text. */
public final class SizeText {
  private SizeText() {}

  /** The text. */
  public static String of(SizeReport r) {
    StringBuilder t = new StringBuilder();
    line(t, "%s: %s", r.scenario().title(), asked(r));
    line(t, "Weather: %s", r.weather());
    t.append('\n');
    for (String sentence : found(r)) {
      line(t, "%s", sentence);
    }
    if (!r.curve().isEmpty()) {
      t.append("\nThe smallest battery for each panel, the other parts as in the cheapest rig:\n");
      r.curve().forEach(x -> line(t, "  %s", words(r, x)));
    }
    if (r.byFirst().size() > 1) {
      line(t, "\nThe cheapest rig for each choice of %s:", r.spec().parts().get(0).name());
      r.byFirst().forEach(x -> line(t, "  %s", words(r, x)));
    }
    line(
        t,
        "\n%d of %d combinations were simulated; the others follow from them.",
        r.trials().size(),
        r.candidates());
    line(t, "Caution: %s", Cautions.all().get(0));
    return t.toString();
  }

  static String asked(SizeReport r) {
    return String.format(
        Locale.ROOT,
        "at most %.0f h a season with the heat shed for want of charge, and every requirement in %.0f %% of %d seasons of"
            + " %d days",
        r.spec().lossOfLoadH(),
        100 * r.spec().reliability(),
        r.seasons(),
        r.days());
  }

  /** The answer in sentences. */
  static List<String> found(SizeReport r) {
    List<String> all = new ArrayList<>();
    if (!r.whole()) {
      all.add("The search was ended before its end; the same command goes on with it.");
    }
    if (r.best() == null) {
      all.add(
          r.whole()
              ? "None of the combinations reaches it. Look at what the strongest misses with run."
              : "Nothing found so far.");
      return all;
    }
    all.add("Cheapest: " + words(r, r.best()));
    all.add(
        String.format(
            Locale.ROOT,
            "Its loads take %.0f Wh a day; one more day of autonomy is %.0f Wh more battery, if half of it is used%s",
            r.best().dailyWh(),
            r.dayOfBatteryWh(),
            nextDay(r)));
    return all;
  }

  /** What that battery costs, by the prices of the list. */
  private static String nextDay(SizeReport r) {
    double wanted = r.best().batteryWh() + r.dayOfBatteryWh();
    Trial next = null;
    for (Trial t : r.trials()) {
      boolean same = t.pvW() == r.best().pvW() && first(t).equals(first(r.best()));
      if (same && t.batteryWh() >= wanted && (next == null || t.price() < next.price())) {
        next = t;
      }
    }
    return next == null
        ? "."
        : String.format(
            Locale.ROOT, ": %.0f %s.", next.price() - r.best().price(), r.spec().currency());
  }

  private static String first(Trial t) {
    return t.choices().get(0);
  }

  static String words(SizeReport r, Trial t) {
    return String.format(
        Locale.ROOT,
        "%s; %.0f %s, %.1f kg; %.1f h a season without heat, %d of %d seasons met",
        String.join("; ", t.choices()),
        t.price(),
        r.spec().currency(),
        t.massKg(),
        t.lossOfLoadH(),
        t.seasonsMet(),
        t.tried());
  }

  private static void line(StringBuilder t, String pattern, Object... values) {
    t.append(String.format(Locale.ROOT, pattern, values)).append('\n');
  }
}
