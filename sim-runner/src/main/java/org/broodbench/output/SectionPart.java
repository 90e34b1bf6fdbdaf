package org.broodbench.output;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.broodbench.hive.HiveSection;
import org.broodbench.loop.Explain;
import org.broodbench.loop.RunResult;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.study.Outcome;

/**
 * The hive cut open at the worst moment, and under the cursor of the charts: drawing, numbers by
 * part; below, where water condensed over the run, and what the probes told.
 */
final class SectionPart {
  /** Condensing below this is not shown, g/h; own choice. */
  static final double WET_GH = 0.05;

  private static final double KEY_X = 24;
  private static final double KEY_PX = 330;

  private final Outcome o;
  private final SectionData data;
  private final Markup m;

  private SectionPart(Outcome outcome, SectionData data, Markup markup) {
    o = outcome;
    this.data = data;
    m = markup;
  }

  static String html(Outcome outcome, SectionData data, Markup markup) {
    if (data.isEmpty()) {
      return "";
    }
    SectionPart part = new SectionPart(outcome, data, markup);
    return "<section id=\"section\" aria-labelledby=\"section-h\">"
        + "<h2 id=\"section-h\">The hive cut open</h2>"
        + part.lead()
        + "<div class=\"side\"><figure class=\"cut\" aria-labelledby=\"section-h\">"
        + new SectionPicture(outcome.scenario(), data, markup).svg()
        + part.key()
        + "</figure><div>"
        + part.table()
        + "</div></div>"
        + part.water()
        + part.probes()
        + "</section>\n";
  }

  /** A number that follows the cursor; {@code kind} is t, rh, wet or co2. */
  static String number(SectionData data, String column, String kind, Markup m) {
    double value = kind.equals("co2") ? data.worstCo2Percent() : data.worst(column);
    String text =
        Double.isNaN(value)
            ? "none"
            : switch (kind) {
              case "t" ->
                  Quantity.TEMPERATURE.number(value, 1, m.us())
                      + " "
                      + Quantity.TEMPERATURE.unit(m.us());
              case "rh" -> Quantity.plain(value, 0) + " % RH";
              case "co2" -> Quantity.plain(value, 1) + " % CO₂";
              default -> wet(value);
            };
    String element = kind.equals("wet") ? "span" : "tspan";
    return String.format(
        Locale.ROOT,
        "<%s data-n=\"%s\" data-k=\"%s\">%s</%s>",
        element,
        column,
        kind,
        text,
        element);
  }

  private static String wet(double gramsPerHour) {
    return gramsPerHour > WET_GH
        ? Quantity.plain(gramsPerHour, 1) + " g/h"
        : gramsPerHour < -WET_GH ? "drying" : "dry";
  }

  private String lead() {
    return "<p>Cut along the frames, to scale, the front with the entrance at the left; the upper"
        + " vent and the fan are under the lid at the right. Drops mark where water condenses."
        + " Letters mark the probes. Shown: <b id=\"section-moment\">"
        + Explain.moment(o.scenario(), data.worstAtS())
        + "</b><span id=\"section-worst\">, when the brood was worst off</span>."
        + " <span class=\"needs-script-inline\">Move over a chart or use its slider to see another"
        + " moment.</span></p>";
  }

  /** The colours with their temperatures. */
  private String key() {
    HeatScale scale = data.heatScale();
    StringBuilder out = new StringBuilder();
    out.append("<svg class=\"section heat-key\" viewBox=\"0 0 380 34\" role=\"img\"")
        .append(" aria-label=\"Colours from cold, dark blue, to warm, pale yellow\">");
    List<String> colours = HeatScale.colours();
    double w = KEY_PX / colours.size();
    for (int i = 0; i < colours.size(); i++) {
      out.append(
          String.format(
              Locale.ROOT,
              "<rect fill=\"%s\" x=\"%.2f\" y=\"2\" width=\"%.2f\" height=\"12\"/>",
              colours.get(i),
              KEY_X + i * w,
              w + 0.3));
    }
    double rangeK = scale.highC() - scale.lowC();
    for (double c = scale.lowC(); c <= scale.highC(); c += rangeK > 60 ? 20 : 10) {
      out.append(
          String.format(
              Locale.ROOT,
              "<text class=\"tick\" x=\"%.1f\" y=\"28\" data-t=\"%.0f\">%s %s</text>",
              KEY_X + KEY_PX * (c - scale.lowC()) / rangeK,
              c,
              Quantity.TEMPERATURE.number(c, 0, m.us()).replaceAll("\\.0$", ""),
              Quantity.TEMPERATURE.unit(m.us())));
    }
    return out.append("</svg>").toString();
  }

  private String table() {
    StringBuilder out = new StringBuilder(Tables.open("Parts at this moment"));
    out.append(Tables.head("Part", "Inside", "Outside", "Water")).append("<tbody>");
    face(out, "Lid", "lid");
    for (int b = data.boxes() - 1; b >= 0; b--) {
      face(out, data.boxes() == 1 ? "Walls" : "Walls of box " + (b + 1), "wall" + b);
    }
    face(out, "Floor", "floor");
    out.append("</tbody>").append(Tables.CLOSE);
    out.append(Tables.open("Inside at this moment"));
    out.append(Tables.head("Part", "Temperature", "Air")).append("<tbody>");
    for (int b = data.boxes() - 1; b >= 0; b--) {
      String of = data.boxes() == 1 ? "" : " of box " + (b + 1);
      out.append(Tables.row("Air" + of, cell("air" + b, "t"), cell("rh" + b, "rh")));
      out.append(Tables.row("Combs" + of, cell("comb" + b, "t"), ""));
    }
    out.append(Tables.row("Brood comb", cell("nest", "t"), cell("co2", "co2")));
    out.append(Tables.row("Outer bees", cell("mantle", "t"), ""));
    if (o.scenario().heater().pan().heatJK() > 0) {
      out.append(Tables.row("Top of the pan", cell("contact", "t"), ""));
      out.append(Tables.row("Filling of the pan", cell("core", "t"), ""));
      out.append(Tables.row("Heater plate", cell("plate", "t"), ""));
    }
    out.append(Tables.row("Outdoors", cell("outdoor", "t"), ""));
    return out.append("</tbody>").append(Tables.CLOSE).toString();
  }

  private void face(StringBuilder out, String name, String column) {
    out.append(
        Tables.row(
            name,
            cell(column + "_in", "t"),
            cell(column + "_out", "t"),
            number(data, column + "_wet", "wet", m)));
  }

  private String cell(String column, String kind) {
    return number(data, column, kind, m).replace("tspan", "span");
  }

  private String water() {
    List<HiveSection.Film> wet =
        o.main().films().stream()
            .filter(f -> f.condensedG() > 0.5)
            .sorted(Comparator.comparingDouble(f -> -f.condensedG()))
            .toList();
    StringBuilder out = new StringBuilder("<h3>Where water condensed</h3>");
    if (wet.isEmpty()) {
      return out.append("<p>Nowhere more than half a gram in the whole run.</p>").toString();
    }
    HiveSection.Film most = wet.get(0);
    out.append("<p>Most on the ")
        .append(Markup.text(surface(most.surface())))
        .append(": ")
        .append(m.amount(Quantity.GRAMS, most.condensedG(), 0))
        .append(" in ")
        .append(Quantity.hours(most.hoursCondensing()))
        .append(", first on ")
        .append(Explain.moment(o.scenario(), most.firstAtS()))
        .append(".</p>")
        .append(Tables.open("Water on the inner surfaces, over the run", "list whole"))
        .append(
            Tables.head(
                "Surface",
                "Condensed",
                "Dried again",
                "Ran off",
                "Stands at the end",
                "Time condensing",
                "Time wet",
                "Fastest"))
        .append("<tbody>");
    for (HiveSection.Film f : wet) {
      out.append(
          Tables.row(
              Markup.text(Markup.capital(surface(f.surface()))),
              m.amount(Quantity.GRAMS, f.condensedG(), 0),
              m.amount(Quantity.GRAMS, f.evaporatedG(), 0),
              m.amount(Quantity.GRAMS, f.ranOffG(), 0),
              m.amount(Quantity.GRAMS, f.standingG(), 0),
              Quantity.hours(f.hoursCondensing()),
              Quantity.hours(f.hoursWet()),
              Quantity.plain(f.mostGH(), 1)
                  + " g/h"
                  + (f.mostAtS() < 0
                      ? ""
                      : "<br><span class=\"hint\">"
                          + Explain.moment(o.scenario(), f.mostAtS())
                          + "</span>")));
    }
    return out.append("</tbody>").append(Tables.CLOSE).toString();
  }

  private String surface(String name) {
    boolean one = data.boxes() == 1;
    return one && name.endsWith(" 1") ? name.substring(0, name.length() - 2) : name;
  }

  private String probes() {
    List<RunResult.ProbeTruth> all = o.main().probes();
    if (all.isEmpty()) {
      return "";
    }
    StringBuilder out =
        new StringBuilder(Tables.open("What the probes told, over the run", "list whole"));
    out.append(Tables.head("Probe", "Hangs", "Mean", "Above the brood comb", "Furthest behind"))
        .append("<tbody>");
    for (RunResult.ProbeTruth p : all) {
      out.append(
          Tables.row(
              SectionPicture.mark(p.role()) + ", " + role(p.role()),
              place(p.place()),
              m.amount(Quantity.TEMPERATURE, p.meanC(), 1),
              m.amount(Quantity.DIFFERENCE, p.aboveBroodK(), 1),
              m.amount(Quantity.DIFFERENCE, p.mostBehindK(), 1)));
    }
    return out.append("</tbody>").append(Tables.CLOSE).toString();
  }

  private static String place(ProbeSpec.Place place) {
    return switch (place) {
      case BROOD_COMB -> "between brood combs";
      case NEST_EDGE -> "at the edge of the nest";
      case BOX_AIR -> "in the air of the brood box";
      case PAN -> "on top of the pan";
      case PAN_FILLING -> "in the filling of the pan";
      case TOP -> "in the air under the lid";
      case LID -> "on the lid, inside";
      case OUTDOOR -> "outdoors, shaded";
    };
  }

  private static String role(ProbeSpec.Role role) {
    return switch (role) {
      case BROOD_A -> "first at the brood";
      case BROOD_B -> "second at the brood";
      case PAN -> "on the thermal mass";
      case TOP -> "under the lid";
      case OUTDOOR -> "outdoors";
    };
  }
}
