package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.broodbench.loop.Replay;

/**
 * A log on the grid of the simulation: steps of a minute whose middles are the rows of a one-minute
 * log but for the first, and means over bins of ten minutes or one row, whichever is longer.
 */
final class Observations {
  /** Step of the simulation, s. */
  static final int STEP_S = 60;

  private static final int BIN_STEPS = 10;

  /** After a hole what the hive holds is not known: not compared, s; own choice. */
  static final long SETTLE_S = 16 * 3600;

  /** At the start still less: a nest takes a day to forget; of short logs a fifth, s. */
  private static final long FIRST_S = 24 * 3600;

  /** A hole that makes the hive forget, s; own choice. */
  private static final long HOLE_S = 3600;

  /** A hole after which the charge of the battery is not known, s; own choice. */
  private static final long BATTERY_HOLE_S = 3600;

  /** A first stretch of this share of the longest is taken; own choice. */
  private static final double NEARLY = 2 / 3.0;

  /** A stretch of less of the log is not taken alone; own choice. */
  private static final double LEAST_SHARE = 1 / 3.0;

  /** Columns that are compared with the simulation. */
  static final List<LogColumn> COMPARED =
      List.of(
          LogColumn.BROOD_A,
          LogColumn.BROOD_B,
          LogColumn.PAN,
          LogColumn.TOP,
          LogColumn.BATTERY_V,
          LogColumn.BATTERY_A,
          LogColumn.HUMIDITY);

  private final long startS;
  private final int steps;
  private final int binSteps;
  private final int bins;
  private final List<LogColumn> channels = new ArrayList<>();
  private final List<byte[]> counts = new ArrayList<>();
  private final List<double[]> means = new ArrayList<>();

  /**
   * Puts a log on the grid.
   *
   * @param wanted columns that the scenario can simulate
   */
  Observations(FieldLog log, List<LogColumn> wanted) {
    startS = log.fromS() + STEP_S / 2;
    steps = (int) ((log.toS() - startS) / STEP_S);
    binSteps = Math.max(BIN_STEPS, (log.stepS() + STEP_S - 1) / STEP_S);
    bins = steps / binSteps;
    for (LogColumn c : wanted) {
      if (COMPARED.contains(c) && log.has(c)) {
        add(log, c);
      }
    }
  }

  private void add(FieldLog log, LogColumn c) {
    double[] v = log.column(c);
    byte[] count = new byte[steps];
    double[] sum = new double[bins];
    int[] n = new int[bins];
    boolean[] usable = usable(log, c);
    for (int i = 0; i < v.length; i++) {
      int step = step(log.epochS()[i]);
      int bin = step / binSteps;
      if (!Double.isNaN(v[i]) && step >= 0 && bin < bins && usable[i] && count[step] < 100) {
        sum[bin] += v[i];
        n[bin]++;
        count[step]++;
      }
    }
    double expected = (double) binSteps * STEP_S / log.stepS();
    double[] mean = new double[bins];
    for (int b = 0; b < bins; b++) {
      if (n[b] > 0 && n[b] >= 0.5 * expected) {
        mean[b] = sum[b] / n[b];
      } else {
        mean[b] = Double.NaN;
        Arrays.fill(count, b * binSteps, (b + 1) * binSteps, (byte) 0);
      }
    }
    channels.add(c);
    counts.add(count);
    means.add(mean);
  }

  /** Rows that are far enough from the start and from holes. */
  private static boolean[] usable(FieldLog log, LogColumn c) {
    boolean battery = c == LogColumn.BATTERY_V || c == LogColumn.BATTERY_A;
    long[] at = log.epochS();
    boolean[] usable = new boolean[at.length];
    long settledS = at[0] + Math.min(battery ? FIRST_S / 2 : FIRST_S, (log.toS() - at[0]) / 5);
    for (int i = 0; i < at.length; i++) {
      if (i > 0 && at[i] - at[i - 1] > Math.max(HOLE_S, 2L * log.stepS())) {
        settledS = Math.max(settledS, at[i] + (battery ? 3600 : SETTLE_S));
      }
      usable[i] = at[i] >= settledS;
    }
    if (battery) {
      keepOneStretch(log, usable);
    }
    return usable;
  }

  /**
   * Of a battery only one stretch without a hole, where it is a third of the log: the longest, but
   * the first if that is nearly as long, since charge after a hole is a guess.
   */
  private static void keepOneStretch(FieldLog log, boolean[] usable) {
    long[] at = log.epochS();
    int from = 0;
    int first = 0;
    int bestFrom = 0;
    int bestTo = 0;
    for (int i = 1; i <= at.length; i++) {
      if (i == at.length || at[i] - at[i - 1] > Math.max(BATTERY_HOLE_S, 2L * log.stepS())) {
        first = from == 0 ? i : first;
        if (i - from > bestTo - bestFrom) {
          bestFrom = from;
          bestTo = i;
        }
        from = i;
      }
    }
    if (first >= NEARLY * (bestTo - bestFrom)) {
      bestFrom = 0;
      bestTo = first;
    }
    // of a log with many holes all is better than next to nothing
    if (bestTo - bestFrom < LEAST_SHARE * at.length) {
      return;
    }
    Arrays.fill(usable, 0, bestFrom, false);
    Arrays.fill(usable, bestTo, usable.length, false);
  }

  /** Step that a time falls into. */
  int step(long epochS) {
    return (int) Math.floorDiv(epochS - startS, (long) STEP_S);
  }

  /** Start of the first step, s since 1970-01-01T00:00Z. */
  long startS() {
    return startS;
  }

  /** Number of steps. */
  int steps() {
    return steps;
  }

  /** Number of bins. */
  int bins() {
    return bins;
  }

  /** Steps in a bin. */
  int binSteps() {
    return binSteps;
  }

  /** Compared columns. */
  List<LogColumn> channels() {
    return channels;
  }

  /** Mean readings of a compared column by bin; not a number where it is not compared. */
  double[] mean(int channel) {
    return means.get(channel);
  }

  /** Rows of a compared column by step. */
  byte[] counts(int channel) {
    return counts.get(channel);
  }

  /** Middle of a bin, s since 1970-01-01T00:00Z. */
  long binMiddleS(int bin) {
    return startS + (long) ((bin + 0.5) * binSteps * STEP_S);
  }

  /** What the log says of a relay, by step: the state of the nearest row, if one is near. */
  static int[] relay(FieldLog log, double[] state, long startS, int steps) {
    int[] out = new int[steps];
    Arrays.fill(out, Replay.UNKNOWN);
    long[] at = log.epochS();
    long near = Math.max(log.stepS(), 2L * STEP_S);
    int i = 0;
    for (int k = 0; k < steps; k++) {
      long middle = startS + (long) k * STEP_S + STEP_S / 2;
      while (i + 1 < at.length && Math.abs(at[i + 1] - middle) <= Math.abs(at[i] - middle)) {
        i++;
      }
      if (Math.abs(at[i] - middle) <= near && !Double.isNaN(state[i])) {
        out[k] = state[i] > 0.5 ? 1 : 0;
      }
    }
    return out;
  }
}
