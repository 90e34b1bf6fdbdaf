package org.broodbench.plant;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.broodbench.hive.BoxSpec;
import org.broodbench.hive.HeaterSpec;
import org.broodbench.hive.HiveSpec;
import org.broodbench.hive.Layer;
import org.broodbench.matter.Material;
import org.broodbench.rig.RandomRigs;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Rigs far beyond what anybody builds: nothing runs away or swings from step to step, with the
 * heater, the fan and the lid switched about.
 */
class StabilityVerificationTest {
  private static final long JANUARY = 1_704_067_200L;

  @ParameterizedTest
  @CsvSource({
    // box height m, wall mm, heater W, vent m², boxes
    "0.244, 19, 40, 2e-4, 1",
    "0.05, 2, 250, 0, 1", // a flat box of veneer over a furnace
    "0.04, 1, 200, 0.01, 4", // hardly any air, wide open
    "0.3, 1, 150, 1e-6, 6",
    "2.0, 60, 5, 0.002, 1"
  })
  void nothingRunsAway(double heightM, double wallMm, double heaterW, double ventM2, int boxes) {
    Scenario base = TestRigs.small(JANUARY, 2);
    List<Layer> skin = List.of(new Layer(Material.SOFTWOOD, wallMm * 1e-3));
    Scenario rig =
        base.withHive(
                new HiveSpec(
                    0.467,
                    0.375,
                    Collections.nCopies(boxes, new BoxSpec(heightM, 10, 0)),
                    boxes - 1,
                    skin,
                    skin,
                    skin,
                    1,
                    0.95,
                    0.3,
                    0.015,
                    ventM2,
                    1,
                    0.6,
                    0.5))
            .withHeater(new HeaterSpec(heaterW, 12, false, true, 50, 300, 20, 5, 2, 0.05));
    Plant plant = new Plant(rig, RandomRigs.forcing(rig, 1, 10));
    Actuators held = new Actuators();
    double highest = -100;
    double lowest = 100;
    double swing = 0;
    String swinging = "";
    int calmSince = 0;
    double heaterW0 = 0;
    boolean dead = false;
    double[] before = new double[plant.hive().view().heatNodes()];
    double[] change = new double[before.length];
    double[] changeBefore = new double[before.length];
    for (int step = 0; step < 2 * 8640; step++) {
      held.heater = step / 100 % 2 == 0;
      held.fan = step / 37 % 3 == 0;
      if (step % 1000 == 0) {
        plant.hive().setLidOpen(step % 3000 == 0);
      }
      double stepS = step % 11 == 0 ? 1 : 10;
      plant.solve(10.0 * step, stepS, held);
      // calm: nothing was switched, and the supply did not fail or come back, for ten steps
      boolean switched = step % 100 == 0 || step % 37 == 0 || step % 1000 == 0;
      switched |= Math.abs(plant.supply().heaterW() - heaterW0) > 1;
      switched |= plant.supply().dead() != dead;
      heaterW0 = plant.supply().heaterW();
      dead = plant.supply().dead();
      calmSince = switched ? 0 : calmSince + 1;
      plant.accept();
      for (int i = 0; i < before.length; i++) {
        double c = plant.hive().view().nodeC(i, 1);
        highest = Math.max(highest, c);
        lowest = Math.min(lowest, c);
        double now = c - before[i];
        // up, down and up again is the method; one turn may well be the air
        double turned =
            Math.min(Math.abs(now), Math.min(Math.abs(change[i]), Math.abs(changeBefore[i])));
        if (calmSince > 10
            && now * change[i] < 0
            && change[i] * changeBefore[i] < 0
            && turned > swing) {
          swing = turned;
          swinging = plant.hive().view().heatNodeName(i) + " at step " + step;
        }
        changeBefore[i] = change[i];
        change[i] = now;
        before[i] = c;
      }
    }
    String found =
        String.format(
            Locale.ROOT,
            "%.2f to %.2f °C, %s back and forth by %.3f K",
            lowest,
            highest,
            swinging,
            swing);
    assertTrue(lowest > -45 && highest < 500, found);
    assertTrue(swing < 1, found);
  }
}
