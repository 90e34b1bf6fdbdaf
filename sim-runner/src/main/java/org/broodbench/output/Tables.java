package org.broodbench.output;

/** The frame around a table: it scrolls by itself where the page is too narrow. */
final class Tables {
  /** Ends what {@link #open(String, String)} began. */
  static final String CLOSE = "</table></div>";

  private Tables() {}

  /** Begins a table with a caption, which is plain text. */
  static String open(String caption) {
    return open(caption, "plain");
  }

  /** Begins a table of some class. */
  static String open(String caption, String cssClass) {
    String escaped = Markup.text(caption);
    return "<div class=\"wide\" role=\"region\" tabindex=\"0\" aria-label=\"Table: "
        + escaped
        + "\"><table class=\""
        + cssClass
        + "\"><caption>"
        + escaped
        + "</caption>";
  }

  /** The head of a table; cells may hold markup. */
  static String head(String... columns) {
    StringBuilder out = new StringBuilder("<thead><tr>");
    for (String c : columns) {
      out.append("<th scope=\"col\">").append(c).append("</th>");
    }
    return out.append("</tr></thead>").toString();
  }

  /** A row whose first cell is its head; cells may hold markup. */
  static String row(String head, String... cells) {
    StringBuilder out = new StringBuilder("<tr><th scope=\"row\">").append(head).append("</th>");
    for (String c : cells) {
      out.append("<td>").append(c).append("</td>");
    }
    return out.append("</tr>").toString();
  }
}
