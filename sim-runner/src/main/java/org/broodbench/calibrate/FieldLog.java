package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A log in the order of time, one row a moment, with what could not be true taken out.
 *
 * @param epochS times, s since 1970-01-01T00:00Z, rising
 * @param values by {@link LogColumn}, then by row; not a number where missing
 * @param stepS usual time between rows, s
 * @param notes what was found and done, for people
 */
public record FieldLog(long[] epochS, double[][] values, int stepS, List<String> notes) {
  /** Rows this far apart are a handwritten daily log, s; own choice. */
  private static final int BY_HAND_S = 4 * 3600;

  /** Copies the notes. */
  public FieldLog {
    notes = List.copyOf(notes);
  }

  /** Number of rows. */
  public int rows() {
    return epochS.length;
  }

  /** A column. */
  public double[] column(LogColumn c) {
    return values[c.ordinal()];
  }

  /** Whether a column holds anything. */
  public boolean has(LogColumn c) {
    for (double v : column(c)) {
      if (!Double.isNaN(v)) {
        return true;
      }
    }
    return false;
  }

  /** The same with some columns empty. */
  FieldLog without(LogColumn... columns) {
    double[][] left = values.clone();
    for (LogColumn c : columns) {
      left[c.ordinal()] = new double[rows()];
      Arrays.fill(left[c.ordinal()], Double.NaN);
    }
    return new FieldLog(epochS, left, stepS, notes);
  }

  /** The same rows under other times; where two come to one moment, the first stays. */
  FieldLog at(long[] times, List<String> newNotes) {
    int[] kept = new int[times.length];
    int n = 0;
    for (int i = 0; i < times.length; i++) {
      if (n == 0 || times[i] > times[kept[n - 1]]) {
        kept[n++] = i;
      }
    }
    return rows(Arrays.copyOf(kept, n), times, newNotes);
  }

  /** The rows from one time to another. */
  FieldLog between(long fromS, long toS) {
    int[] kept =
        IntStream.range(0, rows()).filter(i -> epochS[i] >= fromS && epochS[i] <= toS).toArray();
    return kept.length == rows() ? this : rows(kept, epochS, notes);
  }

  private FieldLog rows(int[] kept, long[] times, List<String> newNotes) {
    double[][] left = new double[values.length][];
    for (int c = 0; c < left.length; c++) {
      double[] v = values[c];
      left[c] = Arrays.stream(kept).mapToDouble(i -> v[i]).toArray();
    }
    return new FieldLog(
        Arrays.stream(kept).mapToLong(i -> times[i]).toArray(), left, stepS, newNotes);
  }

  /** Whether it was written down by hand, about once a day. */
  public boolean byHand() {
    return stepS >= BY_HAND_S;
  }

  /** First time, s since 1970-01-01T00:00Z. */
  public long fromS() {
    return epochS[0];
  }

  /** Last time, s since 1970-01-01T00:00Z. */
  public long toS() {
    return epochS[epochS.length - 1];
  }

  /**
   * A hole between two rows.
   *
   * @param fromS last time before it
   * @param toS first time after it
   */
  public record Gap(long fromS, long toS) {
    /** How long, s. */
    public long lengthS() {
      return toS - fromS;
    }
  }

  /** Holes longer than some time. */
  public List<Gap> gaps(long longerThanS) {
    List<Gap> gaps = new ArrayList<>();
    for (int i = 1; i < epochS.length; i++) {
      if (epochS[i] - epochS[i - 1] > longerThanS) {
        gaps.add(new Gap(epochS[i - 1], epochS[i]));
      }
    }
    return gaps;
  }
}
