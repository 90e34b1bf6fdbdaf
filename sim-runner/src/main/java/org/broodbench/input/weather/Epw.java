package org.broodbench.input.weather;

import java.util.Arrays;
import java.util.Optional;
import org.broodbench.sky.Place;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;

/**
 * The EPW text layout: eight header lines, then rows of 35 fields in local standard time. Radiation
 * is of the interval that ends at the stamp, all else spot values at the stamp. Files of the Joint
 * Research Centre say in their second comment line that the irradiance holds at another instant;
 * that is followed.
 */
final class Epw implements WeatherFormat {
  private static final int FEWEST = 32;
  private static final String OFFSET = "Irradiance Time Offset (h):";
  private static final int HOUR_S = 3600;

  @Override
  public String id() {
    return "epw";
  }

  @Override
  public String title() {
    return "EPW text layout";
  }

  @Override
  public boolean recognises(Head head) {
    return head.line(0).startsWith("LOCATION,") && head.line(7).startsWith("DATA PERIODS");
  }

  @Override
  public WeatherSeries read(LineSource lines, ReadContext context) {
    ProblemList problems = context.problems();
    Fields f = new Fields(',');
    lines.next();
    f.split(lines);
    if (f.count() < 10) {
      throw problems.fatal(1, 1, "LOCATION", lines.text(), "ten fields", "");
    }
    String source = f.text(1) + ", " + f.text(4);
    Place place = new Place(f.number(6), f.number(7), f.number(9));
    long offsetS = Math.round(f.number(8) * HOUR_S);
    double lightOffsetH = Double.NaN;
    int perHour = 1;
    for (int i = 2; i <= 8; i++) {
      lines.next();
      int at = lines.text().indexOf(OFFSET);
      if (at >= 0) {
        f.split(lines);
        lightOffsetH = Double.parseDouble(lines.text().substring(at + OFFSET.length()).strip());
      }
      if (lines.text().startsWith("DATA PERIODS")) {
        f.split(lines);
        perHour = f.count() > 2 ? Math.max(1, f.whole(2)) : 1;
      }
    }
    int stepS = HOUR_S / perHour;
    Picks picks =
        new Picks(problems)
            .addBelow(Variable.AIR, "dry bulb", 6, 1, 99.9)
            .addBelow(Variable.HUMIDITY, "relative humidity", 8, 1, 999)
            .addDewPoint("dew point", 7, 1, 0, Double.NEGATIVE_INFINITY, 99.9)
            .addBelow(Variable.PRESSURE, "pressure", 9, 1, 999999)
            .addBelow(Variable.GHI, "global horizontal", 13, 1, 9999)
            .addBelow(Variable.DNI, "direct normal", 14, 1, 9999)
            .addBelow(Variable.DHI, "diffuse horizontal", 15, 1, 9999)
            .addBelow(Variable.WIND, "wind speed", 21, 1, 999)
            .addBelow(Variable.PRECIPITATION, "liquid precipitation depth", 33, 1, 999);
    boolean typical = false;
    int firstYear = -1;
    int leapRows = 0;
    SeriesCollector rows = new SeriesCollector(context, stepS);
    while (lines.next()) {
      if (lines.isBlank()) {
        continue;
      }
      f.split(lines);
      int line = lines.number();
      if (f.count() < FEWEST) {
        problems.add(line, 1, "", f.count() + " fields", "35 fields", "Is the file cut short?");
        continue;
      }
      int year = f.whole(0);
      if (firstYear < 0) {
        firstYear = year;
      }
      typical |= year != firstYear;
      int hour = f.whole(3);
      int minute = f.whole(4);
      // hourly files write minute 0 or 60 for the whole hour
      int extra = perHour == 1 || minute == 60 ? 0 : minute - 60;
      if (f.whole(1) == 2 && f.whole(2) == 29) {
        leapRows++;
        continue;
      }
      long day = Stamps.epochDay(TypicalYears.LABEL, f.whole(1), f.whole(2));
      if (day == Stamps.NONE || hour < 1 || hour > 24 || minute < 0 || minute > 60) {
        problems.add(
            line,
            1,
            "year, month, day, hour, minute",
            f.text(0) + "," + f.text(1) + "," + f.text(2) + "," + f.text(3) + "," + f.text(4),
            "a date, an hour of 1 to 24 and a minute",
            "");
        continue;
      }
      long end = day * 86400 + hour * 3600L + extra * 60L - offsetS;
      rows.add(end - stepS, line, picks.row(f, line));
    }
    boolean shifted = !Double.isNaN(lightOffsetH);
    Stand[] stands;
    if (shifted) {
      // rows of that service stand one hour late, and hold at the instant an hour before that
      rows.shift(stepS / 2);
      stands = JrcYear.stands(lightOffsetH + 1);
    } else {
      stands = new Stand[Variable.values().length];
      Arrays.fill(stands, Stand.instant(stepS));
      for (Variable v : Variable.values()) {
        if (v.isRadiation() || v == Variable.PRECIPITATION) {
          stands[v.ordinal()] = Stand.MEAN;
        }
      }
    }
    rows.warn(
        typical
            ? "months of different years were put on one calendar"
            : "the year " + firstYear + " of the rows is taken as a label");
    if (leapRows > 0) {
      rows.warn(leapRows + " rows of 29 February were left out");
    }
    return rows.finish(stands)
        .formatId(id())
        .windHeightM(10)
        .place(Optional.of(place))
        .typicalYear(true)
        .source(source)
        .build();
  }
}
