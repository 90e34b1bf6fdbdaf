package org.broodbench.tune;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Predicate;
import org.broodbench.rig.TuneSpec;

/**
 * Makes new candidates: spread evenly at first, then bred from good ones by simulated binary
 * crossover and polynomial mutation, in the form of K. Deb and others, "A fast and elitist
 * multiobjective genetic algorithm: NSGA-II", IEEE Transactions on Evolutionary Computation 6
 * (2002) 182-197. Distribution indices 15 and 20 are of the order used there.
 */
final class Breeder {
  private static final double CROSSOVER_INDEX = 15;
  private static final double MUTATION_INDEX = 20;
  private static final double CROSSOVER_SHARE = 0.9;
  private static final int TRIES = 200;

  private final List<TuneSpec.Knob> knobs;
  private final Predicate<Candidate> legal;
  private final SplittableRandom random;

  /**
   * @param legal whether the controller takes a candidate at all
   */
  Breeder(List<TuneSpec.Knob> knobs, Predicate<Candidate> legal, long seed) {
    this.knobs = knobs;
    this.legal = legal;
    random = new SplittableRandom(seed);
  }

  /**
   * Candidates spread over the bounds: every knob takes each of as many equal parts of its range
   * once (M. D. McKay and others, Technometrics 21 (1979) 239-245), as far as they are legal and
   * permitted.
   */
  List<Candidate> spread(int count, Predicate<Candidate> permitted) {
    Predicate<Candidate> allowed = legal.and(permitted);
    int[][] part = new int[knobs.size()][];
    for (int k = 0; k < part.length; k++) {
      part[k] = shuffled(count);
    }
    List<Candidate> all = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double[] x = new double[knobs.size()];
      for (int k = 0; k < x.length; k++) {
        x[k] = (part[k][i] + random.nextDouble()) / count;
      }
      Candidate c = at(x);
      for (int tries = 0; !allowed.test(c) && tries < TRIES; tries++) {
        for (int k = 0; k < x.length; k++) {
          x[k] = random.nextDouble();
        }
        c = at(x);
      }
      if (allowed.test(c)) {
        all.add(c);
      }
    }
    return all;
  }

  private int[] shuffled(int count) {
    int[] order = new int[count];
    for (int i = 0; i < count; i++) {
      int j = random.nextInt(i + 1);
      order[i] = order[j];
      order[j] = i;
    }
    return order;
  }

  /** Every knob at its lowest, at its highest or, as often as at both, anywhere. */
  Candidate corner() {
    for (int tries = 0; ; tries++) {
      double[] x = new double[knobs.size()];
      for (int k = 0; k < x.length; k++) {
        int where = random.nextInt(4);
        x[k] = where < 2 ? where : random.nextDouble();
      }
      Candidate c = at(x);
      if (legal.test(c) || tries == TRIES) {
        return c;
      }
    }
  }

  /** A child of two parents, drawn by tournament from a population that is sorted best first. */
  Candidate child(List<Candidate> sorted) {
    Candidate one = sorted.get(tournament(sorted.size()));
    Candidate two = sorted.get(tournament(sorted.size()));
    for (int tries = 0; tries < TRIES; tries++) {
      double[] x = crossed(place(one), place(two));
      mutate(x);
      Candidate c = at(x);
      if (legal.test(c)) {
        return c;
      }
    }
    return one;
  }

  private int tournament(int size) {
    return Math.min(random.nextInt(size), random.nextInt(size));
  }

  private double[] crossed(double[] a, double[] b) {
    double[] child = a.clone();
    boolean cross = random.nextDouble() < CROSSOVER_SHARE;
    for (int k = 0; cross && k < child.length; k++) {
      if (random.nextBoolean()) {
        double u = random.nextDouble();
        double power = 1 / (CROSSOVER_INDEX + 1);
        double beta =
            u <= 0.5 ? StrictMath.pow(2 * u, power) : StrictMath.pow(1 / (2 * (1 - u)), power);
        double sign = random.nextBoolean() ? 1 : -1;
        child[k] = 0.5 * (a[k] + b[k] + sign * beta * (a[k] - b[k]));
      }
    }
    return child;
  }

  private void mutate(double[] x) {
    for (int k = 0; k < x.length; k++) {
      if (random.nextDouble() * x.length < 1) {
        double u = random.nextDouble();
        double power = 1 / (MUTATION_INDEX + 1);
        x[k] += u < 0.5 ? StrictMath.pow(2 * u, power) - 1 : 1 - StrictMath.pow(2 * (1 - u), power);
      }
    }
  }

  /** From shares of the ranges to values on their grids. */
  private Candidate at(double[] x) {
    List<Integer> counts = new ArrayList<>();
    for (int k = 0; k < x.length; k++) {
      TuneSpec.Knob knob = knobs.get(k);
      int most = knob.values() - 1;
      int index = (int) Math.rint(x[k] * most);
      counts.add(knob.low() + knob.step() * Math.max(0, Math.min(most, index)));
    }
    return new Candidate(counts);
  }

  /** Where a candidate stands in the bounds: every knob as a share of its range. */
  double[] place(Candidate c) {
    double[] x = new double[knobs.size()];
    for (int k = 0; k < x.length; k++) {
      TuneSpec.Knob knob = knobs.get(k);
      double span = Math.max(1, knob.high() - knob.low());
      x[k] = (c.counts().get(k) - knob.low()) / span;
    }
    return x;
  }
}
