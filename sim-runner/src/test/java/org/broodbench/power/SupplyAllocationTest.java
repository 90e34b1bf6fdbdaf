package org.broodbench.power;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A step of the chain makes no objects: neither worked out nor accepted. */
class SupplyAllocationTest {

  @Test
  void solvingAndAcceptingAllocatesNothing() {
    for (boolean tracking : new boolean[] {true, false}) {
      Chains rig = new Chains();
      rig.pv = Chains.panel(150, tracking, new LoadOutput(true, 11.1, 12.6, 5));
      rig.loads = List.of(new LoadSpec("lamp", 3, 18, 6), new LoadSpec("tv", 5, 2, 3, true));
      rig.inverter = new InverterSpec(300, 3, 0.06, 1e-4);
      rig.wiring = new WiringSpec(3, 2.5, 0.01, 0.015, 30, 10, 1);
      SupplyChain chain = rig.chain(5);
      SupplyInputs in = Chains.night(5);
      in.groupWM2[0] = 500;
      in.heater = true;
      in.inverter = true;
      Chains.pass(chain, in, 20);
      ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
      long id = Thread.currentThread().getId();
      long before = threads.getThreadAllocatedBytes(id);
      Chains.pass(chain, in, 20);
      long bytes = threads.getThreadAllocatedBytes(id) - before;
      // 7200 steps; the measurement itself takes some hundred bytes
      assertTrue(bytes < 7200, "allocated " + bytes + " bytes");
    }
  }
}
