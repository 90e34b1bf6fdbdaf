package org.broodbench.hive;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import org.broodbench.rig.RandomRigs;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.broodbench.sky.Forcing;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * The step of the run against a general integrator of order eight at a relative tolerance of 1e-11,
 * on the same equations over seven days of winter weather.
 */
class EngineVerificationTest {
  private static final int DAYS = 7;
  private static final int SAMPLE_S = 600;
  private static final double ELECTRONICS_W = 0.6;

  private static Scenario rig;
  private static Forcing forcing;

  /** What is switched when. */
  private enum Schedule {
    /** Heater on throughout, fan off. */
    CONSTANT,
    /** Heater every 20 minutes, fan about every two hours: over 500 switches. */
    SWITCHED;

    boolean heater(long second) {
      return this == CONSTANT || second / 1200 % 2 == 0;
    }

    boolean fan(long second) {
      return this == SWITCHED && (second + 430) / 3610 % 2 == 1;
    }

    boolean changes(long second) {
      return heater(second) != heater(second - 1) || fan(second) != fan(second - 1);
    }
  }

  @BeforeAll
  static void weather() {
    rig = TestRigs.small(1_706_745_600L, DAYS); // 1 February 2024
    forcing = RandomRigs.forcing(rig, 3, 4);
  }

  private static double heaterW(Schedule s, long second) {
    return s.heater(second) ? 25 : 0;
  }

  /** Rows of temperatures every ten minutes by the run's own step. */
  private static double[][] own(Schedule schedule, int stepS) {
    HiveEquations e = new HiveEquations(rig, forcing);
    HiveModel m = e.model();
    double[][] rows = new double[DAYS * 86_400 / SAMPLE_S][];
    long t = 0;
    for (int r = 0; r < rows.length; r++) {
      long until = (r + 1L) * SAMPLE_S;
      while (t < until) {
        long end = (t / stepS + 1) * stepS;
        for (long x = t + 1; x < end; x++) {
          if (schedule.changes(x)) {
            end = x;
          }
        }
        boolean fan = schedule.fan(t);
        m.fan(fan);
        end = Math.min(end, t + (long) Math.min(m.longestStepS(), stepS));
        double h = end - t;
        m.solve(h, heaterW(schedule, t), schedule.fan(t), ELECTRONICS_W, e.weather(t + h / 2));
        m.accept();
        t = end;
      }
      rows[r] = HiveRates.state(m);
    }
    return rows;
  }

  private static double[][] reference(Schedule schedule) {
    HiveEquations e = new HiveEquations(rig, forcing);
    double[] y = e.state();
    double[] absolute = new double[y.length];
    for (int i = 0; i < y.length; i++) {
      absolute[i] = i < e.temperatures() ? 1e-10 : 1e-13;
    }
    double[] relative = new double[y.length];
    java.util.Arrays.fill(relative, 1e-11);
    var integrator = new DormandPrince853Integrator(1e-9, 60, absolute, relative);
    double[][] rows = new double[DAYS * 86_400 / SAMPLE_S][];
    long t = 0;
    for (int r = 0; r < rows.length; r++) {
      long until = (r + 1L) * SAMPLE_S;
      while (t < until) {
        // cells of the weather end every 300 s, where sunlight jumps
        long end = (t / 300 + 1) * 300;
        for (long x = t + 1; x < end; x++) {
          if (schedule.changes(x)) {
            end = x;
          }
        }
        long from = t;
        e.holdUntil(end);
        OrdinaryDifferentialEquation ode =
            new OrdinaryDifferentialEquation() {
              @Override
              public int getDimension() {
                return absolute.length;
              }

              @Override
              public double[] computeDerivatives(double at, double[] state) {
                return e.rates(
                    at, state, heaterW(schedule, from), schedule.fan(from), ELECTRONICS_W);
              }
            };
        y = integrator.integrate(ode, new ODEState(t, y), end).getPrimaryState();
        t = end;
      }
      rows[r] = y.clone();
    }
    return rows;
  }

  /** The classical method of order four at a step of a second: a third, unrelated answer. */
  private static double[][] rungeKutta(Schedule schedule) {
    HiveEquations e = new HiveEquations(rig, forcing);
    double[] y = e.state();
    double[][] rows = new double[DAYS * 86_400 / SAMPLE_S][];
    for (int t = 0; t < DAYS * 86_400; t++) {
      e.holdUntil(t + 1);
      double w = heaterW(schedule, t);
      boolean fan = schedule.fan(t);
      double[] k1 = e.rates(t, y, w, fan, ELECTRONICS_W);
      double[] k2 = e.rates(t + 0.5, along(y, k1, 0.5), w, fan, ELECTRONICS_W);
      double[] k3 = e.rates(t + 0.5, along(y, k2, 0.5), w, fan, ELECTRONICS_W);
      double[] k4 = e.rates(t + 1, along(y, k3, 1), w, fan, ELECTRONICS_W);
      for (int i = 0; i < y.length; i++) {
        y[i] += (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]) / 6;
      }
      if ((t + 1) % SAMPLE_S == 0) {
        rows[(t + 1) / SAMPLE_S - 1] = y.clone();
      }
    }
    return rows;
  }

  private static double[] along(double[] y, double[] k, double h) {
    double[] out = new double[y.length];
    for (int i = 0; i < y.length; i++) {
      out[i] = y[i] + h * k[i];
    }
    return out;
  }

  private record Worst(double kelvin, String where) {
    @Override
    public String toString() {
      return String.format(Locale.ROOT, "%.3g K at %s", kelvin, where);
    }
  }

  private static Worst worst(double[][] rows, double[][] truth) {
    HiveModel names = new HiveEquations(rig, forcing).model();
    double worst = 0;
    String where = "";
    for (int r = 0; r < rows.length; r++) {
      for (int i = 0; i < names.view().heatNodes(); i++) {
        double error = Math.abs(rows[r][i] - truth[r][i]);
        if (!(error <= worst)) {
          worst = error;
          where = names.view().heatNodeName(i) + " after " + (r + 1) * SAMPLE_S + " s";
        }
      }
    }
    return new Worst(worst, where);
  }

  /** Measured: 6.1e-5 K at 10 s, 3.6 times less at 5 s. */
  @Test
  void withoutSwitching() {
    double[][] truth = reference(Schedule.CONSTANT);
    Worst five = worst(own(Schedule.CONSTANT, 5), truth);
    Worst ten = worst(own(Schedule.CONSTANT, 10), truth);
    Worst classical = worst(rungeKutta(Schedule.CONSTANT), truth);
    String found = "5 s: " + five + "; 10 s: " + ten + "; Runge-Kutta 1 s: " + classical;
    assertTrue(classical.kelvin < 1e-5, found);
    assertTrue(ten.kelvin <= 1e-3, found);
    assertTrue(ten.kelvin / five.kelvin >= 3.5, found);
  }

  /** Measured: 0.027 K at 10 s, 0.0054 K at 5 s, in the air soon after the fan was switched. */
  @Test
  void withAnImposedSchedule() {
    double[][] truth = reference(Schedule.SWITCHED);
    int switches = 0;
    for (long t = 1; t < DAYS * 86_400; t++) {
      switches += Schedule.SWITCHED.changes(t) ? 1 : 0;
    }
    Worst five = worst(own(Schedule.SWITCHED, 5), truth);
    Worst ten = worst(own(Schedule.SWITCHED, 10), truth);
    Worst classical = worst(rungeKutta(Schedule.SWITCHED), truth);
    String found =
        switches + " switches; 5 s: " + five + "; 10 s: " + ten + "; Runge-Kutta 1 s: " + classical;
    assertTrue(switches >= 400, found);
    assertTrue(classical.kelvin < 1e-3, found);
    assertTrue(five.kelvin <= 0.02, found);
    assertTrue(ten.kelvin <= 0.1, found);
  }
}
