package org.broodbench.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.hive.BoxSpec;
import org.broodbench.hive.HiveSpec;
import org.broodbench.hive.Layer;
import org.broodbench.hive.Pan;
import org.broodbench.hive.Separator;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Scenario;

/**
 * Draws the hive cut open along its frames, to scale, the front at the left. What carries {@code
 * data-c} is filled by the temperature of that name, what carries {@code data-n} writes it, and
 * {@code data-wet} shows drops where water condenses; the script moves all three with the cursor.
 */
final class SectionPicture {
  private static final double WIDTH = 380;
  private static final double TEXT_X = 256;
  private static final double LINE_PX = 31;
  private static final double LEFT = 16;
  private static final double TOP = 14;
  private static final double MOST_WIDE_PX = 206;
  private static final double MOST_HIGH_PX = 380;

  /** Worker cells on a square metre of one side of comb, of 5.4 mm; common practice. */
  private static final double CELLS_M2 = 4e4;

  /** Bees on a square metre of comb side in a loose cluster; own choice, for the drawing alone. */
  private static final double BEES_M2 = 1.2e4;

  /** A text at the right with the part that it belongs to. */
  private record Label(int box, double partX, double partY, String name, List<String> numbers) {}

  private final Scenario s;
  private final HiveSpec hive;
  private final SectionData data;
  private final Markup m;
  private final StringBuilder out = new StringBuilder();
  private final List<Label> labels = new ArrayList<>();
  private final List<BoxSpec> boxes;
  private final double px;

  /** The box whose parts are being drawn; −1 for what is of none. */
  private int drawing = -1;

  private final double inLeft;
  private final double inRight;
  private final double inTop;
  private final double inBottom;

  SectionPicture(Scenario scenario, SectionData data, Markup markup) {
    s = scenario;
    hive = scenario.hive();
    this.data = data;
    m = markup;
    boxes = new ArrayList<>(hive.boxes());
    for (EventSpec e : s.events()) {
      if (e instanceof EventSpec.AddBox a) {
        boxes.add(new BoxSpec(a.heightM(), a.frames(), a.storesKg()));
      }
    }
    double wallM = thickness(hive.wall());
    double stackM = boxes.stream().mapToDouble(BoxSpec::heightM).sum();
    double highM = thickness(hive.floor()) + stackM + thickness(hive.lid());
    px = Math.min(MOST_WIDE_PX / (hive.lengthM() + 2 * wallM), MOST_HIGH_PX / highM);
    inLeft = LEFT + px * wallM;
    inRight = inLeft + px * hive.lengthM();
    inTop = TOP + px * thickness(hive.lid());
    inBottom = inTop + px * stackM;
  }

  private static double thickness(List<Layer> face) {
    return face.stream().mapToDouble(Layer::thicknessM).sum();
  }

  String svg() {
    shell();
    double bottom = inBottom;
    for (int b = 0; b < boxes.size(); b++) {
      double top = bottom - px * boxes.get(b).heightM();
      out.append(format("<g data-box=\"%d\">", b));
      drawing = b;
      box(b, top, bottom);
      drawing = -1;
      out.append("</g>");
      bottom = top;
    }
    pan();
    openings();
    probes();
    double down = inBottom + px * thickness(hive.floor());
    label(inRight + px * thickness(hive.wall()) + 6, TOP - 8, "Outdoors", number("outdoor", "t"));
    label(inRight - 12, inTop, "Lid, inside", number("lid_in", "t"));
    label(inRight - 8, inBottom + 1, "Floor, inside", number("floor_in", "t"));
    double low = writeLabels();
    return format(
            "<svg class=\"section\" viewBox=\"0 0 %.0f %.0f\" role=\"img\" aria-label=\"The hive cut"
                + " open along its frames, with temperatures; the table after it has the same"
                + " numbers\"><defs><pattern id=\"board\" width=\"5\" height=\"5\""
                + " patternUnits=\"userSpaceOnUse\"><rect class=\"board-ground\" width=\"5\""
                + " height=\"5\"/><circle class=\"board-dot\" cx=\"2.5\" cy=\"2.5\" r=\"0.8\"/>"
                + "</pattern></defs>",
            WIDTH, Math.max(down + 16, low))
        + out
        + "</svg>";
  }

  /** Walls, floor and lid in their layers, with coloured lines for their surfaces. */
  private void shell() {
    double at = 0;
    for (Layer l : hive.wall()) {
      double w = px * l.thicknessM();
      layer(l, inLeft - at - w, inTop, w, inBottom - inTop);
      layer(l, inRight + at, inTop, w, inBottom - inTop);
      at += w;
    }
    double wide = inRight - inLeft + 2 * at;
    double y = inBottom;
    for (Layer l : hive.floor()) {
      layer(l, inLeft - at, y, wide, px * l.thicknessM());
      y += px * l.thicknessM();
    }
    surface("floor_out", inLeft - at, y, wide, 3);
    y = inTop;
    for (Layer l : hive.lid()) {
      y -= px * l.thicknessM();
      layer(l, inLeft - at, y, wide, px * l.thicknessM());
    }
    surface("lid_out", inLeft - at, y - 3, wide, 3);
    if (hive.lidSkin().screened()) {
      dashed(inLeft - at, y - 7, inRight + at, y - 7);
    }
    if (hive.wallSkin().screened()) {
      dashed(inLeft - at - 5, inTop, inLeft - at - 5, inBottom);
      dashed(inRight + at + 5, inTop, inRight + at + 5, inBottom);
    }
  }

  private void layer(Layer l, double x, double y, double w, double h) {
    String kind = l.isAir() ? "air-gap" : l.insulates() ? "insulation" : "wood";
    out.append(
        format(
            "<rect class=\"%s\" x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\"/>",
            kind, x, y, w, h));
  }

  private void surface(String column, double x, double y, double w, double h) {
    out.append(
        format(
            "<rect data-c=\"%s\" fill=\"%s\" x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\"/>",
            column, data.heatScale().colour(data.worst(column)), x, y, w, h));
  }

  private void dashed(double x, double y, double toX, double toY) {
    out.append(format("<path class=\"screen\" d=\"M%.1f %.1fL%.1f %.1f\"/>", x, y, toX, toY));
  }

  private void box(int b, double top, double bottom) {
    BoxSpec box = boxes.get(b);
    double wall = px * thickness(hive.wall());
    surface("air" + b, inLeft, top, inRight - inLeft, bottom - top);
    surface("wall" + b + "_out", inLeft - wall - 3, top, 3, bottom - top);
    surface("wall" + b + "_out", inRight + wall, top, 3, bottom - top);
    surface("wall" + b + "_in", inLeft - 3, top, 3, bottom - top);
    surface("wall" + b + "_in", inRight, top, 3, bottom - top);
    double combTop = top + px * 0.01;
    double combBottom = bottom - px * 0.02;
    double side = px * 0.015;
    if (box.frames() > 0) {
      surface(
          "comb" + b, inLeft + side, combTop, inRight - inLeft - 2 * side, combBottom - combTop);
    }
    if (b == hive.broodBox()) {
      cluster(combTop, combBottom);
    }
    if (b > 0) {
      separator(box.below(), bottom);
    }
    drops("wall" + b, inRight - 7, (top + bottom) / 2);
    if (b == boxes.size() - 1) {
      drops("lid", inLeft + 26, top + 5);
    }
    if (b == 0) {
      drops("floor", inLeft + 26, bottom - 5);
    }
    label(
        inRight - side - 3,
        top + 0.3 * (bottom - top),
        boxes.size() == 1 ? "Air of the box" : "Air of box " + (b + 1),
        number("air" + b, "t"),
        number("rh" + b, "rh"));
    label(
        inRight + 1,
        top + 0.55 * (bottom - top),
        boxes.size() == 1 ? "Wall, inside" : "Wall of box " + (b + 1),
        number("wall" + b + "_in", "t"));
  }

  private void cluster(double top, double bottom) {
    double bees = s.colony().bees();
    double cells = s.colony().broodCells();
    for (EventSpec e : s.events()) {
      if (e instanceof EventSpec.InstallColony c) {
        bees += c.bees();
        cells += c.broodCells();
      }
    }
    double x = (inLeft + inRight) / 2;
    double y = (top + bottom) / 2;
    double frames = Math.max(1, s.colony().broodFrames());
    double most = (bottom - top) / 2 - 1;
    double clusterPx = px * Math.sqrt(bees / (2 * (frames + 1)) / BEES_M2 / Math.PI);
    double broodPx = px * Math.sqrt(cells / (2 * frames) / CELLS_M2 / Math.PI);
    if (bees > 0) {
      double r = Math.max(clusterPx, broodPx + 4);
      ellipse(
          "mantle",
          x,
          y,
          Math.min(r * r / Math.min(r, most), (inRight - inLeft) / 2 - 8),
          Math.min(r, most));
    }
    double r = Math.max(10, broodPx);
    ellipse("nest", x, y, r * r / Math.min(r, most - 3), Math.min(r, most - 3));
    if (bees > 0) {
      label(x + Math.max(clusterPx, broodPx + 4) * 0.7, y - 8, "Outer bees", number("mantle", "t"));
    }
    label(x + r * 0.5, y, "Brood comb", number("nest", "t"), number("co2", "co2"));
  }

  private void ellipse(String column, double x, double y, double rx, double ry) {
    out.append(
        format(
            "<ellipse data-c=\"%s\" fill=\"%s\" cx=\"%.1f\" cy=\"%.1f\" rx=\"%.1f\" ry=\"%.1f\"/>",
            column, data.heatScale().colour(data.worst(column)), x, y, rx, ry));
  }

  private void separator(Separator below, double y) {
    if (below.kind() == Separator.Kind.SHEET) {
      dashed(inLeft, y, inRight, y);
    } else if (below.kind() == Separator.Kind.BOARD) {
      double h = Math.max(2, px * below.thicknessM());
      out.append(
          format(
              "<rect class=\"wood\" x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\"/>",
              inLeft, y - h / 2, inRight - inLeft, h));
    }
  }

  /** Plate and pan stand in the bee-free room at the floor of the lowest box. */
  private void pan() {
    Pan pan = s.heater().pan();
    if (!(pan.heatJK() > 0)) {
      return;
    }
    double middle = (inLeft + inRight) / 2;
    double room = inRight - inLeft - 6;
    double plate = Math.min(room, px * Math.sqrt(s.heater().plateM2()));
    double high = 4;
    double wide = plate;
    if (pan.bulk() != null) {
      wide = Math.min(room, px * Math.sqrt(pan.bulk().areaM2()));
      high = Math.max(4, px * pan.bulk().depthM());
    }
    surface("plate", middle - plate / 2, inBottom - 3, plate, 3);
    surface("core", middle - wide / 2, inBottom - 3 - high, wide, high);
    surface("contact", middle - wide / 2, inBottom - 5 - high, wide, 2);
    label(middle + wide / 2 - 2, inBottom - 4 - high, "Top of the pan", number("contact", "t"));
    if (s.heater().powerW() > 0) {
      label(middle + plate / 2 - 2, inBottom - 1.5, "Heater plate", number("plate", "t"));
    }
  }

  /** Entrance at the floor of the front, upper vent under the lid of the back, fan in it. */
  private void openings() {
    double wall = px * thickness(hive.wall());
    double slot = Math.max(2, px * hive.entranceHeightM());
    out.append(
        format(
            "<rect class=\"hole\" x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\"/>",
            inLeft - wall - 3, inBottom - slot, wall + 3, slot));
    if (hive.topVentM2() > 0) {
      double side = Math.max(3, px * Math.sqrt(hive.topVentM2()));
      out.append(
          format(
              "<rect class=\"hole\" x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\"/>",
              inRight, inTop + 2, wall + 3, side));
      if (s.fan().powerW() > 0) {
        double y = inTop + 2 + side / 2;
        double x = inRight + wall + 8;
        out.append(
            format(
                "<path class=\"fan\" d=\"M%.1f %.1fl4 -6v12zM%.1f %.1fl-4 -6v12z\"/>", x, y, x, y));
      }
    }
  }

  private void probes() {
    for (ProbeSpec p : s.probes()) {
      double middle = (inLeft + inRight) / 2;
      double nestY = broodMiddle();
      double x = middle;
      double y = nestY;
      switch (p.place()) {
        case BROOD_COMB -> x = middle - 6;
        case NEST_EDGE -> x = middle - px * 0.07;
        case BOX_AIR -> x = inLeft + px * 0.03;
        case PAN -> y = inBottom - 10;
        case PAN_FILLING -> y = inBottom - 5;
        case TOP -> y = inTop + 8;
        case LID -> y = inTop;
        case OUTDOOR -> {
          x = LEFT - 7;
          y = TOP - 3;
        }
      }
      if (p.role() == ProbeSpec.Role.BROOD_B) {
        x += 16;
      }
      out.append(
          format(
              "<circle class=\"probe\" cx=\"%.1f\" cy=\"%.1f\" r=\"6.5\"/><text class=\"probe-name\""
                  + " x=\"%.1f\" y=\"%.1f\">%s</text>",
              x, y, x, y + 3.6, mark(p.role())));
    }
  }

  private double broodMiddle() {
    double bottom = inBottom;
    for (int b = 0; b < hive.broodBox(); b++) {
      bottom -= px * boxes.get(b).heightM();
    }
    return bottom - px * boxes.get(hive.broodBox()).heightM() / 2;
  }

  /** Letter of a probe on the drawing. */
  static String mark(ProbeSpec.Role role) {
    return switch (role) {
      case BROOD_A -> "A";
      case BROOD_B -> "B";
      case PAN -> "P";
      case TOP -> "T";
      case OUTDOOR -> "O";
    };
  }

  private void drops(String face, double x, double y) {
    boolean wet = data.worst(face + "_wet") > SectionPart.WET_GH;
    out.append(format("<g class=\"drops\" data-wet=\"%s\"", face))
        .append(wet ? ">" : " visibility=\"hidden\">");
    for (int i = 0; i < 3; i++) {
      out.append(
          format(
              "<path d=\"M%.1f %.1fc3 4 3 6 0 6s-3 -2 0 -6z\"/>",
              x + (face.startsWith("wall") ? 0 : 9 * i),
              y + (face.startsWith("wall") ? 9 * i : 0)));
    }
    out.append("</g>");
  }

  private String number(String column, String kind) {
    return SectionPart.number(data, column, kind, m);
  }

  private void label(double partX, double partY, String name, String... numbers) {
    labels.add(new Label(drawing, partX, partY, name, List.of(numbers)));
  }

  /** From the top down, each as near to its part as the one above lets it. */
  private double writeLabels() {
    labels.sort(java.util.Comparator.comparingDouble(Label::partY));
    double y = 12;
    for (Label l : labels) {
      double at = Math.max(y, l.partY() - 4);
      boolean there = l.box() < 0 || !Double.isNaN(data.worst("air" + l.box()));
      out.append(l.box() < 0 ? "<g>" : format("<g data-of-box=\"%d\"", l.box()));
      out.append(l.box() < 0 ? "" : there ? ">" : " visibility=\"hidden\">");
      out.append(
          format(
              "<path class=\"leader\" d=\"M%.1f %.1fL%.1f %.1f\"/>",
              l.partX(), l.partY(), TEXT_X - 4, at - 1));
      out.append(
          format("<text class=\"name\" x=\"%.1f\" y=\"%.1f\">%s</text>", TEXT_X, at, l.name()));
      out.append(format("<text x=\"%.1f\" y=\"%.1f\">", TEXT_X, at + 14));
      out.append(String.join(", ", l.numbers())).append("</text></g>");
      y = at + LINE_PX;
    }
    return y;
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
