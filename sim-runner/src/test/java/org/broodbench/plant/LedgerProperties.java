package org.broodbench.plant;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.LongRange;
import org.broodbench.hive.HiveLedger;
import org.broodbench.power.PowerLedger;
import org.broodbench.rig.RandomRigs;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;

/**
 * Heat, water, carbon dioxide, electrical energy and charge of whole runs on random rigs under
 * random switching. What is left over is compared with the sum of all amounts: nothing but rounding
 * is expected, and 1e-9 of it is a few thousandths of a watt-second a day.
 */
class LedgerProperties {
  private static final double WITHIN = 1e-9;

  /** What a run came through; the random rigs must reach all of it. */
  private static final class Seen {
    boolean fan;
    boolean condensation;
    boolean full;
    boolean dead;
    boolean shore;
    boolean inverter;
    boolean lid;
    int boxes;
  }

  @Property(tries = 30, shrinking = ShrinkingMode.OFF)
  void balancesClose(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
    run(seed, new Seen());
  }

  /**
   * The same on fixed seeds, which together come through everything that a ledger has a term for.
   */
  @Example
  void balancesCloseInEveryCondition() {
    Seen all = new Seen();
    for (long seed = 0; seed < 24; seed++) {
      run(seed, all);
    }
    assertTrue(
        all.fan && all.condensation && all.full && all.dead && all.shore && all.inverter && all.lid,
        String.format(
            Locale.ROOT,
            "fan %b, condensation %b, full %b, dead %b, shore %b, inverter %b, lid %b",
            all.fan,
            all.condensation,
            all.full,
            all.dead,
            all.shore,
            all.inverter,
            all.lid));
    assertTrue(all.boxes >= 4, "boxes: " + all.boxes);
  }

  private static void run(long seed, Seen seen) {
    RandomRigs random = new RandomRigs(seed);
    Scenario rig = random.scenario(1 + random.below(2));
    Forcing forcing = random.forcing(rig);
    Plant plant = new Plant(rig, forcing);
    Actuators held = new Actuators();
    double endS = 86_400.0 * rig.window().days();
    double t = 0;
    while (t < endS) {
      if (random.below(40) == 0) {
        held.heater = random.below(2) == 0;
        held.fan = random.below(4) == 0;
        held.inverter = random.below(3) > 0;
      }
      if (random.below(2000) == 0) {
        plant.supply().setShore(random.below(2) == 0);
      }
      if (random.below(1500) == 0) {
        boolean open = random.below(3) == 0;
        plant.hive().setLidOpen(open);
        seen.lid |= open;
      }
      // steps of any length, some worked out twice as when an output changes inside a step
      double stepS = random.below(4) == 0 ? 1 + random.below(9) : 10;
      plant.solve(t, stepS, held);
      if (random.below(10) == 0 && stepS > 1) {
        stepS = 1;
        plant.solve(t, stepS, held);
      }
      seen.condensation |= plant.hive().view().condensing();
      seen.full |= plant.supply().full();
      seen.dead |= plant.supply().dead();
      seen.shore |= plant.supply().shorePresent();
      seen.fan |= held.fan && rig.fan().powerW() > 0;
      seen.inverter |= held.inverter && rig.inverter().ratedW() > 0;
      plant.accept();
      t += stepS;
    }
    seen.boxes = Math.max(seen.boxes, rig.hive().boxes().size());
    check("seed " + seed, plant.hive().ledger(), plant.supply().ledger());
  }

  private static void check(String run, HiveLedger h, PowerLedger p) {
    closes(
        run + " heat, J",
        h.heatResidualJ(),
        h.heaterJ,
        h.colonyJ,
        h.sunJ,
        h.electronicsJ,
        h.latentReleasedJ,
        h.lostWallsJ,
        h.lostAirJ,
        h.latentTakenJ,
        h.storedJ);
    closes(
        run + " water, kg",
        h.waterResidualKg(),
        h.waterMadeKg,
        h.waterFetchedKg,
        h.waterInKg,
        h.waterOutKg,
        h.waterDrainedKg,
        h.waterStoredKg);
    closes(
        run + " carbon dioxide, kg",
        h.co2ResidualKg(),
        h.co2MadeKg,
        h.co2InKg,
        h.co2OutKg,
        h.co2StoredKg);
    closes(
        run + " electrical energy, J",
        p.energyResidualJ(),
        p.pvUsedJ,
        p.shoreJ,
        p.batteryChangeJ,
        p.heaterJ,
        p.fanJ,
        p.controllerJ,
        p.otherLoadsJ,
        p.chargeLossJ,
        p.batteryLossJ,
        p.inverterLossJ,
        p.wiringLossJ);
    closes(
        run + " charge, Ah",
        p.chargeResidualAh(),
        p.chargeInAh,
        p.chargeOutAh,
        p.chargeLostAh,
        p.chargeStoredAh);
  }

  private static void closes(String what, double residual, double... terms) {
    double sum = 0;
    for (double term : terms) {
      sum += Math.abs(term);
    }
    assertTrue(
        Math.abs(residual) <= WITHIN * sum,
        String.format(Locale.ROOT, "%s: %.3g left of %.6g", what, residual, sum));
  }
}
