package org.broodbench.input.weather;

/**
 * Rows of a file that does not state its step: the first rows are held back until the smallest
 * distance of their stamps is known.
 */
final class SteppedRows {
  private static final int LOOK_AT = 24;

  private final ReadContext context;
  private final long[] stamps = new long[LOOK_AT];
  private final int[] lines = new int[LOOK_AT];
  private final double[][] rows = new double[LOOK_AT][];
  private int held;
  private int stepS;
  private SeriesCollector collector;

  SteppedRows(ReadContext context) {
    this.context = context;
  }

  /** Adds a row by its stamp; the row is copied. */
  void add(long stampEpochS, int line, double[] row) {
    if (collector != null) {
      collector.add(stampEpochS, line, row);
      return;
    }
    stamps[held] = stampEpochS;
    lines[held] = line;
    rows[held] = row.clone();
    if (++held == LOOK_AT) {
      release();
    }
  }

  private void release() {
    long smallest = Long.MAX_VALUE;
    for (int i = 1; i < held; i++) {
      long d = stamps[i] - stamps[i - 1];
      if (d > 0 && d < smallest) {
        smallest = d;
      }
    }
    if (smallest > 86400) {
      throw context
          .problems()
          .fatal(
              held == 0 ? 0 : lines[held - 1],
              0,
              "time",
              held + " rows whose stamps do not rise in steps of up to a day",
              "at least two rows in order of time",
              "");
    }
    stepS = (int) smallest;
    collector = new SeriesCollector(context, stepS);
    for (int i = 0; i < held; i++) {
      collector.add(stamps[i], lines[i], rows[i]);
    }
  }

  /** The step of the file, s. */
  int stepS() {
    if (collector == null) {
      release();
    }
    return stepS;
  }

  /** All rows, with this many seconds from a stamp to the start of its interval. */
  SeriesCollector collect(int shiftS) {
    stepS();
    collector.shift(shiftS);
    return collector;
  }
}
