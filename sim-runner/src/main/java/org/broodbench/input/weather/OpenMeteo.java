package org.broodbench.input.weather;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.ToIntFunction;
import java.util.function.UnaryOperator;
import org.broodbench.sky.Place;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;

/**
 * Hourly answers of the open weather service Open-Meteo, as CSV and JSON, after its public
 * interface description. The stamp is local time at a constant offset that the file states.
 * Radiation and precipitation are of the interval that ends at the stamp, all else spot values at
 * the stamp. Units are read from the file.
 */
final class OpenMeteo {
  private OpenMeteo() {}

  /** Picks by name; the unit of each column comes from the file. */
  private static Picks picks(
      ProblemList problems, ToIntFunction<String> at, UnaryOperator<String> unit, int line) {
    Picks picks = new Picks(problems);
    Object[][] wanted = {
      {"temperature_2m", Variable.AIR},
      {"relative_humidity_2m", Variable.HUMIDITY},
      {"relativehumidity_2m", Variable.HUMIDITY},
      {"wind_speed_10m", Variable.WIND},
      {"windspeed_10m", Variable.WIND},
      {"shortwave_radiation", Variable.GHI},
      {"direct_normal_irradiance", Variable.DNI},
      {"diffuse_radiation", Variable.DHI},
      {"precipitation", Variable.PRECIPITATION},
      {"surface_pressure", Variable.PRESSURE}
    };
    for (Object[] w : wanted) {
      String name = (String) w[0];
      Variable v = (Variable) w[1];
      int column = at.applyAsInt(name);
      if (column >= 0) {
        Units.Scale scale = Units.of(v, unit.apply(name));
        if (scale == null) {
          problems.add(line, 1, name, unit.apply(name), Units.known(v), "");
        } else {
          picks.add(v, name, column, scale.factor(), scale.offset(), Double.NEGATIVE_INFINITY);
        }
      }
    }
    int dew = Math.max(at.applyAsInt("dew_point_2m"), at.applyAsInt("dewpoint_2m"));
    if (dew >= 0) {
      String text = unit.apply(at.applyAsInt("dew_point_2m") >= 0 ? "dew_point_2m" : "dewpoint_2m");
      Units.Scale scale = Units.of(Variable.AIR, text);
      if (scale != null) {
        picks.addDewPoint(
            "dew_point_2m", dew, scale.factor(), scale.offset(), Double.NEGATIVE_INFINITY, 1e9);
      }
    }
    return picks;
  }

  private static Stand[] stands(int stepS) {
    Stand[] stands = new Stand[Variable.values().length];
    Arrays.fill(stands, Stand.instant(stepS));
    for (Variable v : Variable.values()) {
      if (v.isRadiation() || v == Variable.PRECIPITATION) {
        stands[v.ordinal()] = Stand.MEAN;
      }
    }
    return stands;
  }

  /** ISO local, or seconds since 1970. */
  private static long stamp(String text, double number, long offsetS) {
    if (text.isEmpty() || text.matches("\\d{9,11}")) {
      double unix = text.isEmpty() ? number : Double.parseDouble(text);
      return Double.isNaN(unix) ? Stamps.NONE : (long) unix;
    }
    long local =
        text.matches("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d(:\\d\\d)?")
            ? Stamps.byOrder(text, "ymdhns")
            : Stamps.NONE;
    return local == Stamps.NONE ? local : local - offsetS;
  }

  private static WeatherSeries finish(SteppedRows rows, String id, Place place) {
    int stepS = rows.stepS();
    return rows.collect(-stepS)
        .finish(stands(stepS))
        .formatId(id)
        .windHeightM(10)
        .place(Optional.of(place))
        .source("Open-Meteo (CC BY 4.0)")
        .build();
  }

  /** As comma-separated text. */
  static final class Csv implements WeatherFormat {
    @Override
    public String id() {
      return "open_meteo_csv";
    }

    @Override
    public String title() {
      return "Open-Meteo CSV";
    }

    @Override
    public boolean recognises(Head head) {
      return head.firstText().startsWith("latitude,longitude,elevation,utc_offset_seconds");
    }

    @Override
    public WeatherSeries read(LineSource lines, ReadContext context) {
      ProblemList problems = context.problems();
      Fields f = new Fields(',');
      lines.next();
      lines.next();
      f.split(lines);
      if (f.count() < 4) {
        throw problems.fatal(2, 1, "", lines.text(), "latitude, longitude, elevation, offset", "");
      }
      Place place = new Place(f.number(0), f.number(1), f.number(2));
      long offsetS = (long) f.number(3);
      while (lines.next() && !lines.text().startsWith("time,")) {
        if (!lines.isBlank()) {
          throw problems.fatal(
              lines.number(), 1, "", lines.text(), "one place", "Ask for one place at a time.");
        }
      }
      f.split(lines);
      int width = f.count();
      String[] names = new String[width];
      String[] units = new String[width];
      for (int i = 0; i < width; i++) {
        String text = f.text(i);
        int open = text.indexOf(" (");
        names[i] = open < 0 ? text : text.substring(0, open);
        units[i] = open < 0 ? "" : text.substring(open + 2, text.length() - 1);
      }
      ToIntFunction<String> at = name -> Arrays.asList(names).indexOf(name);
      Picks picks = picks(problems, at, name -> units[at.applyAsInt(name)], lines.number());
      problems.throwIfAny();
      SteppedRows rows = new SteppedRows(context);
      // a blank line ends the hourly section
      while (lines.next() && !lines.isBlank()) {
        f.split(lines);
        int line = lines.number();
        long at0 = f.count() == width ? stamp(f.text(0), Double.NaN, offsetS) : Stamps.NONE;
        if (at0 == Stamps.NONE) {
          problems.add(
              line, 1, "time", lines.text(), width + " fields, a time first", "Is the file cut?");
          continue;
        }
        rows.add(at0, line, picks.row(f, line));
      }
      return finish(rows, id(), place);
    }
  }

  /** As JSON. */
  static final class Json implements JsonFormat {
    @Override
    public String id() {
      return "open_meteo_json";
    }

    @Override
    public String title() {
      return "Open-Meteo JSON";
    }

    @Override
    public boolean recognises(Head head) {
      String text = String.join("", head.lines());
      return text.stripLeading().startsWith("{") && text.contains("\"utc_offset_seconds\"");
    }

    @Override
    public WeatherSeries read(InputStream in, ReadContext context) {
      ProblemList problems = context.problems();
      JsonTable json;
      try {
        json = JsonTable.read(in, problems);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      JsonTable.Rows table = json.rows("hourly");
      int time = table.at("time");
      if (time < 0 || table.uneven() != null) {
        throw problems.fatal(
            0,
            0,
            time < 0 ? "hourly.time" : "hourly." + table.uneven(),
            time < 0 ? "none" : "another number of values than hourly.time",
            "arrays of equal length",
            "");
      }
      Picks picks = picks(problems, table::at, n -> json.text("hourly_units." + n), 0);
      problems.throwIfAny();
      SteppedRows rows = new SteppedRows(context);
      long offsetS = (long) json.number("utc_offset_seconds");
      while (table.next()) {
        long at = stamp(table.text(time), table.number(time), offsetS);
        if (at == Stamps.NONE) {
          problems.add(table.number(), 0, "hourly.time", table.text(time), "a time", "");
          continue;
        }
        rows.add(at, table.number(), picks.row(table, table.number()));
      }
      return finish(
          rows,
          id(),
          new Place(json.number("latitude"), json.number("longitude"), json.number("elevation")));
    }
  }
}
