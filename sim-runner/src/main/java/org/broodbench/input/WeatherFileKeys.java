package org.broodbench.input;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.broodbench.matter.Dimension;
import org.broodbench.rig.CsvMapping;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.Variable;

/** Keys of what is done to a weather record, and of tables of no known layout. */
final class WeatherFileKeys {
  private static final Map<String, Variable> WHAT = new LinkedHashMap<>();

  static {
    WHAT.put("air", Variable.AIR);
    WHAT.put("humidity", Variable.HUMIDITY);
    WHAT.put("wind", Variable.WIND);
    WHAT.put("global", Variable.GHI);
    WHAT.put("direct_normal", Variable.DNI);
    WHAT.put("diffuse", Variable.DHI);
    WHAT.put("precipitation", Variable.PRECIPITATION);
    WHAT.put("pressure", Variable.PRESSURE);
  }

  private WeatherFileKeys() {}

  static void declare(Keys.Builder keys) {
    keys.choice("weather.long_gaps", "refuse", "bridge")
        .byDefault("refuse")
        .help(
            "What to do with longer gaps: refuse the file, or bridge them with days drawn from the"
                + " same season of the record.");
    keys.quantity("weather.colder_by", "K", Dimension.TEMPERATURE_DIFFERENCE)
        .between("0 K", "30 K")
        .byDefault("0 K")
        .help("Taken off every air temperature, to try a harder season.");
    keys.quantity("weather.cloudier_by", "%", Dimension.RATIO)
        .between("0 %", "90 %")
        .byDefault("0 %")
        .help("Share of all sunlight that is taken away.");
    keys.plain("weather.longer_spell_days", Kind.INTEGER)
        .between("0", "60")
        .byDefault("0")
        .help("Days by which the hardest spell is drawn out; all after it comes later.");
    keys.table(
        "weather.table",
        "How to read a weather file of no known layout: a table with one header line. Needs"
            + " [[weather.column]] blocks.");
    keys.plain("weather.table.separator", Kind.TEXT)
        .byDefault(",")
        .help("One sign between the fields.");
    keys.plain("weather.table.decimal_comma", Kind.BOOLEAN)
        .byDefault("false")
        .help("Whether 3,5 means three and a half.");
    keys.plain("weather.table.skip_lines", Kind.INTEGER)
        .between("0", "1000")
        .byDefault("0")
        .help("Lines above the header.");
    keys.plain("weather.table.time_columns", Kind.TEXT)
        .byDefault("time")
        .help("Names of the columns with date and time, separated by |.");
    keys.plain("weather.table.time_order", Kind.TEXT)
        .byDefault("ymdhns")
        .help(
            "Order of the numbers in them: y year, m month, d day, h hour, n minute, s second; or"
                + " unix for seconds since 1970.");
    keys.quantity("weather.table.clock_ahead", "h", Dimension.TIME)
        .between("-14 h", "14 h")
        .byDefault("0 h")
        .help(
            "The file's clock minus UTC, the same all year; summer time is no clock for weather.");
    keys.choice("weather.table.stamp", "end", "start", "centre")
        .byDefault("end")
        .help("Which instant of its interval a row is stamped with.");
    keys.quantity("weather.table.step", "min", Dimension.TIME)
        .between("1 s", "24 h")
        .byDefault("60 min")
        .help("Length of the interval of a row.");
    keys.plain("weather.table.missing", Kind.TEXT)
        .byDefault("")
        .help("Texts that mean missing, besides an empty field, separated by |.");
    keys.quantity("weather.table.wind_height", "m", Dimension.LENGTH)
        .between("0.2 m", "100 m")
        .byDefault("10 m")
        .help("Height of the anemometer.");
    keys.rows("weather.column", 0, 20, "Columns of that table.");
    keys.plain("weather.column.*.name", Kind.TEXT).help("Name as in the header.");
    keys.choice("weather.column.*.what", WHAT.keySet().toArray(String[]::new))
        .help("What the column holds.");
    keys.plain("weather.column.*.unit", Kind.TEXT)
        .help("Its unit: degC, degF, K; percent; m/s, km/h, mph, kn; W/m2; mm, in; hPa, Pa, kPa.");
    keys.plain("weather.column.*.spot", Kind.BOOLEAN)
        .byDefault("false")
        .help("Whether it is a spot value at the stamp; otherwise a mean or sum of the interval.");
  }

  static boolean bridges(Values v) {
    return v.text("weather.long_gaps").equals("bridge");
  }

  static GeneratorSettings.Stress harder(Values v) {
    return new GeneratorSettings.Stress(
        v.number("weather.colder_by"),
        v.number("weather.cloudier_by"),
        (int) v.integer("weather.longer_spell_days"));
  }

  static Optional<CsvMapping> mapping(Values v) {
    if (v.rowCount("weather.column") == 0) {
      return Optional.empty();
    }
    List<CsvMapping.Column> columns = new ArrayList<>();
    for (Values row : v.rows("weather.column")) {
      columns.add(
          new CsvMapping.Column(
              row.text("name"), WHAT.get(row.text("what")), row.text("unit"), row.flag("spot")));
    }
    return Optional.of(
        new CsvMapping(
            v.text("weather.table.separator").charAt(0),
            v.flag("weather.table.decimal_comma"),
            (int) v.integer("weather.table.skip_lines"),
            split(v.text("weather.table.time_columns")),
            v.text("weather.table.time_order"),
            (int) Math.rint(v.number("weather.table.clock_ahead")),
            switch (v.text("weather.table.stamp")) {
              case "start" -> CsvMapping.Stamped.START;
              case "centre" -> CsvMapping.Stamped.CENTRE;
              default -> CsvMapping.Stamped.END;
            },
            (int) Math.rint(v.number("weather.table.step")),
            columns,
            split(v.text("weather.table.missing")),
            v.number("weather.table.wind_height"),
            Optional.empty(),
            "table read by the scenario's own mapping"));
  }

  private static List<String> split(String text) {
    return Arrays.stream(text.split("\\|")).map(String::strip).filter(t -> !t.isEmpty()).toList();
  }

  static void check(Values v, Checks checks) {
    checks.run(
        () -> {
          if (v.text("weather.table.separator").length() != 1) {
            checks.refuse("weather.table.separator", List.of(), "one sign, such as , or ;", "");
          }
        });
    checks.run(
        () -> {
          if (split(v.text("weather.table.time_columns")).isEmpty()) {
            checks.refuse("weather.table.time_columns", List.of(), "at least one name", "");
          }
        });
    checks.run(
        () -> {
          String order = v.text("weather.table.time_order");
          if (!order.equals("unix") && !order.matches("[ymdhns]{3,6}")) {
            checks.refuse(
                "weather.table.time_order",
                List.of(),
                "three to six of the letters y m d h n s, or unix",
                "Write the letters in the order in which the numbers stand, such as ymdhn.");
          }
        });
  }
}
