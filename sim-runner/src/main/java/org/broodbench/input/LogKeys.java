package org.broodbench.input;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.broodbench.calibrate.LogColumn;
import org.broodbench.calibrate.LogMapping;
import org.broodbench.matter.Dimension;

/** Keys that say how a field log is to be read. */
final class LogKeys {
  private LogKeys() {}

  static void declare(Keys.Builder keys) {
    keys.table(
        "log",
        "How to read a field log: a table with one header line. Without [[log.column]] blocks the"
            + " names that the program itself writes are looked for.");
    keys.plain("log.separator", Kind.TEXT).byDefault(",").help("One sign between the fields.");
    keys.plain("log.decimal_comma", Kind.BOOLEAN)
        .byDefault("false")
        .help("Whether 3,5 means three and a half.");
    keys.plain("log.skip_lines", Kind.INTEGER)
        .between("0", "1000")
        .byDefault("0")
        .help("Lines above the header.");
    keys.plain("log.time_columns", Kind.TEXT)
        .byDefault("time")
        .help("Names of the columns with date and time, separated by |.");
    keys.plain("log.time_order", Kind.TEXT)
        .byDefault("ymdhns")
        .help(
            "Order of the numbers in them: y year, m month, d day, h hour, n minute, s second; or"
                + " unix for seconds since 1970.");
    keys.quantity("log.clock_ahead", "h", Dimension.TIME)
        .between("-14 h", "14 h")
        .byDefault("0 h")
        .help("The logger's clock minus UTC at the first row.");
    keys.quantity("log.clock_ahead_at_end", "h", Dimension.TIME)
        .between("-14 h", "14 h")
        .byDefault("as `clock_ahead`", v -> v.shown("log.clock_ahead"))
        .help("The same at the last row: a clock that drifts.");
    keys.plain("log.missing", Kind.TEXT)
        .byDefault("")
        .help("Texts that mean missing, besides an empty field, separated by |.");
    keys.rows("log.column", 0, 40, "Columns of the log.");
    keys.plain("log.column.*.name", Kind.TEXT).help("Name as in the header.");
    keys.choice(
            "log.column.*.what",
            Arrays.stream(LogColumn.values()).map(LogColumn::key).toArray(String[]::new))
        .help("What the column holds.");
    keys.plain("log.column.*.unit", Kind.TEXT)
        .byDefault("")
        .help(
            "Its unit: degC, degF, K; V, mV; A, mA; percent; on (1 or on, 0 or off); h, min; W/m2;"
                + " m/s, km/h. Left out: degC, V, A, percent, on, h, W/m2, m/s.");
    keys.plain("log.column.*.offset", Kind.NUMBER)
        .byDefault("0")
        .help("Reading minus truth where it is known, in degC, V, A or percent.");
  }

  static void check(Values v, Checks checks) {
    checks.run(
        () -> {
          if (v.text("log.separator").length() != 1) {
            checks.refuse("log.separator", List.of(), "one sign, such as , or ;", "");
          }
        });
    checks.run(
        () -> {
          if (split(v.text("log.time_columns")).isEmpty()) {
            checks.refuse("log.time_columns", List.of(), "at least one name", "");
          }
        });
    checks.run(
        () -> {
          String order = v.text("log.time_order");
          if (!order.equals("unix") && !order.matches("[ymdhns]{3,6}")) {
            checks.refuse(
                "log.time_order",
                List.of(),
                "three to six of the letters y m d h n s, or unix",
                "Write the letters in the order in which the numbers stand, such as dmyhn.");
          }
        });
    for (int i = 0; i < v.rowCount("log.column"); i++) {
      String unit = "log.column." + i + ".unit";
      String what = "log.column." + i + ".what";
      checks.run(
          () -> {
            LogColumn column = column(v.text(what));
            if (LogUnits.of(column, v.text(unit)) == null) {
              checks.refuse(unit, List.of(what), LogUnits.known(column), "");
            }
          });
    }
  }

  private static LogColumn column(String key) {
    for (LogColumn c : LogColumn.values()) {
      if (c.key().equals(key)) {
        return c;
      }
    }
    throw new IllegalArgumentException(key);
  }

  static LogMapping mapping(Values v) {
    List<LogMapping.Column> columns = new ArrayList<>();
    for (Values row : v.rows("log.column")) {
      columns.add(
          new LogMapping.Column(
              row.text("name"), column(row.text("what")), row.text("unit"), row.number("offset")));
    }
    return new LogMapping(
        v.text("log.separator").charAt(0),
        v.flag("log.decimal_comma"),
        (int) v.integer("log.skip_lines"),
        split(v.text("log.time_columns")),
        v.text("log.time_order"),
        v.number("log.clock_ahead"),
        v.number("log.clock_ahead_at_end"),
        columns,
        split(v.text("log.missing")));
  }

  private static List<String> split(String text) {
    return Arrays.stream(text.split("\\|")).map(String::strip).filter(t -> !t.isEmpty()).toList();
  }
}
