package org.broodbench.calibrate;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Four hundred made hives: each knob's 90 % interval holds the truth in 85 to 95 % of them. The
 * property {@code broodbench.hives} asks for fewer; the bounds widen by the chance of so few. A
 * goal that is not reached yet.
 */
@Tag("goal")
class RecoveryCampaignTest {
  @Test
  void intervalsHoldWhatTheySay() throws Exception {
    int hives = Integer.getInteger("broodbench.hives", 400);
    RecoveryTable table = RecoveryTable.of(50_000, hives, 5);
    double chance = 2 * Math.sqrt(0.9 * 0.1 / hives);
    StringBuilder outside = new StringBuilder();
    for (Knob k : Knob.values()) {
      if (table.by[k.ordinal()][0] > 0) {
        double covered = table.covered(k);
        if (covered < 0.85 - chance || covered > 0.95 + chance) {
          outside.append(k.key()).append(' ');
        }
      }
    }
    assertTrue(outside.isEmpty(), "outside: " + outside + "\n" + table.text());
  }
}
