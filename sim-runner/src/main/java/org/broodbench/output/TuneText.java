package org.broodbench.output;

import java.util.List;
import java.util.Locale;
import org.broodbench.loop.Lengths;
import org.broodbench.tune.Aim;
import org.broodbench.tune.Scores;
import org.broodbench.tune.TuneReport;

/** A search for settings on a screen of text. */
public final class TuneText {
  private TuneText() {}

  /**
   * The text.
   *
   * @param now the present values of the knobs as people write them
   * @param recommended the recommended ones; empty for none
   */
  public static String of(TuneReport r, List<String> now, List<String> recommended) {
    StringBuilder t = new StringBuilder();
    line(
        t,
        "%s (%s): %s, %s on %s of %s, the controller every %s",
        r.scenario().title(),
        r.scenario().fileName(),
        Counted.of(r.candidates(), "candidate"),
        Counted.of(r.evaluations(), "evaluation"),
        Counted.of(r.spec().seasons(), "season"),
        Counted.of(r.spec().seasonDays(), "day"),
        Lengths.of(r.tickS()));
    line(t, "Weather: %s", r.weather());
    if (r.stopped()) {
      line(t, "STOPPED early; the same command goes on.");
    }
    t.append('\n');
    if (r.recommended() == null) {
      line(t, "Nothing is recommended: %s.", r.why());
      return t.toString();
    }
    line(t, "%-40s %12s %12s", "setting", "now", "recommended");
    for (int i = 0; i < now.size(); i++) {
      line(t, "%-40s %12s %12s", r.spec().knobs().get(i).path(), now.get(i), recommended.get(i));
    }
    t.append('\n');
    line(t, "Why: %s.%s", r.why(), TuneWords.refused(r.refused()));
    t.append('\n');
    line(t, "%-20s %12s %12s %14s %14s", "", "now", "recommended", "now, unseen", "rec., unseen");
    for (Aim aim : Aim.values()) {
      line(
          t,
          "%-20s %12s %12s %14s %14s",
          TuneWords.head(aim),
          TuneWords.score(aim, r.now().scores().get(aim)),
          TuneWords.score(aim, r.recommended().scores().get(aim)),
          unseen(aim, r.unseenNow()),
          unseen(aim, r.unseenRecommended()));
    }
    t.append('\n');
    line(
        t,
        "%d best trade-offs in tune.csv; a season is scored by mean, what hurts brood by mean and worst third.",
        r.front().size());
    return t.toString();
  }

  private static String unseen(Aim aim, Scores s) {
    return s == null ? "not run" : TuneWords.score(aim, s.get(aim));
  }

  private static void line(StringBuilder t, String pattern, Object... values) {
    t.append(String.format(Locale.ROOT, pattern, values).stripTrailing()).append('\n');
  }
}
