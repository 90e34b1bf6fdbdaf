package org.broodbench.output;

import java.util.List;
import org.broodbench.loop.ColonyDay;
import org.broodbench.study.Course;
import org.broodbench.study.Outlook;

/** The outlook in the report: words, picture, table. */
final class OutlookPart {
  private OutlookPart() {}

  static String html(Outlook o, Markup m) {
    StringBuilder out = new StringBuilder();
    out.append("<section id=\"outlook\" aria-labelledby=\"outlook-h\"><h2 id=\"outlook-h\">")
        .append("The colony in ")
        .append(OutlookWords.weeks(o))
        .append("</h2><p class=\"lead\">")
        .append(m.prose(OutlookWords.headline(o)))
        .append("</p><div class=\"wide\" role=\"region\" tabindex=\"0\"")
        .append(" aria-label=\"Picture: bees and brood\">")
        .append(new OutlookPicture(o).svg())
        .append("</div>")
        .append(
            "<p class=\"hint\">Lines: the scenario's own heat loss of the cluster. Bands: from the")
        .append(" lowest to the highest published.</p><ul>");
    for (String sentence : OutlookWords.sentences(o)) {
      out.append("<li>").append(m.prose(sentence)).append("</li>");
    }
    out.append("</ul>");
    table(out, o);
    return out.append("</section>\n").toString();
  }

  private static void table(StringBuilder out, Outlook o) {
    String[] head = new String[1 + 2 * o.courses().size()];
    head[0] = "Week";
    for (int i = 0; i < o.courses().size(); i++) {
      String name = OutlookPicture.name(o.courses().get(i));
      head[1 + 2 * i] = "Bees<br>" + name;
      head[2 + 2 * i] = "Brood<br>" + name;
    }
    out.append("<details><summary>Week by week</summary>")
        .append(Tables.open("Bees and brood cells at the end of each week, lowest to highest"))
        .append(Tables.head(head))
        .append("<tbody>");
    for (int week = 1; week <= o.weeks(); week++) {
      int day = 7 * week - 1;
      List<Course> courses = o.courses();
      String[] cells = new String[2 * courses.size()];
      for (int i = 0; i < courses.size(); i++) {
        Course c = courses.get(i);
        cells[2 * i] = OutlookWords.span(c.low(day, ColonyDay::bees), c.high(day, ColonyDay::bees));
        cells[2 * i + 1] =
            OutlookWords.span(c.low(day, ColonyDay::brood), c.high(day, ColonyDay::brood));
      }
      out.append(Tables.row(String.valueOf(week), cells));
    }
    out.append("</tbody>").append(Tables.CLOSE).append("</details>");
  }
}
