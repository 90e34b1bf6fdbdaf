package org.broodbench.calibrate;

import java.util.Arrays;

/** Rows of a log as they stand in the file: any order, holes as not-a-number. */
public final class RawLog {
  private long[] epochS = new long[1024];
  private int[] lines = new int[1024];
  private final double[][] values = new double[LogColumn.COUNT][];
  private int rows;

  /** An empty log. */
  public RawLog() {
    for (int c = 0; c < values.length; c++) {
      values[c] = new double[1024];
    }
  }

  /**
   * Adds a row.
   *
   * @param line line in the file
   * @param atEpochS its time, s since 1970-01-01T00:00Z
   * @param row values by {@link LogColumn}
   */
  public void add(int line, long atEpochS, double[] row) {
    if (rows == epochS.length) {
      epochS = Arrays.copyOf(epochS, 2 * rows);
      lines = Arrays.copyOf(lines, 2 * rows);
      for (int c = 0; c < values.length; c++) {
        values[c] = Arrays.copyOf(values[c], 2 * rows);
      }
    }
    epochS[rows] = atEpochS;
    lines[rows] = line;
    for (int c = 0; c < values.length; c++) {
      values[c][rows] = row[c];
    }
    rows++;
  }

  /** Number of rows. */
  public int rows() {
    return rows;
  }

  /** Time of a row, s since 1970-01-01T00:00Z. */
  public long epochS(int row) {
    return epochS[row];
  }

  /** Line of a row in the file. */
  public int line(int row) {
    return lines[row];
  }

  /** A value; not a number where it is missing. */
  public double value(LogColumn column, int row) {
    return values[column.ordinal()][row];
  }

  /** Whether a column holds anything. */
  public boolean has(LogColumn column) {
    for (int i = 0; i < rows; i++) {
      if (!Double.isNaN(values[column.ordinal()][i])) {
        return true;
      }
    }
    return false;
  }
}
