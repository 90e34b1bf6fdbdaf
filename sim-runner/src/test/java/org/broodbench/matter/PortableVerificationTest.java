package org.broodbench.matter;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The functions of the step against {@link StrictMath}. */
class PortableVerificationTest {

  @Test
  void exponential() {
    double worst = 0;
    for (double x = -40; x <= 40; x += 1.0 / 1024) {
      double truth = StrictMath.exp(x);
      worst = Math.max(worst, Math.abs(Portable.exp(x) - truth) / truth);
    }
    assertTrue(worst < 1e-12, "relative error of exp: " + worst);
    // held beyond ±40
    assertEquals(Portable.exp(40), Portable.exp(1e300), 0);
    assertEquals(Portable.exp(-40), Portable.exp(Double.NEGATIVE_INFINITY), 0);
  }

  @Test
  void logistic() {
    for (double x = -60; x <= 60; x += 1.0 / 64) {
      assertEquals(1 / (1 + StrictMath.exp(-x)), Portable.logistic(x), 1e-12);
    }
  }

  @Test
  void signedRoot() {
    double delta = 0.005;
    for (double x = 100 * delta; x < 100; x *= 1.01) {
      double truth = StrictMath.sqrt(x);
      assertEquals(truth, Portable.signedRoot(x, delta), 3e-5 * truth);
      assertEquals(-Portable.signedRoot(x, delta), Portable.signedRoot(-x, delta), 0);
    }
    assertEquals(0, Portable.signedRoot(0, delta), 0);
  }

  /** Never negative, even where the square of a huge argument swallows the rounding. */
  @Test
  void positivePart() {
    for (double x = 1e-9; x < 1e12; x *= 1.7) {
      assertTrue(Portable.positivePart(-x, 0.005) >= 0);
      assertEquals(x, Portable.positivePart(x, 0.005), 0.005);
      assertTrue(Portable.positivePart(x, 0.005) >= x);
    }
  }

  @Test
  void saturationPressure() {
    for (double c = -60; c <= 80; c += 0.05) {
      double truth = MoistAir.saturationWaterPa(c);
      assertEquals(truth, MoistAir.fastSaturationWaterPa(c), 1e-7 * truth);
    }
  }

  @Test
  void nearestWholeNumbersAreThoseOfTheLibrary() {
    SplittableRandom random = new SplittableRandom(1);
    for (int i = 0; i < 200_000; i++) {
      double wide = Double.longBitsToDouble(random.nextLong());
      double half = random.nextInt(-100_000, 100_000) / 2.0;
      double near = half + (random.nextDouble() - 0.5) * 1e-9;
      for (double x : new double[] {wide, half, near, Math.nextUp(half), Math.nextDown(half)}) {
        assertEquals(Math.rint(x) + 0.0, Portable.rint(x));
      }
    }
    double halfBeyond = Math.pow(2, 51) + 0.5;
    assertEquals(Math.rint(halfBeyond), Portable.rint(halfBeyond));
    assertEquals(Double.POSITIVE_INFINITY, Portable.rint(Double.POSITIVE_INFINITY));
  }
}
