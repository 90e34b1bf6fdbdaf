package org.broodbench.input.weather;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.sky.DailyWeather;
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

  private static final OwnTable.Column[] COLUMNS = {
    new OwnTable.Column("min_c", -95, 65, true),
    new OwnTable.Column("max_c", -95, 65, true),
    new OwnTable.Column("ghi_kwh_m2", 0, 14, false),
    new OwnTable.Column("dew_c", -95, 45, false),
    new OwnTable.Column("wind_m_s", 0, 60, false),
    new OwnTable.Column("precip_mm", 0, 2000, false)
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
    OwnTable table = new OwnTable(lines, problems, "date", COLUMNS);
    Fields f = table.fields;
    int date = table.key;
    int[] at = table.at;
    List<DailyWeather.Day> days = new ArrayList<>();
    long first = 0;
    double[] v = new double[at.length];
    while (lines.next()) {
      if (lines.isBlank()) {
        continue;
      }
      f.split(lines);
      int line = lines.number();
      boolean dated = f.count() == table.count && f.text(date).matches("\\d{4}-\\d\\d-\\d\\d");
      long stamp = dated ? Stamps.byOrder(f.text(date), "ymd") : Stamps.NONE;
      if (stamp == Stamps.NONE) {
        problems.add(line, 1, "date", lines.text(), table.count + " fields with a date first", "");
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
        boolean empty = table.isEmpty(c);
        v[c] = empty ? Double.NaN : f.number(at[c]);
        double low = COLUMNS[c].low();
        double high = COLUMNS[c].high();
        boolean fits = empty ? !COLUMNS[c].needed() : v[c] >= low && v[c] <= high;
        if (!fits) {
          problems.add(
              line,
              at[c] < 0 ? 1 : f.column(at[c]),
              COLUMNS[c].name(),
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
        new DailyWeather(table.place, first, days, table.comments.text("source")).toHourly();
    return made.toBuilder().formatId(id()).build();
  }
}
