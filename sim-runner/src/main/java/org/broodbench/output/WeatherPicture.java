package org.broodbench.output;

import java.util.List;
import java.util.Locale;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;
import org.broodbench.sky.WorstWindows;

/**
 * A record as a picture: a line from the day's lowest to its highest temperature above, a bar of
 * the day's sun below, the hardest windows numbered and hatched behind both. An SVG file that needs
 * nothing else.
 */
public final class WeatherPicture {
  private static final int WIDTH = 1000;
  private static final int LEFT = 60;
  private static final int AIR_TOP = 30;
  private static final int AIR_HEIGHT = 240;
  private static final int SUN_TOP = 310;
  private static final int SUN_HEIGHT = 130;
  private static final long DAY_S = 86_400;

  private WeatherPicture() {}

  /** The whole file. */
  public static String of(WeatherSeries w, List<WorstWindows.Window> worst) {
    long first = Math.floorDiv(w.startEpochS(), DAY_S);
    int days = (int) (Math.floorDiv(w.endEpochS() - 1, DAY_S) - first) + 1;
    double[] low = new double[days];
    double[] high = new double[days];
    double[] kWh = new double[days];
    java.util.Arrays.fill(low, Double.NaN);
    java.util.Arrays.fill(high, Double.NaN);
    double lowest = 0;
    double highest = 10;
    double most = 1;
    for (int i = 0; i < w.n(); i++) {
      long middle = w.startEpochS() + (long) i * w.stepS() + w.stepS() / 2;
      int d = (int) (Math.floorDiv(middle, DAY_S) - first);
      double airC = w.value(Variable.AIR, i);
      if (!Double.isNaN(airC)) {
        low[d] = Double.isNaN(low[d]) ? airC : Math.min(low[d], airC);
        high[d] = Double.isNaN(high[d]) ? airC : Math.max(high[d], airC);
        lowest = Math.min(lowest, airC);
        highest = Math.max(highest, airC);
      }
      double ghi = w.value(Variable.GHI, i);
      if (!Double.isNaN(ghi)) {
        kWh[d] += ghi * w.stepS() / 3.6e6;
        most = Math.max(most, kWh[d]);
      }
    }
    double dayPx = (double) (WIDTH - LEFT - 10) / days;
    StringBuilder s = new StringBuilder();
    s.append(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 1000 480\" font-family=\"sans-serif\" font-size=\"13\""
            + " role=\"img\" aria-label=\"Air temperature and sunshine by day\">\n");
    s.append(
        "<defs><pattern id=\"hard\" width=\"6\" height=\"6\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\">"
            + "<rect width=\"6\" height=\"6\" fill=\"#f3ead9\"/><line x1=\"0\" y1=\"0\" x2=\"0\" y2=\"6\" stroke=\"#b9986a\""
            + " stroke-width=\"1.5\"/></pattern></defs>\n<rect width=\"1000\" height=\"480\" fill=\"#ffffff\"/>\n");
    for (int k = 0; k < worst.size(); k++) {
      WorstWindows.Window x = worst.get(k);
      double x0 = LEFT + (double) (x.fromEpochS() - first * DAY_S) / DAY_S * dayPx;
      format(
          s,
          "<rect x=\"%.1f\" y=\"%d\" width=\"%.1f\" height=\"%d\" fill=\"url(#hard)\"/>\n",
          x0,
          AIR_TOP,
          Math.max(2, x.days() * dayPx),
          SUN_TOP + SUN_HEIGHT - AIR_TOP);
      format(
          s, "<text x=\"%.1f\" y=\"%d\" font-weight=\"bold\">%d</text>\n", x0, AIR_TOP - 6, k + 1);
    }
    double airPx = AIR_HEIGHT / (highest - lowest);
    for (int c = (int) Math.ceil(lowest / 10) * 10; c <= highest; c += 10) {
      double y = AIR_TOP + (highest - c) * airPx;
      format(
          s,
          "<line x1=\"%d\" x2=\"%d\" y1=\"%.1f\" y2=\"%.1f\" stroke=\"%s\"/>",
          LEFT,
          WIDTH - 10,
          y,
          y,
          c == 0 ? "#333333" : "#cccccc");
      format(s, "<text x=\"%d\" y=\"%.1f\" text-anchor=\"end\">%d °C</text>\n", LEFT - 6, y + 4, c);
    }
    for (int d = 0; d < days; d++) {
      double x = LEFT + (d + 0.5) * dayPx;
      if (!Double.isNaN(low[d])) {
        format(
            s,
            "<line x1=\"%.1f\" x2=\"%.1f\" y1=\"%.1f\" y2=\"%.1f\" stroke=\"#1d4f73\" stroke-width=\"%.1f\"/>\n",
            x,
            x,
            AIR_TOP + (highest - high[d]) * airPx,
            AIR_TOP + (highest - low[d]) * airPx + 1,
            Math.max(1, dayPx * 0.7));
      }
      double tall = kWh[d] / most * SUN_HEIGHT;
      format(
          s,
          "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" fill=\"#8a5a00\"/>\n",
          x - dayPx * 0.35,
          SUN_TOP + SUN_HEIGHT - tall,
          Math.max(0.7, dayPx * 0.7),
          tall);
    }
    format(
        s,
        "<text x=\"%d\" y=\"%d\">Air, lowest to highest of each day</text>\n",
        LEFT,
        AIR_TOP + AIR_HEIGHT + 18);
    format(
        s,
        "<text x=\"%d\" y=\"%d\">Sun, up to %.1f kWh/m² a day</text>\n",
        LEFT,
        SUN_TOP - 6,
        most);
    java.time.LocalDate date = java.time.LocalDate.ofEpochDay(first);
    format(s, "<text x=\"%d\" y=\"465\">%s</text>", LEFT, date);
    format(
        s,
        "<text x=\"%d\" y=\"465\" text-anchor=\"end\">%s</text>\n",
        WIDTH - 10,
        date.plusDays(days - 1L));
    s.append("</svg>\n");
    return s.toString();
  }

  private static void format(StringBuilder s, String pattern, Object... values) {
    s.append(String.format(Locale.ROOT, pattern, values));
  }
}
