package org.broodbench.output;

/** Pieces of JSON that may stand inside a script element. */
final class Json {
  private Json() {}

  /** A string; {@code <}, {@code >} and {@code &} are written as code points. */
  static String string(String raw) {
    StringBuilder out = new StringBuilder(raw.length() + 16).append('"');
    for (int i = 0; i < raw.length(); i++) {
      char c = raw.charAt(i);
      if (c == '"' || c == '\\') {
        out.append('\\').append(c);
      } else if (c < ' ' || c == '<' || c == '>' || c == '&' || c == '\u2028' || c == '\u2029') {
        out.append(String.format(java.util.Locale.ROOT, "\\u%04x", (int) c));
      } else {
        out.append(c);
      }
    }
    return out.append('"').toString();
  }

  /** A number; null where it is not one. */
  static String number(double value) {
    if (!Double.isFinite(value)) {
      return "null";
    }
    return value == Math.rint(value) && Math.abs(value) < 1e15
        ? Long.toString((long) value)
        : Double.toString(value);
  }
}
