package org.broodbench.output;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.Alarm;
import org.broodbench.stress.Gauge;
import org.broodbench.stress.StressReport;
import org.broodbench.stress.StressRow;
import org.broodbench.stress.StressWeek;

/** A stress study as JSON, format {@code broodbench-stress/1}. */
public final class StressJson {
  private StressJson() {}

  /** The whole text. */
  public static String of(StressReport r) {
    return JsonText.object(json -> write(json, r));
  }

  private static void write(JsonText json, StressReport r) throws IOException {
    json.text("format", "broodbench-stress/1")
        .flag("met", r.met())
        .flag("whole", r.whole())
        .whole("planned", r.planned())
        .whole("seed", r.scenario().run().seed())
        .object(
            "scenario",
            j ->
                j.text("title", r.scenario().title())
                    .text("file", r.scenario().fileName())
                    .text("sha256", r.scenario().sha256()))
        .text("weather", r.weather())
        .number("visit_every_h", r.scenario().run().visitEveryS() / 3600);
    List<JsonText.Body> weeks = new ArrayList<>();
    for (StressWeek w : r.weeks()) {
      weeks.add(
          j ->
              j.text("week", w.label())
                  .text("from", Stamps.of(w.scenario().window().fromEpochS(), 0))
                  .whole("days", w.scenario().window().days())
                  .number("mean_air_c", w.stats().meanAirC())
                  .number("min_air_c", w.stats().minAirC())
                  .number("ghi_kwh_m2_day", w.stats().ghiKWhM2Day()));
    }
    json.objects("weeks", weeks);
    List<JsonText.Body> rows = new ArrayList<>();
    for (StressRow row : r.rows()) {
      rows.add(j -> row(j, row));
    }
    json.objects("rows", rows).texts("assumed", r.assumed());
  }

  private static void row(JsonText j, StressRow row) throws IOException {
    j.text("fault", row.fault())
        .text("title", row.title())
        .text("week", row.week())
        .flag("met", row.met())
        .texts("holds", row.holds())
        .texts("missed", row.missed());
    optional(j, "first_fails", row.firstFails() == null ? null : row.firstFails().key());
    j.number("hours_to_first_failure", row.hoursToFirst())
        .number("hours_to_harm", row.hoursToHarm())
        .number("hours_to_harm_without_fault", row.hoursToHarmWithout());
    optional(j, "alarm", row.alarm());
    j.number("hours_to_alarm", row.hoursToAlarm()).texts("keeper_sees", row.sees());
    if (row.inTime() == null) {
      j.nothing("keeper_in_time");
    } else {
      j.flag("keeper_in_time", row.inTime());
    }
    j.object("gauge", g -> gauge(g, row.gauge()))
        .text("carry", row.carry())
        .number("brood_in_band_percent", row.figures().inBandPercent())
        .number("brood_in_band_without_fault_percent", row.figures().inBandWithoutPercent())
        .number("brood_low_c", row.figures().broodLowC())
        .number("brood_high_c", row.figures().broodHighC())
        .number("lowest_soc_percent", row.figures().lowestSocPercent())
        .number("heater_wh", row.figures().heaterWh())
        .number("bees_end", row.figures().beesEnd())
        .text("heat_loss", row.loss().key())
        .number("heat_loss_factor", row.loss().factor());
  }

  private static void optional(JsonText j, String key, String value) throws IOException {
    if (value == null) {
      j.nothing(key);
    } else {
      j.text(key, value);
    }
  }

  private static void gauge(JsonText j, Gauge g) throws IOException {
    List<String> alarms = new ArrayList<>();
    for (int bit = 0; bit < Alarm.COUNT; bit++) {
      if ((g.alarms() >> bit & 1) != 0) {
        alarms.add(Alarm.name(bit));
      }
    }
    j.flag("dark", g.dark())
        .number("brood_c", g.dark() ? Double.NaN : g.broodC())
        .number("brood_low_c", g.dark() ? Double.NaN : g.broodLowC())
        .number("brood_high_c", g.dark() ? Double.NaN : g.broodHighC())
        .number("volts", g.dark() ? Double.NaN : g.volts())
        .number("heater_h", g.dark() ? Double.NaN : g.heaterH())
        .texts("alarms", alarms);
  }
}
