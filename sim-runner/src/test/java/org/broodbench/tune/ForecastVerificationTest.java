package org.broodbench.tune;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Forecasts of made scores whose rule is known. */
class ForecastVerificationTest {
  private static final int TRIED = 60;
  private static final int FULL = 12;

  private static Scores few(double[] x) {
    double out = 100 + 300 * x[0];
    return new Scores(List.of(out, 4000 - 2000 * x[0], 30 + 900 * x[1] * x[1], 0.5, 0.0, 700.0));
  }

  /** Another level, a straight line of the logarithm, and a part of its own. */
  private static Scores all(double[] x) {
    Scores s = few(x);
    double out = 0.7 * (s.get(Aim.OUT_OF_BAND) + 2) * (1 + 0.2 * x[1]) - 2;
    return new Scores(
        List.of(out, 0.8 * s.get(Aim.ENERGY), 1.3 * s.get(Aim.STARTS), 0.4, 0.0, 650.0));
  }

  private static Forecast forecast(List<double[]> places, int full) {
    Map<Integer, Scores> onAll = new HashMap<>();
    for (int i = 0; i < full; i++) {
      onAll.put(i, all(places.get(i)));
    }
    return new Forecast(
        places, places.stream().map(ForecastVerificationTest::few).toList(), onAll, null);
  }

  private static List<double[]> places(int count, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    List<double[]> places = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      places.add(new double[] {random.nextDouble(), random.nextDouble()});
    }
    return places;
  }

  @Test
  void scoresOverAllSeasonsAreForetoldFromThoseOverAFew() {
    List<double[]> tried = places(TRIED, 1);
    Forecast forecast = forecast(tried, FULL);
    for (double[] x : places(40, 2)) {
      Scores truth = all(x);
      // tried on the few seasons, and not at all: within 4 and 8 %, measured 2 and 4 %
      near(truth, forecast.of(x, few(x), 0).middle(), 0.04);
      near(truth, forecast.of(x, null, 0).middle(), 0.08);
      Forecast.Guess guess = forecast.of(x, null, 1);
      for (Aim aim : Aim.values()) {
        assertTrue(guess.hoped().get(aim) <= guess.middle().get(aim), aim.words());
      }
      assertEquals(forecast.of(x, null, 0).middle(), guess.middle());
    }
  }

  private static void near(Scores truth, Scores guess, double share) {
    for (Aim aim : Aim.values()) {
      double tolerance = share * (truth.get(aim) + aim.grain());
      assertEquals(truth.get(aim), guess.get(aim), tolerance, aim.words());
    }
  }

  /** One candidate known on all seasons gives the level alone. */
  @Test
  void withOneKnownOnAllSeasonsTheRatioIsTakenFromIt() {
    List<double[]> tried = places(TRIED, 3);
    Forecast forecast = forecast(tried, 1);
    Scores guess = forecast.of(tried.get(5), few(tried.get(5)), 0).middle();
    assertEquals(0.8 * few(tried.get(5)).get(Aim.ENERGY), guess.get(Aim.ENERGY), 20);
    assertEquals(0.0, guess.get(Aim.LOSS_OF_LOAD), 1e-9);
  }
}
