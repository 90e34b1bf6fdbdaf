package org.broodbench.output;

import java.util.List;
import java.util.Locale;
import org.broodbench.calibrate.Calibration;

/** What a log says, for a terminal. */
public final class CalibrationText {
  private CalibrationText() {}

  /** The whole text. */
  public static String of(Calibration c) {
    StringBuilder out = new StringBuilder();
    line(
        out,
        "%s against %s: %d rows, %s to %s",
        c.logName(),
        c.scenario().title(),
        c.log().rows(),
        Stamps.of(c.log().fromS(), 0),
        Stamps.of(c.log().toS(), 0));
    if (!c.fits()) {
      line(out, "");
      line(out, "THIS LOG DOES NOT LOOK LIKE THIS HIVE. Nothing below should be relied on.");
      c.misfit().forEach(m -> line(out, "  - %s", m));
    }
    line(out, "");
    line(out, "%-20s %10s   %-23s %10s", "", "value", "90 % between", "before");
    for (Calibration.Parameter p : c.parameters()) {
      line(
          out,
          "%-20s %10s   %10s and %-10s %9s %-8s %s",
          p.knob().key(),
          number(p.value()),
          number(p.low()),
          number(p.high()),
          number(p.before()),
          p.knob().unit(),
          p.told() ? "" : "not told by this log");
    }
    line(out, "");
    if (Double.isNaN(c.heldOut().rmseK())) {
      line(out, "No reading of the last third could be predicted.");
    } else {
      line(
          out,
          "The last third was predicted from what came before: %.2f K off (root mean square).",
          c.heldOut().rmseK());
    }
    line(
        out,
        "Heater relay: %s; right in about %.0f %% of the time.",
        c.relay().how(),
        100 * c.relay().confidence());
    section(out, "Alarms", c.alarms());
    section(out, "What to do next", advice(c));
    for (Calibration.Reading r : c.readings()) {
      if (!r.mark().equals("expected")) {
        line(
            out,
            "%s  %-15s %8s, to be expected %s to %s: %s",
            Stamps.of(r.epochS(), 0),
            r.column().key(),
            number(r.value()),
            number(r.low()),
            number(r.high()),
            r.mark());
      }
    }
    if (c.conform() != null) {
      line(out, "");
      line(
          out,
          "Decisions: %d heater starts logged, %d by the reference on the same readings.",
          c.conform().startsLogged(),
          c.conform().startsReference());
      c.conform().words().forEach(w -> line(out, "  - %s", w));
    }
    line(out, "");
    c.notes().forEach(n -> line(out, "Note: %s", n));
    return out.toString();
  }

  /** What is advised, as findings. */
  static List<Calibration.Finding> advice(Calibration c) {
    return c.advice().stream()
        .map(a -> new Calibration.Finding(a.name(), a.text(), a.why()))
        .toList();
  }

  private static void section(StringBuilder out, String title, Iterable<Calibration.Finding> all) {
    boolean first = true;
    for (Calibration.Finding f : all) {
      if (first) {
        line(out, "");
        line(out, "%s:", title);
        first = false;
      }
      line(out, f.why().isEmpty() ? "  - %s" : "  - %s (%s)", f.text(), f.why());
    }
  }

  /** Three digits that count. */
  static String number(double v) {
    double a = Math.abs(v);
    return String.format(Locale.ROOT, a >= 100 ? "%.0f" : a >= 10 ? "%.1f" : "%.2f", v);
  }

  private static void line(StringBuilder out, String format, Object... values) {
    out.append(String.format(Locale.ROOT, format, values).stripTrailing()).append('\n');
  }
}
