package org.broodbench.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.calibrate.Calibration;
import org.broodbench.study.Cautions;

/** What a log says, as a page that needs neither network nor script. */
public final class CalibrationPage {
  private static final String STYLE =
      """
      :root{color-scheme:light dark;--ink:#1b1b1b;--back:#fff;--soft:#555;--line:#ccc;--seen:#1b1b1b;--sim:#b0420f;--bad:#9c1c1c}
      @media(prefers-color-scheme:dark){:root{--ink:#eee;--back:#161616;--soft:#b5b5b5;--line:#444;--seen:#eee;--sim:#ff9a5c;--bad:#ff8f8f}}
      body{font:16px/1.5 system-ui,sans-serif;color:var(--ink);background:var(--back);max-width:60rem;margin:0 auto;padding:1rem}
      h1{font-size:1.5rem}h2{font-size:1.2rem;margin-top:2rem}
      table{border-collapse:collapse;font-variant-numeric:tabular-nums}caption{text-align:left;color:var(--soft)}
      th,td{padding:.2rem .6rem;border-bottom:1px solid var(--line);text-align:right}th[scope=row],td.words{text-align:left}
      .wide{overflow-x:auto}.bad{border-left:.4rem solid var(--bad);padding-left:.8rem}.hint{color:var(--soft)}
      figure{margin:1rem 0}svg{width:100%;min-width:36rem;height:auto}svg text{fill:var(--soft);font-size:12px}
      .seen{stroke:var(--seen);fill:none;stroke-width:1.6}.sim{stroke:var(--sim);fill:none;stroke-width:1.6;stroke-dasharray:6 3}
      .rest{stroke:var(--seen);fill:none;stroke-width:1}.grid{stroke:var(--line);stroke-width:1}
      .mark{stroke:var(--soft);stroke-dasharray:2 4}
      """;

  private CalibrationPage() {}

  /** The whole page. */
  public static String html(Calibration c) {
    StringBuilder out = new StringBuilder(1 << 16);
    String title = "What " + c.logName() + " says about: " + c.scenario().title();
    out.append("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">")
        .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">")
        .append(
            "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src"
                + " 'unsafe-inline'; img-src data:\">")
        .append("<link rel=\"icon\" href=\"data:,\"><title>")
        .append(Markup.text(title))
        .append("</title><style>")
        .append(STYLE)
        .append("</style></head><body><main><h1>")
        .append(Markup.text(title))
        .append("</h1>");
    para(
        out,
        "%d rows from %s to %s. Heater relay: %s; right in about %.0f %% of the time.",
        c.log().rows(),
        Stamps.of(c.log().fromS(), 0),
        Stamps.of(c.log().toS(), 0),
        c.relay().how(),
        100 * c.relay().confidence());
    misfit(out, c);
    findings(
        out, "Alarms", c.alarms(), "None: nothing has changed for the worse that this log shows.");
    findings(out, "What to do next", CalibrationText.advice(c), "Nothing could be worked out.");
    readings(out, c);
    parameters(out, c);
    if (!c.channels().isEmpty()) {
      charts(out, c);
    }
    heldOut(out, c);
    correlations(out, c);
    trends(out, c);
    decisions(out, c);
    notes(out, c);
    return out.append("</main></body></html>\n").toString();
  }

  private static void para(StringBuilder out, String format, Object... values) {
    out.append("<p>")
        .append(Markup.text(String.format(Locale.ROOT, format, values)))
        .append("</p>");
  }

  private static void head(StringBuilder out, String text) {
    out.append("<h2>").append(Markup.text(text)).append("</h2>");
  }

  private static void list(StringBuilder out, List<String> texts) {
    out.append("<ul>");
    texts.forEach(t -> out.append("<li>").append(Markup.text(t)).append("</li>"));
    out.append("</ul>");
  }

  private static void misfit(StringBuilder out, Calibration c) {
    if (c.fits()) {
      return;
    }
    out.append("<section class=\"bad\"><h2>This log does not look like this hive</h2>");
    para(
        out,
        "Nothing below should be relied on. Is it the right log, the right scenario, the right time?");
    list(out, c.misfit());
    out.append("</section>");
  }

  private static void findings(
      StringBuilder out, String title, List<Calibration.Finding> all, String none) {
    head(out, title);
    if (all.isEmpty()) {
      para(out, "%s", none);
      return;
    }
    out.append("<ul>");
    for (Calibration.Finding f : all) {
      out.append("<li>")
          .append(Markup.text(f.text()))
          .append(" <span class=\"hint\">")
          .append(Markup.text(f.why()))
          .append("</span></li>");
    }
    out.append("</ul>");
  }

  private static void parameters(StringBuilder out, Calibration c) {
    head(out, "What the log tells");
    para(
        out,
        "A value is told where the log leaves less than six tenths of what was unknown. What is not told stays near what was believed, with that spread.");
    out.append(Tables.open("Fitted values with their 90 % intervals"))
        .append(Tables.head("what", "value", "90 % between", "before", "unit", "told"))
        .append("<tbody>");
    List<String> wants = new ArrayList<>();
    for (Calibration.Parameter p : c.parameters()) {
      out.append(
          Tables.row(
              Markup.text(p.knob().key().replace('_', ' ')),
              CalibrationText.number(p.value()),
              CalibrationText.number(p.low()) + " and " + CalibrationText.number(p.high()),
              CalibrationText.number(p.before()),
              Markup.text(p.knob().unit()),
              p.told() ? "yes" : "no"));
      if (!p.told()) {
        wants.add(p.knob().key().replace('_', ' ') + ": " + p.want());
      }
    }
    out.append("</tbody>").append(Tables.CLOSE);
    if (!wants.isEmpty()) {
      para(out, "What to log so that the others are told:");
      list(out, wants);
    }
  }

  private static void readings(StringBuilder out, Calibration c) {
    if (c.readings().isEmpty()) {
      return;
    }
    head(out, "Your readings");
    para(
        out,
        "Each against the range that hives like this one, as far as they are known, read in that weather at that time.");
    out.append(Tables.open("Readings and what is to be expected"))
        .append(Tables.head("time, UTC", "reading", "value", "to be expected", "mark"))
        .append("<tbody>");
    for (Calibration.Reading r : c.readings()) {
      out.append(
          Tables.row(
              Stamps.of(r.epochS(), 0),
              Markup.text(r.column().key().replace('_', ' ')),
              CalibrationText.number(r.value()),
              CalibrationText.number(r.low()) + " to " + CalibrationText.number(r.high()),
              r.mark().equals("expected") ? "expected" : "<strong>" + r.mark() + "</strong>"));
    }
    out.append("</tbody>").append(Tables.CLOSE);
  }

  private static void charts(StringBuilder out, Calibration c) {
    head(out, "Measured and simulated");
    para(
        out,
        "Full line: the log, less the fitted offset of the probe. Dashed: the simulation, driven by the log's relay and outdoor air. Below: what is left over. The dotted upright stands where the last third begins.");
    for (Calibration.Channel x : c.channels()) {
      out.append(CalibrationChart.svg(x, c.heldOut().fromS()));
    }
  }

  private static void heldOut(StringBuilder out, Calibration c) {
    head(out, "How well it predicts, and what is left over");
    if (Double.isNaN(c.heldOut().rmseK())) {
      para(out, "No reading of the last third could be predicted.");
    } else {
      para(
          out,
          "The last third was predicted by a fit to what came before it: %.2f K off inside the hive (root mean square). Then all was fitted.",
          c.heldOut().rmseK());
    }
    if (c.channels().isEmpty()) {
      return;
    }
    out.append(Tables.open("Deviations of the means, by reading"))
        .append(
            Tables.head(
                "reading",
                "last third, predicted",
                "whole, fitted",
                "scatter",
                "autocorrelation",
                "bins that deviations last"))
        .append("<tbody>");
    for (int i = 0; i < c.channels().size(); i++) {
      Calibration.Channel x = c.channels().get(i);
      out.append(
          Tables.row(
              Markup.text(x.column().key().replace('_', ' ')),
              digits(c.heldOut().rmse()[i]),
              digits(x.rms()),
              digits(x.sigma()),
              digits(x.lagOne()),
              digits(x.tauBins())));
    }
    out.append("</tbody>").append(Tables.CLOSE);
    List<String> ends = new ArrayList<>();
    for (double s : c.starts()) {
      ends.add(String.format(Locale.ROOT, "%.0f", s));
    }
    para(
        out,
        "The fit began from %d starts; after their first iterations the sums of squares were %s, and the best went on.",
        ends.size(),
        String.join(", ", ends));
  }

  private static String digits(double v) {
    return Double.isNaN(v) ? "none" : String.format(Locale.ROOT, "%.3g", v);
  }

  private static void correlations(StringBuilder out, Calibration c) {
    List<String> strong = new ArrayList<>();
    for (int a = 0; a < c.correlation().length; a++) {
      for (int b = 0; b < a; b++) {
        double r = c.correlation()[a][b];
        if (Math.abs(r) > 0.7) {
          strong.add(
              String.format(
                  Locale.ROOT,
                  "%s and %s: %+.2f",
                  c.parameters().get(b).knob().key().replace('_', ' '),
                  c.parameters().get(a).knob().key().replace('_', ' '),
                  r));
        }
      }
    }
    head(out, "What cannot be told apart");
    if (strong.isEmpty()) {
      para(out, "No two values hang together by more than 0.7.");
    } else {
      para(out, "Where one of a pair is higher, so is the other (or lower, where it says minus):");
      list(out, strong);
    }
  }

  private static void trends(StringBuilder out, Calibration c) {
    head(out, "Changes within the log");
    if (c.trend().isEmpty()) {
      para(out, "Its halves are too short to tell a change: three days each are needed.");
      return;
    }
    para(
        out,
        "Each line says by how much one value would have to be other in the second half if that were the cause. The first explains most of what the fit leaves over, the others the share of that in the last column; an alarm names the first that matters, and what explains four fifths of as much.");
    out.append(Tables.open("The second half of the log against the first"))
        .append(
            Tables.head("what", "first half", "second half", "change", "90 % between", "explains"))
        .append("<tbody>");
    for (Calibration.Trend t : c.trend()) {
      out.append(
          Tables.row(
              Markup.text(t.knob().key().replace('_', ' ')),
              CalibrationText.number(t.first()),
              CalibrationText.number(t.second()),
              change(t, t.change()),
              change(t, t.low()) + " and " + change(t, t.high()),
              String.format(Locale.ROOT, "%.0f %%", 100 * t.explains())));
    }
    out.append("</tbody>").append(Tables.CLOSE);
  }

  private static String change(Calibration.Trend t, double v) {
    return String.format(Locale.ROOT, t.knob().isOffset() ? "%+.2f K" : "times %.2f", v);
  }

  private static void decisions(StringBuilder out, Calibration c) {
    if (c.conform() == null) {
      return;
    }
    head(out, "The controller's decisions");
    para(
        out,
        "%d heater starts logged, %d by the reference core on the same readings, over %d rows. A brood reading may be a quarter of a kelvin off the logged one, since what the controller read between two rows is not known.",
        c.conform().startsLogged(),
        c.conform().startsReference(),
        c.conform().rows());
    list(out, c.conform().words());
  }

  private static void notes(StringBuilder out, Calibration c) {
    head(out, "What was done to the log, and what was assumed");
    list(out, c.notes().isEmpty() ? List.of("nothing") : c.notes());
    head(out, "Cautions");
    list(out, Cautions.all());
  }
}
