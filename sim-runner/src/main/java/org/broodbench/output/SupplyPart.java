package org.broodbench.output;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.loop.EventRow;
import org.broodbench.loop.Explain;
import org.broodbench.loop.Trace;
import org.broodbench.power.SupplyUse;
import org.broodbench.study.Outcome;

/** The supply chain: its picture, its largest loss, what opened and whether it came back, days. */
final class SupplyPart {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH).withZone(ZoneOffset.UTC);

  private final Outcome o;
  private final Markup m;
  private final SupplyFlows flows;

  private SupplyPart(Outcome outcome, Markup markup) {
    o = outcome;
    m = markup;
    flows = SupplyFlows.of(outcome);
  }

  static String html(Outcome outcome, Markup markup) {
    SupplyPart part = new SupplyPart(outcome, markup);
    return "<section id=\"supply\" aria-labelledby=\"supply-h\">"
        + "<h2 id=\"supply-h\">From panel to heater</h2>"
        + part.words()
        + "<div class=\"side\">"
        + SupplyPicture.svg(part.flows)
        + "<div>"
        + part.table()
        + "</div></div>"
        + part.cutOuts()
        + part.days()
        + "</section>\n";
  }

  private String words() {
    SupplyFlows.Loss most = flows.losses().get(0);
    if (!(most.wh() > 0)) {
      return "<p>Nothing was lost on the way.</p>";
    }
    StringBuilder out = new StringBuilder("<p>The largest loss is in <b>");
    boolean regulator = most.place() == SupplyFlows.Place.INVERTER && !flows.inverter();
    out.append(regulator ? "the regulator" : most.place().words)
        .append("</b>: ")
        .append(wh(most.wh()))
        .append(", ")
        .append(Quantity.plain(100 * most.wh() / Math.max(1e-9, flows.cameInWh()), 0))
        .append(" % of all that came in. ");
    out.append(
        switch (most.place()) {
          case CHARGE ->
              "That is what charge controller and charger turn into heat, and draw themselves.";
          case BATTERY ->
              "That is charge that did not stay, resistance and self-discharge; a fuller battery"
                  + " takes less of what is offered.";
          case INVERTER ->
              regulator
                  ? "It holds the heater's power whatever the volts, at that price."
                  : "Awake it draws "
                      + Quantity.plain(o.scenario().inverter().idleW(), 1)
                      + " W whether anything hangs on it or not.";
          case WIRES -> "Thicker or shorter wire and clean contacts mend that.";
        });
    double unused = flows.onOfferWh() - flows.panelWh();
    if (unused > 0.02 * flows.onOfferWh()) {
      out.append(" Of the sun on offer ")
          .append(wh(unused))
          .append(" found no taker, because the battery was full or took no more.");
    }
    return out.append("</p>").toString();
  }

  private String table() {
    StringBuilder out = new StringBuilder(Tables.open("Through each part"));
    out.append(Tables.head("Part", "Wh")).append("<tbody>");
    row(out, "Panel, on offer", flows.onOfferWh());
    row(out, "Panel, given", flows.panelWh());
    row(out, "Mains", flows.mainsWh());
    row(out, "Bus into the battery", flows.chargedWh());
    row(out, "Battery to the bus", flows.dischargedWh());
    for (SupplyFlows.Flow f : flows.straight()) {
      row(out, Markup.text(f.name()), f.wh());
    }
    for (SupplyFlows.Flow f : flows.behindInverter()) {
      row(out, Markup.text(f.name()) + ", behind the inverter", f.wh());
    }
    for (SupplyFlows.Loss l : flows.losses()) {
      boolean regulator = l.place() == SupplyFlows.Place.INVERTER && !flows.inverter();
      row(out, "Lost in " + (regulator ? "the regulator" : l.place().words), l.wh());
    }
    return out.append("</tbody>").append(Tables.CLOSE).toString();
  }

  private static void row(StringBuilder out, String name, double wh) {
    if (wh > 0) {
      out.append(Tables.row(name, Quantity.plain(wh, wh < 10 ? 1 : 0)));
    }
  }

  private String cutOuts() {
    List<SupplyUse.Opened> opened = new ArrayList<>();
    for (SupplyUse.Opened c : o.main().supply().cutOuts()) {
      if (c.trips() > 0 || c.openAtEnd()) {
        opened.add(c);
      }
    }
    StringBuilder out = new StringBuilder("<h3>What switched itself off</h3>");
    if (opened.isEmpty()) {
      return out.append("<p>Nothing did: no fuse, no protection and no low-volts cut-out opened")
          .append(" of the ")
          .append(o.main().supply().cutOuts().size())
          .append(" that this rig has.</p>")
          .toString();
    }
    out.append(Tables.open("Fuses, protections and cut-outs that opened", "list"))
        .append(Tables.head("What", "Opened", "For", "Returns", "At the end", "First, and why"))
        .append("<tbody>");
    for (SupplyUse.Opened c : opened) {
      out.append(
          Tables.row(
              words(c.name()),
              Counted.of(c.trips(), "time"),
              Quantity.hours(c.hoursOpen()),
              c.returnsByItself() ? "by itself" : "<b>by hand only</b>",
              c.openAtEnd() ? "<b>open</b>" : "closed again",
              first(c.name())));
    }
    return out.append("</tbody>").append(Tables.CLOSE).toString();
  }

  private String first(String name) {
    for (EventRow e : o.main().events()) {
      if (e.what().equals("cut-out " + name) && e.to().equals("open")) {
        return Explain.moment(o.scenario(), e.atS()) + ": " + m.prose(e.reason());
      }
    }
    return "before the start";
  }

  private static String words(String name) {
    return switch (name) {
      case "controller_brown_out" -> "Controller (too few volts)";
      case "battery_empty" -> "Battery (empty)";
      case "battery_frozen" -> "Battery (frozen)";
      case "board_low_volts" -> "Battery protection (low volts)";
      case "board_high_volts" -> "Battery protection (high volts)";
      case "board_current" -> "Battery protection (current)";
      case "charge_frost" -> "Charging (frost)";
      case "load_output" -> "Load output of the charge controller";
      default -> Markup.text(Markup.capital(name.replace('_', ' ')));
    };
  }

  private String days() {
    Trace t = o.main().trace();
    StringBuilder out = new StringBuilder();
    out.append(Tables.open("The supply day by day", "diary"))
        .append(
            Tables.head(
                "Day",
                "panel Wh",
                "heater Wh",
                "all loads Wh",
                "lowest %",
                "% at its end",
                "lowest V",
                "coldest battery " + m.unit(Quantity.TEMPERATURE)))
        .append("<tbody>");
    double rowH = t.intervalS() / 3600.0;
    int perDay = 86_400 / t.intervalS();
    double[] soc = t.column("soc");
    for (int first = 0; first + 1 < t.rows(); first += perDay) {
      int last = Math.min(t.rows() - 1, first + perDay);
      long fromS = o.scenario().window().fromEpochS() + (long) first * t.intervalS();
      out.append(
          Tables.row(
              DAY.format(Instant.ofEpochSecond(fromS)),
              sum(t.column("pv_w"), first, last, rowH),
              sum(t.column("heater_w"), first, last, rowH),
              sum(t.column("load_w"), first, last, rowH),
              Quantity.plain(100 * lowest(soc, first, last), 0),
              Quantity.plain(100 * soc[last], 0),
              Quantity.plain(lowest(t.column("battery_v"), first, last), 2),
              m.bare(Quantity.TEMPERATURE, lowest(t.column("battery_c"), first, last), 1)));
    }
    return out.append("</tbody>").append(Tables.CLOSE).toString();
  }

  /** Powers are means of the interval before their row. */
  private static String sum(double[] w, int first, int last, double rowH) {
    double wh = 0;
    for (int i = first + 1; i <= last; i++) {
      wh += w[i] * rowH;
    }
    return Quantity.plain(wh, 0);
  }

  private static double lowest(double[] v, int first, int last) {
    double low = v[first];
    for (int i = first; i <= last; i++) {
      low = Math.min(low, v[i]);
    }
    return low;
  }

  private static String wh(double energyWh) {
    return Quantity.plain(energyWh, energyWh < 10 ? 1 : 0) + " Wh";
  }
}
