package org.broodbench.plant;

import org.broodbench.hive.HiveModel;

/**
 * A probe as a first-order follower of the temperature at its place, integrated with the plant's
 * own method.
 */
final class ProbeLag {
  private final double[] stages = new double[3];
  private final double[] source = new double[3];
  private final double[] curve = new double[2];
  private final double tauS;

  ProbeLag(double tauS) {
    this.tauS = tauS;
  }

  /** Starts at what the source holds. */
  void begin() {
    stages[0] = source[0];
    stages[1] = source[0];
    stages[2] = source[0];
  }

  /** The array to fill with the source's value at start, inner stage and end of the step. */
  double[] source() {
    return source;
  }

  void solve(double stepS) {
    if (tauS > 0) {
      HiveModel.follow(stages, source, tauS, stepS);
    } else {
      System.arraycopy(source, 0, stages, 0, stages.length);
    }
    HiveModel.parabola(stages, curve);
  }

  void accept() {
    stages[0] = stages[2];
    curve[0] = 0;
    curve[1] = 0;
  }

  double at(double theta) {
    return stages[0] + theta * (curve[0] + theta * curve[1]);
  }
}
