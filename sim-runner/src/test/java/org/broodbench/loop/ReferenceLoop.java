package org.broodbench.loop;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Readings;
import org.broodbench.controller.ShedLevel;
import org.broodbench.hive.HiveEquations;
import org.broodbench.plant.Plant;
import org.broodbench.power.SupplyChain;
import org.broodbench.power.SupplyInputs;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.Sample;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;

/**
 * The closed loop worked out without the run's own step: the same core and the same equations, each
 * interval between two ticks integrated to a relative tolerance of 1e-11 (or by the classical
 * method of order four at a second). For probes without noise at the comb, the pan and outdoors.
 */
final class ReferenceLoop {
  private final Scenario rig;
  private final HiveEquations hive;
  private final SupplyChain supply;
  private final SupplyInputs inputs;
  private final List<ProbeSpec> probes;
  private final Readings readings = new Readings();
  private final Commands commands = new Commands();
  private final boolean classical;
  private final DormandPrince853Integrator integrator;
  private double[] y;
  private double heaterW;
  private boolean fan;
  private String shown = "";
  private boolean heaterShown;
  private boolean fanShown;
  private int levelShown = -1;

  /** What switched in turn, such as "heater on". */
  final List<String> switches = new ArrayList<>();

  /** When it did, s. */
  final List<Double> atS = new ArrayList<>();

  /** Mean temperatures of the heat nodes over the run, °C. */
  double[] meanC;

  ReferenceLoop(Scenario rig, Forcing forcing, boolean classical) {
    this.rig = rig;
    this.classical = classical;
    hive = new HiveEquations(rig, forcing);
    probes = rig.probes();
    inputs = new SupplyInputs(rig.pv().groups().size());
    hive.weather(0);
    double outdoorC = hive.sample().airC;
    supply = new SupplyChain(Plant.supply(rig), outdoorC);
    double[] hiveState = hive.state();
    y = java.util.Arrays.copyOf(hiveState, hiveState.length + probes.size());
    for (int p = 0; p < probes.size(); p++) {
      y[hiveState.length + p] = source(probes.get(p).place(), y, outdoorC);
    }
    double[] absolute = new double[y.length];
    double[] relative = new double[y.length];
    for (int i = 0; i < y.length; i++) {
      boolean gas = i >= hive.temperatures() && i < hiveState.length;
      absolute[i] = gas ? 1e-13 : 1e-10;
      relative[i] = 1e-11;
    }
    integrator = new DormandPrince853Integrator(1e-9, 60, absolute, relative);
  }

  private double source(ProbeSpec.Place place, double[] state, double outdoorC) {
    return switch (place) {
      case BROOD_COMB -> state[hive.model().view().nestNode()];
      case PAN -> state[hive.model().view().panNode()];
      case OUTDOOR -> outdoorC;
      default -> throw new IllegalArgumentException("no such place here: " + place);
    };
  }

  /** Runs to the end of the window. */
  void run() {
    ReferenceController core = new ReferenceController(rig.controller().settings());
    int tickS = rig.controller().tickMillis() / 1000;
    int endS = 86_400 * rig.window().days();
    meanC = new double[hive.temperatures()];
    int onBeforeS = (int) (Simulation.SWITCHED_ON_BEFORE_MS / 1000) / tickS * tickS;
    for (int t = -onBeforeS; t < 0; t += tickS) {
      read();
      core.step(t * 1000, readings, commands);
    }
    for (int t = 0; t < endS; t += tickS) {
      read();
      core.step(t * 1000, readings, commands);
      note(t);
      boolean heater = commands.heater && commands.isolation;
      fan = commands.fan;
      for (int from = t; from < t + tickS; ) {
        int to = Math.min(t + tickS, (from / 10 + 1) * 10);
        Sample weather = weather(0.5 * (from + to));
        inputs.heater = heater;
        inputs.fan = fan;
        inputs.inverter = commands.inverter;
        inputs.airC = weather.airC;
        inputs.windMS = weather.windMS;
        inputs.batteryPlaceC = weather.airC;
        inputs.hourOfDay = (from + to) / 7200.0 % 24;
        supply.solve(to - from, inputs);
        if (supply.dead()) {
          throw new IllegalStateException("the bus died at " + from + " s");
        }
        heaterW = supply.heaterW();
        double[] before = y;
        y = integrate(from, to);
        supply.accept();
        for (int i = 0; i < meanC.length; i++) {
          meanC[i] += 0.5 * (before[i] + y[i]) * (to - from) / endS;
        }
        from = to;
      }
    }
  }

  private Sample weather(double atS) {
    hive.weather(atS);
    Sample s = hive.sample();
    System.arraycopy(s.planeWM2, 5, inputs.groupWM2, 0, inputs.groupWM2.length);
    return s;
  }

  private double[] rates(double atS, double[] state) {
    double[] hivePart = java.util.Arrays.copyOf(state, state.length - probes.size());
    double[] d = hive.rates(atS, hivePart, heaterW, fan, 0);
    double[] out = java.util.Arrays.copyOf(d, state.length);
    for (int p = 0; p < probes.size(); p++) {
      int i = d.length + p;
      ProbeSpec probe = probes.get(p);
      out[i] = (source(probe.place(), state, hive.sample().airC) - state[i]) / probe.lagS();
    }
    return out;
  }

  private double[] integrate(int from, int to) {
    hive.holdUntil(to);
    if (classical) {
      double[] state = y;
      for (int t = from; t < to; t++) {
        state = classicalSecond(t, state);
      }
      return state;
    }
    OrdinaryDifferentialEquation ode =
        new OrdinaryDifferentialEquation() {
          @Override
          public int getDimension() {
            return y.length;
          }

          @Override
          public double[] computeDerivatives(double at, double[] state) {
            return rates(at, state);
          }
        };
    return integrator.integrate(ode, new ODEState(from, y), to).getPrimaryState();
  }

  private double[] classicalSecond(int t, double[] from) {
    double[] k1 = rates(t, from);
    double[] k2 = rates(t + 0.5, along(from, k1, 0.5));
    double[] k3 = rates(t + 0.5, along(from, k2, 0.5));
    double[] k4 = rates(t + 1, along(from, k3, 1));
    double[] out = from.clone();
    for (int i = 0; i < out.length; i++) {
      out[i] += (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]) / 6;
    }
    return out;
  }

  private static double[] along(double[] state, double[] k, double h) {
    double[] out = new double[state.length];
    for (int i = 0; i < state.length; i++) {
      out[i] = state[i] + h * k[i];
    }
    return out;
  }

  private void read() {
    int first = y.length - probes.size();
    for (int p = 0; p < probes.size(); p++) {
      ProbeSpec probe = probes.get(p);
      int centiC =
          (int)
              Math.rint(Math.rint(y[first + p] / probe.resolutionK()) * probe.resolutionK() * 100);
      switch (probe.role()) {
        case BROOD_A -> readings.broodA.put(centiC);
        case PAN -> readings.pan.put(centiC);
        case OUTDOOR -> readings.outdoor.put(centiC);
        default -> throw new IllegalArgumentException("no such probe here: " + probe.role());
      }
    }
    double stepV = rig.sensors().voltsResolutionV();
    readings.battery.put((int) Math.rint(Math.rint(supply.volts() / stepV) * stepV * 1000));
  }

  private void note(int t) {
    boolean heater = commands.heater && commands.isolation;
    if (heater != heaterShown) {
      add(t, "heater " + (heater ? "on" : "off"));
      heaterShown = heater;
    }
    if (commands.fan != fanShown) {
      add(t, "fan " + (commands.fan ? "on" : "off"));
      fanShown = commands.fan;
    }
    if (levelShown >= 0 ? commands.shedLevel != levelShown : commands.shedLevel != 0) {
      add(t, "shed level " + ShedLevel.name(commands.shedLevel));
    }
    levelShown = commands.shedLevel;
  }

  private void add(int t, String what) {
    if (!what.equals(shown) || !what.startsWith("shed")) {
      switches.add(what);
      atS.add((double) t);
    }
    shown = what;
  }
}
