package org.broodbench.input.weather;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.sky.Variable;

/** Bridges short gaps in columns, and refuses or keeps long ones. */
final class Gaps {
  private final ReadContext context;
  private final long startEpochS;
  private final int stepS;
  private final int n;
  private final int[] lines;
  private final byte[] filled;
  private final List<String> warnings = new ArrayList<>();

  /**
   * For columns on one grid.
   *
   * @param lines number of the line of each record, 0 where it is not known
   * @param filled gets a bit for each value that is put in
   */
  Gaps(ReadContext context, long startEpochS, int stepS, int n, int[] lines, byte[] filled) {
    this.context = context;
    this.startEpochS = startEpochS;
    this.stepS = stepS;
    this.n = n;
    this.lines = lines;
    this.filled = filled;
  }

  List<String> warnings() {
    return warnings;
  }

  /** Treats all columns, by ordinal of the variable; null where the file has no such variable. */
  void bridge(double[][] columns) {
    for (Variable v : Variable.values()) {
      double[] c = columns[v.ordinal()];
      switch (v) {
        case AIR, GHI -> {
          if (c == null) {
            absent(v);
          } else {
            fill(v, c, context.options().longGaps());
          }
        }
        case HUMIDITY, WIND -> {
          if (c == null) {
            warnings.add(
                v == Variable.WIND
                    ? "no wind in the file: a run assumes a constant wind"
                    : "no humidity in the file: a run takes the day's lowest temperature as dew"
                        + " point");
          } else {
            fill(v, c, context.options().longGaps());
          }
        }
        case PRESSURE -> {
          if (c != null) {
            fill(v, c, ReadOptions.LongGaps.KEEP);
          }
        }
        // a missing sum cannot be guessed, and missing diffuse light is split off by a model
        default -> {}
      }
    }
  }

  private void absent(Variable v) {
    if (context.options().longGaps() == ReadOptions.LongGaps.KEEP) {
      warnings.add("no " + v.column() + " in the whole file");
      return;
    }
    context
        .problems()
        .add(
            0,
            0,
            v.column(),
            "no value in the whole file",
            v == Variable.AIR ? "air temperature" : "global horizontal irradiance",
            "If another file has it, read both together.");
  }

  private void fill(Variable v, double[] c, ReadOptions.LongGaps policy) {
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
      if ((long) (end - i) * stepS <= context.options().fillUpToS() && end - i < n) {
        line(c, i, end);
        for (int k = i; k < end; k++) {
          filled[k] |= (byte) (1 << v.ordinal());
        }
        values += end - i;
      } else {
        longGaps++;
        if (policy == ReadOptions.LongGaps.REFUSE) {
          refuse(v, i, end);
        }
      }
      i = end;
    }
    if (values > 0) {
      warnings.add(v.column() + ": " + values + " missing values bridged by straight lines");
    }
    if (longGaps > 0) {
      warnings.add(
          String.format(
              Locale.ROOT,
              "%s: %d gaps longer than %.1f h",
              v.column(),
              longGaps,
              context.options().fillUpToS() / 3600.0));
    }
  }

  private void refuse(Variable v, int i, int end) {
    context
        .problems()
        .add(
            lines[i],
            0,
            v.column(),
            "no value in the intervals from "
                + Stamps.text(startEpochS + (long) i * stepS)
                + " to "
                + Stamps.text(startEpochS + (long) end * stepS)
                + (lines[end - 1] > 0 ? " (up to line " + lines[end - 1] + ")" : ""),
            "gaps of at most " + context.options().fillUpToS() / 3600.0 + " h",
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
