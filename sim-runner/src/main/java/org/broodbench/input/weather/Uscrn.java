package org.broodbench.input.weather;

import java.util.Arrays;
import java.util.Optional;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;

/**
 * Files of the U.S. Climate Reference Network (NOAA): the hourly product hourly02 and the
 * five-minute product subhourly01, after the network's readme files. UTC, values of the interval
 * that ends at the stamp. The hourly product has no wind; neither tells the altitude.
 */
final class Uscrn implements WeatherFormat {
  private static final double MISSING = -9990;

  private final boolean hourly;

  Uscrn(boolean hourly) {
    this.hourly = hourly;
  }

  @Override
  public String id() {
    return hourly ? "uscrn_hourly02" : "uscrn_subhourly01";
  }

  @Override
  public String title() {
    return hourly ? "USCRN hourly02" : "USCRN subhourly01";
  }

  @Override
  public boolean recognises(Head head) {
    String[] t = head.firstText().strip().split("\\s+");
    return t.length == tokens() && t[0].matches("\\d{4,5}") && t[1].matches("\\d{8}");
  }

  private int tokens() {
    return hourly ? 38 : 23;
  }

  @Override
  public WeatherSeries read(LineSource lines, ReadContext context) {
    ProblemList problems = context.problems();
    int stepS = hourly ? 3600 : 300;
    Picks picks =
        hourly
            ? new Picks(problems)
                .add(Variable.AIR, "T_HR_AVG", 9, 1, 0, MISSING)
                .add(Variable.PRECIPITATION, "P_CALC", 12, 1, 0, MISSING)
                .addFlagged(Variable.GHI, "SOLARAD", 13, MISSING, 14)
                .addFlagged(Variable.HUMIDITY, "RH_HR_AVG", 26, MISSING, 27)
            : new Picks(problems)
                .add(Variable.AIR, "AIR_TEMPERATURE", 8, 1, 0, MISSING)
                .add(Variable.PRECIPITATION, "PRECIPITATION", 9, 1, 0, MISSING)
                .addFlagged(Variable.GHI, "SOLAR_RADIATION", 10, MISSING, 11)
                .addFlagged(Variable.HUMIDITY, "RELATIVE_HUMIDITY", 15, MISSING, 16)
                .addFlagged(Variable.WIND, "WIND_1_5", 21, -98, 22);
    SeriesCollector rows = new SeriesCollector(context, stepS);
    Fields f = new Fields(Fields.BLANKS);
    int station = -1;
    double longitude = Double.NaN;
    double latitude = Double.NaN;
    while (lines.next()) {
      if (lines.isBlank()) {
        continue;
      }
      f.split(lines);
      int line = lines.number();
      if (f.count() != tokens()) {
        problems.add(
            line, 1, "", f.count() + " fields", tokens() + " fields", "Is the file cut short?");
        continue;
      }
      if (station < 0) {
        station = f.whole(0);
        longitude = f.number(6);
        latitude = f.number(7);
      } else if (f.whole(0) != station) {
        throw problems.fatal(line, f.column(0), "WBANNO", f.text(0), "one station: " + station, "");
      }
      long day = Stamps.date8(f, 1);
      // leading zeros may be dropped
      int clock = f.whole(2);
      if (day == Stamps.NONE || clock < 0 || clock > 2400 || clock % 100 > 59) {
        problems.add(
            line,
            f.column(1),
            "UTC_DATE, UTC_TIME",
            f.text(1) + " " + f.text(2),
            "YYYYMMDD HHmm",
            "");
        continue;
      }
      long end = day + clock / 100 * 3600L + clock % 100 * 60L;
      rows.add(end - stepS, line, picks.row(f, line));
    }
    Stand[] stands = new Stand[Variable.values().length];
    Arrays.fill(stands, Stand.MEAN);
    rows.warn("the file does not tell the altitude of the station");
    Optional<WeatherSeries.Coordinates> where =
        Double.isNaN(latitude) || Double.isNaN(longitude)
            ? Optional.empty()
            : Optional.of(new WeatherSeries.Coordinates(latitude, longitude));
    return rows.finish(stands)
        .formatId(id())
        .windHeightM(hourly ? 10 : 1.5)
        .coordinates(where)
        .source("NOAA U.S. Climate Reference Network, station " + station)
        .build();
  }
}
