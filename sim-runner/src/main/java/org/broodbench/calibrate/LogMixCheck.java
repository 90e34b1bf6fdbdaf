package org.broodbench.calibrate;

import java.time.Instant;
import java.util.Locale;

/** Tells two hives in one log: readings that jump to and fro from row to row. */
final class LogMixCheck {
  /** A jump that no probe inside a hive makes and takes back within two rows, K; own choice. */
  private static final double JUMP_K = 1;

  /** Share of the rows that may do so all the same: noise, loose contacts. */
  private static final double SHARE = 0.1;

  private LogMixCheck() {}

  /**
   * Looks at the temperatures inside.
   *
   * @throws LogRefused where rows of two hives take turns
   */
  static void twoHives(long[] epochS, double[][] values, int stepS) {
    for (LogColumn c : LogColumn.values()) {
      if (!c.inside() || c == LogColumn.PAN || stepS > 1800) {
        continue;
      }
      double[] v = values[c.ordinal()];
      int looked = 0;
      int zigzags = 0;
      long firstS = 0;
      for (int i = 1; i + 1 < v.length; i++) {
        double up = v[i] - v[i - 1];
        double down = v[i + 1] - v[i];
        if (Double.isNaN(up) || Double.isNaN(down) || epochS[i + 1] - epochS[i - 1] > 4L * stepS) {
          continue;
        }
        looked++;
        if (up * down < 0 && Math.min(Math.abs(up), Math.abs(down)) > JUMP_K) {
          firstS = zigzags == 0 ? epochS[i] : firstS;
          zigzags++;
        }
      }
      if (looked > 50 && zigzags > SHARE * looked) {
        throw new LogRefused(
            0,
            c.key(),
            String.format(
                Locale.ROOT,
                "in %.0f %% of the rows it jumps by more than %.0f K and back, first at %s",
                100.0 * zigzags / looked,
                JUMP_K,
                Instant.ofEpochSecond(firstS)),
            "one hive in one log",
            "Rows of two hives seem to be mixed: write each into a file of its own.");
      }
    }
  }
}
