package org.broodbench.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Draws the supply chain from top to bottom: panel, charge control, bus with the battery hanging on
 * it, inverter, loads. A band is as wide as the energy that went through it; every number stands
 * beside its band; losses are hatched.
 */
final class SupplyPicture {
  private static final double WIDTH = 380;
  private static final double WIDEST = 64;
  private static final double ROW = 38;
  private static final double PANEL_X = 70;
  private static final double MAINS_X = 270;
  private static final double BUS_Y = 196;
  private static final double TRUNK_X = 196;
  private static final double TEXT_X = 244;

  /** One band that leaves the bus. */
  private record Branch(String name, double wh, String kind, boolean inverter) {}

  private final SupplyFlows f;
  private final double scale;
  private final StringBuilder out = new StringBuilder();

  private SupplyPicture(SupplyFlows flows) {
    f = flows;
    double drawn = branches().stream().mapToDouble(Branch::wh).sum();
    double most = Math.max(drawn, Math.max(f.panelWh() + f.mainsWh(), f.dischargedWh()));
    scale = WIDEST / Math.max(1, Math.max(most, f.chargedWh()));
  }

  static String svg(SupplyFlows flows) {
    return new SupplyPicture(flows).draw();
  }

  private List<Branch> branches() {
    List<Branch> all = new ArrayList<>();
    for (SupplyFlows.Flow s : f.straight()) {
      all.add(new Branch(s.name(), s.wh(), "use", false));
    }
    double inverterLost = f.lost(SupplyFlows.Place.INVERTER);
    if (f.inverter()) {
      double behind = f.behindInverter().stream().mapToDouble(SupplyFlows.Flow::wh).sum();
      all.add(new Branch("Inverter", behind + inverterLost, "pass", true));
    } else if (inverterLost > 0) {
      all.add(new Branch("Lost in the regulator", inverterLost, "loss", false));
    }
    all.add(new Branch("Lost in the wires", f.lost(SupplyFlows.Place.WIRES), "loss", false));
    return all;
  }

  private String draw() {
    if (f.panelWh() > 0 || f.onOfferWh() > 0) {
      box(8, 4, 124, "Panel");
      band("in", PANEL_X, 30, 92, f.panelWh());
      note(PANEL_X + half(f.panelWh()) + 6, 56, "gave " + wh(f.panelWh()));
      note(PANEL_X + half(f.panelWh()) + 6, 71, "of " + wh(f.onOfferWh()) + " on offer");
      box(8, 92, 124, "Charge control");
      // the loss of a mains charger is booked with that of the charge control
      double lost = f.mainsWh() > 0 ? 0 : f.lost(SupplyFlows.Place.CHARGE);
      double passed = f.panelWh() - Math.min(f.panelWh(), lost);
      band("in", PANEL_X, 118, BUS_Y, passed);
      lossTo(PANEL_X + half(passed), 148, f.lost(SupplyFlows.Place.CHARGE));
      if (f.mainsWh() > 0) {
        note(PANEL_X + half(passed) + 46, 168, "with the charger");
      }
    }
    if (f.mainsWh() > 0) {
      box(MAINS_X - 46, 4, 92, "Mains");
      band("in", MAINS_X, 30, BUS_Y, f.mainsWh());
      note(MAINS_X + half(f.mainsWh()) + 6, 62, "gave");
      note(MAINS_X + half(f.mainsWh()) + 6, 77, wh(f.mainsWh()));
    }
    out.append(
        format("<rect class=\"node\" x=\"8\" y=\"%.1f\" width=\"364\" height=\"22\"/>", BUS_Y));
    out.append(format("<text class=\"name\" x=\"16\" y=\"%.1f\">Bus</text>", BUS_Y + 15.5));
    battery();
    double bottom = Math.max(loads(), BUS_Y + 190);
    return format(
            "<svg class=\"energy\" viewBox=\"0 0 %.0f %.0f\" role=\"img\" aria-label=\"The supply"
                + " chain with the energy through each part; the table beside it has the same"
                + " numbers\"><defs><pattern id=\"hatch-chain\" width=\"6\" height=\"6\""
                + " patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\"><rect"
                + " class=\"hatch-ground\" width=\"6\" height=\"6\"/><path class=\"hatch-line\""
                + " d=\"M0 0V6\"/></pattern></defs>",
            WIDTH, bottom)
        + out
        + "</svg>";
  }

  private void battery() {
    double top = BUS_Y + 22;
    double boxY = top + 84;
    band("in", 34, top, boxY, f.chargedWh());
    band("use", 98, top, boxY, f.dischargedWh());
    arrow(34, boxY - 3, 1, f.chargedWh());
    arrow(98, top + 3, -1, f.dischargedWh());
    box(8, boxY, 118, "Battery");
    note(8, boxY + 41, "took in " + wh(f.chargedWh()));
    note(8, boxY + 56, "gave back " + wh(f.dischargedWh()));
    note(8, boxY + 71, "lost " + wh(f.lost(SupplyFlows.Place.BATTERY)));
  }

  /** Everything that hangs on the bus; gives the lower end of the drawing. */
  private double loads() {
    double y = BUS_Y + 40;
    List<Branch> all = branches();
    double x = TRUNK_X + all.stream().mapToDouble(b -> scale * b.wh()).sum() / 2;
    for (Branch b : all) {
      double w = scale * b.wh();
      x -= w;
      double middle = y + Math.max(w, 14) / 2;
      branch(b.kind(), x + w / 2, BUS_Y + 22, middle, w);
      label(b.name(), b.wh(), TEXT_X, middle);
      y += Math.max(ROW, w + 16);
      if (b.inverter()) {
        double lost = f.lost(SupplyFlows.Place.INVERTER);
        out.append(
            format(
                "<rect class=\"chain-loss\" x=\"%.1f\" y=\"%.1f\" width=\"22\" height=\"%.1f\"/>",
                TEXT_X - 30, middle - w / 2, scale * lost));
        note(TEXT_X, y - 2, "of it lost: " + wh(lost));
        y += 18;
        for (SupplyFlows.Flow s : f.behindInverter()) {
          note(TEXT_X, y - 2, "to " + s.name() + ": " + wh(s.wh()));
          y += 18;
        }
        y += 6;
      }
    }
    return y + 6;
  }

  private double half(double energyWh) {
    return scale * energyWh / 2;
  }

  private void box(double x, double y, double width, String name) {
    out.append(
        format(
            "<rect class=\"node\" x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"26\"/><text"
                + " class=\"name\" x=\"%.1f\" y=\"%.1f\">%s</text>",
            x, y, width, x + 8, y + 17.5, name));
  }

  private void band(String kind, double x, double y, double toY, double energyWh) {
    double w = Math.max(1, scale * energyWh);
    out.append(
        format(
            "<rect class=\"%s\" x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\"/>",
            kind, x - w / 2, y, w, toY - y));
  }

  /** The point of an arrow on a band; none on a hairline. */
  private void arrow(double x, double y, int down, double energyWh) {
    double w = Math.max(4, scale * energyWh / 3);
    out.append(
        format(
            "<path class=\"point\" d=\"M%.1f %.1fL%.1f %.1fL%.1f %.1fZ\"/>",
            x - w, y - down * w, x, y, x + w, y - down * w));
  }

  private void lossTo(double x, double y, double energyWh) {
    double w = Math.max(1, scale * energyWh);
    out.append(
        format(
            "<rect class=\"chain-loss\" x=\"%.1f\" y=\"%.1f\" width=\"40\" height=\"%.1f\"/>",
            x, y - w / 2, w));
    note(x + 46, y + 4.5, "lost " + wh(energyWh));
  }

  /** Down from the bus and to the right. */
  private void branch(String kind, double x, double y, double toY, double w) {
    double h = Math.max(1, w) / 2;
    out.append(
        format(
            "<path class=\"%s\" d=\"M%.1f %.1fV%.1fH%.1fV%.1fH%.1fV%.1fZ\"/>",
            kind.equals("loss") ? "chain-loss" : kind,
            x - h,
            y,
            toY + h,
            TEXT_X - 8,
            toY - h,
            x + h,
            y));
  }

  private void label(String name, double energyWh, double x, double middle) {
    out.append(
        format(
            "<text x=\"%.1f\" y=\"%.1f\"><tspan class=\"name\">%s</tspan><tspan x=\"%.1f\""
                + " dy=\"15\">%s</tspan></text>",
            x, middle - 2, Markup.text(shortened(name)), x, wh(energyWh)));
  }

  private static String shortened(String name) {
    return name.length() <= 20 ? name : name.substring(0, 19) + "…";
  }

  private void note(double x, double y, String words) {
    out.append(
        format("<text x=\"%.1f\" y=\"%.1f\">%s</text>", x, y, Markup.text(shortened(words))));
  }

  private static String wh(double energyWh) {
    return Quantity.plain(energyWh, energyWh < 10 ? 1 : 0) + " Wh";
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
