package org.broodbench.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/**
 * Twenty made hives found again in every build: crashes and bias. The campaign asks for the shares
 * of the intervals.
 */
class RecoveryTest {
  private static final int HIVES = 20;

  /** The middle of 20 pulls of one standard deviation scatters by 0.28: beyond 0.9 is no chance. */
  private static final double BIAS = 0.9;

  @Test
  void twentyHivesAreFoundWithoutBias() throws Exception {
    RecoveryTable table = RecoveryTable.of(1000, HIVES, 3);
    double inside = 0;
    double all = 0;
    for (Knob k : Knob.values()) {
      double[] row = table.by[k.ordinal()];
      if (row[0] == 0) {
        continue;
      }
      assertEquals(HIVES, row[0], k + " was not asked of every hive");
      all += row[0];
      inside += row[1];
      assertTrue(Math.abs(table.bias(k)) < BIAS, k + " is biased:\n" + table.text());
    }
    // nine of ten; one hive that goes astray takes up to 17 of the 340 intervals with it
    assertTrue(inside / all > 0.8, table.text());
    assertTrue(table.refused <= 2, table.text());
  }
}
