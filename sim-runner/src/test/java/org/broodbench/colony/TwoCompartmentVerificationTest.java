package org.broodbench.colony;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The two-compartment models of D. S. Khoury, M. R. Myerscough and A. B. Barron (PLoS ONE 6 (2011)
 * e18491) and D. S. Khoury, A. B. Barron and M. R. Myerscough (PLoS ONE 8 (2013) e59084), written
 * with our rates. Numbers beside the tests were worked out from the printed equations; the paper's
 * own threshold is about 0.355. The equations of 2013 are second-hand.
 */
class TwoCompartmentVerificationTest {
  private interface Slope {
    void at(double[] y, double[] dy);
  }

  /** 2011: hive bees and foragers. */
  private static Slope colony2011(double m) {
    return (y, dy) -> {
      double recruits = y[0] * SocialRates.recruitment(y[0], y[1], 1);
      dy[0] = 2000 * SocialRates.raised(y[0] + y[1], 27_000) - recruits;
      dy[1] = recruits - m * y[1];
    };
  }

  /** 2013: hive bees, foragers, food in g, uncapped brood. */
  private static Slope colony2013(double m) {
    return (y, dy) -> {
      double plenty = SocialRates.plenty(y[2], 500);
      double recruits = y[0] * SocialRates.recruitment(y[0], y[1], plenty);
      double capped = y[3] / 9;
      dy[0] = capped - recruits;
      dy[1] = recruits - m * y[1];
      dy[2] = 0.1 * y[1] - 0.007 * (y[0] + y[1]) - 0.018 * y[3];
      dy[3] = 2000 * plenty * SocialRates.raised(y[0], 5000) - capped;
    };
  }

  /** The classical method of order four, ten steps a day. */
  private static double[] after(int days, Slope slope, double... start) {
    double[] y = start.clone();
    int n = y.length;
    double[][] k = new double[4][n];
    double[] at = new double[n];
    double h = 0.1;
    for (int i = 0; i < days * 10; i++) {
      slope.at(y, k[0]);
      for (int s = 1; s < 4; s++) {
        double part = s == 3 ? h : h / 2;
        for (int j = 0; j < n; j++) {
          at[j] = y[j] + part * k[s - 1][j];
        }
        slope.at(at, k[s]);
      }
      for (int j = 0; j < n; j++) {
        y[j] += h / 6 * (k[0][j] + 2 * k[1][j] + 2 * k[2][j] + k[3][j]);
      }
    }
    return y;
  }

  @ParameterizedTest
  @CsvSource({"0.154, 16841, 5944", "0.20, 10261, 3352", "0.24, 6470, 1988", "0.30, 2542, 718"})
  void equilibria(double m, double hive, double foragers) {
    double[] y = after(5000, colony2011(m), 16_000, 8000);
    assertEquals(hive, y[0], 1);
    assertEquals(foragers, y[1], 1);
  }

  @ParameterizedTest
  @CsvSource({"0.24, 100, 7911.2, 2441.7", "0.40, 100, 1946.9, 494.1", "0.40, 200, 682.8, 172.4"})
  void trajectories(double m, int days, double hive, double foragers) {
    double[] y = after(days, colony2011(m), 16_000, 8000);
    assertEquals(hive, y[0], 1e-3 * hive);
    assertEquals(foragers, y[1], 1e-3 * foragers);
  }

  /** Above a loss of foragers of 0.3552 a day the colony fails: its growth from few bees is nil. */
  @Test
  void threshold() {
    double low = 0.3;
    double high = 0.4;
    while (high - low > 1e-5) {
      double m = 0.5 * (low + high);
      // the mix of a small colony settles within weeks; after that it grows or shrinks
      double[] settled = after(200, colony2011(m), 1, 0.3);
      double[] later = after(10, colony2011(m), settled);
      if (later[0] > settled[0]) {
        low = m;
      } else {
        high = m;
      }
    }
    assertEquals(0.3552, low, 0.0005);
  }

  @Test
  void equilibriumWithFood() {
    double[] y = after(4000, colony2013(0.42), 9000, 2500, 1300, 10_000);
    assertEquals(1303.7, y[2], 0.5);
    assertEquals(9802.4, y[0], 1);
    assertEquals(2749.1, y[1], 1);
    assertEquals(10_391, y[3], 2);
  }

  /**
   * Wisconsin counts of 1924–25, abstract: mean about 20.5 d; slower in the cool, 24 d at 32 °C.
   */
  @Test
  void development() {
    assertEquals(20.5, 1 / BroodNest.growthPerDay(35), 0.5);
    assertEquals(24, 1 / BroodNest.growthPerDay(32), 0.1);
    assertEquals(0, BroodNest.growthPerDay(27.9));
    assertEquals(BroodNest.growthPerDay(36), BroodNest.growthPerDay(37));
  }

  /** Fukuda and Sakagami 1968, second-hand: of 100 eggs 94.2 reach the larva, 85.1 the adult. */
  @Test
  void undisturbedBroodEmerges() {
    BroodNest nest = new BroodNest();
    nest.lay(100);
    double emerged = 0;
    int hours = 0;
    while (nest.all() > 0) {
      nest.hour(34.5, 34.5, 0, 0);
      emerged += nest.emerged();
      hours++;
    }
    assertEquals(85, emerged, 3);
    assertTrue(hours > 19.5 * 24 && hours < 22 * 24, "hours: " + hours);
  }
}
