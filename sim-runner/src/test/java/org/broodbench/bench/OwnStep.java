package org.broodbench.bench;

import org.broodbench.hive.HiveEquations;
import org.broodbench.hive.HiveModel;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;

/** The thermostat loop by the run's own step with a look every second inside it. */
final class OwnStep {
  private static final double LAG_S = 60;
  private final HiveEquations weather;
  private final HiveModel hive;
  private final double heaterW;
  private final int stepS;
  private final int nest;
  private final double[] stages = new double[3];
  private final double[] source = new double[3];
  private final double[] curve = new double[2];
  final Relay relay = new Relay();

  OwnStep(Scenario rig, Forcing forcing, double heaterW, int stepS) {
    weather = new HiveEquations(rig, forcing);
    hive = weather.model();
    this.heaterW = heaterW;
    this.stepS = stepS;
    nest = hive.view().nestNode();
    stages[0] = hive.view().nodeC(nest, 0);
  }

  /** Runs for some days; returns the nest's end temperature. */
  double run(int days) {
    long endS = days * 86_400L;
    long t = 0;
    relay.look(stages[0]);
    while (t < endS) {
      long stepEnd = (t / stepS + 1) * stepS;
      long reached = stepEnd;
      boolean held = relay.on;
      solve(t, stepEnd - t, held);
      for (long tick = t + 1; tick <= stepEnd; tick++) {
        double theta = (double) (tick - t) / (stepEnd - t);
        relay.look(stages[0] + theta * (curve[0] + theta * curve[1]));
        if (relay.on != held) {
          reached = tick;
          break;
        }
      }
      if (reached < stepEnd) {
        solve(t, reached - t, held);
      }
      hive.accept();
      stages[0] = stages[2];
      t = reached;
    }
    return hive.view().nodeC(nest, 1);
  }

  private void solve(long from, long seconds, boolean on) {
    hive.solve(seconds, on ? heaterW : 0, false, 0.6, weather.weather(from + 0.5 * seconds));
    hive.view().stages(nest, source);
    HiveModel.follow(stages, source, LAG_S, seconds);
    HiveModel.parabola(stages, curve);
  }
}
