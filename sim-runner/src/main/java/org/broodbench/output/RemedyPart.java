package org.broodbench.output;

import java.util.List;
import org.broodbench.study.Outcome;
import org.broodbench.study.Remedy;
import org.broodbench.study.RemedySearch;

/** What to change: single changes that help, as simulated, best first. */
final class RemedyPart {
  /** So many stand in the open; the others are folded away. */
  private static final int OPEN = 3;

  private RemedyPart() {}

  static String html(Outcome o, Markup m) {
    RemedySearch search = o.remedies();
    if (search.tried() == 0) {
      return "";
    }
    List<Remedy> all = search.helpful();
    StringBuilder out = new StringBuilder();
    out.append("<h3 id=\"change\">What to change</h3><p>")
        .append(m.prose(RemedyWords.winner(search)))
        .append("</p>");
    if (!all.isEmpty()) {
      list(out, all.subList(0, Math.min(OPEN, all.size())), 1, m);
      if (all.size() > OPEN) {
        out.append("<details><summary>")
            .append(all.size() - OPEN)
            .append(" more that help less</summary>");
        list(out, all.subList(OPEN, all.size()), OPEN + 1, m);
        out.append("</details>");
      }
    }
    return out.append("<p class=\"hint\">")
        .append(m.prose(RemedyWords.how(search)))
        .append(" What a change costs in money and work is not weighed. Add the options to the")
        .append(" command to see a change in full.</p>")
        .toString();
  }

  private static void list(StringBuilder out, List<Remedy> some, int first, Markup m) {
    out.append("<ol class=\"remedies\" start=\"").append(first).append("\">");
    for (Remedy r : some) {
      out.append("<li><p><b>").append(m.prose(r.change().what())).append(".</b> ");
      String comma = "";
      for (Remedy.Effect e : RemedyWords.told(r)) {
        out.append(comma).append(RemedyWords.effect(e, m));
        comma = "; ";
      }
      String reach = RemedyWords.reach(r);
      out.append(". ")
          .append(reach.isEmpty() ? "" : "<b class=\"word\">" + Markup.capital(reach) + ".</b>")
          .append("</p><p><code>")
          .append(Markup.text(RemedyWords.options(r)))
          .append("</code></p></li>");
    }
    out.append("</ol>");
  }
}
