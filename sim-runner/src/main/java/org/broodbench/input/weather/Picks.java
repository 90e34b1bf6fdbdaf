package org.broodbench.input.weather;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.broodbench.matter.MoistAir;
import org.broodbench.sky.Variable;

/**
 * Which columns of a table become which variables, and how: factor, offset, missing code, quality
 * flag. Fills the row that a {@link SeriesCollector} takes.
 */
final class Picks {
  /** What can be, by ordinal of the variable; wider than any record on Earth. */
  private static final double[][] RANGE = {
    {-95, 65}, {-5, 115}, {0, 120}, {-60, 2200}, {-60, 1600}, {-60, 1600}, {0, 600}, {30000, 115000}
  };

  private final ProblemList problems;
  private boolean trace;
  private final List<Pick> picks = new ArrayList<>();
  private final double[] row = new double[Variable.values().length];

  private record Pick(
      Variable variable,
      String name,
      int column,
      double factor,
      double offset,
      double missingAtMost,
      double missingFrom,
      int flagColumn,
      boolean dewPoint) {}

  Picks(ProblemList problems) {
    this.problems = problems;
  }

  static double low(Variable v) {
    return RANGE[v.ordinal()][0];
  }

  static double high(Variable v) {
    return RANGE[v.ordinal()][1];
  }

  /** A column in the unit of the variable; nothing happens where {@code column} is negative. */
  Picks add(Variable v, String name, int column) {
    return add(v, name, column, 1, 0, Double.NEGATIVE_INFINITY);
  }

  /** A column that is multiplied, then shifted; numbers up to {@code missingAtMost} are missing. */
  Picks add(
      Variable v, String name, int column, double factor, double offset, double missingAtMost) {
    return add(
        new Pick(
            v, name, column, factor, offset, missingAtMost, Double.POSITIVE_INFINITY, -1, false));
  }

  /** A column whose missing code is a large number. */
  Picks addBelow(Variable v, String name, int column, double factor, double missingFrom) {
    return add(
        new Pick(v, name, column, factor, 0, Double.NEGATIVE_INFINITY, missingFrom, -1, false));
  }

  /** A column with a flag beside it: the value counts unless the flag is 1 or 3. */
  Picks addFlagged(Variable v, String name, int column, double missingAtMost, int flagColumn) {
    return add(
        new Pick(
            v, name, column, 1, 0, missingAtMost, Double.POSITIVE_INFINITY, flagColumn, false));
  }

  /** A dew point, degC after factor and offset; makes the humidity where there is none else. */
  Picks addDewPoint(
      String name, int column, double factor, double offset, double missingAtMost, double from) {
    return add(
        new Pick(Variable.HUMIDITY, name, column, factor, offset, missingAtMost, from, -1, true));
  }

  /** Down to -0.1 mm stands for precipitation too little to measure, and becomes 0. */
  Picks withTrace() {
    trace = true;
    return this;
  }

  private Picks add(Pick pick) {
    if (pick.column >= 0) {
      picks.add(pick);
    }
    return this;
  }

  /** The row of these fields; it is overwritten by the next call. */
  double[] row(Row f, int line) {
    Arrays.fill(row, Double.NaN);
    for (int i = 0; i < picks.size(); i++) {
      Pick p = picks.get(i);
      if (!p.dewPoint) {
        row[p.variable.ordinal()] = value(p, f, line);
      } else if (Double.isNaN(row[Variable.HUMIDITY.ordinal()])) {
        row[Variable.HUMIDITY.ordinal()] =
            relativeHumidity(value(p, f, line), row[Variable.AIR.ordinal()]);
      }
    }
    return row;
  }

  /** Percent over water, from dew point and temperature in degC; NaN where one is missing. */
  static double relativeHumidity(double dewC, double airC) {
    return Math.min(100, 100 * MoistAir.magnusWaterPa(dewC) / MoistAir.magnusWaterPa(airC));
  }

  private double value(Pick p, Row f, int line) {
    if (p.column >= f.count() || f.isEmpty(p.column)) {
      return Double.NaN;
    }
    double raw = f.number(p.column);
    if (raw <= p.missingAtMost || raw >= p.missingFrom) {
      return Double.NaN;
    }
    if (Double.isNaN(raw)
        && (f.is(p.column, "NaN") || f.is(p.column, "nan") || f.is(p.column, "NA"))) {
      return Double.NaN;
    }
    boolean flagged = p.flagColumn >= 0 && p.flagColumn < f.count();
    if (flagged && (f.is(p.flagColumn, "1") || f.is(p.flagColumn, "3"))) {
      return Double.NaN;
    }
    // dividing by 10 rounds better than multiplying by 0.1
    double value = (p.factor < 1 ? raw / (1 / p.factor) : raw * p.factor) + p.offset;
    double low = p.dewPoint ? low(Variable.AIR) : low(p.variable);
    double high = p.dewPoint ? high(Variable.AIR) : high(p.variable);
    if (value >= low && value <= high) {
      return value;
    }
    if (trace && p.variable == Variable.PRECIPITATION && value < 0 && value >= -0.1) {
      return 0;
    }
    problems.add(
        line,
        f.column(p.column),
        p.name,
        f.text(p.column),
        Double.isNaN(raw)
            ? "a number, or nothing where it is missing"
            : "a "
                + (p.dewPoint ? "dew point" : p.variable.column())
                + " of "
                + low
                + " to "
                + high,
        "");
    return Double.NaN;
  }
}
