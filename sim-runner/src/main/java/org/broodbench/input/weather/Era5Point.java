package org.broodbench.input.weather;

import java.util.Arrays;
import java.util.Optional;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;

/**
 * Point series of the ERA5 reanalysis (Copernicus, ECMWF) as CSV with short variable names, after
 * ECMWF's page on accumulated variables. UTC; sums of the hour that ends at the stamp, all else
 * spot values at the stamp. K, m/s, J/m2, m, Pa. Not for ERA5-Land, whose sums run through the day.
 */
final class Era5Point implements WeatherFormat {
  private static final int HOUR_S = 3600;

  @Override
  public String id() {
    return "era5_point_csv";
  }

  @Override
  public String title() {
    return "ERA5 point CSV";
  }

  @Override
  public boolean recognises(Head head) {
    String first = head.firstText();
    return first.contains("valid_time") && first.contains("t2m") && first.contains(",");
  }

  @Override
  public WeatherSeries read(LineSource lines, ReadContext context) {
    ProblemList problems = context.problems();
    Fields f = new Fields(',');
    lines.next();
    f.split(lines);
    ColumnNames names = new ColumnNames(f, problems, lines.number());
    int time = names.need("valid_time");
    int u = names.at("u10");
    int v = names.at("v10");
    int direct = names.at("fdir");
    int latitude = names.at("latitude");
    int longitude = names.at("longitude");
    Picks picks =
        new Picks(problems)
            .add(Variable.AIR, "t2m", names.need("t2m"), 1, -273.15, -9000)
            .addDewPoint("d2m", names.at("d2m"), 1, -273.15, -9000, 1e9)
            .add(Variable.GHI, "ssrd", names.need("ssrd"), 1.0 / HOUR_S, 0, -1e9)
            .add(Variable.PRECIPITATION, "tp", names.at("tp"), 1000, 0, -9000)
            .add(Variable.PRESSURE, "sp", names.at("sp"), 1, 0, -9000);
    problems.throwIfAny();
    SeriesCollector rows = new SeriesCollector(context, HOUR_S);
    Optional<WeatherSeries.Coordinates> where = Optional.empty();
    while (lines.next()) {
      if (lines.isBlank()) {
        continue;
      }
      f.split(lines);
      int line = lines.number();
      long at = f.count() == names.count() ? Stamps.byOrder(f.text(time), "ymdhns") : Stamps.NONE;
      if (at == Stamps.NONE) {
        problems.add(
            line, 1, "valid_time", lines.text(), names.count() + " fields with a time", "");
        continue;
      }
      if (where.isEmpty() && latitude >= 0 && longitude >= 0) {
        double east = f.number(longitude);
        where =
            Optional.of(
                new WeatherSeries.Coordinates(f.number(latitude), east > 180 ? east - 360 : east));
      }
      double[] row = picks.row(f, line);
      if (u >= 0 && v >= 0) {
        double a = f.number(u);
        double b = f.number(v);
        row[Variable.WIND.ordinal()] = StrictMath.sqrt(a * a + b * b);
      }
      double global = row[Variable.GHI.ordinal()];
      if (direct >= 0) {
        row[Variable.DHI.ordinal()] = Math.max(0, global - f.number(direct) / HOUR_S);
      }
      rows.add(at - HOUR_S, line, row);
    }
    Stand[] stands = new Stand[Variable.values().length];
    Arrays.fill(stands, Stand.instant(HOUR_S));
    for (Variable x : Variable.values()) {
      if (x.isRadiation() || x == Variable.PRECIPITATION) {
        stands[x.ordinal()] = Stand.MEAN;
      }
    }
    rows.warn("the file does not tell the altitude");
    return rows.finish(stands)
        .formatId(id())
        .windHeightM(10)
        .coordinates(where)
        .source("ERA5 reanalysis, Copernicus Climate Change Service")
        .build();
  }
}
