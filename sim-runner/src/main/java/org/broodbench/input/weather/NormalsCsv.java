package org.broodbench.input.weather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.sky.Almanac;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.MonthlyNormals;
import org.broodbench.sky.WeatherGenerator;
import org.broodbench.sky.WeatherSeries;

/**
 * Our own file of a climate table, one row a month, from which the generator makes years:
 *
 * <pre>
 * # broodbench monthly normals 1
 * # latitude_deg: 47.0
 * # longitude_deg: 11.5
 * # altitude_m: 900
 * # first_year: 2027
 * # years: 10
 * # seed: 1
 * month,mean_max_c,mean_min_c,ghi_kwh_m2_day,wet_days,precip_mm,wind_m_s,daily_sd_k
 * 1,1.5,-7.0,1.3,12,62,1.6,4.5
 * </pre>
 *
 * <p>The last two columns may be left out. With one year (the default) the dates are labels of a
 * typical year that fits any window.
 */
final class NormalsCsv implements WeatherFormat {
  private static final String TITLE_LINE = "# broodbench monthly normals 1";

  /** Calm country and the spread of a temperate spring: own choices. */
  private static final double USUAL_WIND_M_S = 2;

  private static final double USUAL_SD_K = 3.5;

  private static final double[] DAYS = {31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

  private static final OwnTable.Column[] COLUMNS = {
    new OwnTable.Column("mean_max_c", -70, 60, true),
    new OwnTable.Column("mean_min_c", -80, 45, true),
    new OwnTable.Column("ghi_kwh_m2_day", 0, 12, true),
    new OwnTable.Column("wet_days", 0, 31, true),
    new OwnTable.Column("precip_mm", 0, 2000, true),
    new OwnTable.Column("wind_m_s", 0, 30, false),
    new OwnTable.Column("daily_sd_k", 0.5, 12, false)
  };

  @Override
  public String id() {
    return "monthly_normals_csv";
  }

  @Override
  public String title() {
    return "our monthly normals";
  }

  @Override
  public boolean recognises(Head head) {
    return head.firstText().startsWith(TITLE_LINE);
  }

  @Override
  public WeatherSeries read(LineSource lines, ReadContext context) {
    ProblemList problems = context.problems();
    OwnTable table = new OwnTable(lines, problems, "month", COLUMNS);
    Fields f = table.fields;
    CommentLines header = table.comments;
    int years = (int) header.number("years", 1, 100, 1);
    int firstYear = (int) header.number("first_year", 1900, 2199, 2001);
    long seed = (long) header.number("seed", 0, 1e9, 1);
    problems.throwIfAny();
    List<MonthlyNormals.Month> months = new ArrayList<>();
    while (lines.next()) {
      if (lines.isBlank()) {
        continue;
      }
      f.split(lines);
      int next = months.size() + 1;
      if (f.count() != table.count || next > 12 || f.whole(table.key) != next) {
        throw problems.fatal(
            lines.number(),
            1,
            "month",
            lines.text(),
            next > 12 ? "twelve months" : table.count + " fields, month " + next + " first",
            "");
      }
      months.add(month(table, next, lines.number(), problems));
    }
    if (months.size() != 12) {
      throw problems.fatal(
          lines.number(), 0, "month", months.size() + " months", "twelve months", "");
    }
    problems.throwIfAny();
    long first = LocalDate.of(firstYear, 1, 1).toEpochDay();
    int days = (int) (LocalDate.of(firstYear + years, 1, 1).toEpochDay() - first);
    WeatherSeries made =
        WeatherGenerator.generate(
            new GeneratorSettings(
                seed,
                table.place,
                new MonthlyNormals(months),
                first,
                days,
                List.of(),
                GeneratorSettings.Stress.NONE));
    return made.toBuilder().formatId(id()).typicalYear(years == 1).build();
  }

  private static MonthlyNormals.Month month(
      OwnTable table, int number, int line, ProblemList problems) {
    Fields f = table.fields;
    int[] at = table.at;
    double[] v = new double[at.length];
    for (int c = 0; c < at.length; c++) {
      OwnTable.Column column = COLUMNS[c];
      if (table.isEmpty(c)) {
        v[c] = c == 5 ? USUAL_WIND_M_S : c == 6 ? USUAL_SD_K : Double.NaN;
      } else {
        v[c] = f.number(at[c]);
      }
      if (!(v[c] >= column.low() && v[c] <= column.high())) {
        String allowed = column.low() + " to " + column.high();
        problems.add(line, f.column(at[c]), column.name(), f.text(at[c]), allowed, "");
      }
    }
    if (v[0] <= v[1]) {
      problems.add(
          line, f.column(at[0]), "mean_max_c", f.text(at[0]), "above mean_min_c " + v[1], "");
    }
    if (v[3] == 0 && v[4] > 0) {
      problems.add(line, f.column(at[3]), "wet_days", "0", "days for the rain of the month", "");
    }
    int m = number - 1;
    // the month's middle day stands for the month
    double outside = Almanac.faoDailyMJ(table.place.latitudeDeg(), (int) (30.4 * m + 15)) / 3.6;
    // the polar night has no clearness; any number serves
    double clearness = outside > 0.05 ? v[2] / outside : 0.4;
    if (clearness > 0.82) {
      problems.add(
          line,
          f.column(at[2]),
          "ghi_kwh_m2_day",
          f.text(at[2]),
          String.format(
              Locale.ROOT, "at most %.2f, 0.82 of what arrives outside the air", 0.82 * outside),
          "Is it the right month and hemisphere?");
    }
    double wetShare = Math.min(0.98, v[3] / DAYS[m]);
    return new MonthlyNormals.Month(
        v[0], v[1], v[6], Math.max(0.05, clearness), wetShare, v[3] > 0 ? v[4] / v[3] : 0, v[5]);
  }
}
