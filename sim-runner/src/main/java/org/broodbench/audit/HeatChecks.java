package org.broodbench.audit;

import static org.broodbench.audit.Words.of;
import static org.broodbench.audit.Words.set;
import static org.broodbench.audit.Words.up;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.rig.ProbeSpec;

/** Whether the heater is large enough, too large, and how often it will switch. */
final class HeatChecks {
  /** Power over need in the coldest hour that is too much; own choice. */
  static final double OVERSIZE = 3;

  /** Power that is never too much, W; own choice. */
  static final double SMALL_W = 10;

  /** Largest heater that a scenario may have, W. */
  private static final double MOST_HEATER_W = 500;

  private final Facts f;
  private final Findings out;

  HeatChecks(Facts f, Findings out) {
    this.f = f;
    this.out = out;
  }

  void run() {
    if (f.heats()) {
      reach();
      oversize();
      cycle();
    }
  }

  /** The temperature that the brood must have at least: a lower set point is judged by itself. */
  private double leastC() {
    boolean comb = f.s.probe(ProbeSpec.Role.BROOD_A).place() == ProbeSpec.Place.BROOD_COMB;
    return comb ? Math.min(f.setPointC, f.s.run().bandLowC()) : f.setPointC;
  }

  private void reach() {
    double most = f.mostHeatW();
    if (most >= f.coldest.mostW()) {
      return;
    }
    double leastC = leastC();
    HeatNeed bare =
        leastC == f.setPointC
            ? f.week
            : HeatNeed.at(f.s, leastC, f.season.worstWeek().meanAirC(), f.season.worstWeek());
    boolean stop = most < bare.leastW();
    // a larger element loses more of its volts in the wire, so that the ratio counts twice
    double wire = f.supply.onInverter() || f.s.heater().regulated() ? 1 : f.coldest.mostW() / most;
    double lost =
        1
            + 2
                * f.supply.heaterWireOhm()
                * (wire - 1)
                * f.supply.heaterA(f.supply.workV())
                / f.supply.workV();
    double needed = up(1.1 * lost * f.coldest.mostW() * f.s.heater().powerW() / most, 1);
    out.add(
        "heater_reach",
        stop ? Severity.STOP : Severity.WARN,
        "The heater may not hold its set point in the coldest hour",
        of(
            "coldest %.1f °C: holding %.1f °C takes (%.2f + %.2f) W/K x (%.1f - %.1f) K less the colony's %.1f W, with what goes to nest and floor: %.1f W (%.1f to %.1f W by the cluster's heat loss); the heater gives %.1f W at %.1f V. On the mean of the worst week, %.1f °C, %.1f °C takes %.1f to %.1f W",
            f.coldest.outsideC(),
            f.setPointC,
            f.coldest.solidWK(),
            f.coldest.airWK(),
            f.coldest.airC(),
            f.coldest.outsideC(),
            f.coldest.colonyW(),
            f.coldest.ownW(),
            f.coldest.leastW(),
            f.coldest.mostW(),
            most,
            f.supply.workV(),
            f.week.outsideC(),
            leastC,
            bare.leastW(),
            bare.mostW()),
        "Take a larger heater, or better: more insulation",
        reachCure(needed),
        "ISO 6946:2017 for the walls; heat loss of clusters: Southwick 1985 and whole colonies, range 1 to 2.85");
  }

  /**
   * More power; of an element for other volts, one for the battery's, when power alone is silly.
   */
  private List<String> reachCure(double neededW) {
    if (neededW <= MOST_HEATER_W || f.s.heater().onInverter() || f.s.heater().regulated()) {
      List<String> cure = new ArrayList<>(List.of(set("heater.power", neededW, 0, "W")));
      double v = f.supply.workV();
      if (!f.supply.onInverter() && f.supply.heaterA(v) * f.supply.heaterWireOhm() > 0.1 * v) {
        cure.add(set("wiring.heater_wire", Math.min(120, 4 * f.s.wiring().heaterMm2()), 2, "mm2"));
      }
      return cure;
    }
    double nominalV = f.s.battery().nominalV();
    double ratio = nominalV / f.supply.workV();
    double watts = up(1.3 * f.coldest.mostW() * ratio * ratio, 1);
    return List.of(
        set("heater.power", Math.min(MOST_HEATER_W, watts), 0, "W"),
        set("heater.rated_volts", nominalV, 0, "V"));
  }

  private void oversize() {
    double most = f.mostHeatW();
    double need = f.coldest.mostW();
    if (most <= SMALL_W || most <= OVERSIZE * need) {
      return;
    }
    double watts = up(1.5 * need * f.s.heater().powerW() / most, 1);
    out.add(
        "heater_oversize",
        Severity.WARN,
        "The heater is much too large",
        need > 0
            ? of(
                "it gives %.1f W; the coldest hour, %.1f °C, takes %.1f W at most: %.1f / %.1f = %.1f times",
                most, f.coldest.outsideC(), need, most, need, most / need)
            : of(
                "it gives %.1f W; even the coldest hour, %.1f °C, asks for none",
                most, f.coldest.outsideC()),
        need > 0 ? "Take a smaller one" : "Do without, or lower the insulation",
        List.of(set("heater.power", need > 0 ? Math.max(5, watts) : 0, 0, "W")),
        "limit of 3 times own choice");
  }

  private void cycle() {
    double most = f.mostHeatW();
    Cycle c = Cycle.of(f.s, f.week.ownW() / most);
    if (!c.cycles() || c.enough()) {
      return;
    }
    double d = c.duty();
    out.add(
        "short_cycle",
        Severity.WARN,
        "The heater will switch often",
        of(
            "%s = %.0f s, with the probe's lag of 2 x %.0f s: %.0f s; at %.0f %% duty on %.0f s (at least %.0f s), off %.0f s (at least %.0f s), %.0f starts a day (at most %.0f)",
            c.formula(),
            c.bareS(),
            c.lagS(),
            c.halfS(),
            100 * d,
            c.onS(),
            c.minOnS(),
            c.offS(),
            c.minOffS(),
            c.startsPerDay(),
            c.mostStarts()),
        "Widen the differential, or take a heavier pan",
        cycleCure(c),
        "closed form of a relay on two heat stores in a row; contact life 100,000 operations at rated load: makers' sheets");
  }

  private List<String> cycleCure(Cycle c) {
    List<String> cure = new ArrayList<>();
    double wantedS = 1.05 * c.leastHalfS() - 2 * c.lagS();
    double ratio = Math.max(1, wantedS / c.bareS());
    double forK = c.differentialK() * (c.straight() ? ratio : ratio * ratio);
    double differentialK = up(Math.min(forK, 3), 0.1);
    cure.add(set("controller.heat.differential", differentialK, 1, "K"));
    if (forK > 3) {
      double massKg = f.s.heater().pan().heatJK() * forK / 3 / 800;
      cure.add("heater.fill=sand");
      cure.add(set("heater.pan_mass", Math.min(50, up(massKg, 0.5)), 1, "kg"));
    }
    return cure;
  }
}
