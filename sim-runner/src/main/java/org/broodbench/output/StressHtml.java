package org.broodbench.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.broodbench.stress.StressPlan;
import org.broodbench.stress.StressReport;
import org.broodbench.stress.StressRow;
import org.broodbench.stress.StressWeek;

/** A stress study as one page of HTML. */
public final class StressHtml {
  private StressHtml() {}

  /** The page. */
  public static String of(StressReport r) {
    String what =
        String.format(
            Locale.ROOT,
            "Every fault in the %s. Weather: %s. Each fault begins at nightfall of the first day,"
                + " just after the keeper left, who comes every %.0f h, and stays.",
            r.weeks().size() == 1 ? "hardest week" : r.weeks().size() + " hardest weeks",
            r.weather(),
            r.scenario().run().visitEveryS() / 3600);
    StringBuilder body = new StringBuilder();
    if (!r.whole()) {
      body.append("<p><strong>Stopped after ")
          .append(r.rows().size())
          .append(" of ")
          .append(r.planned())
          .append(" rows.</strong> The same command goes on from here.</p>");
    }
    grid(body, r);
    worst(body, r);
    weeks(body, r);
    method(body, r);
    return StudyPage.of("What breaks: " + r.scenario().title(), what, body.toString());
  }

  private static void grid(StringBuilder out, StressReport r) {
    out.append("<section aria-labelledby=\"grid-h\"><h2 id=\"grid-h\">Hours to harm</h2>")
        .append("<p>From the onset until brood or bees are harmed; “anyway” where the week does it")
        .append(" without the fault. A dash: no harm in that week.</p>")
        .append(Tables.open("Hours to harm by fault and week", "grid"));
    List<String> head = new ArrayList<>(List.of("Fault"));
    for (StressWeek w : r.weeks()) {
      head.add(
          Markup.text(w.label()).replace(", ", ",<br>")
              + String.format(Locale.ROOT, "<br>%.1f °C on average", w.stats().meanAirC()));
    }
    out.append(Tables.head(head.toArray(String[]::new))).append("<tbody>");
    for (StressRow fault : StressWords.worst(r)) {
      if (!everywhere(r, fault)) {
        continue;
      }
      out.append("<tr><th scope=\"row\">").append(Markup.text(fault.title())).append("</th>");
      for (StressWeek w : r.weeks()) {
        StressRow row =
            r.rows().stream()
                .filter(x -> x.fault().equals(fault.fault()) && x.week().equals(w.label()))
                .min(StressWords.WORST_FIRST)
                .orElse(null);
        boolean harm = row != null && !Double.isNaN(row.hoursToHarm());
        out.append(harm ? "<td class=\"bad\">" : "<td class=\"good\">")
            .append(row == null ? "not run" : harm ? StressWords.harm(row) : "–")
            .append(harm && r.plan().allLosses() ? ",<br>" + loss(row) : "")
            .append("</td>");
      }
      out.append("</tr>");
    }
    out.append("</tbody>").append(Tables.CLOSE).append("</section>");
  }

  /** Pairs that were not asked for by name are tried in the hardest week alone. */
  private static boolean everywhere(StressReport r, StressRow row) {
    return !row.fault().contains(StressPlan.AND) || r.plan().pairs().contains(row.fault());
  }

  private static void worst(StringBuilder out, StressReport r) {
    boolean losses = r.plan().allLosses();
    out.append(
            "<section aria-labelledby=\"worst-h\"><h2 id=\"worst-h\">Each fault in its worst week")
        .append("</h2>")
        .append(table("Each fault in its worst week", StressWords.worst(r), losses))
        .append("</section>");
  }

  private static String table(String caption, List<StressRow> rows, boolean losses) {
    StringBuilder out = new StringBuilder(Tables.open(caption, "told"));
    out.append(
            Tables.head(
                "Fault",
                "Harm after",
                "First to fail",
                "Missed",
                "Alarm",
                "Seen in time",
                "What the keeper sees",
                "Display at the visit",
                "In band",
                "Carry"))
        .append("<tbody>");
    for (StressRow row : rows) {
      out.append(
          Tables.row(
              Markup.text(losses ? row.title() + ", " + loss(row) : row.title()),
              StressWords.harm(row),
              StressWords.first(row),
              Markup.text(row.missed().isEmpty() ? "nothing" : words(row.missed(), ", ")),
              Markup.text(StressWords.alarm(row).replace('_', ' ')),
              StressWords.inTime(row),
              Markup.text(row.sees().isEmpty() ? "nothing" : words(row.sees(), "; ")),
              Markup.text(StressWords.gauge(row.gauge())),
              String.format(Locale.ROOT, "%.0f %%", row.figures().inBandPercent()),
              Markup.text(row.carry())));
    }
    return out.append("</tbody>").append(Tables.CLOSE).toString();
  }

  private static String loss(StressRow row) {
    return row.loss().key() + " heat loss";
  }

  private static String words(List<String> keys, String by) {
    return keys.stream().map(k -> k.replace('_', ' ')).collect(Collectors.joining(by));
  }

  private static void weeks(StringBuilder out, StressReport r) {
    out.append("<section aria-labelledby=\"weeks-h\"><h2 id=\"weeks-h\">Week by week</h2>");
    for (StressWeek w : r.weeks()) {
      List<StressRow> rows = r.rows().stream().filter(x -> x.week().equals(w.label())).toList();
      out.append("<details><summary>Week of ")
          .append(Markup.text(w.label()))
          .append(", ")
          .append(rows.size())
          .append(" rows</summary>")
          .append(table("Week of " + w.label(), rows, r.plan().allLosses()))
          .append("</details>");
    }
    out.append("</section>");
  }

  private static void method(StringBuilder out, StressReport r) {
    out.append("<section aria-labelledby=\"how-h\"><h2 id=\"how-h\">How to read this</h2><ul>")
        .append(
            "<li>Harm (own choice): the brood comb more than 2 K below its band for 6 h or more")
        .append(
            " than 1 K above it for 1 h together, or what bees touch over its limit for 10 min,")
        .append(" or the colony dead.</li>")
        .append("<li>First to fail and alarm: what the same week without the fault does not have,")
        .append(" or has an hour later.</li>")
        .append(
            "<li>The keeper sees what lies open, a dark display, a lit alarm, brood 2 K or volts")
        .append(
            " 0.3 V off the usual of that day, heat hours 30 % and an hour off (own choices).</li>")
        .append(
            r.plan().allLosses()
                ? "<li>Every row is run at the lowest published, the scenario's own and the highest published heat loss of small clusters; told is the worst of them, against the same week at the same loss.</li>"
                : "<li>Every run is made at the scenario's own heat loss of small clusters.</li>");
    for (String a : r.assumed()) {
      out.append("<li>").append(Markup.text(a)).append("</li>");
    }
    out.append("</ul></section>");
  }
}
