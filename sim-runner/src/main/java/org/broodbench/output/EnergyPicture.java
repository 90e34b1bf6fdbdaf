package org.broodbench.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.power.PowerLedger;

/**
 * Draws where each watt-hour came from and where it went: sources bend into one stream, and every
 * use and loss leaves it again at its own height. A band's thickness is its share; losses are
 * hatched; what the panel could have given and nobody took stands beside the stream, dashed.
 */
final class EnergyPicture {
  private static final double WIDTH = 380;
  private static final double STREAM_PX = 120;
  private static final double LEFT = 8;
  private static final double TURN = 10;
  private static final double BAND_END = 196;
  private static final double LABEL_AT = 212;
  private static final double ROW_PX = 40;
  private static final double THIN_PX = 16;
  private static final double SMALLEST_WH = 0.05;

  /** One band. */
  private record Flow(String label, double wh, String kind) {}

  private final StringBuilder out = new StringBuilder();
  private final double total;

  private EnergyPicture(double totalWh) {
    total = totalWh;
  }

  /** The picture as SVG; empty where nothing flowed. */
  static String svg(PowerLedger p) {
    double change = p.batteryChangeJ / 3600;
    List<Flow> from = new ArrayList<>();
    add(from, "From the panel", p.pvUsedJ / 3600, "in");
    add(from, "From the mains", p.shoreJ / 3600, "in");
    add(from, "Out of the battery", -change, "in");
    List<Flow> to = new ArrayList<>();
    add(to, "Heater", p.heaterJ / 3600, "use");
    add(to, "Fan", p.fanJ / 3600, "use");
    add(to, "Controller", p.controllerJ / 3600, "use");
    add(to, "Other loads", p.otherLoadsJ / 3600, "use");
    add(to, "Kept in the battery", change, "keep");
    add(to, "Lost in charge control", p.chargeLossJ / 3600, "loss");
    add(to, "Lost in the battery", p.batteryLossJ / 3600, "loss");
    add(to, "Lost in the inverter", p.inverterLossJ / 3600, "loss");
    add(to, "Lost in the wires", p.wiringLossJ / 3600, "loss");
    double total = from.stream().mapToDouble(Flow::wh).sum();
    return from.isEmpty() || to.isEmpty()
        ? ""
        : new EnergyPicture(total).draw(from, to, (p.pvAvailableJ - p.pvUsedJ) / 3600);
  }

  private static void add(List<Flow> flows, String label, double wh, String kind) {
    if (wh >= SMALLEST_WH) {
      flows.add(new Flow(label, wh, kind));
    }
  }

  private String draw(List<Flow> from, List<Flow> to, double unusedWh) {
    double y = 4;
    if (unusedWh >= SMALLEST_WH) {
      out.append(
          format(
              "<rect class=\"unused\" x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"12\"/>",
              BAND_END - 60, y + 10, 60.0));
      label(new Flow("Sun that nobody took", unusedWh, "unused"), y + 16, false);
      y += ROW_PX + 4;
    }
    double[] bends = new double[from.size()];
    double x = LEFT;
    for (int i = 0; i < from.size(); i++) {
      double t = thick(from.get(i));
      double lower = Math.max(0, (THIN_PX - t) / 2);
      bends[i] = y + lower + t + TURN;
      label(from.get(i), y + lower + t / 2, true);
      y += Math.max(ROW_PX, t + 16);
    }
    double joined = y + TURN;
    for (int i = 0; i < from.size(); i++) {
      source(from.get(i), x, bends[i] - TURN - thick(from.get(i)), joined);
      x += thick(from.get(i));
    }
    y = joined + TURN;
    x = LEFT + STREAM_PX;
    for (Flow f : to) {
      double t = thick(f);
      double lower = Math.max(0, (THIN_PX - t) / 2);
      x -= t;
      sink(f, x, joined, y + lower);
      label(f, y + lower + t / 2, true);
      y += Math.max(ROW_PX, t + 16);
    }
    return format(
            "<svg class=\"energy\" viewBox=\"0 0 %.0f %.0f\" role=\"img\""
                + " aria-label=\"Where each watt-hour came from and went; the table beside it has"
                + " the same numbers\"><defs><pattern id=\"hatch\" width=\"6\" height=\"6\""
                + " patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\"><rect"
                + " class=\"hatch-ground\" width=\"6\" height=\"6\"/><path class=\"hatch-line\""
                + " d=\"M0 0V6\"/></pattern></defs>",
            WIDTH, y + 8)
        + out
        + "</svg>";
  }

  private double thick(Flow f) {
    return f.wh() / total * STREAM_PX;
  }

  /** Comes from the right at a height, turns down and runs to where all have joined. */
  private void source(Flow f, double x, double y, double downTo) {
    double t = thick(f);
    double turned = x + t + TURN;
    path(
        f,
        format(
            "M%.1f %.1fH%.1fA%.1f %.1f 0 0 0 %.1f %.1fV%.1fH%.1fV%.1fA%.1f %.1f 0 0 1 %.1f %.1fH%.1fZ",
            BAND_END,
            y,
            turned,
            t + TURN,
            t + TURN,
            x,
            y + t + TURN,
            downTo,
            x + t,
            y + t + TURN,
            TURN,
            TURN,
            turned,
            y + t,
            BAND_END));
  }

  /** Runs down from where all have joined, turns right at a height and ends in a point. */
  private void sink(Flow f, double x, double from, double y) {
    double t = thick(f);
    double turned = x + t + TURN;
    double point = Math.min(9, t / 2 + 2);
    path(
        f,
        format(
            "M%.1f %.1fV%.1fA%.1f %.1f 0 0 0 %.1f %.1fH%.1fL%.1f %.1fL%.1f %.1fH%.1fA%.1f %.1f 0 0 1 %.1f %.1fV%.1fZ",
            x,
            from,
            y - TURN,
            t + TURN,
            t + TURN,
            turned,
            y + t,
            BAND_END - point,
            BAND_END,
            y + t / 2,
            BAND_END - point,
            y,
            turned,
            TURN,
            TURN,
            x + t,
            y - TURN,
            from));
  }

  private void path(Flow f, String d) {
    out.append("<path class=\"").append(f.kind()).append("\" d=\"").append(d).append("\"/>");
  }

  private void label(Flow f, double middle, boolean withShare) {
    out.append(
        format(
            "<text x=\"%.1f\" y=\"%.1f\"><tspan class=\"name\">%s</tspan><tspan x=\"%.1f\""
                + " dy=\"15\">%s Wh%s</tspan></text>",
            LABEL_AT,
            Math.max(middle - 3, 12),
            f.label(),
            LABEL_AT,
            Quantity.plain(f.wh(), f.wh() < 10 ? 1 : 0),
            withShare ? ", " + Quantity.plain(100 * f.wh() / total, 1) + " %" : ""));
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
