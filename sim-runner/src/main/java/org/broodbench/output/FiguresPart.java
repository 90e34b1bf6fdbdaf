package org.broodbench.output;

import java.util.Map;
import org.broodbench.loop.Explain;
import org.broodbench.loop.Extreme;
import org.broodbench.loop.HeldHeat;
import org.broodbench.loop.Lengths;
import org.broodbench.loop.RunResult;
import org.broodbench.loop.SwitchCount;
import org.broodbench.study.Outcome;

/** The numbers of the run that every result shows, whatever was required. */
final class FiguresPart {
  private final Outcome o;
  private final Markup m;

  private FiguresPart(Outcome outcome, Markup markup) {
    o = outcome;
    m = markup;
  }

  static String html(Outcome outcome, Markup markup) {
    FiguresPart part = new FiguresPart(outcome, markup);
    return "<section id=\"figures\" aria-labelledby=\"figures-h\">"
        + "<h2 id=\"figures-h\">The run in figures</h2><div class=\"side\">"
        + part.brood()
        + part.switching()
        + part.battery()
        + part.colony()
        + "</div></section>\n";
  }

  private String brood() {
    RunResult r = o.main();
    return Tables.open("Brood comb and thermal mass")
        + Tables.head("What", "Value")
        + "<tbody>"
        + Tables.row("Mean", m.amount(Quantity.TEMPERATURE, r.brood().meanC(), 1))
        + Tables.row("Lowest", temperature(r.brood().low()))
        + Tables.row("Highest", temperature(r.brood().high()))
        + Tables.row("Below the band", Quantity.hours(r.brood().hoursBelow()))
        + Tables.row("Above the band", Quantity.hours(r.brood().hoursAbove()))
        + Tables.row(
            "Depth of cold", m.amount(Quantity.DEGREE_HOURS, r.brood().degreeHoursBelow(), 0))
        + Tables.row(
            "Depth of heat", m.amount(Quantity.DEGREE_HOURS, r.brood().degreeHoursAbove(), 0))
        + Tables.row("Hottest surface that bees touch over the heater", temperature(r.pan()))
        + Tables.row("Hottest inside of the thermal mass", temperature(r.hot().filling()))
        + Tables.row("Hottest heater plate", temperature(r.plate()))
        + "</tbody>"
        + Tables.CLOSE;
  }

  private String switching() {
    RunResult r = o.main();
    SwitchCount h = r.heaterPowered();
    StringBuilder out = new StringBuilder(Tables.open("Heater and fan"));
    out.append(Tables.head("What", "Value"))
        .append("<tbody>")
        .append(Tables.row("Heater starts", Integer.toString(h.starts())))
        .append(Tables.row("Heater starts in a day", Quantity.plain(h.starts() / r.days(), 1)))
        .append(
            Tables.row(
                "Starts that the controller asked for",
                Integer.toString(r.heaterCommanded().starts())))
        .append(Tables.row("Heater on", share(h.onS())))
        .append(Tables.row("Shortest run", span(h.shortestOnS(), h.shortestOnAtS())))
        .append(Tables.row("Shortest pause", span(h.shortestOffS(), h.shortestOffAtS())))
        .append(Tables.row("Fan starts", Integer.toString(r.fan().starts())))
        .append(Tables.row("Fan on", share(r.fan().onS())));
    for (Map.Entry<String, Integer> e : r.earlyStops().entrySet()) {
      if (e.getValue() > 0) {
        out.append(
            Tables.row(
                "Stopped before minimum on: " + Markup.text(e.getKey()),
                Integer.toString(e.getValue())));
      }
    }
    for (HeldHeat held : HeldHeat.of(r)) {
      out.append(
          Tables.row(
              "Heat wanted, held off by", Markup.text(held.words()) + first(held.firstAtS())));
    }
    return out.append("</tbody>").append(Tables.CLOSE).toString();
  }

  private String first(double atS) {
    return "<br><span class=\"hint\">first on " + Explain.moment(o.scenario(), atS) + "</span>";
  }

  private String battery() {
    RunResult r = o.main();
    RunResult.BatteryUse b = r.battery();
    return Tables.open("Battery")
        + Tables.head("What", "Value")
        + "<tbody>"
        + Tables.row(
            "Lowest state of charge",
            Quantity.plain(100 * b.lowestSoc().value(), 1) + " %" + at(b.lowestSoc().atS()))
        + Tables.row(
            "Lowest volts", Quantity.plain(b.lowestV().value(), 2) + " V" + at(b.lowestV().atS()))
        + Tables.row("State of charge at the end", Quantity.plain(100 * b.finalSoc(), 1) + " %")
        + Tables.row("Full cycles in all", Quantity.plain(b.fullCycles(), 2))
        + Tables.row(
            "Last full",
            Double.isNaN(b.daysSinceFull())
                ? "never"
                : Quantity.plain(b.daysSinceFull(), 1) + " days before the end")
        + Tables.row(
            "Heater shed", Counted.of(r.sheds(), "time") + ", " + Quantity.hours(r.hoursShed()))
        + "</tbody>"
        + Tables.CLOSE;
  }

  private String colony() {
    RunResult r = o.main();
    RunResult.ColonyEnd c = r.colony();
    RunResult.Air a = r.air();
    return Tables.open("Colony and its air")
        + Tables.head("What", "Value")
        + "<tbody>"
        + Tables.row("Bees, start to end", from(c.beesStart(), c.beesEnd()))
        + Tables.row("Brood cells, start to end", from(c.broodStart(), c.broodEnd()))
        + Tables.row("Brood lost to cold", Quantity.plain(c.lostToCold(), 0))
        + Tables.row("Brood lost to heat", Quantity.plain(c.lostToHeat(), 0))
        + Tables.row("Feed eaten", m.amount(Quantity.GRAMS, c.feedEatenG(), 0))
        + Tables.row("Humidity, mean", Quantity.plain(a.meanRhPercent(), 0) + " %")
        + Tables.row(
            "Humidity, lowest", Quantity.plain(a.lowRh().value(), 0) + " %" + at(a.lowRh().atS()))
        + Tables.row("Carbon dioxide, mean", Quantity.plain(a.meanCo2Percent(), 2) + " %")
        + Tables.row(
            "Carbon dioxide, most",
            Quantity.plain(a.highCo2().value(), 2) + " %" + at(a.highCo2().atS()))
        + Tables.row("Water condensing", Quantity.hours(a.hoursCondensing()))
        + "</tbody>"
        + Tables.CLOSE
        + "<p class=\"hint\">How many brood cells die of cold or heat has no published magnitude:"
        + " the losses are an estimate and never the only reason for a verdict.</p>";
  }

  private String temperature(Extreme e) {
    return Double.isNaN(e.value())
        ? "none"
        : m.amount(Quantity.TEMPERATURE, e.value(), 1) + at(e.atS());
  }

  private String share(double onS) {
    return Quantity.hours(onS / 3600)
        + ", "
        + Quantity.plain(100 * onS / (86_400 * o.main().days()), 1)
        + " %";
  }

  private String span(double seconds, double atS) {
    return Double.isNaN(seconds) ? "none" : Lengths.of(seconds) + at(atS);
  }

  private String at(double atS) {
    return atS < 0
        ? ""
        : "<br><span class=\"hint\">" + Explain.moment(o.scenario(), atS) + "</span>";
  }

  private static String from(double start, double end) {
    return Quantity.plain(start, 0) + " to " + Quantity.plain(end, 0);
  }
}
