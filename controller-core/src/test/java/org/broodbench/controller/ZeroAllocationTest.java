package org.broodbench.controller;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** C8: a step allocates nothing, nor does writing state out and reading it back. */
class ZeroAllocationTest {
  private static final int STEPS = 20_000;

  private final ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();

  private long allocated() {
    return threads.getThreadAllocatedBytes(Thread.currentThread().getId());
  }

  @Test
  void stepsAllocateNothing() {
    for (int rig = 0; rig < Rigs.COUNT; rig++) {
      Controller controller = new Controller(Rigs.of(rig));
      int[] words = new int[controller.stateWords()];
      // Readings made beforehand: the generator itself allocates.
      Readings[] readings = new Readings[200];
      Commands out = new Commands();
      RandomReadings random = new RandomReadings(new Random(rig));
      for (int i = 0; i < readings.length; i++) {
        random.next(out);
        readings[i] = copy(random.readings());
      }
      long least = Long.MAX_VALUE;
      for (int round = 0; round < 4; round++) {
        long before = allocated();
        run(controller, readings, out, words);
        least = Math.min(least, allocated() - before);
      }
      assertEquals(0, least, "rig " + rig);
    }
  }

  /** The measure is not asleep. */
  @Test
  void anAllocationWouldBeSeen() {
    long before = allocated();
    Object[] kept = new Object[1000];
    for (int i = 0; i < kept.length; i++) {
      kept[i] = new int[4];
    }
    assertTrue(allocated() - before > 10_000, "kept " + kept.length);
  }

  private static void run(Controller controller, Readings[] readings, Commands out, int[] words) {
    int now = 0;
    for (int i = 0; i < STEPS; i++) {
      now += 997;
      controller.step(now, readings[i % readings.length], out);
      if (i % 50 == 0) {
        controller.save(words);
        controller.restore(words);
      }
    }
  }

  private static Readings copy(Readings from) {
    Readings to = new Readings();
    copy(from.broodA, to.broodA);
    copy(from.broodB, to.broodB);
    copy(from.pan, to.pan);
    copy(from.top, to.top);
    copy(from.outdoor, to.outdoor);
    copy(from.humidity, to.humidity);
    copy(from.battery, to.battery);
    copy(from.batteryCurrent, to.batteryCurrent);
    copy(from.stateOfCharge, to.stateOfCharge);
    copy(from.heaterCurrent, to.heaterCurrent);
    copy(from.panelPower, to.panelPower);
    to.chargerFull = from.chargerFull;
    to.shorePresent = from.shorePresent;
    to.button = from.button;
    to.testRequest = from.testRequest;
    return to;
  }

  private static void copy(Sample from, Sample to) {
    to.value = from.value;
    to.valid = from.valid;
    to.ageMillis = from.ageMillis;
  }
}
