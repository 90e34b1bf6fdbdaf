package org.broodbench.input;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.broodbench.controller.Readings;
import org.broodbench.firmware.Channel;
import org.broodbench.firmware.CommandField;
import org.broodbench.firmware.RecordedLog;
import org.broodbench.firmware.Tick;

/**
 * Reads a log of readings and commands: comma-separated, a head with the names of the columns, then
 * rows in the order of time. Columns: {@code time} (ISO 8601, UTC) or {@code time_ms}; readings
 * under the names of the vector files or with a larger unit ({@code brood_a_c}, {@code battery_v},
 * {@code humidity_percent}); commands under their names in SPEC.md. Other columns are passed over.
 */
public final class LogReader {
  private static final Pattern NUMBER =
      Pattern.compile("[-+]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][-+]?[0-9]+)?");

  private record Source(int column, int scale) {}

  private final String file;
  private final List<Problem> problems = new ArrayList<>();
  private final Map<Channel, Source> channels = new HashMap<>();
  private final Map<String, Integer> head = new HashMap<>();
  private final List<CommandField> fields = new ArrayList<>();
  private String[] cells = new String[0];
  private int line = 1;

  private LogReader(String file) {
    this.file = file;
  }

  /**
   * Reads a file.
   *
   * @throws BadInput with every problem found, at most twenty
   */
  public static RecordedLog read(Path path) {
    return new LogReader(path.toString()).read(PlainText.lines(path, "a log"));
  }

  private RecordedLog read(List<String> lines) {
    head(lines.get(0).split(",", -1));
    List<RecordedLog.Row> rows = new ArrayList<>();
    long first = 0;
    long before = Long.MIN_VALUE;
    for (int i = 1; i < lines.size() && problems.size() < 20; i++) {
      line = i + 1;
      if (lines.get(i).isBlank()) {
        continue;
      }
      cells = lines.get(i).split(",", -1);
      long at = time();
      if (rows.isEmpty()) {
        first = at;
      }
      if (at <= before) {
        problem(1, "time", cells[0], "later than the row before");
      }
      before = at;
      rows.add(
          new RecordedLog.Row(
              line, at - first, Tick.step((int) (at - first), readings()), commands()));
    }
    if (rows.isEmpty() && problems.isEmpty()) {
      problem(0, "", "no row", "at least one row below the head");
    }
    if (!problems.isEmpty()) {
      throw new BadInput(problems);
    }
    return new RecordedLog(
        file, List.copyOf(fields), Set.copyOf(channels.keySet()), List.copyOf(rows));
  }

  private void problem(int column, String key, String found, String allowed) {
    problems.add(new Problem(file, line, column, key, found, allowed, ""));
  }

  private void head(String[] names) {
    for (int i = 0; i < names.length; i++) {
      head.put(names[i].strip(), i);
    }
    if (!head.containsKey("time") && !head.containsKey("time_ms")) {
      problem(1, "time", "no such column", "time (ISO 8601) or time_ms");
    }
    for (Channel channel : Channel.values()) {
      String stem = channel.name().toLowerCase(Locale.ROOT);
      source(channel, channel.key(), 1);
      source(channel, stem + "_c", 100);
      source(channel, stem + "_v", 1000);
      source(channel, stem + "_a", 1000);
      source(channel, stem + "_w", 1000);
      source(channel, stem + "_percent", 10);
    }
    for (CommandField field : CommandField.values()) {
      if (head.containsKey(field.key()) && (field.output() || field == CommandField.SHED_LEVEL)) {
        fields.add(field);
      }
    }
    if (!fields.contains(CommandField.HEATER)) {
      String hint =
          head.containsKey("heater_on") && head.containsKey("probe_a_c")
              ? "trace.csv tells what happened, once a minute, and not what the controller read at"
                  + " each step: calibrate reads it, conform cannot."
              : "";
      problems.add(
          new Problem(
              file,
              line,
              1,
              "heater",
              "no such column",
              "the command to the heater, 0 or 1",
              hint));
    }
    if (!channels.containsKey(Channel.BROOD_A)) {
      problem(1, Channel.BROOD_A.key(), "no such column", Channel.BROOD_A.key() + " or brood_a_c");
    }
  }

  private void source(Channel channel, String name, int scale) {
    if (head.containsKey(name)) {
      channels.putIfAbsent(channel, new Source(head.get(name), scale));
    }
  }

  private String cell(int column) {
    return column < cells.length ? cells[column].strip() : "";
  }

  private int place(int column) {
    int place = 1;
    for (int i = 0; i < column && i < cells.length; i++) {
      place += cells[i].length() + 1;
    }
    return place;
  }

  private long time() {
    Integer millis = head.get("time_ms");
    try {
      if (millis != null) {
        return Long.parseLong(cell(millis));
      }
      Integer iso = head.get("time");
      return iso == null ? 0 : Instant.parse(cell(iso)).toEpochMilli();
    } catch (DateTimeException | NumberFormatException e) {
      problem(1, "time", cells[0], "2027-04-20T00:00:00Z, or milliseconds in time_ms");
      return 0;
    }
  }

  private Readings readings() {
    Readings readings = new Readings();
    channels.forEach(
        (channel, source) -> {
          Double value = number(source.column(), channel.key());
          if (value != null) {
            channel.of(readings).put((int) Math.rint(value * source.scale()));
          }
        });
    readings.chargerFull = flag("charger_full");
    readings.shorePresent = flag("shore_present");
    readings.button = flag("button");
    readings.testRequest = flag("test_request");
    return readings;
  }

  private Double number(int column, String key) {
    String text = cell(column);
    if (text.isEmpty() || text.equalsIgnoreCase("nan")) {
      return null;
    }
    if (!NUMBER.matcher(text).matches()) {
      problem(place(column), key, text, "a number, or nothing");
      return null;
    }
    return Double.valueOf(text);
  }

  private boolean flag(String key) {
    Integer column = head.get(key);
    Double value = column == null ? null : number(column, key);
    return value != null && value != 0;
  }

  private int[] commands() {
    int[] commands = new int[CommandField.COUNT];
    for (CommandField field : fields) {
      int column = head.get(field.key());
      Double value = number(column, field.key());
      if (value == null) {
        problem(place(column), field.key(), "nothing", "a whole number");
      } else {
        commands[field.ordinal()] = (int) Math.rint(value);
      }
    }
    return commands;
  }
}
