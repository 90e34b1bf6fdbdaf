package org.broodbench.study;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class SureStudyValidationTest {
  /**
   * Function and first-order indices of Ishigami and Homma 1990 (a = 7, b = 0.1): 0.3139, 0.4424,
   * 0.
   */
  @Test
  void sharesOfAPublishedFunction() {
    int n = 40_000;
    double[][] x = new double[3][n];
    double[] y = new double[n];
    SplittableRandom random = new SplittableRandom(3);
    for (int i = 0; i < n; i++) {
      double[] v = new double[3];
      for (int k = 0; k < 3; k++) {
        x[k][i] = random.nextDouble();
        v[k] = Math.PI * (2 * x[k][i] - 1);
      }
      double s = Math.sin(v[1]);
      y[i] = Math.sin(v[0]) + 7 * s * s + 0.1 * Math.pow(v[2], 4) * Math.sin(v[0]);
    }
    // 64 bins smooth the swiftest term by 0.3 percent; the rest is chance of 40,000 members
    assertEquals(0.3139, SureStudy.share(x[0], y, 64), 0.012);
    assertEquals(0.4424, SureStudy.share(x[1], y, 64), 0.012);
    assertEquals(0, SureStudy.share(x[2], y, 64), 0.004);
  }

  /** What does not depend on a number gives it nothing, however few members there are. */
  @Test
  void chanceExplainsNothing() {
    SplittableRandom random = new SplittableRandom(8);
    double sum = 0;
    for (int k = 0; k < 200; k++) {
      double[] x = random.doubles(160).toArray();
      double[] y = random.doubles(160).toArray();
      sum += SureStudy.share(x, y, 8) / 200;
    }
    // cut off at nought, so that chance leaves a little on average
    assertEquals(0.012, sum, 0.008);
  }

  /** Score interval for 0, 5 and 10 of 10 at 90 %, worked out by hand from Wilson 1927. */
  @Test
  void sharesHaveTheScoreInterval() {
    assertEquals(0.213, Sure.Chance.of(0, 10).high(), 0.001);
    assertEquals(0.269, Sure.Chance.of(5, 10).low(), 0.001);
    assertEquals(0.787, Sure.Chance.of(10, 10).low(), 0.001);
  }
}
