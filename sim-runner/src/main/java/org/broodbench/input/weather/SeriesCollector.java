package org.broodbench.input.weather;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;

/**
 * Puts the rows of a file on an even grid of time, checks their order, and bridges short gaps. Only
 * primitive arrays are kept.
 */
final class SeriesCollector {
  private static final Variable[] VARIABLES = Variable.values();

  /** A file that jumps further than this is damaged or is two files. */
  private static final long LONGEST_JUMP_S = 366L * 86400;

  /** Bridged when short; refused, or kept missing, when long. */
  private static final List<Variable> NEEDED =
      List.of(Variable.AIR, Variable.GHI, Variable.HUMIDITY, Variable.WIND);

  private final ProblemList problems;
  private final int stepS;
  private final double[][] columns = new double[VARIABLES.length][];
  private int[] lines = new int[1024];
  private long startEpochS;
  private int n;
  private int clippedNight;
  private int clippedHumidity;
  private BitSet marked = new BitSet();
  private final List<String> warnings = new ArrayList<>();

  SeriesCollector(ProblemList problems, int stepS) {
    this.problems = problems;
    this.stepS = stepS;
  }

  int stepS() {
    return stepS;
  }

  int size() {
    return n;
  }

  /** Which record a row that starts here is or would be. */
  int index(long fromEpochS) {
    return n == 0 ? 0 : (int) Math.max(0, (fromEpochS - startEpochS) / stepS);
  }

  /** Values that the file itself marks as put in: bit index x 8 + ordinal. */
  void alreadyFilled(BitSet bits) {
    marked = bits;
  }

  void warn(String text) {
    warnings.add(text);
  }

  /**
   * Adds one row.
   *
   * @param fromEpochS start of its interval
   * @param row by ordinal of the variable, NaN where missing; it is copied
   */
  void add(long fromEpochS, int line, double[] row) {
    if (n == 0) {
      startEpochS = fromEpochS;
    }
    long ahead = fromEpochS - (startEpochS + (long) n * stepS);
    if (ahead != 0 && !bridge(ahead, fromEpochS, line)) {
      return;
    }
    append(row, line);
  }

  private boolean bridge(long ahead, long fromEpochS, int line) {
    String stamp = Stamps.text(fromEpochS);
    if (ahead < 0) {
      boolean twice = ahead % stepS == 0 && -ahead <= (long) n * stepS;
      problems.add(
          line,
          1,
          "time",
          "interval from "
              + stamp
              + (twice ? " for the second time" : ", earlier than the row before"),
          "rows in order of time, each once",
          "An hour that comes twice in autumn means a clock with daylight saving: use UTC or a"
              + " fixed offset.");
      return false;
    }
    if (ahead % stepS != 0) {
      problems.add(
          line,
          1,
          "time",
          "interval from " + stamp,
          "a whole number of steps of " + stepS + " s after " + Stamps.text(startEpochS),
          "");
      return false;
    }
    if (ahead > LONGEST_JUMP_S) {
      problems.add(
          line,
          1,
          "time",
          "a jump to " + stamp,
          "at most a year after the row before",
          "Two records in one file? Split it.");
      return false;
    }
    double[] nothing = new double[VARIABLES.length];
    Arrays.fill(nothing, Double.NaN);
    for (long k = 0; k < ahead / stepS; k++) {
      append(nothing, line);
    }
    return true;
  }

  private void append(double[] row, int line) {
    if (n == lines.length) {
      lines = Arrays.copyOf(lines, n + n / 2);
    }
    lines[n] = line;
    for (int v = 0; v < VARIABLES.length; v++) {
      double value = row[v];
      if (columns[v] == null) {
        if (Double.isNaN(value)) {
          continue;
        }
        columns[v] = new double[Math.max(1024, lines.length)];
        Arrays.fill(columns[v], 0, n, Double.NaN);
      }
      if (columns[v].length <= n) {
        columns[v] = Arrays.copyOf(columns[v], lines.length);
      }
      columns[v][n] = value;
    }
    clip();
    n++;
  }

  /**
   * Thermal offsets give a few W/m2 below zero at night; sensors read a little above 100 percent.
   */
  private void clip() {
    for (Variable v : VARIABLES) {
      double[] c = columns[v.ordinal()];
      if (c == null) {
        continue;
      }
      double value = c[n];
      if (v.isRadiation() && value <= 0) {
        clippedNight += value < 0 ? 1 : 0;
        c[n] = 0;
      } else if (v == Variable.HUMIDITY && (value > 100 || value < 0)) {
        clippedHumidity++;
        c[n] = value > 100 ? 100 : 0;
      }
    }
  }

  /**
   * Checks, bridges gaps and hands over the columns.
   *
   * @param stands by ordinal of the variable
   */
  WeatherSeries.Builder finish(ReadOptions options, Stand[] stands) {
    if (n == 0) {
      throw problems.fatal(0, 0, "", "no row of data", "at least one row", "");
    }
    byte[] filled = new byte[n];
    for (int k = marked.nextSetBit(0); k >= 0; k = marked.nextSetBit(k + 1)) {
      if (k / VARIABLES.length < n) {
        filled[k / VARIABLES.length] |= (byte) (1 << k % VARIABLES.length);
      }
    }
    for (Variable v : NEEDED) {
      if (columns[v.ordinal()] == null) {
        absent(v);
      } else {
        fill(v, options, filled);
      }
    }
    if (columns[Variable.PRESSURE.ordinal()] != null) {
      fill(
          Variable.PRESSURE,
          new ReadOptions(options.fillUpToS(), ReadOptions.LongGaps.KEEP),
          filled);
    }
    problems.throwIfAny();
    if (clippedNight > 0) {
      warnings.add(clippedNight + " irradiances below zero were set to zero");
    }
    if (clippedHumidity > 0) {
      warnings.add(clippedHumidity + " relative humidities outside 0 to 100 percent were clipped");
    }
    WeatherSeries.Builder b = new WeatherSeries.Builder(startEpochS, stepS, n);
    for (Variable v : VARIABLES) {
      if (columns[v.ordinal()] != null) {
        b.column(v, Arrays.copyOf(columns[v.ordinal()], n), stands[v.ordinal()]);
        columns[v.ordinal()] = null;
      }
    }
    return b.filledBits(filled).warnings(warnings);
  }

  private void absent(Variable v) {
    if (v == Variable.AIR || v == Variable.GHI) {
      problems.add(
          0,
          0,
          v.column(),
          "no value in the whole file",
          v == Variable.AIR ? "air temperature" : "global horizontal irradiance",
          "");
    } else {
      warnings.add(
          v == Variable.WIND
              ? "no wind in the file: a run assumes a constant wind"
              : "no humidity in the file: a run takes the day's lowest temperature as dew point");
    }
  }

  private void fill(Variable v, ReadOptions options, byte[] filled) {
    double[] c = columns[v.ordinal()];
    int values = 0;
    int longGaps = 0;
    int i = 0;
    while (i < n) {
      if (!Double.isNaN(c[i])) {
        i++;
        continue;
      }
      int end = i;
      while (end < n && Double.isNaN(c[end])) {
        end++;
      }
      if ((long) (end - i) * stepS <= options.fillUpToS()) {
        line(c, i, end);
        for (int k = i; k < end; k++) {
          filled[k] |= (byte) (1 << v.ordinal());
        }
        values += end - i;
      } else {
        longGaps++;
        if (options.longGaps() == ReadOptions.LongGaps.REFUSE) {
          refuse(v, i, end, options);
        }
      }
      i = end;
    }
    if (values > 0) {
      warnings.add(
          String.format(
              Locale.ROOT, "%s: %d missing values bridged by straight lines", v.column(), values));
    }
    if (longGaps > 0) {
      warnings.add(
          String.format(
              Locale.ROOT,
              "%s: %d gaps longer than %.1f h",
              v.column(),
              longGaps,
              options.fillUpToS() / 3600.0));
    }
  }

  private void refuse(Variable v, int i, int end, ReadOptions options) {
    problems.add(
        lines[i],
        0,
        v.column(),
        "no value in the intervals from "
            + Stamps.text(startEpochS + (long) i * stepS)
            + " to "
            + Stamps.text(startEpochS + (long) end * stepS)
            + " (up to line "
            + lines[end - 1]
            + ")",
        "gaps of at most " + options.fillUpToS() / 3600.0 + " h",
        "Fill it from another record, or cut the file.");
  }

  /** A straight line over the gap; at an end of the file the nearest value. */
  private void line(double[] c, int from, int to) {
    double a = from > 0 ? c[from - 1] : c[to];
    double b = to < n ? c[to] : a;
    for (int k = from; k < to; k++) {
      c[k] = a + (b - a) * (k - from + 1) / (to - from + 1);
    }
  }
}
