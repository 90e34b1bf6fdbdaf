package org.broodbench.input.weather;

import java.util.Arrays;
import java.util.Optional;
import org.broodbench.sky.Place;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;

/**
 * CSV files of the National Solar Radiation Database (NREL). Two lines about the site, one of
 * column names in any order, then rows in local standard time or UTC, as the second line says. All
 * values hold at the stamp, so the interval of a row is centred on it. The series have no holes;
 * there is no precipitation.
 */
final class Nsrdb implements WeatherFormat {
  @Override
  public String id() {
    return "nsrdb_csv";
  }

  @Override
  public String title() {
    return "NSRDB CSV";
  }

  @Override
  public boolean recognises(Head head) {
    return head.line(0).startsWith("Source,Location ID") && head.line(2).startsWith("Year,Month");
  }

  @Override
  public WeatherSeries read(LineSource lines, ReadContext context) {
    ProblemList problems = context.problems();
    Fields f = new Fields(',');
    lines.next();
    f.split(lines);
    ColumnNames about = new ColumnNames(f, problems, 1);
    int latitudeAt = about.need("Latitude");
    int longitudeAt = about.need("Longitude");
    int zoneAt = about.need("Time Zone");
    int altitudeAt = about.need("Elevation");
    problems.throwIfAny();
    lines.next();
    f.split(lines);
    Place place = new Place(f.number(latitudeAt), f.number(longitudeAt), f.number(altitudeAt));
    long offsetS = Math.round(f.number(zoneAt) * 3600);
    String source = "NREL NSRDB, location " + f.text(1);
    lines.next();
    f.split(lines);
    ColumnNames names = new ColumnNames(f, problems, 3);
    Picks picks =
        new Picks(problems)
            .add(Variable.AIR, "Temperature", names.need("Temperature"))
            .add(Variable.HUMIDITY, "Relative Humidity", names.at("Relative Humidity"))
            .addDewPoint("Dew Point", names.at("Dew Point"), 1, 0, Double.NEGATIVE_INFINITY, 1e9)
            .add(Variable.WIND, "Wind Speed", names.at("Wind Speed"))
            .add(Variable.GHI, "GHI", names.need("GHI"))
            .add(Variable.DNI, "DNI", names.at("DNI"))
            .add(Variable.DHI, "DHI", names.at("DHI"))
            .add(Variable.PRESSURE, "Pressure", names.at("Pressure"), 100, 0, -9000);
    int[] time = {
      names.need("Year"),
      names.need("Month"),
      names.need("Day"),
      names.need("Hour"),
      names.need("Minute")
    };
    problems.throwIfAny();
    SteppedRows rows = new SteppedRows(context);
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
      long stamp =
          Stamps.epochS(
              f.whole(time[0]),
              f.whole(time[1]),
              f.whole(time[2]),
              f.whole(time[3]),
              f.whole(time[4]),
              0);
      if (stamp == Stamps.NONE) {
        problems.add(line, f.column(time[0]), "Year", f.text(time[0]), "a date and time", "");
        continue;
      }
      rows.add(stamp - offsetS, line, picks.row(f, line));
    }
    // the interval of a row is centred on its stamp
    Stand[] stands = new Stand[Variable.values().length];
    int stepS = rows.stepS();
    Arrays.fill(stands, Stand.instant(0.5 * stepS));
    for (Variable v : new Variable[] {Variable.GHI, Variable.DNI, Variable.DHI}) {
      stands[v.ordinal()] = Stand.MEAN;
    }
    return rows.collect(-stepS / 2)
        .finish(stands)
        .formatId(id())
        // wind of the reanalysis it stands on is that of 2 m; PSM user guide (from memory)
        .windHeightM(2)
        .place(Optional.of(place))
        .source(source)
        .build();
  }
}
