package org.broodbench.output;

import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.logging.Level;
import org.broodbench.card.Expectation;
import org.broodbench.card.FieldCard;
import org.broodbench.card.Range;
import org.broodbench.card.Tonight;
import org.broodbench.study.Cautions;

/**
 * The field card as a page to print: well-formed XHTML in black on white, both unit systems side by
 * side, everything on one sheet of A4 or Letter; a season plan, where there is one, on a second.
 */
public final class CardPage {
  private static final String STYLE =
      """
      @page { size: A4; margin: 9mm; }
      body { font-family: Helvetica, Arial, sans-serif; font-size: 7.2pt; color: #000; background: #fff;
        line-height: 1.15; margin: 0 auto; max-width: 192mm; }
      h1 { font-size: 13pt; margin: 0 0 1pt 0; }
      h2 { font-size: 9pt; margin: 5pt 0 2pt 0; border-bottom: 0.7pt solid #000; }
      h2.sheet { page-break-before: always; }
      p { margin: 1pt 0; }
      table { border-collapse: collapse; width: 100%; }
      th, td { border: 0.5pt solid #555; padding: 1pt 2.5pt; text-align: left; vertical-align: top; }
      th { background: #e8e8e8; font-weight: bold; }
      td.n, th.n { text-align: center; }
      td.all { font-weight: bold; }
      td.none { background: #ddd; }
      table.two { border: 0; } table.two > tbody > tr > td { border: 0; padding: 0 6pt 0 0; }
      ol, ul { margin: 1pt 0 1pt 12pt; padding: 0; }
      .act { font-weight: bold; }
      """;

  private CardPage() {}

  /** The page. */
  public static String html(FieldCard card) {
    StringBuilder t = new StringBuilder();
    String title = "Field card: " + card.scenario().title();
    t.append("<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en\"><head>")
        .append("<meta charset=\"utf-8\" />")
        .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\" />")
        .append("<title>")
        .append(Markup.text(title))
        .append("</title><style>")
        .append(STYLE)
        .append("</style></head><body><main>\n<h1>")
        .append(Markup.text(title))
        .append("</h1>\n");
    paragraph(
        t,
        String.format(
            Locale.ROOT,
            "From %d simulated days beginning %s, at the low, own and high published heat loss of small clusters."
                + " Weather: %s. A planning aid, not an approval.",
            card.days(),
            Stamps.of(card.scenario().window().fromEpochS(), 0).substring(0, 10),
            card.weather()));
    expected(t, card.expected());
    tonight(t, card.tonight());
    harvest(t, card.afterHarvest());
    signs(t, card.signs());
    heading(t, "First things first");
    t.append("<ol><li>Hands off hot or sparking things: pull plugs, do not open boxes.</li>")
        .append("<li>Heater: a plate that is hot with the relay off is unplugged at once.</li>")
        .append("<li>Battery: volts, then panel, then fuse.</li>")
        .append("<li>Probes: among the bees, dry, cable whole.</li>")
        .append("<li>Bees last: a colony that is opened in the cold loses what you came to save.")
        .append("</li></ol>\n");
    settings(t, card.settings());
    heading(t, "Does not come back by itself");
    t.append("<p>Once open, these stay open until a hand closes them: ");
    t.append(Markup.text(String.join(", ", card.notBack())));
    t.append(". Find out why before you close one.</p>\n");
    heading(t, "Cautions");
    t.append("<ul>");
    for (String caution : Cautions.all()) {
      t.append("<li>").append(Markup.text(caution)).append("</li>");
    }
    t.append("</ul>\n");
    card.plan().ifPresent(plan -> plan(t, plan));
    return t.append("</main></body></html>\n").toString();
  }

  /** The page as PDF; equal cards give pages that look equal. */
  public static byte[] pdf(FieldCard card) {
    XRLog.listRegisteredLoggers().forEach(name -> XRLog.setLevel(name, Level.SEVERE));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      PdfRendererBuilder builder = new PdfRendererBuilder();
      builder.useFastMode();
      builder.withHtmlContent(html(card), null);
      builder.toStream(out);
      builder.run();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  private static void expected(StringBuilder t, List<Expectation> sorts) {
    heading(t, "What to expect");
    t.append("<table><thead><tr><th rowspan=\"2\">Day</th><th rowspan=\"2\">night's low</th>")
        .append("<th class=\"n\" colspan=\"4\">read at dusk</th>")
        .append("<th class=\"n\" colspan=\"5\">read at dawn</th></tr>\n<tr>");
    for (String head :
        new String[] {
          "battery V",
          "brood probe",
          "heater h of the day",
          "starts",
          "battery V",
          "brood probe",
          "pan",
          "heater h of the night",
          "starts"
        }) {
      t.append("<th>").append(head).append("</th>");
    }
    t.append("</tr></thead><tbody>\n");
    for (Expectation e : sorts) {
      t.append("<tr><th>").append(name(e)).append("</th>");
      cell(t, temperatures(e.lowC()));
      cell(t, range(e.duskV(), "%.2f"));
      cell(t, temperatures(e.duskProbeC()));
      cell(t, range(e.dayHeaterH(), "%.1f"));
      cell(t, range(e.dayStarts(), "%.0f"));
      cell(t, range(e.dawnV(), "%.2f"));
      cell(t, temperatures(e.dawnProbeC()));
      cell(t, temperatures(e.dawnPanC()));
      cell(t, range(e.nightHeaterH(), "%.1f"));
      cell(t, range(e.nightStarts(), "%.0f"));
      t.append("</tr>\n");
    }
    t.append("</tbody></table>\n");
  }

  private static String name(Expectation e) {
    String nights = Counted.of(e.nights(), "night");
    String level = e.highestLevel() == 0 ? "" : "; sheds to " + ShedWords.level(e.highestLevel());
    return e.sort().name().toLowerCase(Locale.ROOT) + " (" + nights + level + ")";
  }

  private static void tonight(StringBuilder t, List<List<Tonight.Answer>> rows) {
    heading(t, "Tonight: hours of heat after dusk, by the battery's volts at dusk (heater off)");
    t.append("<table><thead><tr><th>night's low</th>");
    for (Tonight.Answer a : rows.get(0)) {
      t.append(String.format(Locale.ROOT, "<th class=\"n\">%.2f V</th>", a.volts()));
    }
    t.append("</tr></thead><tbody>\n");
    for (List<Tonight.Answer> row : rows) {
      t.append("<tr><th>").append(temperature(row.get(0).lowC())).append("</th>");
      for (Tonight.Answer a : row) {
        boolean none = a.heatH().high() < 0.25;
        t.append("<td class=\"n")
            .append(a.wholeNight() ? " all" : none ? " none" : "")
            .append("\">")
            .append(a.wholeNight() ? "all night" : none ? "none" : range(a.heatH(), "%.0f") + " h")
            .append("<br />")
            .append(levels(a.dawnLevel()))
            .append("</td>");
      }
      t.append("</tr>\n");
    }
    t.append("</tbody></table>\n");
    paragraph(
        t,
        String.format(
            Locale.ROOT,
            "The night is %.1f h. Under the hours: the shed level at dawn. Ranges hold the published heat losses and"
                + " a gauge error of 0.05 V in 12 V.",
            rows.get(0).get(0).nightH()));
  }

  static String levels(Range level) {
    String low = ShedWords.level((int) level.low());
    String high = ShedWords.level((int) level.high());
    return low.equals(high) ? low : low + " to " + high;
  }

  private static void harvest(StringBuilder t, List<FieldCard.AfterHarvest> all) {
    heading(t, "After the harvest fails (panel covered, no mains), from dusk on, you have");
    t.append("<ul>");
    for (FieldCard.AfterHarvest h : all) {
      t.append("<li>").append(Markup.text(harvest(h))).append("</li>");
    }
    t.append("</ul>\n");
  }

  static String harvest(FieldCard.AfterHarvest h) {
    return String.format(
        Locale.ROOT,
        "in %s weather, battery at %.0f %%: %s of heat%s; the controller itself lasts %s.",
        h.sort().name().toLowerCase(Locale.ROOT),
        100 * h.dusk(),
        hours(h.heatH(), h.lookedH()),
        full(h),
        hours(h.boardH(), h.lookedH()));
  }

  /** How much of the heat is heat to the set point: below it brood may be lost all the same. */
  private static String full(FieldCard.AfterHarvest h) {
    if (h.fullH().high() < 1) {
      return h.heatH().high() > 0 ? ", all of it to a lowered set point" : "";
    }
    return h.fullH().equals(h.heatH())
        ? ""
        : ", to the full set point for " + hours(h.fullH(), h.lookedH());
  }

  private static String hours(Range r, double looked) {
    if (r.low() >= looked) {
      return String.format(Locale.ROOT, "more than %.0f h", looked);
    }
    return r.high() >= looked
        ? String.format(Locale.ROOT, "%.0f h or more", r.low())
        : range(r, "%.0f") + " h";
  }

  private static void signs(StringBuilder t, List<FieldCard.Sign> signs) {
    heading(t, "Odd, or act now");
    t.append("<table><thead><tr><th>gauge</th><th>odd: write it down, look again</th>")
        .append("<th>act now</th><th>what to do</th></tr></thead><tbody>\n");
    for (FieldCard.Sign s : signs) {
      t.append("<tr><th>").append(Markup.text(s.gauge())).append("</th>");
      cell(t, Markup.text(s.odd()));
      t.append("<td class=\"act\">").append(Markup.text(s.actNow())).append("</td>");
      cell(t, Markup.text(s.then()));
      t.append("</tr>\n");
    }
    t.append("</tbody></table>\n");
  }

  private static void plan(StringBuilder t, FieldCard.Plan plan) {
    t.append("<h2 class=\"sheet\">Season plan</h2>\n<ul>");
    for (String line : PlanWords.lines(plan)) {
      t.append("<li>").append(Markup.text(line)).append("</li>");
    }
    t.append("</ul>\n");
  }

  private static void settings(StringBuilder t, List<FieldCard.KeyedIn> all) {
    heading(t, "Settings to key in");
    int columns = 3;
    int rows = (all.size() + columns - 1) / columns;
    t.append("<table><tbody>\n");
    for (int r = 0; r < rows; r++) {
      t.append("<tr>");
      for (int c = 0; c < columns; c++) {
        int i = c * rows + r;
        if (i < all.size()) {
          FieldCard.KeyedIn k = all.get(i);
          t.append("<th>").append(Markup.text(k.label())).append("</th><td>");
          t.append(Markup.text(k.metric()));
          if (!k.us().equals(k.metric())) {
            t.append(" (").append(Markup.text(k.us())).append(')');
          }
          t.append("</td>");
        } else {
          t.append("<td></td><td></td>");
        }
      }
      t.append("</tr>\n");
    }
    t.append("</tbody></table>\n");
  }

  private static void heading(StringBuilder t, String text) {
    t.append("<h2>").append(Markup.text(text)).append("</h2>\n");
  }

  private static void paragraph(StringBuilder t, String text) {
    t.append("<p>").append(Markup.text(text)).append("</p>\n");
  }

  private static void cell(StringBuilder t, String text) {
    t.append("<td>").append(text).append("</td>");
  }

  private static String temperature(double c) {
    return String.format(Locale.ROOT, "%.0f °C (%.0f °F)", c, c * 1.8 + 32);
  }

  private static String temperatures(Range c) {
    if (c.none()) {
      return "none";
    }
    Range f = new Range(c.low() * 1.8 + 32, c.high() * 1.8 + 32);
    return range(c, "%.1f") + " °C (" + range(f, "%.0f") + " °F)";
  }

  static String range(Range r, String pattern) {
    if (r.none()) {
      return "none";
    }
    String low = String.format(Locale.ROOT, pattern, r.low());
    String high = String.format(Locale.ROOT, pattern, r.high());
    return low.equals(high) ? low : low + " to " + high;
  }
}
