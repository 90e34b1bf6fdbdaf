package org.broodbench.input.weather;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.broodbench.sky.Place;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;

/**
 * Station data of Deutscher Wetterdienst from its climate data centre, hourly and ten-minute, after
 * the field lists in the archives. Each archive holds one subject (air, wind, precipitation, sun),
 * so several make a record. UTC. An hourly value covers the hour that ends at minute 50; hourly sun
 * runs in true solar hours and is shared out to UTC hours; a ten-minute value covers the ten
 * minutes that end at the stamp.
 */
final class Dwd implements WeatherFormat {
  private static final double MISSING = -998;
  private static final int HOUR_S = 3600;

  /** Automatic stations close the hour at minute 50. */
  private static final int EARLY_S = 600;

  private final boolean hourly;

  Dwd(boolean hourly) {
    this.hourly = hourly;
  }

  @Override
  public String id() {
    return hourly ? "dwd_hourly" : "dwd_10min";
  }

  @Override
  public String title() {
    return hourly ? "DWD hourly" : "DWD ten-minute";
  }

  @Override
  public boolean recognises(Head head) {
    if (!head.firstText().startsWith("STATIONS_ID;MESS_DATUM;")) {
      return false;
    }
    String[] first = head.line(1).split(";");
    return first.length > 1 && (first[1].strip().length() == 12) != hourly;
  }

  @Override
  public WeatherSeries read(LineSource lines, ReadContext context) {
    ProblemList problems = context.problems();
    Fields f = new Fields(';');
    lines.next();
    f.split(lines);
    ColumnNames names = new ColumnNames(f, problems, lines.number());
    Picks picks =
        new Picks(problems)
            .add(Variable.AIR, "TT_TU", names.at("TT_TU"), 1, 0, MISSING)
            .add(Variable.HUMIDITY, "RF_TU", names.at("RF_TU"), 1, 0, MISSING)
            .add(Variable.WIND, "F", names.at("F"), 1, 0, MISSING)
            .add(Variable.PRECIPITATION, "R1", names.at("R1"), 1, 0, MISSING)
            .add(Variable.GHI, "FG_LBERG", names.at("FG_LBERG"), 1e4 / HOUR_S, 0, MISSING)
            .add(Variable.DHI, "FD_LBERG", names.at("FD_LBERG"), 1e4 / HOUR_S, 0, MISSING)
            .add(Variable.PRESSURE, "PP_10", names.at("PP_10"), 100, 0, MISSING)
            .add(Variable.AIR, "TT_10", names.at("TT_10"), 1, 0, MISSING)
            .add(Variable.HUMIDITY, "RF_10", names.at("RF_10"), 1, 0, MISSING)
            .add(Variable.WIND, "FF_10", names.at("FF_10"), 1, 0, MISSING)
            .add(Variable.PRECIPITATION, "RWS_10", names.at("RWS_10"), 1, 0, MISSING)
            .add(Variable.GHI, "GS_10", names.at("GS_10"), 1e4 / 600, 0, MISSING)
            .add(Variable.DHI, "DS_10", names.at("DS_10"), 1e4 / 600, 0, MISSING);
    boolean solarHours = names.at("FG_LBERG") >= 0;
    int stepS = hourly ? HOUR_S : 600;
    SeriesCollector rows = new SeriesCollector(context, stepS);
    SolarHours bins = solarHours ? new SolarHours(rows) : null;
    int station = -1;
    long last = Stamps.NONE;
    while (lines.next()) {
      if (lines.isBlank()) {
        continue;
      }
      f.split(lines);
      int line = lines.number();
      if (f.count() != names.count()) {
        problems.add(
            line,
            1,
            "",
            f.count() + " fields",
            names.count() + " fields",
            "Is the file cut short?");
        continue;
      }
      if (station < 0) {
        station = f.whole(0);
      } else if (f.whole(0) != station) {
        throw problems.fatal(
            line, f.column(0), "STATIONS_ID", f.text(0), "one station: " + station, "");
      }
      long stamp = stamp(f);
      if (stamp == Stamps.NONE) {
        problems.add(
            line,
            f.column(1),
            "MESS_DATUM",
            f.text(1),
            hourly ? "YYYYMMDDHH or YYYYMMDDHH:mm" : "YYYYMMDDHHmm",
            "");
        continue;
      }
      if (!hourly && stamp < Stamps.epochS(2000, 1, 1, 0, 0, 0)) {
        throw problems.fatal(
            line,
            f.column(1),
            "MESS_DATUM",
            f.text(1),
            "2000 and later, in UTC",
            "Earlier ten-minute rows are in Central European Time: cut them off.");
      }
      last = stamp;
      double[] row = picks.row(f, line);
      if (solarHours) {
        bins.add(stamp, line, row[Variable.GHI.ordinal()], row[Variable.DHI.ordinal()]);
      } else {
        rows.add(stamp - stepS, line, row);
      }
    }
    Stand[] stands = new Stand[Variable.values().length];
    Arrays.fill(stands, hourly ? new Stand(true, -EARLY_S) : Stand.MEAN);
    if (hourly) {
      stands[Variable.AIR.ordinal()] = Stand.instant(HOUR_S - EARLY_S);
      stands[Variable.HUMIDITY.ordinal()] = Stand.instant(HOUR_S - EARLY_S);
      stands[Variable.GHI.ordinal()] = Stand.MEAN;
      stands[Variable.DHI.ordinal()] = Stand.MEAN;
    }
    return rows.finish(stands)
        .formatId(id())
        .windHeightM(10)
        .place(place(context.side(), last))
        .source("Deutscher Wetterdienst, station " + station)
        .build();
  }

  private long stamp(Fields f) {
    int n = f.size(1);
    boolean known = hourly ? n == 10 || n == 13 && f.at(1, 10) == ':' : n == 12;
    if (!known) {
      return Stamps.NONE;
    }
    int hour = f.digits(1, 8, 2);
    int minute = n == 10 ? 0 : f.digits(1, n - 2, 2);
    return hour > 23
        ? Stamps.NONE
        : Stamps.epochS(f.digits(1, 0, 4), f.digits(1, 4, 2), f.digits(1, 6, 2), hour, minute, 0);
  }

  /** Stations move: the row of the geography file that is valid at the end of the data counts. */
  private static Optional<Place> place(List<String> side, long atEpochS) {
    List<String> rows = new ArrayList<>(side);
    for (int i = rows.size() - 1; i >= 0; i--) {
      String[] t = rows.get(i).split(";");
      if (t.length < 6 || !t[1].strip().matches("-?[0-9.]+")) {
        continue;
      }
      long from = Stamps.byOrder(t[4].strip(), "ymd");
      if (from != Stamps.NONE && from <= atEpochS) {
        return Optional.of(
            new Place(
                Double.parseDouble(t[2].strip()),
                Double.parseDouble(t[3].strip()),
                Double.parseDouble(t[1].strip())));
      }
    }
    return Optional.empty();
  }

  /** Shares the energy of hours that end at odd minutes among whole UTC hours. */
  private static final class SolarHours {
    private final SeriesCollector rows;
    private final double[] row = new double[Variable.values().length];
    private long bin = Stamps.NONE;
    private final double[] joules = new double[2];
    private final double[] seconds = new double[2];

    private SolarHours(SeriesCollector rows) {
      this.rows = rows;
      Arrays.fill(row, Double.NaN);
    }

    private void add(long end, int line, double global, double diffuse) {
      long from = end - HOUR_S;
      for (long hour = Math.floorDiv(from, HOUR_S) * HOUR_S; hour < end; hour += HOUR_S) {
        if (bin == Stamps.NONE) {
          bin = hour;
        }
        if (hour > bin) {
          close(line);
          bin = hour;
        }
        if (hour == bin) {
          double overlap = Math.min(end, hour + HOUR_S) - Math.max(from, hour);
          share(0, global, overlap);
          share(1, diffuse, overlap);
        }
      }
    }

    private void share(int i, double value, double overlap) {
      if (!Double.isNaN(value)) {
        joules[i] += value * overlap;
        seconds[i] += overlap;
      }
    }

    /** Stamps wander by a minute, so nine tenths of an hour are an hour. */
    private void close(int line) {
      boolean enough = seconds[0] >= 0.9 * HOUR_S;
      row[Variable.GHI.ordinal()] = enough ? joules[0] / seconds[0] : Double.NaN;
      boolean split = seconds[1] >= 0.9 * HOUR_S;
      row[Variable.DHI.ordinal()] = split ? joules[1] / seconds[1] : Double.NaN;
      rows.add(bin, line, row);
      Arrays.fill(joules, 0);
      Arrays.fill(seconds, 0);
    }
  }
}
