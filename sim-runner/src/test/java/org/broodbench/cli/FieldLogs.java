package org.broodbench.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.LongUnaryOperator;

/** Logs as loggers leave them, made from the trace of a run: rows of one-minute readings. */
final class FieldLogs {
  private static final List<String> COLUMNS =
      List.of("probe_a_c", "pan_c", "outdoor_c", "ghi_w_m2", "wind_m_s", "heater_on", "battery_v");

  private FieldLogs() {}

  /** The demo's hive over some days: the header first, then its rows. */
  static List<String> made(Path folder, int days, String... settings) throws IOException {
    Path out = folder.resolve("made" + days);
    List<String> words =
        new ArrayList<>(List.of("run", "../scenarios/late-split.toml", "--no-remedies", "--days"));
    words.addAll(List.of("" + days, "--out", out.toString()));
    words.addAll(List.of(settings));
    Program.run(words.toArray(String[]::new));
    List<String> trace = Files.readAllLines(out.resolve("trace.csv"));
    List<String> names = Arrays.asList(trace.get(0).split(",", -1));
    List<String> rows = new ArrayList<>();
    for (String line : trace) {
      String[] fields = line.split(",", -1);
      StringBuilder row = new StringBuilder(fields[0]);
      for (String column : COLUMNS) {
        row.append(',').append(fields[names.indexOf(column)]);
      }
      rows.add(row.toString());
    }
    return rows;
  }

  /** A row with another reading in one column. */
  static String with(List<String> log, int row, String column, String reading) {
    String[] fields = log.get(row).split(",", -1);
    fields[1 + COLUMNS.indexOf(column)] = reading;
    return String.join(",", fields);
  }

  /** The log as a clock stamps it. */
  static List<String> stamped(List<String> log, LongUnaryOperator clock) {
    List<String> out = new ArrayList<>(log.subList(0, 1));
    for (String line : log.subList(1, log.size())) {
      int comma = line.indexOf(',');
      long at = Instant.parse(line.substring(0, comma)).getEpochSecond();
      out.add(Instant.ofEpochSecond(clock.applyAsLong(at)) + line.substring(comma));
    }
    return out;
  }

  /** When a row was written, s since 1970-01-01T00:00Z. */
  static long at(List<String> log, int row) {
    return Instant.parse(log.get(row).substring(0, log.get(row).indexOf(','))).getEpochSecond();
  }
}
