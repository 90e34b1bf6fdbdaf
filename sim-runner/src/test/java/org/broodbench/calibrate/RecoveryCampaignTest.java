package org.broodbench.calibrate;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Four hundred made hives: each knob's 90 % interval holds the truth in 85 to 95 % of them. A goal
 * that is not reached yet: some intervals are too wide. The property {@code broodbench.hives} asks
 * for fewer, {@code broodbench.recovery} names a file that keeps what is done.
 */
@Tag("goal")
class RecoveryCampaignTest {
  /** One chance in a hundred that a share which is just good enough comes out further off. */
  private static final double CHANCE = 2.326;

  @Test
  void intervalsHoldWhatTheySay() throws Exception {
    int share = 400 * Integer.getInteger("broodbench.campaign.percent", 100) / 100;
    int hives = Integer.getInteger("broodbench.hives", Math.max(20, share));
    RecoveryTable table = RecoveryTable.of(50_000, hives, 5);
    StringBuilder outside = new StringBuilder();
    for (Knob k : Knob.values()) {
      double n = table.by[k.ordinal()][0];
      if (n > 0) {
        double covered = table.covered(k);
        boolean tooFew = covered < 0.85 - CHANCE * Math.sqrt(0.85 * 0.15 / n);
        boolean tooMany = covered > 0.95 + CHANCE * Math.sqrt(0.95 * 0.05 / n);
        if (tooFew || tooMany) {
          outside.append(k.key()).append(' ');
        }
      }
    }
    assertTrue(outside.isEmpty(), "outside: " + outside + "\n" + table.text());
  }
}
