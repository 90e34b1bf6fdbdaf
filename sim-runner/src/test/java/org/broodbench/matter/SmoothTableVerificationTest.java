package org.broodbench.matter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Cubic pieces against the functions they were made from. */
class SmoothTableVerificationTest {

  /** The steepest shape of the colony: a logistic curve of half a kelvin. */
  @Test
  void steepShapeIsMetWithinTwoMillionths() {
    DoubleUnaryOperator steep = c -> 1 / (1 + StrictMath.exp((36 - c) * 2));
    SmoothTable table = new SmoothTable(-40, 70, 8, steep);
    for (double c = -40; c <= 70; c += 0.0037) {
      assertEquals(steep.applyAsDouble(c), table.at(c), 2e-6);
    }
  }

  /**
   * Humidity ratio of saturated air at 900 hPa: a ten-millionth is far below what anybody reads.
   */
  @Test
  void saturationIsMetWithinATenMillionth() {
    DoubleUnaryOperator ratio = c -> MoistAir.humidityRatio(MoistAir.saturationWaterPa(c), 90_000);
    SmoothTable table = new SmoothTable(-60, 80, 2, ratio);
    double worst = 0;
    for (double c = -60; c <= 60; c += 0.0037) {
      double truth = ratio.applyAsDouble(c);
      worst = Math.max(worst, Math.abs(table.at(c) - truth) / truth);
    }
    assertTrue(worst < 1e-7, "relative error " + worst);
  }

  /** Beyond the ends the end values hold; at a knot both pieces meet in value and slope. */
  @Test
  void endsHoldAndKnotsAreSmooth() {
    SmoothTable table = new SmoothTable(0, 10, 4, c -> c * c);
    assertEquals(table.at(0), table.at(-1e9), 0);
    assertEquals(100, table.at(1e9), 1e-9);
    double d = 1e-6;
    for (double knot = 0.25; knot < 9.9; knot += 0.25) {
      double before = (table.at(knot) - table.at(knot - d)) / d;
      double after = (table.at(knot + d) - table.at(knot)) / d;
      assertEquals(before, after, 1e-4);
    }
  }
}
