package org.broodbench.output;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.broodbench.sky.WeatherStatistics;

/** Made weather beside the record that it resembles, a statistic a line. */
public final class MadeWeatherText {
  private MadeWeatherText() {}

  /**
   * One column of the table.
   *
   * @param name what it is
   * @param statistics its numbers
   */
  public record Column(String name, WeatherStatistics statistics) {}

  /** A text table; temperatures in degC, since it compares and does not advise. */
  public static String of(List<Column> columns) {
    StringBuilder t = new StringBuilder();
    t.append(String.format(Locale.ROOT, "%-24s", "statistic"));
    for (Column c : columns) {
      t.append(String.format(Locale.ROOT, " %12s", c.name()));
    }
    t.append('\n');
    List<Map<String, Double>> numbers = columns.stream().map(c -> c.statistics().byName()).toList();
    for (String name : numbers.get(0).keySet()) {
      t.append(String.format(Locale.ROOT, "%-24s", name));
      for (Map<String, Double> of : numbers) {
        double v = of.get(name);
        String text =
            Double.isNaN(v)
                ? "not told"
                : String.format(Locale.ROOT, name.equals("days") ? "%.0f" : "%.2f", v);
        t.append(String.format(Locale.ROOT, " %12s", text));
      }
      t.append('\n');
    }
    return t.toString();
  }
}
