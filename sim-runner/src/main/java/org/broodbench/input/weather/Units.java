package org.broodbench.input.weather;

import java.util.LinkedHashMap;
import java.util.Map;
import org.broodbench.sky.Variable;

/** Units that weather files use, and how they become ours. Exact by definition of the units. */
final class Units {
  private static final Map<String, Scale> AIR =
      table(
          "°C",
          1,
          0,
          "degC",
          1,
          0,
          "C",
          1,
          0,
          "K",
          1,
          -273.15,
          "°F",
          5 / 9.0,
          -160 / 9.0,
          "degF",
          5 / 9.0,
          -160 / 9.0,
          "F",
          5 / 9.0,
          -160 / 9.0);
  private static final Map<String, Scale> HUMIDITY = table("%", 1, 0, "percent", 1, 0, "1", 100, 0);
  private static final Map<String, Scale> WIND =
      table(
          "m/s",
          1,
          0,
          "km/h",
          1 / 3.6,
          0,
          "mph",
          0.44704,
          0,
          "mp/h",
          0.44704,
          0,
          "kn",
          1852 / 3600.0,
          0,
          "knots",
          1852 / 3600.0,
          0);
  private static final Map<String, Scale> RADIATION =
      table("W/m²", 1, 0, "W/m2", 1, 0, "kW/m2", 1000, 0);
  private static final Map<String, Scale> PRECIPITATION =
      table("mm", 1, 0, "cm", 10, 0, "m", 1000, 0, "inch", 25.4, 0, "in", 25.4, 0);
  private static final Map<String, Scale> PRESSURE =
      table("Pa", 1, 0, "hPa", 100, 0, "mbar", 100, 0, "kPa", 1000, 0, "inHg", 3386.389, 0);

  private Units() {}

  /** Ours = theirs x factor + offset. */
  record Scale(double factor, double offset) {}

  private static Map<String, Scale> table(Object... rows) {
    Map<String, Scale> map = new LinkedHashMap<>();
    for (int i = 0; i < rows.length; i += 3) {
      map.put(
          (String) rows[i],
          new Scale(((Number) rows[i + 1]).doubleValue(), ((Number) rows[i + 2]).doubleValue()));
    }
    return map;
  }

  private static Map<String, Scale> of(Variable v) {
    return switch (v) {
      case AIR -> AIR;
      case HUMIDITY -> HUMIDITY;
      case WIND -> WIND;
      case GHI, DNI, DHI -> RADIATION;
      case PRECIPITATION -> PRECIPITATION;
      case PRESSURE -> PRESSURE;
    };
  }

  /** The scale of a unit, or null where it is not known. */
  static Scale of(Variable v, String unit) {
    return of(v).get(unit);
  }

  /**
   * The scale of a unit where sums per interval are allowed too: J/cm2, kJ/m2, MJ/m2, J/m2, Wh/m2
   * become mean W/m2 over the step; or null.
   */
  static Scale of(Variable v, String unit, int stepS) {
    Scale plain = of(v, unit);
    if (plain != null || !v.isRadiation()) {
      return plain;
    }
    double joule =
        switch (unit) {
          case "J/cm2" -> 1e4;
          case "J/m2" -> 1;
          case "kJ/m2" -> 1e3;
          case "MJ/m2" -> 1e6;
          case "Wh/m2" -> 3600;
          case "kWh/m2" -> 3.6e6;
          default -> Double.NaN;
        };
    return Double.isNaN(joule) ? null : new Scale(joule / stepS, 0);
  }

  /** For messages. */
  static String known(Variable v) {
    return "one of " + String.join(", ", of(v).keySet());
  }
}
