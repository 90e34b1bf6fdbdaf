package org.broodbench.calibrate;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Twenty made hives found again: crashes and bias. The campaign asks for the shares of the
 * intervals. A goal that is not reached yet: battery capacity goes astray in single hives.
 */
@Tag("goal")
class RecoveryTest {
  @Test
  void twentyHivesAreFoundWithoutBias() throws Exception {
    RecoveryTable table = RecoveryTable.of(1000, 20, 3);
    double inside = 0;
    double all = 0;
    for (Knob k : Knob.values()) {
      double[] row = table.by[k.ordinal()];
      // where the battery is full from the first day on, its start is not in the log
      if (row[0] == 0 || k == Knob.START_CHARGE) {
        continue;
      }
      all += row[0];
      inside += row[1];
      // the middle of 20 pulls scatters by 0.3 to 0.5: beyond 1.2 is no chance
      assertTrue(Math.abs(table.bias(k)) < 1.2, k + " is biased:\n" + table.text());
    }
    assertTrue(inside / all > 0.75, table.text());
    assertTrue(table.refused <= 2, table.text());
  }
}
