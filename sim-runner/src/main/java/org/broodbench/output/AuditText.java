package org.broodbench.output;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.broodbench.audit.AuditReport;
import org.broodbench.audit.Budget;
import org.broodbench.audit.CutOutLine;
import org.broodbench.audit.Finding;
import org.broodbench.audit.LoadLine;
import org.broodbench.rig.Scenario;

/** A rig on paper, for people. */
public final class AuditText {
  private static final int WIDTH = 100;

  private AuditText() {}

  /** The whole text. */
  public static String of(Scenario s, AuditReport r) {
    StringBuilder t = new StringBuilder();
    line(t, "%s (%s), on paper", s.title(), s.fileName());
    loads(t, r.loads());
    budget(t, r.month());
    budget(t, r.week());
    if (!r.cutOuts().isEmpty()) {
      line(t, "%nWhat opens by itself:");
      line(t, "  %-26s %-34s %-42s %s", "part", "trips", "reconnects", "returns by itself");
      for (CutOutLine c : r.cutOuts()) {
        line(
            t,
            "  %-26s %-34s %-42s %s",
            c.name(),
            c.trips(),
            c.reconnects(),
            c.returns().name().toLowerCase(Locale.ROOT));
      }
    }
    t.append('\n');
    if (r.findings().isEmpty()) {
      line(t, "Nothing found.");
    }
    for (Finding f : r.findings()) {
      line(t, "%-5s %s: %s", f.severity().word().toUpperCase(Locale.ROOT), f.id(), f.title());
      wrapped(t, f.arithmetic());
      wrapped(t, "Remedy: " + f.remedy());
      wrapped(t, "Source: " + f.source());
    }
    line(
        t,
        "%s among %s. A planning aid, not an approval: local electrical codes and a licensed electrician decide.",
        Counted.of(r.stops(), "stop"),
        Counted.of(r.findings().size(), "finding"));
    return t.toString();
  }

  private static void loads(StringBuilder t, List<LoadLine> loads) {
    Map<String, StringBuilder> rows = new LinkedHashMap<>();
    StringBuilder head = new StringBuilder();
    double before = Double.NaN;
    for (LoadLine l : loads) {
      if (l.volts() != before) {
        head.append(String.format(Locale.ROOT, "%18s", Math.rint(l.volts() * 10) / 10 + " V"));
        before = l.volts();
      }
      rows.computeIfAbsent(l.name(), k -> new StringBuilder())
          .append(String.format(Locale.ROOT, "%8.1f W %5.2f A", l.powerW(), l.currentA()));
    }
    line(t, "  %-20s%s", "load at the battery", head);
    rows.forEach((name, cells) -> line(t, "  %-20s%s", name, cells));
  }

  private static void budget(StringBuilder t, Budget b) {
    line(
        t,
        "%nBy the day, %s (%d days): takes %.0f Wh (%.0f to %.0f), gives %.0f Wh",
        b.stretch(),
        b.days(),
        b.ownWh(),
        b.leastWh(),
        b.mostWh(),
        b.givesWh());
    for (Budget.Take k : b.takes()) {
      wrapped(t, String.format(Locale.ROOT, "%s: %s", k.name(), k.arithmetic()));
    }
    wrapped(t, "gives: " + b.gives());
  }

  private static void wrapped(StringBuilder t, String text) {
    StringBuilder row = new StringBuilder("     ");
    for (String word : text.split(" ")) {
      if (row.length() + word.length() + 1 > WIDTH && row.length() > 6) {
        t.append(row).append('\n');
        row = new StringBuilder("      ");
      }
      row.append(' ').append(word);
    }
    t.append(row).append('\n');
  }

  private static void line(StringBuilder t, String pattern, Object... values) {
    t.append(String.format(Locale.ROOT, pattern, values)).append('\n');
  }
}
