package org.broodbench.input.weather;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import org.broodbench.sky.Resample;
import org.broodbench.sky.Stand;
import org.broodbench.sky.Variable;
import org.broodbench.sky.WeatherSeries;

/**
 * Puts the rows of a file on an even grid of time and checks their order. Only primitive arrays are
 * kept; a file of more than {@link #MOST_ROWS} rows is joined to longer intervals while it is read,
 * so that its size does not matter.
 */
final class SeriesCollector {
  /** About 70 MB of numbers; two years of minutes or a century of hours fit. */
  static final int MOST_ROWS = 1 << 20;

  /** A jump over more rows than this means two records in one file. */
  private static final long LONGEST_JUMP_ROWS = 200_000;

  private static final Variable[] VARIABLES = Variable.values();

  private final ReadContext context;
  private final ProblemList problems;
  private final int mostRows;
  private final int fileStepS;
  private int factor = 1;
  private final double[][] columns = new double[VARIABLES.length][];
  private int[] lines = new int[512];
  private long startEpochS;
  private long rows;
  private int n;
  private int clippedLight;
  private int clippedHumidity;
  private BitSet marked = new BitSet();
  private final double[] nothing = new double[VARIABLES.length];
  private final double[] group = new double[VARIABLES.length];
  private final int[] groupCount = new int[VARIABLES.length];
  private int inGroup;
  private final List<String> warnings = new ArrayList<>();

  SeriesCollector(ReadContext context, int stepS) {
    this(context, stepS, MOST_ROWS);
  }

  /** With another limit, which tests set low. */
  SeriesCollector(ReadContext context, int stepS, int mostRows) {
    this.mostRows = mostRows;
    this.context = context;
    this.problems = context.problems();
    this.fileStepS = stepS;
    Arrays.fill(nothing, Double.NaN);
  }

  /** Which record a row that starts here is or would be. */
  int index(long fromEpochS) {
    return rows == 0
        ? 0
        : (int) Math.max(0, (fromEpochS - startEpochS) / ((long) fileStepS * factor));
  }

  /** Values that the file itself marks as put in: bit index x 8 + ordinal. */
  void alreadyFilled(BitSet bits) {
    marked = bits;
  }

  /** Moves every interval, before the end. */
  void shift(int seconds) {
    startEpochS += seconds;
  }

  void warn(String text) {
    warnings.add(text);
  }

  boolean isEmpty() {
    return rows == 0;
  }

  /**
   * Adds one row.
   *
   * @param fromEpochS start of its interval
   * @param row by ordinal of the variable, NaN where missing; it is copied
   */
  void add(long fromEpochS, int line, double[] row) {
    if (rows == 0) {
      startEpochS = fromEpochS;
    }
    long ahead = fromEpochS - (startEpochS + rows * fileStepS);
    if (ahead != 0 && !jump(ahead, fromEpochS, line)) {
      return;
    }
    take(row, line);
  }

  private boolean jump(long ahead, long fromEpochS, int line) {
    String stamp = Stamps.text(fromEpochS);
    if (ahead < 0) {
      boolean twice = ahead % fileStepS == 0 && fromEpochS >= startEpochS;
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
    if (ahead % fileStepS != 0) {
      problems.add(
          line,
          1,
          "time",
          "interval from " + stamp,
          "a whole number of steps of " + fileStepS + " s after " + Stamps.text(startEpochS),
          "");
      return false;
    }
    if (ahead / fileStepS > LONGEST_JUMP_ROWS) {
      problems.add(
          line,
          1,
          "time",
          "a jump to " + stamp,
          "at most " + LONGEST_JUMP_ROWS + " rows without data",
          "Two records in one file? Split it.");
      return false;
    }
    for (long k = 0; k < ahead / fileStepS; k++) {
      take(nothing, line);
    }
    return true;
  }

  private void take(double[] row, int line) {
    rows++;
    if (factor == 1) {
      append(row, line);
    } else {
      for (int v = 0; v < row.length; v++) {
        if (!Double.isNaN(row[v])) {
          group[v] += clip(VARIABLES[v], row[v]);
          groupCount[v]++;
        }
      }
      if (++inGroup == factor) {
        for (int v = 0; v < row.length; v++) {
          boolean sum = Resample.isSum(VARIABLES[v]);
          boolean enough = sum ? groupCount[v] == factor : 2 * groupCount[v] >= factor;
          group[v] = !enough ? Double.NaN : sum ? group[v] : group[v] / groupCount[v];
        }
        append(group, line);
        inGroup = 0;
        Arrays.fill(group, 0);
        Arrays.fill(groupCount, 0);
      }
    }
    if (n == mostRows) {
      coarsen();
    }
  }

  private void append(double[] row, int line) {
    if (n == lines.length) {
      lines = Arrays.copyOf(lines, Math.min(mostRows, n + n / 2));
    }
    lines[n] = line;
    for (int v = 0; v < VARIABLES.length; v++) {
      double value = row[v];
      if (columns[v] == null) {
        if (Double.isNaN(value)) {
          continue;
        }
        columns[v] = new double[lines.length];
        Arrays.fill(columns[v], 0, n, Double.NaN);
      }
      if (columns[v].length <= n) {
        columns[v] = Arrays.copyOf(columns[v], lines.length);
      }
      columns[v][n] = clip(VARIABLES[v], value);
    }
    n++;
  }

  /**
   * Thermal offsets give a few W/m2 below zero at night; sensors read a little above 100 percent.
   */
  private double clip(Variable v, double value) {
    if (v.isRadiation() && value <= 0) {
      clippedLight += value < 0 ? 1 : 0;
      return 0;
    }
    if (v == Variable.HUMIDITY && (value > 100 || value < 0)) {
      clippedHumidity++;
      return value > 100 ? 100 : 0;
    }
    return value;
  }

  /** Joins the records to the next longer of the usual steps. */
  private void coarsen() {
    int step = fileStepS * factor;
    int to =
        step < 300 && 300 % step == 0 ? 300 : step < 3600 && 3600 % step == 0 ? 3600 : 4 * step;
    int join = to / step;
    int whole = n / join * join;
    for (int v = 0; v < VARIABLES.length; v++) {
      if (columns[v] == null) {
        continue;
      }
      double[] joined = Resample.groups(columns[v], n, join, Resample.isSum(VARIABLES[v]));
      for (int i = whole; i < n; i++) {
        // the records of an unfinished group go back to their rows
        if (!Double.isNaN(columns[v][i])) {
          boolean sum = Resample.isSum(VARIABLES[v]);
          group[v] += sum ? columns[v][i] : columns[v][i] * factor;
          groupCount[v] += factor;
        }
      }
      System.arraycopy(joined, 0, columns[v], 0, joined.length);
    }
    for (int g = 0; g < n / join; g++) {
      lines[g] = lines[g * join];
    }
    inGroup = (n - whole) * factor;
    n /= join;
    factor *= join;
  }

  /**
   * Checks, bridges gaps and hands over the columns.
   *
   * @param stands by ordinal of the variable, for a row of the file
   */
  WeatherSeries.Builder finish(Stand[] stands) {
    if (n == 0) {
      throw problems.fatal(0, 0, "", "no row of data", "at least one row", "");
    }
    int stepS = fileStepS * factor;
    byte[] filled = new byte[n];
    for (int k = marked.nextSetBit(0); k >= 0; k = marked.nextSetBit(k + 1)) {
      if (k / VARIABLES.length < n) {
        filled[k / VARIABLES.length] |= (byte) (1 << k % VARIABLES.length);
      }
    }
    if (factor > 1) {
      warnings.add("the rows of " + fileStepS + " s were joined to intervals of " + stepS + " s");
    }
    if (!context.part()) {
      Gaps gaps = new Gaps(context, startEpochS, stepS, n, lines, filled);
      gaps.bridge(columns);
      warnings.addAll(gaps.warnings());
    }
    problems.throwIfAny();
    if (clippedLight > 0) {
      warnings.add(clippedLight + " irradiances below zero were set to zero");
    }
    if (clippedHumidity > 0) {
      warnings.add(clippedHumidity + " relative humidities outside 0 to 100 percent were clipped");
    }
    WeatherSeries.Builder b = new WeatherSeries.Builder(startEpochS, stepS, n);
    for (int v = 0; v < VARIABLES.length; v++) {
      if (columns[v] != null) {
        Stand stand = Resample.stand(stands[v], fileStepS, factor);
        b.column(VARIABLES[v], Arrays.copyOf(columns[v], n), stand);
        columns[v] = null;
      }
    }
    return b.filledBits(filled).warnings(warnings);
  }
}
