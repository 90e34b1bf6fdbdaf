package org.broodbench.input;

import java.util.LinkedHashMap;
import java.util.Map;
import org.broodbench.calibrate.LogColumn;

/** Units of field logs and how they become ours. Exact by definition of the units. */
final class LogUnits {
  private LogUnits() {}

  /** Ours = theirs times factor plus offset. */
  record Scale(double factor, double offset) {}

  private static Map<String, Scale> of(LogColumn.Sort sort) {
    Map<String, Scale> m = new LinkedHashMap<>();
    Scale same = new Scale(1, 0);
    Scale thousandth = new Scale(1e-3, 0);
    switch (sort) {
      case TEMPERATURE -> {
        m.put("degC", same);
        m.put("°C", same);
        m.put("C", same);
        Scale f = new Scale(5 / 9.0, -160 / 9.0);
        m.put("degF", f);
        m.put("°F", f);
        m.put("F", f);
        m.put("K", new Scale(1, -273.15));
      }
      case VOLTAGE -> {
        m.put("V", same);
        m.put("mV", thousandth);
      }
      case CURRENT -> {
        m.put("A", same);
        m.put("mA", thousandth);
      }
      case PERCENT -> {
        m.put("percent", same);
        m.put("%", same);
      }
      case STATE -> m.put("on", same);
      case HOURS -> {
        m.put("h", same);
        m.put("min", new Scale(1 / 60.0, 0));
      }
      case IRRADIANCE -> m.put("W/m2", same);
      case SPEED -> {
        m.put("m/s", same);
        m.put("km/h", new Scale(1 / 3.6, 0));
        m.put("mph", new Scale(0.44704, 0));
      }
    }
    return m;
  }

  /** The scale of a unit, the usual one where it is left out, or null where it is not known. */
  static Scale of(LogColumn column, String unit) {
    return unit.isEmpty() ? new Scale(1, 0) : of(column.sort()).get(unit);
  }

  /** For messages. */
  static String known(LogColumn column) {
    return "one of " + String.join(", ", of(column.sort()).keySet());
  }
}
