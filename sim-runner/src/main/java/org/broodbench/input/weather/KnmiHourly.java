package org.broodbench.input.weather;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.broodbench.matter.MoistAir;
import org.broodbench.sky.Place;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;

/**
 * Hourly station data of the Netherlands' weather service KNMI, after the bilingual text in the
 * files' own preamble. UTC; the row of hour HH covers HH-1 to HH. Temperature and humidity are spot
 * values at the end of the hour, wind and radiation are of the hour.
 */
final class KnmiHourly implements WeatherFormat {
  private static final int HOUR_S = 3600;

  @Override
  public String id() {
    return "knmi_hourly";
  }

  @Override
  public String title() {
    return "KNMI hourly";
  }

  @Override
  public boolean recognises(Head head) {
    return head.lines().stream().anyMatch(KnmiHourly::isColumnLine);
  }

  private static boolean isColumnLine(String line) {
    return line.contains("STN,") && line.contains("YYYYMMDD,");
  }

  @Override
  public WeatherSeries read(LineSource lines, ReadContext context) {
    ProblemList problems = context.problems();
    while (lines.next() && !isColumnLine(lines.text())) {
      // preamble
    }
    Columns c = columns(lines, problems);
    SeriesCollector rows = new SeriesCollector(context, HOUR_S);
    Fields f = new Fields(',');
    Picks picks =
        new Picks(problems)
            .add(Variable.AIR, "T", c.air, 0.1, 0, -9990)
            .add(Variable.HUMIDITY, "U", c.humidity)
            .add(Variable.WIND, "FH", c.wind, 0.1, 0, -9990)
            .add(Variable.GHI, "Q", c.radiation, 1e4 / HOUR_S, 0, -9990)
            .add(Variable.PRECIPITATION, "RH", c.rain, 0.1, 0, -9990)
            .add(Variable.PRESSURE, "P", c.pressure, 10, 0, -9990)
            .withTrace();
    int station = -1;
    Optional<Place> place = Optional.empty();
    while (lines.next()) {
      if (lines.isBlank()) {
        continue;
      }
      f.split(lines);
      int line = lines.number();
      if (f.count() < c.most) {
        problems.add(
            line, 1, "", f.count() + " fields", c.most + " fields", "Is the file cut short?");
        continue;
      }
      int number = f.whole(c.station);
      if (station < 0) {
        station = number;
        place = Stations.knmi(number);
      } else if (number != station) {
        throw problems.fatal(
            line,
            f.column(c.station),
            "STN",
            f.text(c.station),
            "one station: " + station,
            "Cut the file to one station.");
      }
      long day = Stamps.date8(f, c.date);
      int hour = f.whole(c.hour);
      if (day == Stamps.NONE || hour < 1 || hour > 24) {
        problems.add(
            line,
            f.column(c.date),
            "YYYYMMDD, HH",
            f.text(c.date) + ", " + f.text(c.hour),
            "a date and an hour from 1 to 24",
            "");
        continue;
      }
      double[] row = picks.row(f, line);
      int pressure = Variable.PRESSURE.ordinal();
      // the file gives the pressure at sea level
      row[pressure] =
          place.isEmpty()
              ? Double.NaN
              : row[pressure] * MoistAir.standardPressurePa(place.get().altitudeM()) / 101325;
      rows.add(day + (hour - 1L) * HOUR_S, line, row);
    }
    Stand[] stands = new Stand[Variable.values().length];
    Arrays.fill(stands, Stand.instant(HOUR_S));
    for (Variable v : new Variable[] {Variable.WIND, Variable.GHI, Variable.PRECIPITATION}) {
      stands[v.ordinal()] = Stand.MEAN;
    }
    if (place.isEmpty()) {
      rows.warn("the file does not tell where station " + station + " stands");
    }
    return rows.finish(stands)
        .formatId(id())
        .windHeightM(10)
        .place(place)
        .source("KNMI hourly data, station " + station)
        .build();
  }

  private record Columns(
      int station,
      int date,
      int hour,
      int air,
      int humidity,
      int wind,
      int radiation,
      int rain,
      int pressure,
      int most) {}

  private static Columns columns(LineSource lines, ProblemList problems) {
    Map<String, Integer> at = new HashMap<>();
    String[] names = lines.text().replace("#", "").split(",");
    for (int i = 0; i < names.length; i++) {
      at.put(names[i].strip(), i);
    }
    at.computeIfAbsent("HH", k -> at.get("H"));
    for (String name : new String[] {"STN", "YYYYMMDD", "HH", "T", "Q"}) {
      if (!at.containsKey(name)) {
        problems.add(lines.number(), 1, name, "no such column", "a column " + name, "");
      }
    }
    problems.throwIfAny();
    int most = at.values().stream().mapToInt(Integer::intValue).max().orElse(0) + 1;
    return new Columns(
        at.get("STN"),
        at.get("YYYYMMDD"),
        at.get("HH"),
        at.get("T"),
        at.getOrDefault("U", -1),
        at.getOrDefault("FH", -1),
        at.get("Q"),
        at.getOrDefault("RH", -1),
        at.getOrDefault("P", -1),
        most);
  }
}
