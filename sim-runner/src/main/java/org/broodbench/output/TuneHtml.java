package org.broodbench.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.loop.Lengths;
import org.broodbench.rig.TuneSpec;
import org.broodbench.tune.Aim;
import org.broodbench.tune.Judged;
import org.broodbench.tune.Scores;
import org.broodbench.tune.TuneReport;

/** A search for settings as one page of HTML. */
public final class TuneHtml {
  private static final int WIDE = 640;
  private static final int HIGH = 360;
  private static final int EDGE = 60;
  private static final int TOP = 34;

  private TuneHtml() {}

  /** The page; values of knobs as people write them, see {@link TuneText}. */
  public static String of(TuneReport r, List<String> now, List<String> recommended) {
    String what =
        String.format(
            Locale.ROOT,
            "%s in %s on %s of %s, the controller every %s, a third of them at the lowest, at the"
                + " scenario's own and at the highest published heat loss of small clusters. Weather: %s.",
            Counted.of(r.candidates(), "candidate"),
            Counted.of(r.evaluations(), "evaluation"),
            Counted.of(r.spec().seasons(), "season"),
            Counted.of(r.spec().seasonDays(), "day"),
            Lengths.of(r.tickS()),
            r.weather());
    StringBuilder body = new StringBuilder();
    if (r.stopped()) {
      body.append("<p><strong>Stopped early.</strong> The same command goes on from here.</p>");
    }
    body.append("<section aria-labelledby=\"rec-h\"><h2 id=\"rec-h\">Recommended</h2><p>")
        .append(Markup.text(Markup.capital(r.why())))
        .append(".")
        .append(TuneWords.refused(r.refused()))
        .append("</p>");
    if (r.recommended() != null) {
      settings(body, r, now, recommended);
      scores(body, r);
    }
    body.append("</section>");
    if (!r.front().isEmpty()) {
      picture(body, r);
      front(body, r);
    }
    return StudyPage.of("Settings: " + r.scenario().title(), what, body.toString());
  }

  private static void settings(
      StringBuilder out, TuneReport r, List<String> now, List<String> recommended) {
    out.append(Tables.open("Settings", "plain"))
        .append(Tables.head("Setting", "Now", "Recommended", "Searched between"))
        .append("<tbody>");
    for (int i = 0; i < now.size(); i++) {
      TuneSpec.Knob k = r.spec().knobs().get(i);
      boolean same = now.get(i).equals(recommended.get(i));
      out.append(
          Tables.row(
              "<code>" + Markup.text(k.path()) + "</code>",
              Markup.text(now.get(i)),
              same ? "the same" : "<b>" + Markup.text(recommended.get(i)) + "</b>",
              String.format(Locale.ROOT, "%s and %s", k.shown(k.low()), k.shown(k.high()))));
    }
    out.append("</tbody>").append(Tables.CLOSE);
  }

  private static void scores(StringBuilder out, TuneReport r) {
    out.append(Tables.open("A season, by the seasons searched and by others", "plain"))
        .append(Tables.head("Aim", "Now", "Recommended", "Now, unseen", "Recommended, unseen"))
        .append("<tbody>");
    for (Aim aim : Aim.values()) {
      out.append(
          Tables.row(
              Markup.text(TuneWords.head(aim)),
              TuneWords.score(aim, r.now().scores().get(aim)),
              TuneWords.score(aim, r.recommended().scores().get(aim)),
              unseen(aim, r.unseenNow()),
              unseen(aim, r.unseenRecommended())));
    }
    out.append("</tbody>").append(Tables.CLOSE);
  }

  private static String unseen(Aim aim, Scores s) {
    return s == null ? "not run" : TuneWords.score(aim, s.get(aim));
  }

  /** Energy across, hours out of band upwards; the recommended point and the present one named. */
  private static void picture(StringBuilder out, TuneReport r) {
    List<Judged> all = new ArrayList<>(r.front());
    all.add(r.now());
    double[] x = span(all, Aim.ENERGY);
    double[] y = span(all, Aim.OUT_OF_BAND);
    out.append("<section aria-labelledby=\"plane-h\"><h2 id=\"plane-h\">Best trade-offs</h2>")
        .append("<svg class=\"plane\" role=\"img\" viewBox=\"0 0 ")
        .append(WIDE)
        .append(' ')
        .append(HIGH)
        .append("\" aria-label=\"Hours out of band against energy\">");
    line(out, EDGE, HIGH - EDGE, WIDE - 10, HIGH - EDGE);
    line(out, EDGE, HIGH - EDGE, EDGE, TOP);
    label(out, WIDE / 2.0, HIGH - 12, "middle", "energy of heater and fan, Wh a season");
    label(out, EDGE, HIGH - 38, "start", TuneWords.score(Aim.ENERGY, x[0]));
    label(out, WIDE - 10, HIGH - 38, "end", TuneWords.score(Aim.ENERGY, x[1]));
    label(out, EDGE, 14, "start", "hours out of band a season");
    label(out, EDGE - 6, HIGH - EDGE, "end", TuneWords.score(Aim.OUT_OF_BAND, y[0]));
    label(out, EDGE - 6, TOP + 5, "end", TuneWords.score(Aim.OUT_OF_BAND, y[1]));
    for (Judged j : all) {
      double px = EDGE + (WIDE - 10 - EDGE) * (j.scores().get(Aim.ENERGY) - x[0]) / (x[1] - x[0]);
      double py =
          HIGH
              - EDGE
              - (HIGH - EDGE - TOP) * (j.scores().get(Aim.OUT_OF_BAND) - y[0]) / (y[1] - y[0]);
      boolean chosen = j == r.recommended();
      boolean now = j == r.now();
      out.append(
          String.format(
              Locale.ROOT,
              "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"%d\" fill=\"%s\" stroke=\"currentColor\"/>",
              px,
              py,
              chosen || now ? 6 : 3,
              chosen ? "var(--good)" : now ? "var(--sheet)" : "var(--edge)"));
      if (chosen || now) {
        boolean left = px > WIDE - 100;
        label(
            out,
            left ? px - 9 : px + 9,
            chosen && !now ? py + 16 : py - 9,
            left ? "end" : "start",
            now ? "now" : "recommended");
      }
    }
    out.append("</svg></section>");
  }

  private static double[] span(List<Judged> all, Aim aim) {
    double low = all.stream().mapToDouble(j -> j.scores().get(aim)).min().orElseThrow();
    double high = all.stream().mapToDouble(j -> j.scores().get(aim)).max().orElseThrow();
    return new double[] {low, high > low ? high : low + aim.grain()};
  }

  private static void line(StringBuilder out, double x1, double y1, double x2, double y2) {
    out.append(
        String.format(
            Locale.ROOT,
            "<line x1=\"%.0f\" y1=\"%.0f\" x2=\"%.0f\" y2=\"%.0f\" stroke=\"currentColor\"/>",
            x1,
            y1,
            x2,
            y2));
  }

  private static void label(StringBuilder out, double x, double y, String anchor, String text) {
    out.append(
        String.format(
            Locale.ROOT,
            "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\" font-size=\"13\" fill=\"currentColor\">%s</text>",
            x,
            y,
            anchor,
            Markup.text(text)));
  }

  private static void front(StringBuilder out, TuneReport r) {
    out.append("<section aria-labelledby=\"front-h\"><h2 id=\"front-h\">All of them</h2>")
        .append(Tables.open("Best trade-offs, by hours out of band", "grid"));
    List<String> head = new ArrayList<>(List.of(""));
    r.spec().knobs().forEach(k -> head.add(Markup.text(k.path().replaceAll("^controller\\.", ""))));
    for (Aim aim : Aim.values()) {
      head.add(Markup.text(TuneWords.head(aim)));
    }
    out.append(Tables.head(head.toArray(String[]::new))).append("<tbody>");
    out.append(row("now", r, r.now()));
    for (Judged j : r.front()) {
      out.append(row(j == r.recommended() ? "recommended" : "", r, j));
    }
    out.append("</tbody>").append(Tables.CLOSE).append("</section>");
  }

  private static String row(String name, TuneReport r, Judged j) {
    List<String> cells = new ArrayList<>();
    for (int i = 0; i < r.spec().knobs().size(); i++) {
      TuneSpec.Knob k = r.spec().knobs().get(i);
      cells.add(String.valueOf(k.shown(j.candidate().counts().get(i))));
    }
    for (Aim aim : Aim.values()) {
      cells.add(TuneWords.score(aim, j.scores().get(aim)));
    }
    return Tables.row(name, cells.toArray(String[]::new));
  }
}
