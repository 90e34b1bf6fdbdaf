package org.broodbench.plant;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import org.broodbench.rig.RandomRigs;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.junit.jupiter.api.Test;

/** A step makes no garbage: years of steps fit into any heap. */
class AllocationVerificationTest {
  private static final int STEPS = 50_000;

  @Test
  void stepsAllocateNothing() {
    Scenario rig = TestRigs.small(1_706_745_600L, 7);
    Plant plant = new Plant(rig, RandomRigs.forcing(rig, 3, 4));
    Actuators held = new Actuators();
    run(plant, held, STEPS / 10); // classes are loaded, methods compiled
    var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    long before = threads.getCurrentThreadAllocatedBytes();
    run(plant, held, STEPS);
    long bytes = threads.getCurrentThreadAllocatedBytes() - before;
    // asking costs a little itself
    assertTrue(bytes < 1000, bytes + " bytes in " + STEPS + " steps");
  }

  private static void run(Plant plant, Actuators held, int steps) {
    for (int i = 0; i < steps; i++) {
      held.heater = i / 100 % 2 == 0;
      held.fan = i / 500 % 4 == 0;
      plant.longestStepS(held);
      plant.solve(10.0 * i, i % 50 == 0 ? 3 : 10, held);
      plant.probeC(0, 0.5);
      plant.accept();
    }
  }
}
