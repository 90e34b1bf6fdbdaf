package org.broodbench.bench;

import org.broodbench.hive.HiveEquations;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.events.Action;
import org.hipparchus.ode.events.AdaptableInterval;
import org.hipparchus.ode.events.ODEEventDetector;
import org.hipparchus.ode.events.ODEEventHandler;
import org.hipparchus.ode.nonstiff.DormandPrince54Integrator;

/**
 * The thermostat loop by a general integrator: Dormand and Prince's method of order five with step
 * control, thresholds located as events, the switch at the next whole second.
 */
final class GeneralIntegrator {
  private static final double LAG_S = 60;
  private final HiveEquations hive;
  private final double heaterW;
  private final double tolerance;
  final int nest;
  final Relay relay = new Relay();
  private double[] y;

  GeneralIntegrator(Scenario rig, Forcing forcing, double heaterW, double tolerance) {
    hive = new HiveEquations(rig, forcing);
    this.heaterW = heaterW;
    this.tolerance = tolerance;
    nest = hive.model().view().nestNode();
    double[] state = hive.state();
    y = java.util.Arrays.copyOf(state, state.length + 1);
    y[state.length] = state[nest];
  }

  /** Runs for some days; returns the end state. */
  double[] run(int days) {
    double t = 0;
    double endS = days * 86_400.0;
    relay.look(y[y.length - 1]);
    while (t < endS) {
      double cellEndS = Math.min(endS, (Math.floor(t / 300 + 1e-9) + 1) * 300);
      hive.holdUntil(cellEndS);
      ODEStateAndDerivative reached = integrate(t, cellEndS, true);
      y = reached.getPrimaryState();
      t = reached.getTime();
      if (t < cellEndS) { // a threshold was met: the switch comes with the next second
        double tickS = Math.min(cellEndS, Math.floor(t) + 1);
        y = integrate(t, tickS, false).getPrimaryState();
        t = tickS;
      }
      relay.look(y[y.length - 1]);
    }
    return y;
  }

  private ODEStateAndDerivative integrate(double from, double to, boolean watch) {
    DormandPrince54Integrator integrator =
        new DormandPrince54Integrator(1e-6, 300, tolerance, tolerance);
    double goalC = relay.on ? Relay.OFF_C : Relay.ON_C;
    int last = y.length - 1;
    // nothing is reported where the threshold is met at the very start
    if (watch && (relay.on ? y[last] < goalC : y[last] > goalC)) {
      integrator.addEventDetector(new Threshold(last, goalC));
    }
    boolean on = relay.on;
    OrdinaryDifferentialEquation ode =
        new OrdinaryDifferentialEquation() {
          @Override
          public int getDimension() {
            return y.length;
          }

          @Override
          public double[] computeDerivatives(double at, double[] state) {
            double[] d =
                hive.rates(at, java.util.Arrays.copyOf(state, last), on ? heaterW : 0, false, 0.6);
            double[] out = java.util.Arrays.copyOf(d, state.length);
            out[last] = (state[nest] - state[last]) / LAG_S;
            return out;
          }
        };
    return integrator.integrate(ode, new ODEState(from, y), to);
  }

  private record Threshold(int place, double goalC) implements ODEEventDetector {
    @Override
    public AdaptableInterval getMaxCheckInterval() {
      return (state, forward) -> 60;
    }

    @Override
    public int getMaxIterationCount() {
      return 100;
    }

    @Override
    public BracketingNthOrderBrentSolver getSolver() {
      return new BracketingNthOrderBrentSolver(1e-9, 1e-6, 1e-12, 5);
    }

    @Override
    public ODEEventHandler getHandler() {
      return (state, detector, increasing) -> Action.STOP;
    }

    @Override
    public double g(ODEStateAndDerivative state) {
      return state.getPrimaryState()[place] - goalC;
    }
  }
}
