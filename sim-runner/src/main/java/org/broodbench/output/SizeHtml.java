package org.broodbench.output;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.broodbench.size.SizeReport;
import org.broodbench.size.Trial;

/** What sizing found, as a page. */
public final class SizeHtml {
  private static final int WIDTH = 640;
  private static final int HEIGHT = 300;
  private static final int LEFT = 70;
  private static final int BOTTOM = 50;
  private static final int TOP = 10;

  /** Labels nearer than this would lie on each other. */
  private static final double LINE = 16;

  private SizeHtml() {}

  /** The page. */
  public static String of(SizeReport r) {
    StringBuilder b = new StringBuilder();
    b.append("<section aria-labelledby=\"found-h\"><h2 id=\"found-h\">The answer</h2>");
    for (String sentence : SizeText.found(r)) {
      b.append("<p>").append(Markup.text(sentence)).append("</p>");
    }
    b.append("</section>\n");
    if (!r.curve().isEmpty()) {
      b.append("<section aria-labelledby=\"curve-h\"><h2 id=\"curve-h\">Panel against battery</h2>")
          .append(
              "<p>The cheapest battery for each panel, the other parts as in the cheapest rig.</p>")
          .append(picture(r))
          .append(table(r, r.curve(), "The cheapest battery for each panel"))
          .append("</section>\n");
    }
    if (r.byFirst().size() > 1) {
      String name = r.spec().parts().get(0).name();
      b.append("<section aria-labelledby=\"first-h\"><h2 id=\"first-h\">What ")
          .append(Markup.text(name))
          .append(" saves</h2>")
          .append(
              table(
                  r,
                  r.byFirst(),
                  "For each choice of " + name + " the cheapest " + SizeText.lastTwo(r)))
          .append("</section>\n");
    }
    b.append("<section aria-labelledby=\"all-h\"><h2 id=\"all-h\">All that was simulated</h2><p>")
        .append(r.trials().size())
        .append(" of ")
        .append(r.candidates())
        .append(
            " combinations; what is weaker than one that lacks warmth or charge lacks it too, and what is dearer is not looked for. ")
        .append(
            "A combination that fails is given up as soon as that is sure, so its hours without")
        .append(" heat are those of its hardest seasons.</p>")
        .append(table(r, r.trials(), "Combinations, cheapest first"))
        .append("</section>\n");
    return StudyPage.of(
        "Sizing: " + r.scenario().title(),
        SizeText.asked(r) + ". Weather: " + r.weather(),
        b.toString());
  }

  private static String table(SizeReport r, List<Trial> trials, String caption) {
    StringBuilder t = new StringBuilder(Tables.open(caption));
    t.append(
        Tables.head(
            "What is built in",
            "Reaches it",
            "Price, " + Markup.text(r.spec().currency()),
            "Mass",
            "Hours a season without heat",
            "Seasons met"));
    t.append("<tbody>");
    for (Trial x : trials) {
      t.append(
          Tables.row(
              Markup.text(String.join("; ", x.choices())),
              x.met() ? "yes" : "no",
              Quantity.plain(x.price(), 0),
              Quantity.plain(x.massKg(), 1) + " kg",
              Quantity.plain(x.lossOfLoadH(), 1),
              x.seasonsMet() + " of " + x.tried()));
    }
    return t.append("</tbody>").append(Tables.CLOSE).toString();
  }

  /**
   * The curve as a drawing: battery over panel, with the price at each point. Panels stand at equal
   * distances, since lists of them double from one to the next.
   */
  private static String picture(SizeReport r) {
    double mostWh = 1;
    for (Trial t : r.curve()) {
      mostWh = Math.max(mostWh, t.batteryWh());
    }
    StringBuilder s = new StringBuilder();
    s.append(
        String.format(
            Locale.ROOT,
            "<svg viewBox=\"0 0 %d %d\" role=\"img\" aria-label=\"Cheapest battery over panel power; the table below"
                + " has the numbers\" style=\"max-width:%dpx;width:100%%;height:auto\" stroke=\"currentColor\""
                + " fill=\"none\" font-size=\"13\">",
            WIDTH,
            HEIGHT,
            WIDTH));
    int floor = HEIGHT - BOTTOM;
    s.append(line(LEFT, floor, WIDTH - 10, floor)).append(line(LEFT, TOP, LEFT, floor));
    StringBuilder path = new StringBuilder();
    StringBuilder points = new StringBuilder();
    Set<Long> named = new HashSet<>();
    double slot = (WIDTH - LEFT - 20.0) / r.curve().size();
    for (int i = 0; i < r.curve().size(); i++) {
      Trial t = r.curve().get(i);
      double x = LEFT + slot * (i + 0.5);
      double y = floor - (floor - TOP - 30) * t.batteryWh() / mostWh;
      boolean best = t.equals(r.best());
      path.append(String.format(Locale.ROOT, "%s%.1f %.1f", path.isEmpty() ? "M" : "L", x, y));
      points.append(
          String.format(
              Locale.ROOT,
              "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"%d\" fill=\"currentColor\"/>",
              x,
              y,
              best ? 7 : 4));
      String price = String.format(Locale.ROOT, "%.0f %s", t.price(), r.spec().currency());
      points.append(text(x + 2, y - 12, "start", price));
      if (best) {
        points.append(text(x + 2, y - 26, "start", "cheapest"));
      }
      points.append(text(x, floor + 18, "middle", watts(t.pvW())));
      if (named.add(Math.round(y / LINE))) {
        String wh = String.format(Locale.ROOT, "%.0f Wh", t.batteryWh());
        points.append(text(LEFT - 6, y + 4, "end", wh)).append(line(LEFT - 4, y, LEFT, y));
      }
    }
    s.append("<path d=\"").append(path).append("\"/>").append(points);
    s.append(text(WIDTH / 2.0, HEIGHT - 8, "middle", "rated power of the panel"));
    s.append(text(LEFT - 6, TOP + 4, "end", "battery"));
    return s.append("</svg>").toString();
  }

  private static String watts(double w) {
    return String.format(Locale.ROOT, "%.0f W", w);
  }

  private static String line(double x1, double y1, double x2, double y2) {
    return String.format(Locale.ROOT, "<path d=\"M%.1f %.1fL%.1f %.1f\"/>", x1, y1, x2, y2);
  }

  private static String text(double x, double y, String anchor, String words) {
    return String.format(
        Locale.ROOT,
        "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\" fill=\"currentColor\" stroke=\"none\">%s</text>",
        x,
        y,
        anchor,
        Markup.text(words));
  }
}
