package org.broodbench.output;

import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.broodbench.loop.ColonyDay;
import org.broodbench.study.Course;
import org.broodbench.study.Outlook;

/**
 * Bees above, brood below, week by week: of each treatment a line at the scenario's own heat loss,
 * and a band from the lowest of the three published losses to the highest. Lines differ by their
 * dashes too, and each is named at its end.
 */
final class OutlookPicture {
  private static final int WIDTH = 760;
  private static final int LEFT = 58;
  private static final int RIGHT = 600;
  private static final int HEIGHT = 190;
  private static final int GAP = 60;
  private static final int TOP = 28;
  private static final int LABEL_PX = 16;

  private final Outlook o;
  private final int days;

  OutlookPicture(Outlook outlook) {
    o = outlook;
    days = 7 * o.weeks();
  }

  String svg() {
    StringBuilder s = new StringBuilder();
    int bottom = TOP + 2 * HEIGHT + GAP;
    format(
        s,
        "<svg class=\"outlook\" viewBox=\"0 0 %d %d\" role=\"img\" aria-label=\"Bees and brood over"
            + " %d weeks, told in the table below\">",
        WIDTH,
        bottom + 34,
        o.weeks());
    panel(s, TOP, "Adult bees", ColonyDay::bees, o.beesAtStart());
    panel(s, TOP + HEIGHT + GAP, "Brood cells", ColonyDay::brood, Double.NaN);
    for (int week = 0; week <= o.weeks(); week += o.weeks() > 12 ? 4 : 1) {
      format(
          s,
          "<text x=\"%.1f\" y=\"%d\" text-anchor=\"middle\">%s</text>",
          x(7 * week),
          bottom + 18,
          week == 0 ? "start" : String.valueOf(week));
    }
    format(s, "<text x=\"%d\" y=\"%d\" class=\"name\">week</text>", RIGHT + 8, bottom + 18);
    return s.append("</svg>").toString();
  }

  private double x(int day) {
    return LEFT + (double) (RIGHT - LEFT) * day / days;
  }

  private void panel(
      StringBuilder s, int top, String title, ToDoubleFunction<ColonyDay> value, double start) {
    double most = Double.isNaN(start) ? 100 : start;
    for (Course c : o.courses()) {
      for (int d = 0; d < days; d++) {
        most = Math.max(most, c.high(d, value));
      }
    }
    double step = tick(most);
    double full = step * Math.ceil(most / step);
    int floor = top + HEIGHT;
    format(s, "<text x=\"%d\" y=\"%d\" class=\"name\">%s</text>", LEFT, top - 10, title);
    for (double v = 0; v <= full + 1e-9; v += step) {
      double y = floor - HEIGHT * v / full;
      format(s, "<path class=\"grid\" d=\"M%d %.1fH%d\"/>", LEFT, y, RIGHT);
      format(
          s,
          "<text x=\"%d\" y=\"%.1f\" text-anchor=\"end\">%s</text>",
          LEFT - 6,
          y + 4,
          Quantity.plain(v, 0));
    }
    double lowestLabel = Double.NEGATIVE_INFINITY;
    List<Course> byEnd =
        o.courses().stream()
            .sorted(
                (a, b) ->
                    Double.compare(value.applyAsDouble(b.last(1)), value.applyAsDouble(a.last(1))))
            .toList();
    for (Course c : o.courses()) {
      band(s, c, value, floor, full);
    }
    for (Course c : o.courses()) {
      line(s, c, value, floor, full);
    }
    double[] labelY = new double[byEnd.size()];
    for (int i = 0; i < labelY.length; i++) {
      double y = floor - HEIGHT * value.applyAsDouble(byEnd.get(i).last(1)) / full + 4;
      labelY[i] = Math.max(y, lowestLabel + LABEL_PX);
      lowestLabel = labelY[i];
    }
    double over = Math.max(0, lowestLabel - floor);
    for (int i = labelY.length - 1; i >= 0; i--) {
      double most2 = floor - LABEL_PX * (labelY.length - 1.0 - i);
      double y = over > 0 ? Math.min(labelY[i], most2) : labelY[i];
      format(
          s,
          "<text x=\"%d\" y=\"%.1f\" class=\"label %s\">%s</text>",
          RIGHT + 8,
          y,
          byEnd.get(i).key(),
          name(byEnd.get(i)));
    }
  }

  private void band(
      StringBuilder s, Course c, ToDoubleFunction<ColonyDay> value, int floor, double full) {
    s.append("<path class=\"band ").append(c.key()).append("\" d=\"");
    for (int d = 0; d < days; d++) {
      point(s, d == 0 ? 'M' : 'L', d, floor - HEIGHT * c.high(d, value) / full);
    }
    for (int d = days - 1; d >= 0; d--) {
      point(s, 'L', d, floor - HEIGHT * c.low(d, value) / full);
    }
    s.append("Z\"/>");
  }

  private void line(
      StringBuilder s, Course c, ToDoubleFunction<ColonyDay> value, int floor, double full) {
    s.append("<path class=\"line ").append(c.key()).append("\" d=\"");
    for (int d = 0; d < days; d++) {
      double v = value.applyAsDouble(c.own().get(d));
      point(s, d == 0 ? 'M' : 'L', d, floor - HEIGHT * v / full);
    }
    s.append("\"/>");
  }

  /** A point at the end of a day, 0 the first. */
  private void point(StringBuilder s, char move, int day, double y) {
    format(s, "%c%.1f %.1f", move, x(day + 1), y);
  }

  private static double tick(double most) {
    double power = 100;
    while (most / power > 5) {
      power *= most / power > 20 ? 10 : most / power > 10 ? 4 : 2;
    }
    return power;
  }

  /** A short name of a treatment. */
  static String name(Course c) {
    return switch (c.key()) {
      case "heat" -> "with heat";
      case "no_heat" -> "without heat";
      case "insulation_only" -> "insulation only";
      default -> "smaller box, no heat";
    };
  }

  private static void format(StringBuilder s, String pattern, Object... values) {
    s.append(String.format(Locale.ROOT, pattern, values));
  }
}
