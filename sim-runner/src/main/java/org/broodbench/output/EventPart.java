package org.broodbench.output;

import java.util.Map;

/** The frame of the event list; the script fills and filters it. */
final class EventPart {
  private EventPart() {}

  static String html(EventList events) {
    StringBuilder out = new StringBuilder();
    out.append("<section id=\"events\" aria-labelledby=\"events-h\"><h2 id=\"events-h\">")
        .append("What happened, and why</h2>");
    if (events.total() == 0) {
      return out.append("<p>Nothing switched and nothing happened.</p></section>\n").toString();
    }
    out.append("<p>")
        .append(events.total())
        .append(" events in all; the file events.csv beside this page holds every one.");
    if (events.leftOut() > 0) {
      out.append(" This page leaves out ")
          .append(events.leftOut())
          .append(" switchings of heater and fan at the end of the run, too many to carry.");
    }
    out.append("</p>")
        .append(Tables.open("Events by kind"))
        .append(Tables.head("What", "How often"))
        .append("<tbody>");
    for (Map.Entry<String, int[]> e : events.counts().entrySet()) {
      out.append(
          Tables.row(
              Markup.text(Markup.capital(e.getKey().replace('_', ' '))),
              Integer.toString(e.getValue()[0])));
    }
    out.append("</tbody>")
        .append(Tables.CLOSE)
        .append("<details id=\"event-list\" class=\"needs-script\"><summary>The list</summary>")
        .append("<p class=\"filters\"><label>Show <select id=\"event-kind\">")
        .append("<option value=\"\">everything</option></select></label> ")
        .append("<label>with the word <input type=\"text\" id=\"event-word\" size=\"14\"></label> ")
        .append("<output id=\"event-count\" aria-live=\"polite\"></output></p>")
        .append(Tables.open("Events in their order, UTC", "list"))
        .append(Tables.head("When", "What", "Why"))
        .append("<tbody id=\"event-rows\"></tbody>")
        .append(Tables.CLOSE)
        .append(
            "<button type=\"button\" id=\"event-more\">Show more</button></details></section>\n");
    return out.toString();
  }
}
