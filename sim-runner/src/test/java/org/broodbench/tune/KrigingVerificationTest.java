package org.broodbench.tune;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Guesses of known functions. */
class KrigingVerificationTest {
  private interface Function {
    double of(double[] x);
  }

  private static double[][] places(int count, int directions, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[][] places = new double[count][directions];
    for (double[] p : places) {
      for (int k = 0; k < directions; k++) {
        p[k] = random.nextDouble();
      }
    }
    return places;
  }

  private static double[] values(double[][] places, Function f) {
    double[] y = new double[places.length];
    for (int i = 0; i < y.length; i++) {
      y[i] = f.of(places[i]);
    }
    return y;
  }

  private static double bowl(double[] x) {
    return 3 + StrictMath.sin(4 * x[0]) + (x[1] - 0.4) * (x[1] - 0.4) - 0.5 * x[0] * x[1];
  }

  @Test
  void aSmoothFunctionIsGuessedBetweenItsPlacesAndMetAtThem() {
    double[][] at = places(40, 3, 1);
    double[] y = values(at, KrigingVerificationTest::bowl);
    Kriging k = Kriging.fit(at, y, null, 90);
    double[] guess = new double[2];
    for (int i = 0; i < at.length; i++) {
      k.at(at[i], true, guess);
      // noise of 1e-6 of the variance is the least that is held possible
      assertEquals(y[i], guess[0], 1e-3);
      assertTrue(guess[1] < 1e-2, "error at a known place " + guess[1]);
    }
    double worst = 0;
    for (double[] x : places(200, 3, 2)) {
      k.at(x, true, guess);
      worst = Math.max(worst, Math.abs(guess[0] - bowl(x)));
    }
    // the function ranges over about 2; measured 0.02
    assertTrue(worst < 0.06, "worst " + worst);
  }

  /** Of many guesses about two thirds lie within one standard error, if the errors are right. */
  @Test
  void noiseIsToldFromCourseAndErrorsAreHonest() {
    SplittableRandom random = new SplittableRandom(3);
    double[][] at = places(80, 2, 4);
    double[] y = values(at, x -> bowl(x) + 0.2 * (random.nextDouble() - 0.5));
    Kriging k = Kriging.fit(at, y, null, 90);
    double[] guess = new double[2];
    double sumZ2 = 0;
    double sumOff2 = 0;
    double[][] others = places(200, 2, 5);
    for (double[] x : others) {
      k.at(x, true, guess);
      double off = guess[0] - bowl(x);
      sumZ2 += off * off / (guess[1] * guess[1]);
      sumOff2 += off * off;
    }
    double z = StrictMath.sqrt(sumZ2 / others.length);
    // noise alone has a deviation of 0.058: the guess must be better than a single value
    assertTrue(StrictMath.sqrt(sumOff2 / others.length) < 0.045);
    assertTrue(z > 0.5 && z < 1.6, "error over standard error " + z);
  }

  @Test
  void farFromEveryPlaceItIsTheMeanAndUnsure() {
    double[][] at = {{0}, {0.1}, {0.2}, {0.3}};
    double[] y = {1, 2, 1.2, 1.8};
    Kriging k = Kriging.fit(at, y, null, 60);
    double[] near = new double[2];
    double[] far = new double[2];
    k.at(new double[] {0.15}, true, near);
    k.at(new double[] {50}, true, far);
    assertEquals(1.5, far[0], 0.15);
    assertTrue(far[1] > 0.2 && far[1] >= near[1], far[1] + " against " + near[1]);
  }

  @Test
  void theSameValuesGiveTheSameGuessAndTheErrorDoesNotTouchIt() {
    double[][] at = places(30, 4, 6);
    double[] y = values(at, KrigingVerificationTest::bowl);
    Kriging first = Kriging.fit(at, y, null, 60);
    Kriging second = Kriging.fit(at, y, null, 60);
    double[] a = new double[2];
    double[] b = new double[2];
    for (double[] x : places(20, 4, 7)) {
      first.at(x, true, a);
      second.at(x, true, b);
      assertArrayEquals(a, b, "bit for bit");
      second.at(x, false, b);
      assertEquals(a[0], b[0]);
    }
    double[] met = new double[2];
    Kriging again = Kriging.fit(at, y, first, 1);
    again.at(at[3], false, met);
    first.at(at[3], false, a);
    assertEquals(a[0], met[0], "one trial takes the lengths of the one before");
  }
}
