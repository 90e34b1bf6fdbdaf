package org.broodbench.output;

import java.util.List;
import java.util.function.Function;
import org.broodbench.loop.Judge;
import org.broodbench.loop.RunResult;
import org.broodbench.study.Evaluation;
import org.broodbench.study.JudgedRequirement;
import org.broodbench.study.Outcome;
import org.broodbench.study.Sure;

/** How sure the verdict is: the same weeks with other clusters, and without heat. */
final class SurePart {
  private SurePart() {}

  static String html(Outcome o, Markup m) {
    List<RunResult> runs =
        List.of(o.lowLoss(), o.main(), o.highLoss(), o.noHeat(), o.insulationOnly());
    StringBuilder out = new StringBuilder();
    out.append("<section id=\"sure\" aria-labelledby=\"sure-h\"><h2 id=\"sure-h\">How sure</h2>")
        .append("<p>Published heat losses of small clusters lie almost threefold apart, and that")
        .append(" is the least certain number in the whole run. So the same weeks were run three")
        .append(" times, with the loss of laboratory clusters, with this scenario's own, and with")
        .append(" that of whole colonies in hives; <b>met</b> means met in all three. Beside them")
        .append(" stands the same hive with the heater unplugged, and unplugged with ")
        .append(m.amount(Quantity.MILLIMETRES, 50, 0))
        .append(" of insulation added all round.</p>")
        .append(Tables.open("Five runs of the same weeks"))
        .append(
            Tables.head(
                    "",
                    "Little loss<br>(× " + Quantity.plain(Evaluation.LOW_LOSS, 2) + ")",
                    "As in the scenario<br>(× "
                        + Quantity.plain(o.scenario().colony().clusterLossFactor(), 2)
                        + ")",
                    "Much loss<br>(× " + Quantity.plain(Evaluation.HIGH_LOSS, 2) + ")",
                    "No heat",
                    "No heat, more insulation")
                .replace("<th scope=\"col\"></th>", "<td></td>"))
        .append("<tbody>");
    for (JudgedRequirement r : o.requirements()) {
      out.append(
          row(
              RequirementWords.name(r.requirement().kind())
                  + "<br><span class=\"hint\">"
                  + RequirementWords.wanted(r.requirement(), m)
                  + "</span>",
              runs,
              run -> {
                Judge.Measured x = Judge.measure(r.requirement().kind(), run, o.scenario());
                boolean met = x.meets(r.requirement());
                return RequirementWords.value(r.requirement().kind(), x.value(), m)
                    + (met ? "<br>met" : "<br><b>missed</b>");
              }));
    }
    out.append(
        row(
            "Coldest brood comb",
            runs,
            run -> m.amount(Quantity.TEMPERATURE, run.brood().low().value(), 1)));
    out.append(row("Brood below its band", runs, run -> Quantity.hours(run.brood().hoursBelow())));
    out.append(
        row("Heater took", runs, run -> Quantity.plain(run.power().heaterJ / 3600, 0) + " Wh"));
    out.append(
        row("Feed eaten", runs, run -> m.amount(Quantity.GRAMS, run.colony().feedEatenG(), 0)));
    out.append("</tbody>").append(Tables.CLOSE);
    o.sure().ifPresent(sure -> out.append(ensemble(sure)));
    return out.append("</section>\n").toString();
  }

  private static String ensemble(Sure sure) {
    StringBuilder out = new StringBuilder();
    out.append("<h3>With other weather and other numbers</h3><p>")
        .append(Counted.of(sure.members(), "run"))
        .append(" over ")
        .append(Counted.of(sure.seasons(), "weather"))
        .append(" of the same weeks, with ")
        .append(sure.ranges().size())
        .append(" uncertain numbers drawn from their ranges: everything was met in ")
        .append(SureWords.chance(sure.everything()))
        .append(" of them (in brackets the 90 % interval).</p>")
        .append(Tables.open("How often each requirement is met, and what decides it"))
        .append(Tables.head("Requirement", "Met", "What decides it"))
        .append("<tbody>");
    for (Sure.OfRequirement q : sure.requirements()) {
      out.append(
          Tables.row(
              RequirementWords.name(q.requirement().kind()),
              SureWords.chance(q.met()),
              Markup.text(Markup.capital(SureWords.matters(q)))));
    }
    return out.append("</tbody>")
        .append(Tables.CLOSE)
        .append("<p class=\"hint\">Method: ")
        .append(Markup.text(SureWords.METHOD))
        .append("</p>")
        .toString();
  }

  private static String row(String head, List<RunResult> runs, Function<RunResult, String> cell) {
    return Tables.row(head, runs.stream().map(cell).toArray(String[]::new));
  }
}
