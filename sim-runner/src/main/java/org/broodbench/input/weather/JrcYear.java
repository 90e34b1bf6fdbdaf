package org.broodbench.input.weather;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.Optional;
import org.broodbench.sky.Place;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;

/**
 * Typical years and hourly series of the photovoltaic information system of the European
 * Commission's Joint Research Centre, as CSV and JSON, after the service's own legend. UTC.
 * Temperature, humidity, wind and pressure hold at the stamp, irradiance at the stamp plus the
 * stated irradiance time offset; the interval of a row is centred on its stamp.
 */
final class JrcYear {
  private static final int HOUR_S = 3600;

  /** Text before this is the service's own description of the point. */
  private static final String TIME = "time(UTC)";

  private JrcYear() {}

  /** Stands of the rows; light that holds {@code offsetH} after the stamp. */
  static Stand[] stands(double offsetH) {
    Stand[] stands = new Stand[Variable.values().length];
    Arrays.fill(stands, Stand.instant(HOUR_S / 2.0));
    for (Variable v : new Variable[] {Variable.GHI, Variable.DNI, Variable.DHI}) {
      stands[v.ordinal()] = Stand.instant(HOUR_S / 2.0 + Math.round(offsetH * HOUR_S));
    }
    return stands;
  }

  private static Picks picks(ProblemList problems, java.util.function.ToIntFunction<String> at) {
    return new Picks(problems)
        .add(Variable.AIR, "T2m", at.applyAsInt("T2m"))
        .add(Variable.HUMIDITY, "RH", at.applyAsInt("RH"))
        .add(Variable.WIND, "WS10m", at.applyAsInt("WS10m"))
        .add(Variable.GHI, "G(h)", at.applyAsInt("G(h)"))
        .add(Variable.DNI, "Gb(n)", at.applyAsInt("Gb(n)"))
        .add(Variable.DHI, "Gd(h)", at.applyAsInt("Gd(h)"))
        .add(Variable.PRESSURE, "SP", at.applyAsInt("SP"));
  }

  /** From YYYYMMDD:hhmm. */
  private static long stamp(String text, boolean typical) {
    if (!text.matches("\\d{8}:\\d{4}")) {
      return Stamps.NONE;
    }
    int year = typical ? TypicalYears.LABEL : Integer.parseInt(text.substring(0, 4));
    return Stamps.epochS(
        year,
        Integer.parseInt(text.substring(4, 6)),
        Integer.parseInt(text.substring(6, 8)),
        Integer.parseInt(text.substring(9, 11)),
        Integer.parseInt(text.substring(11, 13)),
        0);
  }

  private static Optional<Place> place(double latitude, double longitude, double altitude) {
    boolean known = Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180 && altitude > -500;
    return known && altitude < 9000
        ? Optional.of(new Place(latitude, longitude, altitude))
        : Optional.empty();
  }

  private static WeatherSeries series(
      WeatherSeries.Builder b, String id, Optional<Place> place, boolean typical) {
    return b.formatId(id)
        .place(place)
        .typicalYear(typical)
        .source("PVGIS (c) European Union, " + (typical ? "typical year" : "hourly series"))
        .build();
  }

  /** The typical year as CSV. */
  static final class TypicalCsv implements WeatherFormat {
    @Override
    public String id() {
      return "jrc_tmy_csv";
    }

    @Override
    public String title() {
      return "JRC typical year CSV";
    }

    @Override
    public boolean recognises(Head head) {
      return head.anyStartsWith(TIME + ",T2m");
    }

    @Override
    public WeatherSeries read(LineSource lines, ReadContext context) {
      ProblemList problems = context.problems();
      Fields f = new Fields(',');
      JrcHead head = JrcHead.read(lines, TIME);
      f.split(lines);
      ColumnNames names = new ColumnNames(f, problems, lines.number());
      names.need("T2m");
      names.need("G(h)");
      problems.throwIfAny();
      Picks picks = picks(problems, names::at);
      SeriesCollector rows = new SeriesCollector(context, HOUR_S);
      // a blank line ends the rows; the legend follows
      while (lines.next() && !lines.isBlank()) {
        f.split(lines);
        int line = lines.number();
        long at = f.count() == names.count() ? stamp(f.text(0), true) : Stamps.NONE;
        if (at == Stamps.NONE) {
          problems.add(
              line,
              1,
              TIME,
              lines.text(),
              names.count() + " fields that begin with YYYYMMDD:hhmm",
              "Is the file cut short?");
          continue;
        }
        rows.add(at - HOUR_S / 2, line, picks.row(f, line));
      }
      if (!head.offsetStated()) {
        rows.warn("no irradiance time offset in the file: the light is taken to hold at the stamp");
      }
      return series(rows.finish(stands(head.offsetH())), id(), head.place(), true);
    }
  }

  /** The hourly series as CSV; only of a horizontal plane. */
  static final class HourlyCsv implements WeatherFormat {
    @Override
    public String id() {
      return "jrc_hourly_csv";
    }

    @Override
    public String title() {
      return "JRC hourly CSV";
    }

    @Override
    public boolean recognises(Head head) {
      return head.lines().stream()
          .anyMatch(l -> l.startsWith("time,G") && l.contains("T2m") && l.contains("WS10m"));
    }

    @Override
    public WeatherSeries read(LineSource lines, ReadContext context) {
      ProblemList problems = context.problems();
      Fields f = new Fields(',');
      JrcHead head = JrcHead.read(lines, "time,");
      f.split(lines);
      if (!(head.slopeDeg() == 0)) {
        throw problems.fatal(
            head.slopeLine(),
            1,
            "Slope",
            Double.isNaN(head.slopeDeg()) ? "no line with the slope" : head.slopeDeg() + " degrees",
            "0 degrees: light on the horizontal",
            "Ask the service for slope 0, or for a typical year, which also has humidity.");
      }
      ColumnNames names = new ColumnNames(f, problems, lines.number());
      names.need("T2m");
      boolean parts = names.at("G(i)") < 0;
      int beam = parts ? names.need("Gb(i)") : -1;
      int diffuse = parts ? names.need("Gd(i)") : -1;
      problems.throwIfAny();
      Picks picks =
          new Picks(problems)
              .add(Variable.AIR, "T2m", names.at("T2m"))
              .add(Variable.WIND, "WS10m", names.at("WS10m"))
              .add(Variable.GHI, "G(i)", names.at("G(i)"))
              .add(Variable.DHI, "Gd(i)", diffuse)
              // the direct part on the horizontal, held here until the two are summed
              .add(Variable.DNI, "Gb(i)", beam);
      SeriesCollector rows = new SeriesCollector(context, HOUR_S);
      int minute = -1;
      while (lines.next() && !lines.isBlank()) {
        f.split(lines);
        int line = lines.number();
        long at = f.count() == names.count() ? stamp(f.text(0), false) : Stamps.NONE;
        if (at == Stamps.NONE) {
          problems.add(
              line,
              1,
              "time",
              lines.text(),
              names.count() + " fields that begin with YYYYMMDD:hhmm",
              "Is the file cut short?");
          continue;
        }
        if (minute < 0) {
          minute = (int) (at % HOUR_S / 60);
        }
        double[] row = picks.row(f, line);
        if (parts) {
          row[Variable.GHI.ordinal()] = row[Variable.DNI.ordinal()] + row[Variable.DHI.ordinal()];
          row[Variable.DNI.ordinal()] = Double.NaN;
        }
        // minutes change a little over the years: rows stay on the grid of the first
        long grid = Math.round((at - minute * 60.0) / HOUR_S) * HOUR_S;
        rows.add(grid - HOUR_S / 2, line, row);
      }
      return series(rows.finish(stands(minute / 60.0)), id(), head.place(), false);
    }
  }

  /** The typical year as JSON. */
  static final class TypicalJson implements JsonFormat {
    private static final String LOCATION = "inputs.location.";

    @Override
    public String id() {
      return "jrc_tmy_json";
    }

    @Override
    public String title() {
      return "JRC typical year JSON";
    }

    @Override
    public boolean recognises(Head head) {
      String text = head.firstText().strip();
      return text.startsWith("{") && String.join("", head.lines()).contains("\"tmy_hourly\"");
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
      JsonTable.Rows table = json.rows("outputs.tmy_hourly");
      if (table.uneven() != null) {
        throw problems.fatal(
            0, 0, table.uneven(), "not in every row", "each name in every row", "");
      }
      Picks picks = picks(problems, table::at);
      SeriesCollector rows = new SeriesCollector(context, HOUR_S);
      int time = table.at(TIME);
      while (table.next()) {
        long at = time < 0 ? Stamps.NONE : stamp(table.text(time), true);
        if (at == Stamps.NONE) {
          problems.add(
              table.number(), 0, TIME, time < 0 ? "none" : table.text(time), "YYYYMMDD:hhmm", "");
          continue;
        }
        rows.add(at - HOUR_S / 2, table.number(), picks.row(table, table.number()));
      }
      double offset = json.number(LOCATION + "irradiance_time_offset");
      if (Double.isNaN(offset)) {
        rows.warn("no irradiance time offset in the file: the light is taken to hold at the stamp");
        offset = 0;
      }
      return series(
          rows.finish(stands(offset)),
          id(),
          place(
              json.number(LOCATION + "latitude"),
              json.number(LOCATION + "longitude"),
              json.number(LOCATION + "elevation")),
          true);
    }
  }

  /** The lines above the header. */
  private record JrcHead(
      Optional<Place> place, double offsetH, boolean offsetStated, double slopeDeg, int slopeLine) {
    static JrcHead read(LineSource lines, String headerStart) {
      double latitude = Double.NaN;
      double longitude = Double.NaN;
      double altitude = Double.NaN;
      double offset = 0;
      boolean stated = false;
      double slope = Double.NaN;
      int slopeLine = 0;
      while (lines.next() && !lines.text().startsWith(headerStart)) {
        String text = lines.text();
        double value = numberAfterColon(text);
        if (text.startsWith("Latitude")) {
          latitude = value;
        } else if (text.startsWith("Longitude")) {
          longitude = value;
        } else if (text.startsWith("Elevation")) {
          altitude = value;
        } else if (text.startsWith("Irradiance Time Offset")) {
          offset = value;
          stated = true;
        } else if (text.startsWith("Slope")) {
          slope = value;
          slopeLine = lines.number();
        }
      }
      return new JrcHead(
          JrcYear.place(latitude, longitude, altitude), offset, stated, slope, slopeLine);
    }

    private static double numberAfterColon(String text) {
      String rest = text.substring(text.indexOf(':') + 1).strip();
      String number = rest.split("[^0-9.+-]", 2)[0];
      try {
        return Double.parseDouble(number);
      } catch (NumberFormatException e) {
        return Double.NaN;
      }
    }
  }
}
