package org.broodbench.output;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.broodbench.stress.StressReport;
import org.broodbench.stress.StressRow;

/** A stress study as tidy comma-separated values: one row a fault, week and heat loss. */
public final class StressCsv {
  private StressCsv() {}

  /** All rows, in UTF-8. */
  public static byte[] bytes(StressReport r) {
    StringWriter text = new StringWriter();
    try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
      csv.writeRecord(
          "fault",
          "week",
          "met",
          "missed",
          "first_fails",
          "to_first_failure_h",
          "to_harm_h",
          "to_harm_without_fault_h",
          "alarm",
          "to_alarm_h",
          "keeper_sees",
          "keeper_in_time",
          "gauge_dark",
          "gauge_brood_c",
          "gauge_v",
          "gauge_heater_h",
          "brood_in_band_percent",
          "brood_low_c",
          "brood_high_c",
          "lowest_soc_percent",
          "heater_wh",
          "bees_end",
          "carry",
          "heat_loss",
          "heat_loss_factor");
      for (StressRow x : r.rows()) {
        csv.writeRecord(
            x.fault(),
            x.week(),
            String.valueOf(x.met()),
            String.join(" ", x.missed()),
            x.firstFails() == null ? "" : x.firstFails().key(),
            number(x.hoursToFirst()),
            number(x.hoursToHarm()),
            number(x.hoursToHarmWithout()),
            x.alarm() == null ? "" : x.alarm(),
            number(x.hoursToAlarm()),
            String.join("; ", x.sees()),
            x.inTime() == null ? "" : x.inTime().toString(),
            String.valueOf(x.gauge().dark()),
            number(x.gauge().broodC()),
            number(x.gauge().volts()),
            number(x.gauge().heaterH()),
            number(x.figures().inBandPercent()),
            number(x.figures().broodLowC()),
            number(x.figures().broodHighC()),
            number(x.figures().lowestSocPercent()),
            number(x.figures().heaterWh()),
            number(x.figures().beesEnd()),
            x.carry(),
            x.loss().key(),
            number(x.loss().factor()));
      }
    } catch (IOException e) {
      throw new UncheckedIOException("writing to memory cannot fail", e);
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static String number(double x) {
    return Double.isFinite(x) ? Double.toString(x) : "";
  }
}
