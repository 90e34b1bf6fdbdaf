package org.broodbench.input.weather;

import java.util.Arrays;
import java.util.Optional;
import org.broodbench.sky.Place;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;

/**
 * Daily files of NOAA's surface radiation network SURFRAD, one-minute means that end at the stamp,
 * UTC, after the network's description of its daily files (2013). The air temperature is that of a
 * 10 m mast.
 */
final class Surfrad implements WeatherFormat {
  private static final int TOKENS = 48;
  private static final double MISSING = -9990;

  @Override
  public String id() {
    return "surfrad";
  }

  @Override
  public String title() {
    return "SURFRAD daily";
  }

  @Override
  public boolean recognises(Head head) {
    return head.line(1)
        .strip()
        .matches("-?\\d+\\.\\d+\\s+-?\\d+\\.\\d+\\s+-?\\d+\\s+m\\s+version.*");
  }

  @Override
  public WeatherSeries read(LineSource lines, ReadContext context) {
    ProblemList problems = context.problems();
    lines.next();
    String name = lines.text().strip();
    lines.next();
    Fields f = new Fields(Fields.BLANKS);
    f.split(lines);
    // the stations lie in the western hemisphere; older files write west as positive
    Place place = new Place(f.number(0), -Math.abs(f.number(1)), f.number(2));
    Picks picks =
        new Picks(problems)
            .addFlagged(Variable.GHI, "dw_solar", 8, MISSING, 9)
            .addFlagged(Variable.DNI, "direct_n", 12, MISSING, 13)
            .addFlagged(Variable.DHI, "diffuse", 14, MISSING, 15)
            .addFlagged(Variable.AIR, "temp", 38, MISSING, 39)
            .addFlagged(Variable.HUMIDITY, "rh", 40, MISSING, 41)
            .addFlagged(Variable.WIND, "windspd", 42, MISSING, 43)
            .add(Variable.PRESSURE, "pressure", 46, 100, 0, MISSING);
    SeriesCollector rows = null;
    long held = Stamps.NONE;
    double[] heldRow = null;
    int heldLine = 0;
    int stepS = 60;
    while (lines.next()) {
      if (lines.isBlank()) {
        continue;
      }
      f.split(lines);
      int line = lines.number();
      if (f.count() != TOKENS) {
        problems.add(
            line, 1, "", f.count() + " fields", TOKENS + " fields", "Is the file cut short?");
        continue;
      }
      long end = Stamps.epochS(f.whole(0), f.whole(2), f.whole(3), f.whole(4), f.whole(5), 0);
      if (end == Stamps.NONE) {
        problems.add(line, 1, "time", f.text(0), "year, day, month, day, hour, minute", "");
        continue;
      }
      double[] row = picks.row(f, line);
      if (rows == null && heldRow == null) {
        held = end;
        heldRow = row.clone();
        heldLine = line;
        continue;
      }
      if (rows == null) {
        // three-minute means before 2009
        stepS = (end - held) % 180 == 0 ? 180 : 60;
        rows = new SeriesCollector(context, stepS);
        rows.add(held - stepS, heldLine, heldRow);
      }
      rows.add(end - stepS, line, row);
    }
    if (rows == null) {
      throw problems.fatal(lines.number(), 0, "", "no rows of data", "one row a minute", "");
    }
    Stand[] stands = new Stand[Variable.values().length];
    Arrays.fill(stands, Stand.MEAN);
    return rows.finish(stands)
        .formatId(id())
        .windHeightM(10)
        .place(Optional.of(place))
        .source("NOAA SURFRAD, " + name)
        .build();
  }
}
