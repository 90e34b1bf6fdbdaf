package org.broodbench.output;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSummary;
import org.broodbench.sky.WorstWindows;

/** The description of a weather file as JSON, format {@code broodbench-weather/1}. */
public final class WeatherJson {
  private WeatherJson() {}

  /**
   * The whole text.
   *
   * @param compared the record and weather made like it; empty where none was made
   */
  public static String of(
      WeatherSummary w, List<WorstWindows.Window> worst, List<MadeWeatherText.Column> compared) {
    return JsonText.object(
        json -> {
          write(json, w, worst);
          if (!compared.isEmpty()) {
            compared(json, compared);
          }
        });
  }

  private static void compared(JsonText json, List<MadeWeatherText.Column> compared)
      throws IOException {
    List<JsonText.Body> columns = new ArrayList<>();
    for (MadeWeatherText.Column c : compared) {
      columns.add(
          j -> {
            j.text("weather", c.name());
            for (var number : c.statistics().byName().entrySet()) {
              j.number(number.getKey(), number.getValue());
            }
          });
    }
    json.objects("compared", columns);
  }

  private static void write(JsonText json, WeatherSummary w, List<WorstWindows.Window> worst)
      throws IOException {
    json.text("format", "broodbench-weather/1")
        .text("file_format", w.formatId())
        .text("source", w.source())
        .whole("rows", w.rows())
        .whole("step_s", w.stepS())
        .text("from", Stamps.of(w.fromEpochS(), 0))
        .text("to", Stamps.of(w.toEpochS(), 0))
        .object(
            "missing",
            j ->
                j.whole("air", w.missing().get(Variable.AIR))
                    .whole("ghi", w.missing().get(Variable.GHI))
                    .whole("rh", w.missing().get(Variable.HUMIDITY))
                    .whole("wind", w.missing().get(Variable.WIND))
                    .whole("precip", w.missing().get(Variable.PRECIPITATION)))
        .number("filled_hours", w.filledHours())
        .number("mean_air_c", w.meanAirC())
        .number("mean_ghi_kwh_m2_day", w.meanGhiKWhM2Day())
        .number("precip_mm", w.precipMm());
    List<JsonText.Body> months = new ArrayList<>();
    for (WeatherSummary.Month m : w.monthly()) {
      months.add(
          j ->
              j.text("month", m.month())
                  .number("mean_air_c", m.meanAirC())
                  .number("min_air_c", m.minAirC())
                  .number("max_air_c", m.maxAirC())
                  .number("ghi_kwh_m2_day", m.ghiKWhM2Day())
                  .number("precip_mm", m.precipMm())
                  .number("mean_rh_percent", m.meanRhPercent())
                  .number("mean_wind_m_s", m.meanWindMS()));
    }
    json.objects("monthly", months);
    json.texts("warnings", w.warnings());
    List<JsonText.Body> windows = new ArrayList<>();
    for (WorstWindows.Window x : worst) {
      windows.add(
          j ->
              j.text("from", Stamps.of(x.fromEpochS(), 0))
                  .whole("days", x.days())
                  .number("mean_air_c", x.stats().meanAirC())
                  .number("min_air_c", x.stats().minAirC())
                  .number("ghi_kwh_m2_day", x.stats().ghiKWhM2Day())
                  .number("precip_mm", x.stats().precipMm())
                  .number("heat_minus_sun_kwh", x.hardnessKWh()));
    }
    json.objects("worst", windows);
  }
}
