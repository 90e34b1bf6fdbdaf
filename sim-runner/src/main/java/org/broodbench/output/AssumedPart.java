package org.broodbench.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.broodbench.study.Outcome;

/**
 * What was assumed: values that the scenario left to their defaults, in groups by the first word of
 * their key so that a keeper finds them, then whatever else was taken for granted.
 */
final class AssumedPart {
  private static final Pattern DEFAULT = Pattern.compile("([a-z_]+)\\.([\\w.]+) = (.*)");

  private AssumedPart() {}

  static String html(Outcome o, Markup m) {
    Map<String, List<String>> groups = new TreeMap<>();
    List<String> others = new ArrayList<>();
    for (String a : o.assumed()) {
      Matcher key = DEFAULT.matcher(a);
      if (key.matches()) {
        groups
            .computeIfAbsent(key.group(1), g -> new ArrayList<>())
            .add(
                "<code>"
                    + Markup.text(key.group(2)).replace(".", ".<wbr>").replace("_", "_<wbr>")
                    + "</code> = "
                    + (key.group(3).isBlank() ? "nothing" : m.prose(key.group(3))));
      } else {
        others.add(m.prose(a));
      }
    }
    StringBuilder out = new StringBuilder();
    out.append("<section id=\"assumed\" aria-labelledby=\"assumed-h\">")
        .append("<h2 id=\"assumed-h\">What was assumed</h2>");
    list(out, "", others);
    if (groups.isEmpty()) {
      out.append("<p>The scenario leaves no value open.</p>");
    } else {
      out.append("<p>The scenario leaves these values open, so the program used its own. Set")
          .append(" any of them in the scenario file under the name that it has here.</p>");
      for (Map.Entry<String, List<String>> g : groups.entrySet()) {
        out.append("<h3><code>").append(Markup.text(g.getKey())).append("</code></h3>");
        list(out, " class=\"columns\"", g.getValue());
      }
    }
    List<String> weather = new ArrayList<>();
    if (o.weather().filledHours() > 0) {
      weather.add(
          Quantity.plain(o.weather().filledHours(), 0)
              + " hours were missing in the record and were filled.");
    }
    o.weather().warnings().forEach(w -> weather.add(m.prose(w)));
    if (!weather.isEmpty()) {
      out.append("<h3>About the weather</h3>");
      list(out, "", weather);
    }
    return out.append("</section>\n").toString();
  }

  private static void list(StringBuilder out, String attributes, List<String> items) {
    if (items.isEmpty()) {
      return;
    }
    out.append("<ul").append(attributes).append('>');
    for (String item : items) {
      out.append("<li>").append(item).append("</li>");
    }
    out.append("</ul>");
  }
}
