package org.broodbench.loop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.broodbench.power.PowerLedger;
import org.broodbench.rig.RandomRigs;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Electrical energy and charge of long runs under the core at a tick of a second. What is left over
 * is compared with the sum of all amounts: only rounding is expected, 1e-9 of a year's megajoules
 * would be a few joules.
 */
class SupplyYearVerificationTest {
  private static final long FROM_EPOCH_S = 20_454L * 86_400; // 1 January 2026

  private static void closes(int days) {
    Scenario s = TestRigs.small(FROM_EPOCH_S, days);
    RunResult r =
        new Simulation(
                s,
                RandomRigs.forcing(s, 5, 0),
                new ReferenceController(s.controller().settings()),
                false)
            .run();
    PowerLedger p = r.power();
    double energyJ =
        p.pvUsedJ
            + p.shoreJ
            + Math.abs(p.batteryChangeJ)
            + p.heaterJ
            + p.fanJ
            + p.controllerJ
            + p.otherLoadsJ
            + p.chargeLossJ
            + p.batteryLossJ
            + p.inverterLossJ
            + p.wiringLossJ;
    double chargeAh = p.chargeInAh + p.chargeOutAh + p.chargeLostAh + Math.abs(p.chargeStoredAh);
    assertTrue(p.heaterJ > 0 && p.chargeInAh > 0 && p.chargeOutAh > 0);
    assertEquals(0, p.energyResidualJ() / energyJ, 1e-9, "of " + energyJ + " J");
    assertEquals(0, p.chargeResidualAh() / chargeAh, 1e-9, "of " + chargeAh + " Ah");
  }

  @Test
  void tenDays() {
    closes(10);
  }

  @Test
  @Tag("campaign")
  void aYear() {
    // a share of it by system property, twenty days at least
    closes(Math.max(20, 365 * Integer.getInteger("broodbench.campaign.percent", 100) / 100));
  }
}
