package org.broodbench.calibrate;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.broodbench.controller.Readings;
import org.broodbench.controller.Sample;
import org.broodbench.controller.Settings;
import org.broodbench.firmware.Channel;
import org.broodbench.firmware.CommandField;
import org.broodbench.firmware.LogCheck;
import org.broodbench.firmware.RecordedLog;
import org.broodbench.firmware.Tick;

/** The logged decisions of the heater's relay against the reference on the same readings. */
final class DecisionCheck {
  /** A log is coarse, and a comb follows slowly: so long they may disagree, ms; own choice. */
  private static final long TOLERANCE_MS = 1_800_000;

  /** The log does not begin at power-up, ms; own choice. */
  private static final long SETTLE_MS = 3_600_000;

  private static final int STEP_MS = 10_000;

  private DecisionCheck() {}

  /** The comparison; null where the log has no relay or no brood probe. */
  static Calibration.Decisions of(FieldLog log, Settings settings) {
    if (log.byHand() || !log.has(LogColumn.HEATER) || !log.has(LogColumn.BROOD_A)) {
      return null;
    }
    List<RecordedLog.Row> rows = new ArrayList<>();
    Readings readings = new Readings();
    for (int i = 0; i < log.rows(); i++) {
      double heater = log.column(LogColumn.HEATER)[i];
      if (Double.isNaN(heater)) {
        continue;
      }
      fill(readings, log, i);
      int[] commands = new int[CommandField.COUNT];
      commands[CommandField.HEATER.ordinal()] = heater > 0.5 ? 1 : 0;
      long at = (log.epochS()[i] - log.fromS()) * 1000;
      rows.add(new RecordedLog.Row(i + 2, at, Tick.step((int) at, readings), commands));
    }
    RecordedLog recorded = new RecordedLog("", List.of(CommandField.HEATER), readingsOf(log), rows);
    long tolerance = Math.max(TOLERANCE_MS, 2000L * log.stepS());
    LogCheck.Result r = new LogCheck(recorded, settings, tolerance, SETTLE_MS).check(STEP_MS);
    String difference =
        r.equal()
            ? String.format(
                Locale.ROOT, "They never disagree for more than %d min.", tolerance / 60_000)
            : String.format(
                Locale.ROOT,
                "From %s the log has the heater %s where the reference has it %s, for longer than %d min (rule %s: %s); what comes after was not judged.",
                Instant.ofEpochSecond(log.fromS() + r.finding().atMillis() / 1000),
                r.finding().got() == 1 ? "on" : "off",
                r.finding().expected() == 1 ? "on" : "off",
                tolerance / 60_000,
                r.finding().rule(),
                r.finding().ruleWords());
    return new Calibration.Decisions(r.rows(), r.starts()[0], r.starts()[1], difference);
  }

  private static Set<Channel> readingsOf(FieldLog log) {
    Map<LogColumn, Channel> all =
        Map.of(
            LogColumn.BROOD_A, Channel.BROOD_A,
            LogColumn.BROOD_B, Channel.BROOD_B,
            LogColumn.PAN, Channel.PAN,
            LogColumn.TOP, Channel.TOP,
            LogColumn.OUTDOOR, Channel.OUTDOOR,
            LogColumn.BATTERY_V, Channel.BATTERY,
            LogColumn.BATTERY_A, Channel.BATTERY_CURRENT,
            LogColumn.HUMIDITY, Channel.HUMIDITY);
    return all.keySet().stream().filter(log::has).map(all::get).collect(Collectors.toSet());
  }

  /** The readings of a row as the controller takes them. */
  static void fill(Readings readings, FieldLog log, int row) {
    put(readings.broodA, log.column(LogColumn.BROOD_A)[row], 100);
    put(readings.broodB, log.column(LogColumn.BROOD_B)[row], 100);
    put(readings.pan, log.column(LogColumn.PAN)[row], 100);
    put(readings.top, log.column(LogColumn.TOP)[row], 100);
    put(readings.outdoor, log.column(LogColumn.OUTDOOR)[row], 100);
    put(readings.battery, log.column(LogColumn.BATTERY_V)[row], 1000);
    put(readings.batteryCurrent, log.column(LogColumn.BATTERY_A)[row], 1000);
    put(readings.humidity, log.column(LogColumn.HUMIDITY)[row], 10);
  }

  private static void put(Sample sample, double value, int scale) {
    if (Double.isNaN(value)) {
      sample.valid = false;
    } else {
      sample.put((int) Math.rint(value * scale));
    }
  }
}
