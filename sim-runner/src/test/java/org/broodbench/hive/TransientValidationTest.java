package org.broodbench.hive;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.checks.CheckRows;
import org.broodbench.checks.CheckRows.Row;
import org.junit.jupiter.api.Test;

/**
 * Heating and cooling of one node, two nodes, a slab and deep ground as the network of the run
 * integrates them, against closed solutions; source beside each row.
 */
class TransientValidationTest {
  /** Cells from the middle of a slab to its surface. */
  private static final int CELLS = 100;

  private static final double DAY_S = 86_400;

  @Test
  void transients() {
    CheckRows.of("TR").run(43, TransientValidationTest::compute);
  }

  /**
   * First eigenvalue and coefficient of the slab, read off the decay of its middle late on; and the
   * depth in which a day's wave fades to 1/e.
   */
  @Test
  void slabTablesAndDailyWave() {
    CheckRows.of("TR-EIG")
        .run(
            16,
            r -> {
              if (r.id().startsWith("TR-PEN")) {
                return 1000 * fadeDepth(r.number("alpha_m2_s"));
              }
              double biot = r.number("Bi");
              double first = slab(biot, 1, true);
              double zeta2 = StrictMath.log(first / slab(biot, 1.5, true)) / 0.5;
              return r.id().startsWith("TR-EIG")
                  ? StrictMath.sqrt(zeta2)
                  : first * StrictMath.exp(zeta2);
            });
  }

  /**
   * Depth in which the amplitude of a daily wave falls by e, from two places in a deep chain, m.
   */
  private static double fadeDepth(double m2S) {
    double depth = StrictMath.sqrt(2 * m2S * DAY_S / (2 * StrictMath.PI));
    int cells = 400;
    double cellM = depth * 8 / cells;
    Network net = chain(cells, cellM, m2S / cellM);
    double omega = 2 * StrictMath.PI / DAY_S;
    int steps = 1440;
    int days = 12;
    int near = cells - 1 - 25;
    int far = cells - 1 - 75;
    double[] sine = new double[2];
    double[] cosine = new double[2];
    for (int i = 0; i < days * steps; i++) {
      double stepS = DAY_S / steps;
      net.clear(stepS);
      net.reach(cells - 1, 2 * m2S / cellM, StrictMath.sin(omega * (i + 0.5) * stepS));
      net.solve();
      net.accept(stepS);
      if (i >= (days - 1) * steps) {
        double t = (i + 1) * stepS;
        for (int k = 0; k < 2; k++) {
          double c = net.start(k == 0 ? near : far);
          sine[k] += c * StrictMath.sin(omega * t);
          cosine[k] += c * StrictMath.cos(omega * t);
        }
      }
    }
    double fade = StrictMath.hypot(sine[0], cosine[0]) / StrictMath.hypot(sine[1], cosine[1]);
    return 50 * cellM / StrictMath.log(fade);
  }

  private static double compute(Row r) {
    String kind = r.id().substring(3);
    if (kind.startsWith("LUMP")) {
      Network net = new Network(new double[] {r.number("C_J_K")}, List.of());
      net.set(0, r.number("T0_C"));
      for (double t = 0; t < r.number("t_s"); t += 10) {
        step(net, 10, r.number("UA_W_K"), r.number("Ta_C"), r.number("P_W"));
      }
      return net.start(0);
    }
    if (kind.equals("INC51-T")) {
      return timeToReach(r);
    }
    if (kind.startsWith("SIN")) {
      return answerToDay(r.number("tau_s"), kind.startsWith("SINA"));
    }
    if (kind.startsWith("2N")) {
      return twoNodes(r);
    }
    if (kind.startsWith("SLAB")) {
      return slab(r.number("Bi"), r.number("Fo"), kind.endsWith("C"));
    }
    if (kind.equals("INC55")) {
      return slab(r.number("Bi"), r.number("Fo"), true);
    }
    if (kind.equals("INC55-T")) {
      double ambientC = r.number("Tinf_C");
      // the row continues the one before it: Bi 0.313, Fo 5.64
      return ambientC + slab(0.313, 5.64, true) * (r.number("Ti_C") - ambientC);
    }
    return frostDepth(
        r.number("Ti_C"), r.number("Ts_C"), r.number("alpha_m2_s"), r.number("t_d") * DAY_S);
  }

  private static void step(Network net, double stepS, double ua, double ambientC, double w) {
    net.clear(stepS);
    net.reach(0, ua, ambientC);
    net.supply(0, w);
    net.solve();
    net.accept(stepS);
  }

  private static double timeToReach(Row r) {
    Network net = new Network(new double[] {r.number("tau_s")}, List.of());
    net.set(0, r.number("Ti_C"));
    double stepS = 1e-3;
    for (int i = 0; ; i++) {
      if (net.start(0) >= r.number("T_C")) {
        return i * stepS;
      }
      step(net, stepS, 1, r.number("Tinf_C"), 0);
    }
  }

  /** Amplitude ratio, or lag in hours, from the Fourier terms of the last of many days. */
  private static double answerToDay(double tauS, boolean amplitude) {
    Network net = new Network(new double[] {tauS}, List.of());
    double omega = 2 * StrictMath.PI / DAY_S;
    double sine = 0;
    double cosine = 0;
    int days = 20;
    double stepS = 60;
    int steps = (int) (DAY_S / stepS);
    for (int i = 0; i < days * steps; i++) {
      step(net, stepS, 1, StrictMath.sin(omega * (i + 0.5) * stepS), 0);
      if (i >= (days - 1) * steps) {
        double t = (i + 1) * stepS;
        sine += net.start(0) * StrictMath.sin(omega * t) * 2 / steps;
        cosine += net.start(0) * StrictMath.cos(omega * t) * 2 / steps;
      }
    }
    return amplitude
        ? StrictMath.sqrt(sine * sine + cosine * cosine)
        : StrictMath.atan2(-cosine, sine) / omega / 3600;
  }

  private static double twoNodes(Row r) {
    Network net =
        new Network(
            new double[] {r.number("C1"), r.number("C2")}, List.<int[]>of(new int[] {0, 1}));
    net.fix(0, 1, r.number("K12"));
    net.set(0, r.number("T1_0"));
    net.set(1, r.number("T2_0"));
    for (double t = 0; t < r.number("t_s"); t += 1) {
      net.clear(1);
      net.reach(0, r.number("K1a"), r.number("Ta_C"));
      net.reach(1, r.number("K2a"), r.number("Ta_C"));
      net.supply(0, r.number("P1_W"));
      net.solve();
      net.accept(1);
    }
    return net.start(r.id().endsWith("air") ? 0 : 1);
  }

  /** Half a slab of thickness 1, diffusivity 1 and conductivity 1, cooled at its surface from 1. */
  private static double slab(double biot, double fourier, boolean centre) {
    double cell = 1.0 / CELLS;
    Network net = chain(CELLS, cell, 1 / cell);
    for (int i = 0; i < CELLS; i++) {
      net.set(i, 1);
    }
    double surface = 1 / (1 / biot + cell / 2);
    int steps = (int) StrictMath.round(fourier * 1000);
    for (int s = 0; s < steps; s++) {
      net.clear(fourier / steps);
      net.reach(CELLS - 1, surface, 0);
      net.solve();
      net.accept(fourier / steps);
    }
    // the middle lies half a cell beyond the first node, where the slope is 0
    return centre
        ? net.start(0) + (net.start(0) - net.start(1)) / 8
        : net.start(CELLS - 1) * (1 - surface * cell / 2);
  }

  /** Depth in ground of one temperature, held at another at its face, that just reaches 0 °C. */
  private static double frostDepth(double startC, double faceC, double m2S, double seconds) {
    int cells = 400;
    double cellM = 0.01;
    Network net = chain(cells, cellM, m2S / cellM);
    for (int i = 0; i < cells; i++) {
      net.set(i, startC);
    }
    double stepS = 3600;
    for (double t = 0; t < seconds; t += stepS) {
      net.clear(stepS);
      net.reach(cells - 1, 2 * m2S / cellM, faceC);
      net.solve();
      net.accept(stepS);
    }
    int i = cells - 1;
    while (net.start(i) < 0) {
      i--;
    }
    double beyond = net.start(i) / (net.start(i) - net.start(i + 1));
    return (cells - i - 0.5 - beyond) * cellM;
  }

  private static Network chain(int cells, double capacity, double conductance) {
    double[] c = new double[cells];
    List<int[]> pairs = new ArrayList<>();
    for (int i = 0; i < cells; i++) {
      c[i] = capacity;
      if (i > 0) {
        pairs.add(new int[] {i - 1, i});
      }
    }
    Network net = new Network(c, pairs);
    for (int[] p : pairs) {
      net.fix(p[0], p[1], conductance);
    }
    return net;
  }
}
