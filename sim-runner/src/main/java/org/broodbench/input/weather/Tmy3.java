package org.broodbench.input.weather;

import java.util.Arrays;
import java.util.Optional;
import org.broodbench.sky.Place;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;

/**
 * Typical years of the National Renewable Energy Laboratory, third edition, after its user's manual
 * (NREL/TP-581-43156). Local standard time; radiation of the hour that ends at the stamp, all else
 * spot values at the stamp. The precipitation column mixes totals of 1, 3, 6 and 24 hours and is
 * left alone.
 */
final class Tmy3 implements WeatherFormat {
  private static final double MISSING = -9000;
  private static final int HOUR_S = 3600;

  @Override
  public String id() {
    return "tmy3";
  }

  @Override
  public String title() {
    return "TMY3";
  }

  @Override
  public boolean recognises(Head head) {
    return head.line(1).startsWith("Date (MM/DD/YYYY),Time (HH:MM)");
  }

  @Override
  public WeatherSeries read(LineSource lines, ReadContext context) {
    ProblemList problems = context.problems();
    Fields f = new Fields(',');
    lines.next();
    f.split(lines);
    if (f.count() < 7) {
      throw problems.fatal(1, 1, "", lines.text(), "station, name, state, offset, place", "");
    }
    String station = f.text(0) + " " + f.text(1);
    double offsetH = f.number(3);
    Place place = new Place(f.number(4), f.number(5), f.number(6));
    lines.next();
    f.split(lines);
    ColumnNames names = new ColumnNames(f, problems, lines.number());
    Picks picks =
        new Picks(problems)
            .add(Variable.AIR, "Dry-bulb (C)", names.need("Dry-bulb (C)"), 1, 0, MISSING)
            .add(Variable.HUMIDITY, "RHum (%)", names.at("RHum (%)"), 1, 0, MISSING)
            .addDewPoint("Dew-point (C)", names.at("Dew-point (C)"), 1, 0, MISSING, 1e9)
            .add(Variable.WIND, "Wspd (m/s)", names.at("Wspd (m/s)"), 1, 0, MISSING)
            .add(Variable.GHI, "GHI (W/m^2)", names.need("GHI (W/m^2)"), 1, 0, MISSING)
            .add(Variable.DNI, "DNI (W/m^2)", names.at("DNI (W/m^2)"), 1, 0, MISSING)
            .add(Variable.DHI, "DHI (W/m^2)", names.at("DHI (W/m^2)"), 1, 0, MISSING)
            .add(
                Variable.PRESSURE, "Pressure (mbar)", names.at("Pressure (mbar)"), 100, 0, MISSING);
    problems.throwIfAny();
    SeriesCollector rows = new SeriesCollector(context, HOUR_S);
    while (lines.next()) {
      if (lines.isBlank()) {
        continue;
      }
      f.split(lines);
      int line = lines.number();
      if (f.count() < names.count()) {
        problems.add(
            line,
            1,
            "",
            f.count() + " fields",
            names.count() + " fields",
            "Is the file cut short?");
        continue;
      }
      boolean shape = f.size(0) == 10 && f.size(1) == 5;
      int hour = shape ? f.digits(1, 0, 2) : -1;
      int month = shape ? f.digits(0, 0, 2) : -1;
      int day = shape ? f.digits(0, 3, 2) : -1;
      // some writers put 00:00 of the same date for the last hour of a day
      long end =
          TypicalYears.stamp(month, day, hour == 0 ? 24 : hour, shape ? f.digits(1, 3, 2) : -1);
      if (end == Stamps.NONE) {
        problems.add(line, 1, "Date, Time", f.text(0) + " " + f.text(1), "MM/DD/YYYY HH:MM", "");
        continue;
      }
      rows.add(end - HOUR_S - Math.round(offsetH * HOUR_S), line, picks.row(f, line));
    }
    Stand[] stands = new Stand[Variable.values().length];
    Arrays.fill(stands, Stand.instant(HOUR_S));
    for (Variable v : new Variable[] {Variable.GHI, Variable.DNI, Variable.DHI}) {
      stands[v.ordinal()] = Stand.MEAN;
    }
    return rows.finish(stands)
        .formatId(id())
        .typicalYear(true)
        .place(Optional.of(place))
        .source("NREL TMY3, " + station)
        .build();
  }
}
