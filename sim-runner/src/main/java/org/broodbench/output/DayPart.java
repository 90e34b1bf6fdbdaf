package org.broodbench.output;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.broodbench.study.Outcome;

/** The diary of the run: one line a day. */
final class DayPart {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH).withZone(ZoneOffset.UTC);

  private DayPart() {}

  static String html(Outcome o, Markup m) {
    double low = o.scenario().run().bandLowC();
    double high = o.scenario().run().bandHighC();
    List<DayRow> days = DayRow.of(o.main(), low, high);
    StringBuilder out = new StringBuilder();
    out.append("<section id=\"days\" aria-labelledby=\"days-h\">")
        .append("<h2 id=\"days-h\">Day by day</h2>")
        .append("<p>Days are counted in UTC. Hours out of band are in bold. ")
        .append("<span class=\"needs-script-inline\">Press a date to see that day in the pictures.")
        .append("</span></p>")
        .append(Tables.open("One line a day", "diary"))
        .append("<thead><tr><th scope=\"col\" rowspan=\"2\">Day</th>")
        .append("<th scope=\"colgroup\" colspan=\"5\">Brood comb</th>")
        .append("<th scope=\"colgroup\" colspan=\"2\">Outdoors</th>")
        .append("<th scope=\"colgroup\" colspan=\"2\">Heater</th>")
        .append("<th scope=\"colgroup\" colspan=\"4\">Battery</th></tr><tr>");
    String t = m.unit(Quantity.TEMPERATURE);
    for (String head :
        List.of(
            "low " + t,
            "mean " + t,
            "high " + t,
            "h below",
            "h above",
            "low " + t,
            "high " + t,
            "h on",
            "starts",
            "Wh in",
            "Wh out",
            "lowest %",
            "h shed")) {
      out.append("<th scope=\"col\">").append(head).append("</th>");
    }
    out.append("</tr></thead><tbody>");
    long start = o.scenario().window().fromEpochS();
    for (DayRow d : days) {
      long from = start + (long) d.fromS();
      out.append("<tr><th scope=\"row\"><button type=\"button\" class=\"day\" data-from=\"")
          .append(from)
          .append("\">")
          .append(DAY.format(Instant.ofEpochSecond(from)))
          .append("</button></th>");
      temperature(out, m, d.broodMinC());
      temperature(out, m, d.broodMeanC());
      temperature(out, m, d.broodMaxC());
      hours(out, d.hoursBelow());
      hours(out, d.hoursAbove());
      temperature(out, m, d.outdoorMinC());
      temperature(out, m, d.outdoorMaxC());
      cell(out, Quantity.plain(d.heaterHours(), 1));
      cell(out, Integer.toString(d.starts()));
      cell(out, Quantity.plain(d.panelWh(), 0));
      cell(out, Quantity.plain(d.loadWh(), 0));
      cell(out, Quantity.plain(100 * d.lowestSoc(), 0));
      hours(out, d.shedHours());
      out.append("</tr>");
    }
    return out.append("</tbody>").append(Tables.CLOSE).append("</section>\n").toString();
  }

  private static void temperature(StringBuilder out, Markup m, double c) {
    cell(out, m.bare(Quantity.TEMPERATURE, c, 1));
  }

  private static void hours(StringBuilder out, double hours) {
    String text = Quantity.plain(hours, 1);
    cell(out, text.equals("0.0") ? "0" : "<b>" + text + "</b>");
  }

  private static void cell(StringBuilder out, String html) {
    out.append("<td>").append(html).append("</td>");
  }
}
