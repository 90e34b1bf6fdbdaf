package org.broodbench.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.broodbench.rig.SizeSpec;
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
      t.append(
          "\nPanel against battery: the cheapest battery for each panel, the other parts as in the cheapest rig:\n");
      r.curve().forEach(x -> line(t, "  %s", words(r, x)));
    }
    if (r.byFirst().size() > 1) {
      line(
          t,
          "\nFor each choice of %s the cheapest %s, the rest as in the cheapest rig:",
          r.spec().parts().get(0).name(),
          lastTwo(r));
      r.byFirst().forEach(x -> line(t, "  %s", words(r, x)));
    }
    line(
        t,
        "\n%d of %s were simulated, %s; the others follow from them or are dearer.",
        r.trials().size(),
        Counted.of(r.candidates(), "combination"),
        Counted.of(r.seasonsRun(), "season"));
    if (r.best() != null) {
      line(
          t,
          "Look at the cheapest: run%s",
          r.best().settings().stream()
              .map(s -> " --set \"" + s + "\"")
              .collect(Collectors.joining()));
    }
    line(t, "Caution: %s", Cautions.all().get(0));
    return t.toString();
  }

  static String asked(SizeReport r) {
    return String.format(
        Locale.ROOT,
        "at most %.0f h a season (%.1f %% of the time) with the heat shed for want of charge, and every requirement in %.0f %% of %d seasons of"
            + " %d days",
        r.spec().lossOfLoadH(),
        100 * r.lossOfLoadShare(),
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
    if (r.autonomy() != null) {
      all.add(autonomy(r, r.autonomy()));
    }
    first(r, all);
    return all;
  }

  private static String autonomy(SizeReport r, SizeReport.Autonomy a) {
    return String.format(
        Locale.ROOT,
        "One more day of autonomy: its loads take %.0f Wh on the day that takes most in the hardest season; of a battery of which %.0f %% may be used that is %.0f Wh (%.0f Wh are there). %s",
        a.dayWh(),
        100 * r.best().usedShare(),
        a.batteryWh(),
        r.best().batteryWh(),
        a.larger().isEmpty()
            ? "No battery of its kind in the list is that much larger."
            : String.format(
                Locale.ROOT,
                "%s costs %.0f %s more and adds %.1f days.",
                a.larger(),
                a.price(),
                r.spec().currency(),
                a.days()));
  }

  /** What the first part saves in all others. */
  private static void first(SizeReport r, List<String> all) {
    SizeSpec.Part part = r.spec().parts().get(0);
    int best = -1;
    for (int i = 0; i < part.choices().size(); i++) {
      best = name(part, i).equals(r.best().choices().get(0)) ? i : best;
    }
    for (int i = 0; i < part.choices().size(); i++) {
      String name = name(part, i);
      double here = part.choices().get(best).price() - part.choices().get(i).price();
      Trial other = null;
      for (Trial t : r.byFirst()) {
        other = t.choices().get(0).equals(name) ? t : other;
      }
      if (here > 0 && other != null) {
        all.add(
            String.format(
                Locale.ROOT,
                "%s instead of %s costs %.0f %s and saves %.0f %s of %s.",
                r.best().choices().get(0),
                name,
                here,
                r.spec().currency(),
                here + other.price() - r.best().price(),
                r.spec().currency(),
                lastTwo(r)));
      } else if (other == null && r.whole()) {
        all.add(
            "With "
                + name
                + " and the rest as in the cheapest rig no "
                + lastTwo(r)
                + " of the list reaches it.");
      }
    }
  }

  static String lastTwo(SizeReport r) {
    List<SizeSpec.Part> parts = r.spec().parts();
    return parts.stream()
        .skip(Math.max(1, parts.size() - 2))
        .map(SizeSpec.Part::name)
        .collect(Collectors.joining(" and "));
  }

  private static String name(SizeSpec.Part part, int choice) {
    return part.name() + " " + part.choices().get(choice).label();
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
