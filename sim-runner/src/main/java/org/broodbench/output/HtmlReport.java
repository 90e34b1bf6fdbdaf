package org.broodbench.output;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Base64;
import java.util.Locale;
import org.broodbench.rig.Scenario;
import org.broodbench.study.Cautions;
import org.broodbench.study.Outcome;

/**
 * The report of a run as one page of HTML that needs nothing else: style, script and data stand in
 * it, and its content security policy lets it load nothing. Equal outcomes give equal pages.
 */
public final class HtmlReport {
  private static final String UPLOT = "/META-INF/resources/webjars/uplot/1.6.30/";
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH).withZone(ZoneOffset.UTC);

  private HtmlReport() {}

  /**
   * The page.
   *
   * @param outcome what to tell; its main run must carry a trace
   * @param fahrenheit whether °F and US units stand first; the reader can switch
   */
  public static String html(Outcome outcome, boolean fahrenheit) {
    return html(outcome, fahrenheit, new ChartData(outcome.main().trace()));
  }

  /**
   * The page.
   *
   * @param outcome what to tell
   * @param fahrenheit whether °F and US units stand first; the reader can switch
   * @param data made of the trace of the main run
   */
  public static String html(Outcome outcome, boolean fahrenheit, ChartData data) {
    Scenario s = outcome.scenario();
    Markup m = new Markup(fahrenheit);
    EventList events = new EventList(outcome.main().events());
    SectionData section = new SectionData(outcome);
    VerdictPart verdict = new VerdictPart(outcome, m);
    // a licence text could hold the end of a comment; this one does not, and the test would see it
    String script =
        "/*\n"
            + resource(UPLOT + "LICENSE")
            + "*/\n"
            + resource(UPLOT + "dist/uPlot.iife.min.js")
            + "\n"
            + resource("report.js");
    script = script.replace("</script", "<\\/script");
    String style = resource(UPLOT + "dist/uPlot.min.css") + "\n" + resource("report.css");
    StringBuilder out = new StringBuilder(1 << 20);
    out.append("<!doctype html>\n<html lang=\"en\" data-units=\"")
        .append(fahrenheit ? "us" : "metric")
        .append("\"><head><meta charset=\"utf-8\">\n")
        .append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; ")
        .append("script-src '")
        .append(hash(script))
        .append("'; style-src '")
        .append(hash(style))
        .append("'; img-src data:; base-uri 'none'; form-action 'none'\">\n")
        .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
        .append("<meta name=\"color-scheme\" content=\"light dark\">\n")
        .append("<link rel=\"icon\" href=\"data:,\">\n")
        .append("<title>")
        .append(Markup.text(verdict.headline() + " – " + s.title()))
        .append("</title>\n<style>")
        .append(style)
        .append("</style></head>\n<body>\n")
        .append("<a class=\"skip\" href=\"#main\">Skip to the verdict</a>\n");
    header(out, outcome, m);
    contents(out, outcome.outlook().isPresent());
    out.append("<main id=\"main\" tabindex=\"-1\">\n")
        .append(verdict.html())
        .append(outcome.outlook().map(o -> OutlookPart.html(o, m)).orElse(""))
        .append(new ChartPart(outcome, m).html(data.charts()))
        .append(SectionPart.html(outcome, section, m))
        .append(DayPart.html(outcome, m))
        .append(SupplyPart.html(outcome, m))
        .append(LedgerPart.html(outcome, m))
        .append(FiguresPart.html(outcome, m))
        .append(SurePart.html(outcome, m))
        .append(EventPart.html(events));
    out.append(AssumedPart.html(outcome, m));
    cautions(out);
    out.append("</main>\n")
        .append("<footer><p>Made by Broodbench from a simulation, seed ")
        .append(s.run().seed())
        .append(". Charts are drawn with uPlot 1.6.30, MIT licence.</p></footer>\n")
        .append("<script type=\"application/json\" id=\"run-data\">")
        .append(PageData.json(outcome, data, section, events))
        .append("</script>\n<script>")
        .append(script)
        .append("</script>\n</body></html>\n");
    return out.toString();
  }

  private static void header(StringBuilder out, Outcome o, Markup m) {
    Scenario s = o.scenario();
    out.append("<header><h1>")
        .append(Markup.text(s.title()))
        .append("</h1><p class=\"what\">")
        .append(DAY.format(Instant.ofEpochSecond(s.window().fromEpochS())))
        .append(", ")
        .append(Counted.of(s.window().days(), "day"))
        .append(" from that midnight on. Weather: ")
        .append(m.prose(o.weather().source()))
        .append(". Scenario file ")
        .append(Markup.text(s.fileName()))
        .append(".</p>")
        .append("<div class=\"switches needs-script\"><fieldset><legend>Units</legend>")
        .append(radio("metric", "°C, metric", !m.us()))
        .append(radio("us", "°F, US", m.us()))
        .append("</fieldset><button type=\"button\" id=\"theme\">Dark page</button></div>")
        .append("</header>\n");
  }

  private static String radio(String value, String label, boolean checked) {
    return String.format(
        Locale.ROOT,
        "<label><input type=\"radio\" name=\"units\" value=\"%s\"%s> %s</label>",
        value,
        checked ? " checked" : "",
        label);
  }

  private static void contents(StringBuilder out, boolean withOutlook) {
    String[][] parts = {
      {"verdict", "Verdict"},
      {"outlook", "Outlook"},
      {"charts", "Pictures"},
      {"section", "Cut open"},
      {"days", "Day by day"},
      {"supply", "Panel to heater"},
      {"energy", "Watt-hours"},
      {"ledgers", "Heat, water, gas"},
      {"figures", "Figures"},
      {"sure", "How sure"},
      {"events", "Events"},
      {"assumed", "Assumed"},
      {"cautions", "Cautions"}
    };
    out.append("<nav aria-label=\"On this page\"><ul>");
    for (String[] p : parts) {
      if (p[0].equals("outlook") && !withOutlook) {
        continue;
      }
      out.append(String.format(Locale.ROOT, "<li><a href=\"#%s\">%s</a></li>", p[0], p[1]));
    }
    out.append("</ul></nav>\n");
  }

  private static void cautions(StringBuilder out) {
    out.append("<section id=\"cautions\" aria-labelledby=\"cautions-h\">")
        .append("<h2 id=\"cautions-h\">Cautions</h2><ul>");
    for (String c : Cautions.all()) {
      out.append("<li>").append(Markup.text(c)).append("</li>");
    }
    out.append("</ul></section>");
  }

  /** What a content security policy calls a text by. */
  static String hash(String text) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return "sha256-" + Base64.getEncoder().encodeToString(digest);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  /** A text that is part of the program. */
  static String resource(String name) {
    try (InputStream in = HtmlReport.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program is incomplete: " + name + " is missing");
      }
      // a carriage return would change the page's hash: browsers read it as a line feed
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
