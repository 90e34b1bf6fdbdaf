package org.broodbench.output;

import java.time.Instant;
import java.util.Locale;
import org.broodbench.calibrate.Calibration;

/** A reading as measured and as simulated, and the deviations below, as a drawing. */
final class CalibrationChart {
  private static final int WIDTH = 900;
  private static final int LEFT = 50;
  private static final int HEIGHT = 180;
  private static final int REST_TOP = 200;
  private static final int REST = 60;
  private static final int MOST_POINTS = 700;

  private final Calibration.Channel x;
  private final StringBuilder out = new StringBuilder();

  private CalibrationChart(Calibration.Channel x) {
    this.x = x;
  }

  /** The drawing; {@code markS} is where the last third begins. */
  static String svg(Calibration.Channel x, long markS) {
    return new CalibrationChart(x).draw(markS);
  }

  private String draw(long markS) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    double most = 0;
    for (int b = 0; b < x.measured().length; b++) {
      if (!Double.isNaN(x.measured()[b])) {
        low = Math.min(low, Math.min(x.measured()[b], x.simulated()[b]));
        high = Math.max(high, Math.max(x.measured()[b], x.simulated()[b]));
        most = Math.max(most, Math.abs(x.measured()[b] - x.simulated()[b]));
      }
    }
    if (high < low) {
      return "";
    }
    String name = x.column().key().replace('_', ' ');
    String unit =
        switch (x.column().sort()) {
          case VOLTAGE -> "V";
          case CURRENT -> "A";
          case PERCENT -> "%";
          default -> "°C";
        };
    out.append("<figure class=\"wide\" tabindex=\"0\"><figcaption><strong>")
        .append(Markup.text(name))
        .append("</strong>, ")
        .append(unit)
        .append("</figcaption><svg viewBox=\"0 0 ")
        .append(WIDTH)
        .append(" 285\" role=\"img\" aria-label=\"")
        .append(Markup.text(name + " measured and simulated; the table below has the deviations"))
        .append("\">");
    for (int i = 0; i <= 4; i++) {
      double v = low + (high - low) * i / 4;
      double y = HEIGHT - (HEIGHT - 10) * i / 4.0;
      line("grid", LEFT, y, WIDTH, y);
      text(0, y + 4, String.format(Locale.ROOT, "%.4g", v));
    }
    long from = x.epochS()[0];
    long to = x.epochS()[x.epochS().length - 1];
    double mark = LEFT + (WIDTH - LEFT) * (markS - from) / Math.max(1.0, to - from);
    line("mark", mark, 10, mark, REST_TOP + REST);
    path("seen", x.measured(), low, high, HEIGHT, HEIGHT - 10);
    path("sim", x.simulated(), low, high, HEIGHT, HEIGHT - 10);
    double[] rest = new double[x.measured().length];
    for (int b = 0; b < rest.length; b++) {
      rest[b] = x.measured()[b] - x.simulated()[b];
    }
    double bound = Math.max(most, 1e-6);
    line("grid", LEFT, REST_TOP + REST / 2.0, WIDTH, REST_TOP + REST / 2.0);
    text(0, REST_TOP + 10, String.format(Locale.ROOT, "%+.2g", bound));
    text(0, REST_TOP + REST, String.format(Locale.ROOT, "%+.2g", -bound));
    path("rest", rest, -bound, bound, REST_TOP + REST, REST);
    text(LEFT, 280, Instant.ofEpochSecond(from).toString().substring(0, 10));
    text(WIDTH - 80, 280, Instant.ofEpochSecond(to).toString().substring(0, 10));
    return out.append("</svg></figure>").toString();
  }

  private void text(double atX, double atY, String words) {
    out.append(String.format(Locale.ROOT, "<text x=\"%.0f\" y=\"%.0f\">", atX, atY))
        .append(Markup.text(words))
        .append("</text>");
  }

  private void line(String css, double x1, double y1, double x2, double y2) {
    out.append(
        String.format(
            Locale.ROOT, "<path class=\"%s\" d=\"M%.1f %.1fL%.1f %.1f\"/>", css, x1, y1, x2, y2));
  }

  private void path(String css, double[] v, double low, double high, double bottom, double tall) {
    int every = Math.max(1, v.length / MOST_POINTS);
    double span = Math.max(1e-9, high - low);
    out.append("<path class=\"").append(css).append("\" d=\"");
    boolean pen = false;
    for (int b = 0; b + every <= v.length; b += every) {
      double sum = 0;
      for (int i = b; i < b + every; i++) {
        sum += v[i] / every;
      }
      if (Double.isNaN(sum)) {
        pen = false;
        continue;
      }
      double px = LEFT + (WIDTH - LEFT) * (b + every / 2.0) / v.length;
      double py = bottom - tall * (sum - low) / span;
      out.append(String.format(Locale.ROOT, "%s%.1f %.1f", pen ? "L" : "M", px, py));
      pen = true;
    }
    out.append("\"/>");
  }
}
