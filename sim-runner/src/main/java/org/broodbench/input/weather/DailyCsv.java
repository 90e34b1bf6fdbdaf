package org.broodbench.input.weather;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.broodbench.sky.DailyWeather;
import org.broodbench.sky.Place;
import org.broodbench.sky.WeatherSeries;

/**
 * Our own file of daily values, one row a date, from which hours are made (see {@link
 * DailyWeather}):
 *
 * <pre>
 * # broodbench daily weather 1
 * # latitude_deg: 47.0
 * # longitude_deg: 11.5
 * # altitude_m: 900
 * date,min_c,max_c,ghi_kwh_m2,dew_c,wind_m_s,precip_mm
 * 2027-04-20,1.5,11.0,4.2,,1.8,0
 * </pre>
 *
 * <p>Only the first three columns and the place are needed; an empty field is missing. Days follow
 * one another without holes.
 */
final class DailyCsv implements WeatherFormat {
  private static final String TITLE_LINE = "# broodbench daily weather 1";

  /** Column and what can be. */
  private static final Object[][] COLUMNS = {
    {"min_c", -95.0, 65.0},
    {"max_c", -95.0, 65.0},
    {"ghi_kwh_m2", 0.0, 14.0},
    {"dew_c", -95.0, 45.0},
    {"wind_m_s", 0.0, 60.0},
    {"precip_mm", 0.0, 2000.0}
  };

  @Override
  public String id() {
    return "tidy_daily_csv";
  }

  @Override
  public String title() {
    return "our daily CSV";
  }

  @Override
  public boolean recognises(Head head) {
    return head.firstText().startsWith(TITLE_LINE);
  }

  @Override
  public WeatherSeries read(LineSource lines, ReadContext context) {
    ProblemList problems = context.problems();
    CommentLines header = new CommentLines(problems);
    if (!header.read(lines)) {
      throw problems.fatal(lines.number(), 0, "", "no header", "a line that starts with date", "");
    }
    Fields f = new Fields(',');
    f.split(lines);
    ColumnNames names = new ColumnNames(f, problems, lines.number());
    int date = names.need("date");
    int[] at = new int[COLUMNS.length];
    for (int c = 0; c < at.length; c++) {
      at[c] = c < 2 ? names.need((String) COLUMNS[c][0]) : names.at((String) COLUMNS[c][0]);
    }
    Optional<Place> place = header.place();
    if (place.isEmpty()) {
      problems.add(
          0, 0, "latitude_deg, longitude_deg, altitude_m", "not all three", "the place", "");
    }
    problems.throwIfAny();
    List<DailyWeather.Day> days = new ArrayList<>();
    long first = 0;
    double[] v = new double[at.length];
    while (lines.next()) {
      if (lines.isBlank()) {
        continue;
      }
      f.split(lines);
      int line = lines.number();
      boolean dated = f.count() == names.count() && f.text(date).matches("\\d{4}-\\d\\d-\\d\\d");
      long stamp = dated ? Stamps.byOrder(f.text(date), "ymd") : Stamps.NONE;
      if (stamp == Stamps.NONE) {
        problems.add(
            line, 1, "date", lines.text(), names.count() + " fields with a date first", "");
        continue;
      }
      long day = stamp / 86400;
      if (days.isEmpty()) {
        first = day;
      } else if (day != first + days.size()) {
        throw problems.fatal(
            line,
            f.column(date),
            "date",
            f.text(date),
            Stamps.text((first + days.size()) * 86400).substring(0, 10),
            "Days follow one another without holes.");
      }
      boolean good = true;
      for (int c = 0; c < at.length; c++) {
        v[c] = at[c] < 0 || f.isEmpty(at[c]) ? Double.NaN : f.number(at[c]);
        boolean empty = at[c] < 0 || f.isEmpty(at[c]);
        double low = (Double) COLUMNS[c][1];
        double high = (Double) COLUMNS[c][2];
        boolean fits = empty ? c >= 2 : v[c] >= low && v[c] <= high;
        if (!fits) {
          problems.add(
              line,
              at[c] < 0 ? 1 : f.column(at[c]),
              (String) COLUMNS[c][0],
              at[c] < 0 ? "" : f.text(at[c]),
              low + " to " + high,
              "");
          good = false;
        }
      }
      if (good && v[1] < v[0]) {
        problems.add(
            line, f.column(at[1]), "max_c", f.text(at[1]), "at least min_c " + f.text(at[0]), "");
        good = false;
      }
      // a bad day keeps its place, so that the next one is not called a hole
      days.add(
          good
              ? new DailyWeather.Day(v[0], v[1], v[2], v[3], v[4], v[5])
              : new DailyWeather.Day(0, 0, 0, 0, 0, 0));
    }
    if (days.isEmpty()) {
      throw problems.fatal(0, 0, "", "no row of data", "at least one row", "");
    }
    problems.throwIfAny();
    WeatherSeries made =
        new DailyWeather(place.get(), first, days, header.text("source")).toHourly();
    return made.toBuilder().formatId(id()).build();
  }
}
