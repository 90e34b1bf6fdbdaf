package org.broodbench.output;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.broodbench.loop.AlarmSpan;
import org.broodbench.loop.Explain;
import org.broodbench.loop.Judge;
import org.broodbench.loop.RunResult;
import org.broodbench.study.Evaluation;
import org.broodbench.study.JudgedRequirement;
import org.broodbench.study.Outcome;

/** The verdict in words: requirement by requirement, what to change, what to know. */
final class VerdictPart {
  private final Outcome o;
  private final Markup m;

  VerdictPart(Outcome outcome, Markup markup) {
    o = outcome;
    m = markup;
  }

  /** The answer in one line. */
  String headline() {
    int all = o.requirements().size();
    long missed = o.requirements().stream().filter(r -> !r.met()).count();
    if (all == 0) {
      return "Nothing was required";
    }
    if (missed == 0) {
      return all == 1 ? "Met: the one requirement holds" : "Met: all " + all + " requirements hold";
    }
    long depends = o.requirements().stream().filter(JudgedRequirement::dependsOnColony).count();
    String line =
        all == 1
            ? "Missed: the one requirement does not hold"
            : "Missed: "
                + missed
                + " of "
                + all
                + " requirements do"
                + (missed == 1 ? "es" : "")
                + " not hold";
    return depends == missed ? line + " for every colony" : line;
  }

  String html() {
    StringBuilder out = new StringBuilder();
    out.append("<section id=\"verdict\" aria-labelledby=\"verdict-h\">");
    String state = o.requirements().isEmpty() ? "open" : o.met() ? "met" : "missed";
    out.append("<h2 id=\"verdict-h\" class=\"headline ")
        .append(state)
        .append("\">")
        .append(mark(state))
        .append(headline())
        .append("</h2>");
    out.append("<p class=\"lead\">").append(lead()).append("</p>");
    List<JudgedRequirement> sorted = new ArrayList<>(o.requirements());
    sorted.sort(Comparator.comparingInt(r -> r.met() ? 2 : r.dependsOnColony() ? 1 : 0));
    out.append("<ul class=\"reqs\">");
    for (JudgedRequirement r : sorted) {
      out.append(requirement(r));
    }
    out.append("</ul>");
    if (o.requirements().stream().anyMatch(JudgedRequirement::dependsOnColony)) {
      out.append(
          "<p class=\"note\"><b>Depends on the colony</b> means: with one published heat loss of"
              + " small clusters it holds, with another it does not. Nobody can tell beforehand"
              + " which your colony is like, so it counts as missed. See <a href=\"#sure\">how"
              + " sure</a>.</p>");
    }
    out.append(RemedyPart.html(o, m));
    list(out, "flags", "Know before you read on", o.flags());
    alarms(out);
    return out.append("</section>").toString();
  }

  /** What heat did for the brood, against the same hive without it. */
  String lead() {
    RunResult r = o.main();
    String heat =
        "The brood comb was in its band of "
            + m.bare(Quantity.TEMPERATURE, o.scenario().run().bandLowC(), 0)
            + " to "
            + m.amount(Quantity.TEMPERATURE, o.scenario().run().bandHighC(), 0)
            + " for "
            + Quantity.plain(r.brood().percentInBand(), 1)
            + " % of "
            + Counted.of(Math.round(r.days()), "day")
            + ". The same hive without heat: "
            + Quantity.plain(o.noHeat().brood().percentInBand(), 1)
            + " %; without heat but with "
            + m.amount(Quantity.MILLIMETRES, 50, 0)
            + " more insulation: "
            + Quantity.plain(o.insulationOnly().brood().percentInBand(), 1)
            + " %."
            + insulation();
    return heat
        + " The battery came down to "
        + Quantity.plain(100 * r.battery().lowestSoc().value(), 0)
        + " % and ended at "
        + Quantity.plain(100 * r.battery().finalSoc(), 0)
        + " %.";
  }

  /** Where insulation alone does as well, the keeper should hear it at once. */
  private String insulation() {
    boolean asWell =
        o.scenario().heater().powerW() > 0
            && o.insulationOnly().brood().percentInBand() >= o.main().brood().percentInBand();
    return asWell
        ? " <b>For warmth, insulation alone would do as well as this heater, or better.</b>"
        : "";
  }

  private String requirement(JudgedRequirement r) {
    String state = r.met() ? "met" : r.dependsOnColony() ? "depends" : "missed";
    String word = r.met() ? "Met" : r.dependsOnColony() ? "Depends on the colony" : "Missed";
    StringBuilder out = new StringBuilder();
    out.append("<li class=\"").append(state).append("\">").append(mark(state));
    out.append("<div><h3>")
        .append(RequirementWords.name(r.requirement().kind()))
        .append(": <span class=\"word\">")
        .append(word.toLowerCase(java.util.Locale.ROOT))
        .append("</span></h3><p><b>");
    if (Double.isNaN(r.value())) {
      out.append("Nothing of the kind happened</b>; wanted ")
          .append(RequirementWords.wanted(r.requirement(), m))
          .append(".</p>");
    } else {
      boolean holds = r.requirement().kind().met(r.value(), r.requirement().limit());
      out.append(RequirementWords.value(r.requirement().kind(), r.value(), m))
          .append("</b>, wanted ")
          .append(RequirementWords.wanted(r.requirement(), m))
          .append(": ")
          .append(RequirementWords.margin(r.requirement(), r.value(), m))
          .append(holds ? " to spare" : r.requirement().kind().atLeast() ? " short" : " over")
          .append(". ")
          .append(m.prose(Markup.capital(r.why())))
          .append(".</p>");
    }
    if (r.dependsOnColony()) {
      out.append("<p>").append(colonies(r)).append("</p>");
    }
    return out.append("</div></li>").toString();
  }

  private String colonies(JudgedRequirement r) {
    return "With a cluster that loses little heat (factor "
        + Quantity.plain(Evaluation.LOW_LOSS, 2)
        + "): "
        + valueIn(r, o.lowLoss())
        + "; with this scenario's own ("
        + Quantity.plain(o.scenario().colony().clusterLossFactor(), 2)
        + "): "
        + valueIn(r, o.main())
        + "; with one that loses much ("
        + Quantity.plain(Evaluation.HIGH_LOSS, 2)
        + "): "
        + valueIn(r, o.highLoss())
        + ".";
  }

  private String valueIn(JudgedRequirement r, RunResult run) {
    Judge.Measured measured = Judge.measure(r.requirement().kind(), run, o.scenario());
    return RequirementWords.value(r.requirement().kind(), measured.value(), m)
        + (measured.meets(r.requirement()) ? ", met" : ", missed");
  }

  private void list(StringBuilder out, String id, String title, List<String> items) {
    if (items.isEmpty()) {
      return;
    }
    out.append("<h3 id=\"").append(id).append("\">").append(title).append("</h3><ul>");
    for (String item : items) {
      out.append("<li>").append(m.prose(item)).append("</li>");
    }
    out.append("</ul>");
  }

  private void alarms(StringBuilder out) {
    List<String> lines = new ArrayList<>();
    for (AlarmSpan a : o.main().alarms()) {
      lines.add(
          Markup.capital(a.name().replace('_', ' '))
              + ": first on "
              + Explain.moment(o.scenario(), a.firstAtS())
              + ", "
              + Quantity.hours(a.hours())
              + " in all");
    }
    list(out, "alarms", "Alarms that the controller raised", lines);
  }

  /** A mark that goes with a word; it tells nothing that the word does not. */
  static String mark(String state) {
    String path =
        switch (state) {
          case "met" -> "<path d=\"M5 12.5l5 5L20 7\"/>";
          case "missed" -> "<path d=\"M6 6l12 12M18 6L6 18\"/>";
          default -> "<path d=\"M4 12h16\"/><path d=\"M4 12a8 8 0 0 1 16 0z\" class=\"full\"/>";
        };
    return "<svg class=\"mark\" viewBox=\"0 0 24 24\" aria-hidden=\"true\">" + path + "</svg>";
  }
}
