package org.broodbench.tune;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;

/** Boxes whose volume is known. */
class DominatedVerificationTest {
  private static final int POINTS = 40_000;

  private static Scores of(double out, double energy, double starts) {
    return new Scores(List.of(out, energy, starts, 1.0, 0.0, 50.0));
  }

  /** The box is 1.1 times as wide as its scores; four standard errors of the points are 0.01. */
  private static final double NEAR = 0.01 * POINTS;

  private static Dominated space() {
    return new Dominated(List.of(of(0, 2000, 100), of(100, 0, 100), of(0, 0, 1100)), POINTS);
  }

  @Test
  void whatOneAddsIsItsVolumeThatNoneHasTaken() {
    Dominated space = space();
    double half = (1.1 - 0.5) / 1.1;
    assertEquals(half * POINTS, space.gain(of(50, 0, 100)), NEAR);
    space.take(of(50, 0, 100));
    assertEquals(0, space.gain(of(50, 0, 100)));
    assertEquals(0, space.gain(of(60, 100, 200)));
    assertEquals((1 - half) * half * POINTS, space.gain(of(0, 1000, 100)), NEAR);
    Dominated copy = space.copy();
    copy.take(of(0, 0, 100));
    assertEquals((1 - half) * POINTS, space.gain(of(0, 0, 100)), NEAR);
    assertEquals(0, copy.gain(of(0, 0, 100)));
  }

  @Test
  void whatLiesOutsideOfTheBoxAddsNothingAndAimsWithoutWidthDoNotCount() {
    assertEquals(0, space().gain(of(111, 0, 0)));
    Scores better = new Scores(List.of(50.0, 0.0, 100.0, 0.2, 0.0, 10.0));
    assertEquals(space().gain(of(50, 0, 100)), space().gain(better));
    assertTrue(space().gain(of(-5, -5, -5)) == POINTS);
  }

  /** Points are looked up in sorted blocks; counted one by one they are as many. */
  @Test
  void blocksCountAsOneByOneDoes() {
    int count = 1000; // whole blocks and a part of one
    List<Scores> box = List.of(of(0, 2000, 100), of(100, 0, 100), of(0, 0, 1100));
    SplittableRandom random = new SplittableRandom(3);
    Dominated space = new Dominated(box, count);
    List<double[]> points = new ArrayList<>();
    SplittableRandom same = new SplittableRandom(1); // as the class draws them
    for (int p = 0; p < count; p++) {
      points.add(
          new double[] {
            same.nextDouble() * 1.1 * 100,
            same.nextDouble() * 1.1 * 2000,
            100 + same.nextDouble() * 1.1 * 1000
          });
    }
    for (int i = 0; i < 200 && !points.isEmpty(); i++) {
      double[] s = {
        130 * random.nextDouble() - 10, 2400 * random.nextDouble(), 1300 * random.nextDouble()
      };
      Predicate<double[]> beaten = p -> s[0] <= p[0] && s[1] <= p[1] && s[2] <= p[2];
      assertEquals(points.stream().filter(beaten).count(), space.gain(of(s[0], s[1], s[2])));
      if (i % 20 == 19) {
        space.take(of(s[0], s[1], s[2]));
        points.removeIf(beaten);
      }
    }
  }
}
