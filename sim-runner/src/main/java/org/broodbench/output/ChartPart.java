package org.broodbench.output;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.broodbench.loop.Trace;
import org.broodbench.study.Outcome;

/** The frames of the charts, their keys, and the same in numbers. The script draws into them. */
final class ChartPart {
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("d MMM HH:mm", Locale.ENGLISH).withZone(ZoneOffset.UTC);

  private final Outcome o;
  private final Markup m;

  ChartPart(Outcome outcome, Markup markup) {
    o = outcome;
    m = markup;
  }

  String html(List<ChartPlan> charts) {
    StringBuilder out = new StringBuilder();
    out.append("<section id=\"charts\" aria-labelledby=\"charts-h\">");
    out.append("<h2 id=\"charts-h\">The run in pictures</h2>");
    out.append(
        "<p>All pictures show the same stretch of time, in UTC; nights are shaded. Drag across one"
            + " to look closer, or use the buttons. The slider picks a moment, and every line's"
            + " value there stands beside its name. Press a name to hide its line.</p>");
    out.append(toolbar());
    for (ChartPlan c : charts) {
      out.append(figure(c));
    }
    return out.append("</section>").toString();
  }

  private static String toolbar() {
    StringBuilder out = new StringBuilder();
    out.append("<div class=\"tools needs-script\" role=\"group\" aria-label=\"Time shown\">");
    out.append("<div class=\"buttons\">");
    String[][] buttons = {
      {"zoom-in", "Closer"},
      {"zoom-out", "Wider"},
      {"earlier", "Earlier"},
      {"later", "Later"},
      {"worst", "Coldest night"},
      {"whole", "Whole run"}
    };
    for (String[] b : buttons) {
      out.append(
          String.format(Locale.ROOT, "<button type=\"button\" id=\"%s\">%s</button>", b[0], b[1]));
    }
    out.append("</div>");
    out.append("<p class=\"range\">Shown: <output id=\"range\" aria-live=\"polite\"></output></p>");
    out.append(
        "<p class=\"moment\"><label for=\"moment\">Moment</label> <input type=\"range\""
            + " id=\"moment\" min=\"0\" max=\"1\" value=\"0\"> <span id=\"moment-text\"></span></p>");
    return out.append("</div>").toString();
  }

  private String figure(ChartPlan c) {
    StringBuilder out = new StringBuilder();
    out.append("<figure class=\"chart\" id=\"chart-")
        .append(c.id())
        .append("\" aria-labelledby=\"title-")
        .append(c.id())
        .append("\"><h3 id=\"title-")
        .append(c.id())
        .append("\">")
        .append(c.title())
        .append("</h3><p class=\"hint\">")
        .append(c.lead());
    if (c.banded()) {
      out.append(" Band: ")
          .append(m.bare(Quantity.TEMPERATURE, o.scenario().run().bandLowC(), 0))
          .append(" to ")
          .append(m.amount(Quantity.TEMPERATURE, o.scenario().run().bandHighC(), 0))
          .append('.');
    }
    out.append("</p><ul class=\"key needs-script\">");
    // the line that matters most is drawn last, over the others, and named first
    boolean strips = c.lines().get(0).draw() == Line.Draw.STRIP;
    for (int n = 0; n < c.lines().size(); n++) {
      int i = strips ? n : c.lines().size() - 1 - n;
      Line l = c.lines().get(i);
      out.append(
          String.format(
              Locale.ROOT,
              "<li><button type=\"button\" aria-pressed=\"true\" data-chart=\"%s\" data-line=\"%d\">"
                  + "<svg class=\"stroke %s\" viewBox=\"0 0 34 10\" aria-hidden=\"true\"><path"
                  + " d=\"M1 5h32\"/></svg><span>%s</span> <span class=\"now\"></span></button></li>",
              c.id(),
              i,
              l.style(),
              l.label()));
    }
    out.append("</ul><div class=\"plot\" role=\"img\" aria-label=\"")
        .append(Markup.text(c.title()))
        .append(" over time; its numbers are in the table after it\" data-chart=\"")
        .append(c.id())
        .append("\"></div>");
    return out.append(table(c)).append("</figure>").toString();
  }

  private String table(ChartPlan c) {
    StringBuilder out = new StringBuilder();
    out.append("<details class=\"numbers\"><summary>The same in numbers: ")
        .append(c.title())
        .append("</summary>")
        .append(Tables.open(c.title() + " over the whole run"))
        .append(Tables.head("Line", "Lowest", "Mean", "Highest") + "<tbody>");
    Trace t = o.main().trace();
    for (int i = c.lines().size() - 1; i >= 0; i--) {
      Line l = c.lines().get(i);
      double[] v = t.column(l.column());
      int low = -1;
      int high = -1;
      double sum = 0;
      int n = 0;
      for (int r = 0; r < v.length; r++) {
        if (Double.isNaN(v[r])) {
          continue;
        }
        low = low < 0 || v[r] < v[low] ? r : low;
        high = high < 0 || v[r] > v[high] ? r : high;
        sum += v[r];
        n++;
      }
      out.append(
          Tables.row(
              l.label(),
              value(l, v[low]) + when(t, low),
              value(l, sum / n),
              value(l, v[high]) + when(t, high)));
    }
    return out.append("</tbody>").append(Tables.CLOSE).append("</details>").toString();
  }

  private String value(Line l, double traced) {
    return l.quantity() != null
        ? m.amount(l.quantity(), traced, l.decimals())
        : (Quantity.plain(traced * l.factor(), l.decimals()) + " " + l.unit()).strip();
  }

  private String when(Trace t, int row) {
    long atS = o.scenario().window().fromEpochS() + (long) row * t.intervalS();
    return "<br><span class=\"hint\">" + WHEN.format(Instant.ofEpochSecond(atS)) + "</span>";
  }
}
