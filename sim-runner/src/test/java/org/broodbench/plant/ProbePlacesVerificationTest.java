package org.broodbench.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.colony.ColonySpec;
import org.broodbench.hive.HiveModel;
import org.broodbench.hive.HiveSection;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.ProbeSpec.Place;
import org.broodbench.rig.RandomRigs;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.junit.jupiter.api.Test;

/** What probes read at their places in a bare hive on a cold night, the heater off. */
class ProbePlacesVerificationTest {
  private static final long JANUARY = 1_704_067_200L;

  private static Scenario rig(double lagS) {
    Scenario base =
        TestRigs.small(JANUARY, 2)
            .withHive(TestRigs.insulated(0, 1))
            .withColony(new ColonySpec(8000, 0.115, 4000, 2, 2, 40, 0.5, true));
    List<ProbeSpec> probes = new ArrayList<>();
    for (Place place : Place.values()) {
      probes.add(new ProbeSpec(ProbeSpec.Role.BROOD_A, place, lagS, 0, 0.01, 0, 0.4));
    }
    return TestRigs.withProbes(base, probes);
  }

  private static Plant after(double lagS, double hours) {
    Scenario rig = rig(lagS);
    Plant plant = new Plant(rig, RandomRigs.forcing(rig, 3, 0));
    Actuators off = new Actuators();
    for (double t = 0; t < hours * 3600; t += 10) {
      plant.solve(t, 10, off);
      plant.accept();
    }
    plant.solve(hours * 3600, 10, off);
    return plant;
  }

  /** Without a lag every probe reads its place. */
  @Test
  void everyPlaceIsRead() {
    Plant plant = after(1e-6, 12);
    HiveModel hive = plant.hive();
    HiveSection s = hive.section();
    double airC = s.boxes().get(0).airC();
    assertEquals(s.nestC(), read(plant, Place.BROOD_COMB), 1e-3);
    assertEquals(airC + 0.4 * (s.nestC() - airC), read(plant, Place.NEST_EDGE), 1e-3);
    assertEquals(airC, read(plant, Place.BOX_AIR), 1e-3);
    assertEquals(hive.view().nodeC(hive.view().panNode(), 1), read(plant, Place.PAN), 1e-3);
    assertEquals(
        hive.view().nodeC(hive.view().panCoreNode(), 1), read(plant, Place.PAN_FILLING), 1e-3);
    assertEquals(airC, read(plant, Place.TOP), 1e-3);
    assertEquals(s.lid().insideC(), read(plant, Place.LID), 1e-3);
    assertEquals(plant.weather().airC, read(plant, Place.OUTDOOR), 1e-6);
  }

  private static double read(Plant plant, Place place) {
    return plant.probeC(place.ordinal(), 1);
  }

  /** Bees heat themselves and not the box: only the probe between the combs tells of the brood. */
  @Test
  void aProbeOutsideTheClusterReadsCold() {
    Plant plant = after(90, 12);
    double broodC = plant.hive().view().nestC(1);
    double outC = plant.weather().airC;
    String found = "brood " + broodC + ", outdoors " + outC + ", box " + read(plant, Place.BOX_AIR);
    assertTrue(outC < 7, found);
    assertTrue(broodC > 32, found);
    assertEquals(broodC, read(plant, Place.BROOD_COMB), 0.5);
    assertTrue(read(plant, Place.NEST_EDGE) < broodC - 5, found);
    assertTrue(read(plant, Place.BOX_AIR) < broodC - 20, found);
    assertTrue(read(plant, Place.LID) < read(plant, Place.TOP), found);
  }
}
