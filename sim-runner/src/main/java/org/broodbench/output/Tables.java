package org.broodbench.output;

/** The frame around a table: it scrolls by itself where the page is too narrow. */
final class Tables {
  /** Ends what {@link #open} began. */
  static final String CLOSE = "</table></div>";

  private Tables() {}

  /** Begins a table with a caption; the caption is plain text. */
  static String open(String caption) {
    String escaped = Markup.text(caption);
    return "<div class=\"wide\" role=\"region\" tabindex=\"0\" aria-label=\""
        + escaped
        + ", table\"><table><caption>"
        + escaped
        + "</caption>";
  }
}
