package org.broodbench.output;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Writes text and numbers as HTML. Numbers whose unit can be switched become {@code data} elements,
 * which carry the metric value for the script and already read right without it.
 */
final class Markup {
  private static final Map<String, Quantity> UNITS =
      Map.of(
          "°C", Quantity.TEMPERATURE,
          "degC", Quantity.TEMPERATURE,
          "K", Quantity.DIFFERENCE,
          "g", Quantity.GRAMS,
          "kg", Quantity.KILOGRAMS,
          "mm", Quantity.MILLIMETRES,
          "m", Quantity.METRES,
          "cm²", Quantity.SQUARE_CENTIMETRES,
          "m/s", Quantity.METRES_PER_SECOND,
          "W/K", Quantity.WATTS_PER_KELVIN);

  private static final String NUMBER = "[-−]?\\d+(?:\\.\\d+)?";
  private static final Pattern IN_PROSE =
      Pattern.compile(
          "(?<![\\w.])(?:("
              + NUMBER
              + ")( to | and |–))?("
              + NUMBER
              + ") (°C|degC|K|kg|g|mm|cm²|m/s|m|W/K)(?![\\w/·²³])");

  private final boolean us;

  Markup(boolean us) {
    this.us = us;
  }

  /** Whether US units stand first. */
  boolean us() {
    return us;
  }

  /** Text with everything escaped that means something in HTML. */
  static String text(String raw) {
    StringBuilder out = new StringBuilder(raw.length() + 16);
    for (int i = 0; i < raw.length(); i++) {
      char c = raw.charAt(i);
      switch (c) {
        case '&' -> out.append("&amp;");
        case '<' -> out.append("&lt;");
        case '>' -> out.append("&gt;");
        case '"' -> out.append("&quot;");
        case '\'' -> out.append("&#39;");
        default -> out.append(c < ' ' && c != '\n' && c != '\t' ? ' ' : c);
      }
    }
    return out.toString();
  }

  /** A number with its unit. */
  String amount(Quantity q, double metricValue, int decimals) {
    return data(q, metricValue, decimals, false);
  }

  /** A number whose unit stands elsewhere, such as at the head of its column. */
  String bare(Quantity q, double metricValue, int decimals) {
    return data(q, metricValue, decimals, true);
  }

  /** A unit by itself. */
  String unit(Quantity q) {
    return "<span data-u=\"" + q.key + "\">" + q.unit(us) + "</span>";
  }

  private String data(Quantity q, double metricValue, int decimals, boolean bare) {
    if (Double.isNaN(metricValue)) {
      return "none";
    }
    double value = Math.rint(metricValue * 1e4) / 1e4;
    int usDecimals = q.usDecimals(decimals);
    return "<data value=\""
        + value
        + "\" data-q=\""
        + q.key
        + "\" data-d=\""
        + decimals
        + (usDecimals != decimals ? "\" data-e=\"" + usDecimals : "")
        + (bare ? "\" data-b=\"" : "")
        + "\">"
        + q.number(value, decimals, us)
        + (bare ? "" : " " + q.unit(us))
        + "</data>";
  }

  /** Escaped prose in which every number with a switchable unit can be switched. */
  String prose(String raw) {
    StringBuilder out = new StringBuilder();
    Matcher m = IN_PROSE.matcher(raw);
    int done = 0;
    while (m.find()) {
      out.append(text(raw.substring(done, m.start())));
      Quantity q = UNITS.get(m.group(4));
      if (m.group(1) != null) {
        out.append(data(q, parse(m.group(1)), decimals(m.group(1)), true)).append(m.group(2));
      }
      out.append(data(q, parse(m.group(3)), decimals(m.group(3)), false));
      done = m.end();
    }
    return out.append(text(raw.substring(done))).toString();
  }

  /** Prose as plain text, its numbers in one set of units. */
  static String plain(String raw, boolean us) {
    return bare(new Markup(us).prose(raw));
  }

  /** Markup without its elements, as plain text. */
  static String bare(String html) {
    return html.replaceAll("<[^>]*>", "")
        .replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&quot;", "\"")
        .replace("&#39;", "'")
        .replace("&amp;", "&");
  }

  private static double parse(String number) {
    return Double.parseDouble(number.replace('−', '-'));
  }

  private static int decimals(String number) {
    int dot = number.indexOf('.');
    return dot < 0 ? 0 : number.length() - dot - 1;
  }

  /** The first letter as a capital. */
  static String capital(String words) {
    return words.isEmpty() ? words : Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }
}
