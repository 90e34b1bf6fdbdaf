package org.broodbench.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class NoiseTest {
  /** Of x = φ x + e the autocorrelation is φ to the lag, its sum from −∞ to ∞ (1 + φ)/(1 − φ). */
  @Test
  void theTimeThatDeviationsLastIsThatOfAFirstOrderSeries() {
    Random random = new Random(1);
    for (double phi : new double[] {0, 0.5, 0.8}) {
      double[] x = new double[40_000];
      for (int i = 1; i < x.length; i++) {
        x[i] = phi * x[i - 1] + random.nextGaussian();
      }
      double expected = (1 + phi) / (1 - phi);
      // 40,000 values and a window of five times the sum scatter by several per cent
      assertEquals(expected, Noise.tau(x, 100), 0.15 * expected);
      assertEquals(phi, Noise.correlation(x, 1, 100), 0.02);
    }
  }

  @Test
  void smallDeviationsCountAsTheyAreAndWildOnesLess() {
    assertEquals(0.5, Misfit.soft(0.5), 0.005);
    assertEquals(-0.5, Misfit.soft(-0.5), 0.005);
    // 9·ln(1+100²/9) under the root: 7.9 instead of 100
    assertEquals(7.946, Misfit.soft(100), 0.001);
    double before = Misfit.soft(-10);
    for (double x = -9.9; x < 10; x += 0.1) {
      assertTrue(Misfit.soft(x) > before);
      // a difference quotient over 2e-5 is good to about 1e-9
      double slope = (Misfit.soft(x + 1e-5) - Misfit.soft(x - 1e-5)) / 2e-5;
      assertEquals(slope, Misfit.softSlope(x), 1e-6);
      before = Misfit.soft(x);
    }
  }
}
