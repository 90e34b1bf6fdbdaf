package org.broodbench.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class DoubtTest {
  /** A log that says nothing leaves the prior, however much it is doubted. */
  @Test
  void thePriorIsNotDoubted() {
    for (Knob k : Knob.values()) {
      assertEquals(1, Doubt.widening(k, 1));
      assertEquals(1, 0.99 * Doubt.widening(k, 0.99), 0.06);
      assertTrue(0.5 * Doubt.widening(k, 0.5) < 1);
    }
  }

  /** Where the log says nearly all, its standard deviation times the factor is what is left. */
  @Test
  void aSharpWordIsTakenByItsFactor() {
    assertEquals(2, Doubt.widening(Knob.AIR_LEAKAGE, 0.01), 0.001);
    assertEquals(1.4, Doubt.widening(Knob.HIVE_LOSS, 0.01), 0.001);
    assertEquals(0.5, Doubt.widening(Knob.PAN_HEAT, 0.01), 0.001);
    assertEquals(1, Doubt.widening(Knob.HUMIDITY_OFFSET, 0.3), 1e-12);
  }
}
