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
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.firmware.Channel;
import org.broodbench.firmware.CommandField;
import org.broodbench.firmware.LogCheck;
import org.broodbench.firmware.RecordedLog;
import org.broodbench.firmware.Tick;

/** The logged decisions of the heater's relay against the reference on the same readings. */
final class DecisionCheck {
  /** A log is coarse, and filters hold on: so long they may disagree, ms; own choice. */
  private static final long TOLERANCE_MS = 1_800_000;

  /** What the controller read may be so far from the row of the log, centi-kelvin; own choice. */
  private static final int LEEWAY_CENTI_K = 25;

  /** The log does not begin at power-up, ms; own choice. */
  private static final long SETTLE_MS = 3_600_000;

  /** The logger's probe may be another one than the controller's: tried in turn, centi-kelvin. */
  private static final int[] OFFSETS_CENTI_K = {0, 20, -20, 40, -40, 60, -60, 80, -80, 100, -100};

  /** So much of the time log and reference may differ in short spans; own choice. */
  private static final double SHORT_SHARE = 0.05;

  /** A battery whose volts are not logged stands so far above the set-back, mV; own choice. */
  private static final int ABOVE_MILLI_V = 500;

  private static final int STEP_MS = 10_000;

  private DecisionCheck() {}

  /** The comparison; null where the log has no relay or no brood probe. */
  static Calibration.Decisions of(FieldLog log, Settings settings) {
    if (log.byHand() || !log.has(LogColumn.HEATER) || !log.has(LogColumn.BROOD_A)) {
      return null;
    }
    Set<Channel> there = readingsOf(log);
    Settings used = withoutDoubts(settings);
    List<Channel> missing = new RecordedLog("", List.of(), there, List.of()).missing(settings);
    for (Channel c : missing) {
      // a supply without volts is none, and then nothing may be on
      used = c == Channel.BATTERY ? used : used.with(c.fitting(), 0);
    }
    int restedMilliV = restedMilliV(settings);
    long tolerance = Math.max(TOLERANCE_MS, 2000L * log.stepS());
    LogCheck.Result r = null;
    int offset = 0;
    for (int by : OFFSETS_CENTI_K) {
      LogCheck.Result tried =
          new LogCheck(
                  new RecordedLog(
                      "", List.of(CommandField.HEATER), there, rows(log, by, restedMilliV)),
                  used,
                  tolerance,
                  SETTLE_MS,
                  LEEWAY_CENTI_K)
              .check(STEP_MS);
      if (r == null || tried.apartMillis() < r.apartMillis()) {
        r = tried;
        offset = by;
      }
      if (r.equal() && r.apartMillis() <= SHORT_SHARE * judgedMillis(r, log)) {
        break;
      }
    }
    List<String> differences = new ArrayList<>();
    if (!r.equal()) {
      differences.add(
          String.format(
              Locale.ROOT,
              "From %s the log has the heater %s where the reference has it %s, for longer than %d min (rule %s: %s). Such differences make %.1f h in all.",
              Instant.ofEpochSecond(log.fromS() + r.finding().atMillis() / 1000),
              r.finding().got() == 1 ? "on" : "off",
              r.finding().expected() == 1 ? "on" : "off",
              tolerance / 60_000,
              r.finding().rule(),
              r.finding().ruleWords(),
              r.differedMillis() / 3.6e6));
    }
    double shortShare = r.apartMillis() / judgedMillis(r, log);
    if (r.equal() && shortShare > SHORT_SHARE) {
      differences.add(
          String.format(
              Locale.ROOT,
              "In %.0f %% of the time the log has the heater otherwise than the reference, always for less than %d min at a time: it switches by other rules.",
              100 * shortShare,
              tolerance / 60_000));
    }
    if (offset != 0) {
      differences.add(
          String.format(
              Locale.ROOT,
              "This is with the brood taken %.1f K %s than logged, which fits best: the controller has a probe of its own, or its set point is %.1f K %s than the scenario says.",
              Math.abs(offset) / 100.0,
              offset > 0 ? "warmer" : "colder",
              Math.abs(offset) / 100.0,
              offset > 0 ? "lower" : "higher"));
    }
    differences.addAll(pauses(log, settings));
    String rests =
        missing.isEmpty()
            ? ""
            : "Readings that the controller has and the log has not, so that what it did on them is not judged: "
                + missing.stream()
                    .map(c -> c.name().toLowerCase(Locale.ROOT).replace('_', ' '))
                    .collect(Collectors.joining(", "))
                + ".";
    return new Calibration.Decisions(
        r.rows(),
        r.starts()[0],
        r.starts()[1],
        Math.max(r.differedMillis(), r.equal() && shortShare > SHORT_SHARE ? r.apartMillis() : 0)
            / 3.6e6,
        differences,
        rests,
        tolerance / 60_000.0);
  }

  private static double judgedMillis(LogCheck.Result r, FieldLog log) {
    return Math.max(1, r.rows()) * 1000.0 * log.stepS();
  }

  /** Pauses and runs of the heater that are shorter than the settings allow. */
  private static List<String> pauses(FieldLog log, Settings settings) {
    double[] heater = log.column(LogColumn.HEATER);
    long[] at = log.epochS();
    int[] shorter = new int[2];
    long[] shortest = {Long.MAX_VALUE, Long.MAX_VALUE};
    long[] firstS = new long[2];
    int[] allowedS = {
      settings.get(Setting.RELAY_MIN_OFF_MILLIS) / 1000,
      settings.get(Setting.RELAY_MIN_ON_MILLIS) / 1000
    };
    int since = -1;
    for (int i = 1; i < at.length; i++) {
      boolean hole = at[i] - at[i - 1] > 2L * log.stepS();
      if (hole || Double.isNaN(heater[i]) || Double.isNaN(heater[i - 1])) {
        since = -1;
        continue;
      }
      if (heater[i] > 0.5 == heater[i - 1] > 0.5) {
        continue;
      }
      int ended = heater[i] > 0.5 ? 0 : 1;
      if (since >= 0) {
        // switches fall between rows: it may have lasted nearly a row longer
        long longest = at[i] - at[since - 1];
        shortest[ended] = Math.min(shortest[ended], longest);
        if (longest < allowedS[ended]) {
          firstS[ended] = shorter[ended] == 0 ? at[since] : firstS[ended];
          shorter[ended]++;
        }
      }
      since = i;
    }
    List<String> out = new ArrayList<>();
    for (int k = 0; k < 2; k++) {
      if (shorter[k] > 0) {
        out.add(
            String.format(
                Locale.ROOT,
                "%d times the heater was %s for less than the %d s of the settings, first at %s, at its shortest for less than %d s.%s",
                shorter[k],
                k == 0 ? "off" : "on",
                allowedS[k],
                Instant.ofEpochSecond(firstS[k]),
                shortest[k],
                k == 0 ? "" : " A safety stop may end a run early."));
      }
    }
    return out;
  }

  /**
   * The settings without the rules that doubt relay and element when the pan does not follow the
   * controller: here it follows the log.
   */
  private static Settings withoutDoubts(Settings s) {
    int hour = 3_600_000;
    return s.with(Setting.WELD_ABOVE_CENTI_K, 3000)
        .with(Setting.EFFECT_SHARE_WINDOW_MILLIS, hour + 1000)
        .with(Setting.EFFECT_SHARE_ON_MILLIS, hour);
  }

  /** The rows with a known relay, the brood readings moved; without volts, a battery at rest. */
  private static List<RecordedLog.Row> rows(FieldLog log, int byCentiK, int restedMilliV) {
    List<RecordedLog.Row> rows = new ArrayList<>();
    Readings readings = new Readings();
    for (int i = 0; i < log.rows(); i++) {
      double heater = log.column(LogColumn.HEATER)[i];
      if (Double.isNaN(heater)) {
        continue;
      }
      fill(readings, log, i);
      if (!log.has(LogColumn.BATTERY_V)) {
        readings.battery.put(restedMilliV);
      }
      readings.broodA.value += byCentiK;
      readings.broodB.value += byCentiK;
      int[] commands = new int[CommandField.COUNT];
      commands[CommandField.HEATER.ordinal()] = heater > 0.5 ? 1 : 0;
      long at = (log.epochS()[i] - log.fromS()) * 1000;
      rows.add(new RecordedLog.Row(i + 2, at, Tick.step((int) at, readings), commands));
    }
    return rows;
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

  /** Volts at which no level sheds anything. */
  static int restedMilliV(Settings settings) {
    return settings.get(Setting.SHED_SET_BACK_LEAVE_MILLI_V) + ABOVE_MILLI_V;
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
