package org.broodbench.input;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.broodbench.calibrate.FieldLog;
import org.broodbench.calibrate.LogCleaner;
import org.broodbench.calibrate.LogColumn;
import org.broodbench.calibrate.LogMapping;
import org.broodbench.calibrate.LogRefused;
import org.broodbench.calibrate.RawLog;
import org.broodbench.input.weather.Stamps;

/**
 * Reads a field log along a {@link LogMapping}. Without mapped columns it knows the names of {@code
 * trace.csv} and of the logs that {@code conform} reads.
 */
public final class FieldLogReader {
  private static final int MOST_PROBLEMS = 20;

  /** Lines whose time cannot be read are mostly all lines: so many are shown. */
  private static final int MOST_BAD_TIMES = 3;

  private static final Map<String, LogColumn> OWN_NAMES = new LinkedHashMap<>();

  static {
    OWN_NAMES.put("brood_a_c", LogColumn.BROOD_A);
    OWN_NAMES.put("probe_a_c", LogColumn.BROOD_A);
    OWN_NAMES.put("brood_b_c", LogColumn.BROOD_B);
    OWN_NAMES.put("probe_b_c", LogColumn.BROOD_B);
    OWN_NAMES.put("pan_c", LogColumn.PAN);
    OWN_NAMES.put("top_c", LogColumn.TOP);
    OWN_NAMES.put("outdoor_c", LogColumn.OUTDOOR);
    OWN_NAMES.put("battery_v", LogColumn.BATTERY_V);
    OWN_NAMES.put("battery_a", LogColumn.BATTERY_A);
    OWN_NAMES.put("battery_current_a", LogColumn.BATTERY_A);
    OWN_NAMES.put("humidity_percent", LogColumn.HUMIDITY);
    OWN_NAMES.put("heater", LogColumn.HEATER);
    OWN_NAMES.put("heater_on", LogColumn.HEATER);
    OWN_NAMES.put("fan", LogColumn.FAN);
    OWN_NAMES.put("fan_on", LogColumn.FAN);
    OWN_NAMES.put("heater_h", LogColumn.HEATER_HOURS);
    OWN_NAMES.put("ghi_w_m2", LogColumn.SUN);
    OWN_NAMES.put("wind_m_s", LogColumn.WIND);
  }

  private record Pick(int field, LogColumn what, double factor, double offset) {}

  private final String file;
  private final LogMapping mapping;
  private final List<Problem> problems = new ArrayList<>();
  private final Map<String, Integer> head = new LinkedHashMap<>();
  private final List<Pick> picks = new ArrayList<>();

  private FieldLogReader(String file, LogMapping mapping) {
    this.file = file;
    this.mapping = mapping;
  }

  /**
   * The mapping in a file that has the {@code [log]} block alone.
   *
   * @throws BadInput where it cannot be used
   */
  public static LogMapping mapping(Path path) {
    Keys.Builder builder = Keys.builder();
    LogKeys.declare(builder);
    return mapping(
        builder.build(), path.toString(), PlainText.text(path, "a mapping", 1 << 20), List.of());
  }

  /**
   * The mapping in a scenario.
   *
   * @param file its name for messages
   * @param settings of the command line, put on top
   * @throws BadInput where it cannot be used
   */
  public static LogMapping mapping(String file, byte[] scenario, List<String> settings) {
    String text = new String(scenario, StandardCharsets.UTF_8);
    return mapping(ScenarioKeys.all(), file, text, settings);
  }

  private static LogMapping mapping(Keys keys, String file, String text, List<String> settings) {
    ScenarioText.Reading reading = ScenarioText.read(keys, file, text, settings);
    LogKeys.check(reading.values(), new Checks(reading.values(), reading.problems()));
    if (!reading.problems().isEmpty()) {
      throw new BadInput(ScenarioText.sorted(reading.problems()));
    }
    return LogKeys.mapping(reading.values());
  }

  /**
   * Reads and cleans a log.
   *
   * @throws BadInput with every problem found, at most twenty
   */
  public static FieldLog read(Path path, LogMapping mapping) {
    String file = path.toString();
    FieldLogReader reader = new FieldLogReader(file, mapping);
    RawLog raw = reader.rows(PlainText.lines(path, "a log"));
    if (!reader.problems.isEmpty()) {
      throw new BadInput(reader.problems);
    }
    try {
      return LogCleaner.clean(raw);
    } catch (LogRefused e) {
      throw new BadInput(
          List.of(
              new Problem(file, e.line(), 0, e.column(), e.getMessage(), e.allowed(), e.hint())));
    }
  }

  private void problem(int line, String key, String found, String allowed, String hint) {
    if (problems.size() < MOST_PROBLEMS) {
      problems.add(new Problem(file, line, 0, key, found, allowed, hint));
    }
  }

  private RawLog rows(List<String> lines) {
    RawLog raw = new RawLog();
    int first = mapping.skipLines();
    if (lines.size() <= first || lines.get(first).isBlank()) {
      problem(
          first + 1,
          "",
          "nothing",
          "a header line with the names of the columns",
          "Is it the file that the logger wrote?");
      return raw;
    }
    header(cells(lines.get(first)), first + 1);
    int[] time = mapping.timeColumns().stream().mapToInt(n -> head.getOrDefault(n, -1)).toArray();
    if (!problems.isEmpty()) {
      return raw;
    }
    int bad = 0;
    long[] at = new long[1];
    List<Integer> lineOf = new ArrayList<>();
    List<long[]> times = new ArrayList<>();
    List<double[]> values = new ArrayList<>();
    for (int i = first + 1; i < lines.size(); i++) {
      if (lines.get(i).isBlank()) {
        continue;
      }
      String[] cells = cells(lines.get(i));
      if (!time(cells, time, at)) {
        // the last line of a log that lost power may be cut short
        if (i < lines.size() - 2) {
          bad++;
          badTime(i + 1, cells, time, bad);
        }
        continue;
      }
      lineOf.add(i + 1);
      times.add(new long[] {at[0]});
      values.add(values(cells, i + 1));
    }
    if (bad > 0 && bad < 0.01 * lineOf.size() && problems.size() == Math.min(bad, MOST_BAD_TIMES)) {
      // a few damaged lines are no reason to refuse a log
      problems.clear();
    }
    long from = times.isEmpty() ? 0 : times.get(0)[0];
    long to = times.isEmpty() ? 0 : times.get(times.size() - 1)[0];
    for (int i = 0; i < times.size(); i++) {
      long t = times.get(i)[0];
      double share = to > from ? Math.min(1, Math.max(0, (t - from) / (double) (to - from))) : 0;
      double ahead =
          mapping.clockAheadS() + share * (mapping.clockAheadAtEndS() - mapping.clockAheadS());
      raw.add(lineOf.get(i), t - Math.round(ahead), values.get(i));
    }
    return raw;
  }

  /** The cells of a line; quotes hold together what has the separator in it. */
  private String[] cells(String line) {
    if (line.indexOf('"') >= 0) {
      try {
        return CsvReader.builder()
            .fieldSeparator(mapping.separator())
            .ofSingleCsvRecord(line)
            .getFields()
            .toArray(String[]::new);
      } catch (CsvParseException e) {
        // a damaged line: taken as it stands
      }
    }
    return line.split(Pattern.quote(String.valueOf(mapping.separator())), -1);
  }

  private void badTime(int line, String[] cells, int[] columns, int bad) {
    if (bad > MOST_BAD_TIMES) {
      return;
    }
    String text = timeText(cells, columns);
    List<String> fitting = new ArrayList<>();
    for (String order : List.of("ymdhns", "dmyhns", "mdyhns")) {
      if (text != null && Stamps.byOrder(text, order) != Stamps.NONE) {
        fitting.add("time_order = \"" + order + "\"");
      }
    }
    if (text != null && text.matches("\\d{9,11}([.]\\d+)?")) {
      fitting.add("time_order = \"unix\"");
    }
    problem(
        line,
        mapping.timeColumns().get(0),
        text == null ? "a line that ends before it" : text,
        "a time in the order " + order(),
        fitting.isEmpty()
            ? "Set time_columns and time_order in [log]."
            : "Set " + String.join(" or ", fitting) + " in [log].");
  }

  private String order() {
    return mapping.timeOrder().isEmpty() ? "ymdhns" : mapping.timeOrder();
  }

  private void header(String[] names, int line) {
    for (int i = 0; i < names.length; i++) {
      head.putIfAbsent(bare(names[i]), i);
    }
    for (String t : mapping.timeColumns()) {
      need(t, line);
    }
    for (LogMapping.Column c : mapping.columns()) {
      LogUnits.Scale scale = LogUnits.of(c.what(), c.unit());
      if (need(c.name(), line) && scale != null) {
        picks.add(
            new Pick(head.get(c.name()), c.what(), scale.factor(), scale.offset() - c.offset()));
      }
    }
    if (!mapping.columns().isEmpty()) {
      return;
    }
    OWN_NAMES.forEach(
        (name, what) -> {
          if (head.containsKey(name) && picks.stream().noneMatch(p -> p.what() == what)) {
            picks.add(new Pick(head.get(name), what, 1, 0));
          }
        });
    if (picks.isEmpty()) {
      problem(
          line,
          "",
          String.join(", ", head.keySet()),
          "one of " + String.join(", ", OWN_NAMES.keySet()),
          "Say with [[log.column]] blocks what your columns hold.");
    }
  }

  private boolean need(String name, int line) {
    if (!head.containsKey(name)) {
      problem(line, name, "no such column", String.join(", ", head.keySet()), nameHint(name));
      return false;
    }
    return true;
  }

  /** What to do where a column is not there: mostly the header came out as one cell. */
  private String nameHint(String name) {
    String whole = String.join("", head.keySet());
    for (char c : new char[] {';', '\t', ',', '|'}) {
      if (head.size() == 1 && c != mapping.separator() && whole.indexOf(c) > 0) {
        String shown = c == '\t' ? "\\t" : String.valueOf(c);
        return "The fields seem to be separated by another sign: set separator = \""
            + shown
            + "\" in [log].";
      }
    }
    if (mapping.timeColumns().contains(name)) {
      String like =
          head.keySet().stream()
              .filter(n -> n.toLowerCase(Locale.ROOT).matches(".*(time|date|stamp|when|day).*"))
              .sorted()
              .collect(Collectors.joining("|"));
      return "Say which columns hold date and time: time_columns = \""
          + (like.isEmpty() ? "..." : like)
          + "\" in [log].";
    }
    return "Names as in the header.";
  }

  private static String bare(String cell) {
    return cell.strip().replaceAll("^\"(.*)\"$", "$1").strip();
  }

  /** Date and time as they stand; null where the line is too short. */
  private static String timeText(String[] cells, int[] columns) {
    StringBuilder text = new StringBuilder();
    for (int c : columns) {
      if (c >= cells.length) {
        return null;
      }
      text.append(text.length() > 0 ? " " : "").append(bare(cells[c]));
    }
    return text.toString();
  }

  private boolean time(String[] cells, int[] columns, long[] out) {
    String t = timeText(cells, columns);
    if (t == null) {
      return false;
    }
    if (mapping.timeOrder().equals("unix")) {
      String whole = t.replaceFirst("[.].*", "");
      if (!whole.matches("\\d{1,11}")) {
        return false;
      }
      out[0] = Long.parseLong(whole);
      return true;
    }
    out[0] = Stamps.byOrder(t, order());
    return out[0] != Stamps.NONE;
  }

  private double[] values(String[] cells, int line) {
    double[] row = new double[LogColumn.COUNT];
    Arrays.fill(row, Double.NaN);
    for (Pick p : picks) {
      String text = p.field() < cells.length ? bare(cells[p.field()]) : "";
      if (text.isEmpty() || mapping.missing().contains(text)) {
        continue;
      }
      double value = number(text, p.what());
      if (Double.isNaN(value) && !text.toLowerCase(Locale.ROOT).equals("nan")) {
        boolean comma = !mapping.decimalComma() && text.matches("[-+]?\\d+,\\d+");
        problem(
            line,
            p.what().key(),
            text,
            "a number, or nothing",
            comma
                ? "Set decimal_comma = true in [log]."
                : "If it means that there is no reading, set missing = \""
                    + text.replace("\"", "")
                    + "\" in [log].");
      }
      row[p.what().ordinal()] = value * p.factor() + p.offset();
    }
    return row;
  }

  private double number(String text, LogColumn what) {
    if (what.sort() == LogColumn.Sort.STATE) {
      switch (text.toLowerCase(Locale.ROOT)) {
        case "on", "true", "closed" -> {
          return 1;
        }
        case "off", "false", "open" -> {
          return 0;
        }
        default -> {}
      }
    }
    String point = mapping.decimalComma() ? text.replace(',', '.') : text;
    return point.matches("[-+]?[0-9]*\\.?[0-9]+([eE][-+]?[0-9]+)?")
        ? Double.parseDouble(point)
        : Double.NaN;
  }
}
