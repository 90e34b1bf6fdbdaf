package org.broodbench.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.hive.HiveLedger;
import org.broodbench.power.PowerLedger;
import org.broodbench.study.Outcome;

/** The balances of the run: energy as a picture and a table, heat, water and gas as tables. */
final class LedgerPart {
  /** A ledger closes when no more than this share of its terms is left over. */
  private static final double CLOSES = 1e-6;

  /** One term, in the unit of its ledger. */
  private record Term(String label, double value, boolean in) {}

  private final Markup m;

  private LedgerPart(Markup markup) {
    m = markup;
  }

  static String html(Outcome o, Markup markup) {
    LedgerPart part = new LedgerPart(markup);
    PowerLedger p = o.main().power();
    HiveLedger h = o.main().hive();
    StringBuilder out = new StringBuilder();
    out.append("<section id=\"energy\" aria-labelledby=\"energy-h\">")
        .append("<h2 id=\"energy-h\">Where each watt-hour went</h2>")
        .append("<div class=\"side\">")
        .append(EnergyPicture.svg(p))
        .append("<div>")
        .append(part.energy(p))
        .append("<p class=\"hint\">The panel could have given ")
        .append(Quantity.plain(p.pvAvailableJ / 3600, 0))
        .append(" Wh; ")
        .append(Quantity.plain((p.pvAvailableJ - p.pvUsedJ) / 3600, 0))
        .append(" Wh found no taker because the battery was full or took no more.</p>")
        .append("</div></div></section>\n<section id=\"ledgers\" aria-labelledby=\"ledgers-h\">")
        .append("<h2 id=\"ledgers-h\">Heat, water, gas and charge</h2>")
        .append("<p>Each term is added up by itself; what the sums leave over shows how well the")
        .append(" arithmetic holds together.</p><div class=\"side\">")
        .append(part.heat(h))
        .append(part.water(h))
        .append(part.gas(h))
        .append(part.charge(p))
        .append("</div></section>\n");
    return out.toString();
  }

  private String energy(PowerLedger p) {
    double stored = p.batteryChangeJ;
    return table(
        "Electrical energy",
        Quantity.WATT_HOURS,
        1,
        List.of(
            new Term("Panel", p.pvUsedJ / 3600, true),
            new Term("Mains", p.shoreJ / 3600, true),
            stored < 0
                ? new Term("Battery, given", -stored / 3600, true)
                : new Term("Battery, kept", stored / 3600, false),
            new Term("Heater", p.heaterJ / 3600, false),
            new Term("Fan", p.fanJ / 3600, false),
            new Term("Controller", p.controllerJ / 3600, false),
            new Term("Other loads", p.otherLoadsJ / 3600, false),
            new Term("Charge control, lost", p.chargeLossJ / 3600, false),
            new Term("Battery, lost", p.batteryLossJ / 3600, false),
            new Term("Inverter, lost", p.inverterLossJ / 3600, false),
            new Term("Wires, lost", p.wiringLossJ / 3600, false)),
        p.energyResidualJ() / 3600);
  }

  private String heat(HiveLedger h) {
    return table(
        "Heat of the hive",
        Quantity.WATT_HOURS,
        1,
        List.of(
            new Term("Heater", h.heaterJ / 3600, true),
            new Term("Bees and brood", h.colonyJ / 3600, true),
            new Term("Sun on the hive", h.sunJ / 3600, true),
            new Term("Electronics inside", h.electronicsJ / 3600, true),
            new Term("Water condensing", h.latentReleasedJ / 3600, true),
            new Term("Walls, floor, lid", h.lostWallsJ / 3600, false),
            new Term("Air going out", h.lostAirJ / 3600, false),
            new Term("Water evaporating", h.latentTakenJ / 3600, false),
            new Term("Warmer at the end", h.storedJ / 3600, false)),
        h.heatResidualJ() / 3600);
  }

  private String water(HiveLedger h) {
    return table(
        "Water",
        Quantity.GRAMS,
        0,
        List.of(
            new Term("Made from feed", h.waterMadeKg * 1000, true),
            new Term("Fetched by bees", h.waterFetchedKg * 1000, true),
            new Term("Came with air", h.waterInKg * 1000, true),
            new Term("Left with air", h.waterOutKg * 1000, false),
            new Term("Drained", h.waterDrainedKg * 1000, false),
            new Term("More at the end", h.waterStoredKg * 1000, false)),
        h.waterResidualKg() * 1000);
  }

  private String gas(HiveLedger h) {
    return table(
        "Carbon dioxide",
        Quantity.GRAMS,
        0,
        List.of(
            new Term("Breathed out", h.co2MadeKg * 1000, true),
            new Term("Came with air", h.co2InKg * 1000, true),
            new Term("Left with air", h.co2OutKg * 1000, false),
            new Term("More at the end", h.co2StoredKg * 1000, false)),
        h.co2ResidualKg() * 1000);
  }

  private String charge(PowerLedger p) {
    return table(
        "Charge of the battery, Ah",
        null,
        2,
        List.of(
            new Term("Charged", p.chargeInAh, true),
            new Term("Drawn", p.chargeOutAh, false),
            new Term("Lost inside", p.chargeLostAh, false),
            new Term("More at the end", p.chargeStoredAh, false)),
        p.chargeResidualAh());
  }

  /** Terms that are nothing at all are left out; in and out stand in two columns. */
  private String table(
      String caption, Quantity q, int decimals, List<Term> terms, double residual) {
    List<Term> there = new ArrayList<>();
    double in = 0;
    double out = 0;
    double all = 0;
    for (Term t : terms) {
      all += Math.abs(t.value());
      in += t.in() ? t.value() : 0;
      out += t.in() ? 0 : t.value();
      if (t.value() != 0) {
        there.add(t);
      }
    }
    StringBuilder html = new StringBuilder(Tables.open(caption));
    String unit = q == null ? "" : ", " + m.unit(q);
    html.append(Tables.head("Term", "In" + unit, "Out" + unit)).append("<tbody>");
    for (Term t : there) {
      String value = value(q, t.value(), decimals);
      html.append(Tables.row(t.label(), t.in() ? value : "", t.in() ? "" : value));
    }
    html.append("</tbody><tfoot>")
        .append(Tables.row("Sum", value(q, in, decimals), value(q, out, decimals)))
        .append("<tr><td colspan=\"3\">")
        .append(Math.abs(residual) <= CLOSES * all ? "Closes: " : "Does not close: ")
        .append(leftOver(residual, all))
        .append("</td></tr></tfoot>");
    return html.append(Tables.CLOSE).toString();
  }

  private String value(Quantity q, double value, int decimals) {
    return q == null ? Quantity.plain(value, decimals) : m.bare(q, value, decimals);
  }

  private static String leftOver(double residual, double all) {
    if (residual == 0 || all == 0) {
      return "nothing is left over";
    }
    String[] parts = String.format(Locale.ROOT, "%.0e", Math.abs(residual) / all).split("e");
    return parts[0]
        + " × 10<sup>"
        + Quantity.plain(Integer.parseInt(parts[1]), 0)
        + "</sup> of all terms is left over";
  }
}
