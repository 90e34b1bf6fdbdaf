package org.broodbench.output;

import org.broodbench.study.Cautions;

/** The frame of a page about many runs: no script, nothing to load. */
final class StudyPage {
  private StudyPage() {}

  /**
   * The page.
   *
   * @param title plain text
   * @param what a paragraph under the title, plain text
   * @param body markup
   */
  static String of(String title, String what, String body) {
    String style = HtmlReport.resource("report.css") + HtmlReport.resource("study.css");
    StringBuilder out = new StringBuilder(1 << 17);
    out.append("<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\n")
        .append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; ")
        .append("style-src '")
        .append(HtmlReport.hash(style))
        .append("'; img-src data:; base-uri 'none'; form-action 'none'\">\n")
        .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
        .append("<meta name=\"color-scheme\" content=\"light dark\">\n")
        .append("<link rel=\"icon\" href=\"data:,\">\n<title>")
        .append(Markup.text(title))
        .append("</title>\n<style>")
        .append(style)
        .append("</style></head>\n<body>\n<header><h1>")
        .append(Markup.text(title))
        .append("</h1><p class=\"what\">")
        .append(Markup.text(what))
        .append("</p></header>\n<main id=\"main\">\n")
        .append(body)
        .append("<section aria-labelledby=\"cautions-h\"><h2 id=\"cautions-h\">Cautions</h2><ul>");
    for (String c : Cautions.all()) {
      out.append("<li>").append(Markup.text(c)).append("</li>");
    }
    return out.append("</ul></section></main>\n<footer><p>Made by Broodbench from simulations.</p>")
        .append("</footer></body></html>\n")
        .toString();
  }
}
