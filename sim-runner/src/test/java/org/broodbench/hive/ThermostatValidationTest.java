package org.broodbench.hive;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.broodbench.checks.CheckRows;
import org.broodbench.checks.CheckRows.Row;
import org.junit.jupiter.api.Test;

/**
 * A switched heater on one node of the run's network: every number is simulated and compared with
 * closed solutions; source beside each row.
 */
class ThermostatValidationTest {

  @Test
  void cycles() {
    CheckRows.of("TH").run(28, ThermostatValidationTest::compute);
  }

  private static double compute(Row r) {
    String kind = r.id().substring(3);
    if (kind.startsWith("PAR") || kind.equals("DOE")) {
      // a node of 10 kJ/K in a band of 1 K whose heater gives the stated number of cycles at half
      // load
      double heaterW = r.number("Nmax_per_h") * 10_000 * 1 / 900;
      return new Relay(10_000, 0, heaterW, 0, r.number("X") * heaterW, 20, 21).perHour();
    }
    if (kind.startsWith("INT")) {
      return new Relay(
              r.number("C_J_K"),
              0,
              r.number("Q_W"),
              0,
              r.number("load_W"),
              20,
              20 + r.number("band_K"))
          .perHour();
    }
    if (kind.equals("CAP")) {
      Network net = new Network(new double[] {10_000}, List.of());
      for (int i = 0; i < 2000; i++) {
        step(net, 3600, r.number("UA_W_K"), 0, r.number("Q_W"));
      }
      return r.number("Thigh_C") - net.start(0);
    }
    Relay relay =
        new Relay(
            r.number("C_J_K"),
            r.number("UA_W_K"),
            r.number("Q_W"),
            r.number("Ta_C"),
            0,
            r.number("Tlow_C"),
            r.number("Thigh_C"));
    return switch (kind.substring(0, kind.indexOf('-'))) {
      case "ON" -> relay.onS;
      case "OFF" -> relay.offS;
      case "DUTY" -> relay.onS / (relay.onS + relay.offS);
      case "CPH" -> relay.perHour();
      default -> throw new IllegalArgumentException(r.id());
    };
  }

  /** A controller that looks once a minute lets the temperature run on, but not further than so. */
  @Test
  void sampledControlStaysWithinItsBounds() {
    CheckRows.of("TH-SMP")
        .run(
            2,
            r -> {
              boolean high = r.id().endsWith("HI");
              Network net = new Network(new double[] {r.number("C_J_K")}, List.of());
              net.set(0, 34.5);
              boolean on = false;
              double lowest = 100;
              double highest = -100;
              for (int minute = 0; minute < 5000; minute++) {
                double c = net.start(0);
                on = on ? c < 35.5 : c <= 33.5;
                for (int s = 0; s < 60; s++) {
                  step(net, 1, r.number("UA_W_K"), r.number("Ta_C"), on ? r.number("Q_W") : 0);
                  if (minute > 100) {
                    lowest = Math.min(lowest, net.start(0));
                    highest = Math.max(highest, net.start(0));
                  }
                }
              }
              assertTrue(
                  high
                      ? highest >= r.number("Thigh_C") && highest <= r.expected() + 1e-4
                      : lowest <= r.number("Tlow_C") && lowest >= r.expected() - 1e-4,
                  r.id() + ": " + lowest + " to " + highest);
              return high ? highest : lowest;
            });
  }

  private static void step(Network net, double stepS, double ua, double ambientC, double w) {
    solve(net, stepS, ua, ambientC, w);
    net.accept(stepS);
  }

  private static void solve(Network net, double stepS, double ua, double ambientC, double w) {
    net.clear(stepS);
    if (ua > 0) {
      net.reach(0, ua, ambientC);
    }
    net.supply(0, w);
    net.solve();
  }

  /** Lengths of the run and of the pause of a relay with ideal hysteresis, found by simulation. */
  private static final class Relay {
    final double onS;
    final double offS;

    Relay(
        double capacityJK,
        double ua,
        double heaterW,
        double ambientC,
        double loadW,
        double lowC,
        double highC) {
      Network net = new Network(new double[] {capacityJK}, List.of());
      net.set(0, lowC);
      onS = until(net, ua, ambientC, heaterW - loadW, highC);
      offS = until(net, ua, ambientC, -loadW, lowC);
    }

    /** Goes on to a temperature, the last step cut where the step's own parabola meets it. */
    private static double until(Network net, double ua, double ambientC, double w, double goalC) {
      boolean rising = goalC > net.start(0);
      double passedS = 0;
      double stepS = 1;
      while (true) {
        solve(net, stepS, ua, ambientC, w);
        if (rising ? net.end(0) < goalC : net.end(0) > goalC) {
          net.accept(stepS);
          passedS += stepS;
          continue;
        }
        double low = 0;
        double high = 1;
        for (int i = 0; i < 60; i++) {
          double middle = 0.5 * (low + high);
          boolean before = rising ? net.at(0, middle) < goalC : net.at(0, middle) > goalC;
          low = before ? middle : low;
          high = before ? high : middle;
        }
        solve(net, high * stepS, ua, ambientC, w);
        net.accept(high * stepS);
        return passedS + high * stepS;
      }
    }

    double perHour() {
      return 3600 / (onS + offS);
    }
  }
}
