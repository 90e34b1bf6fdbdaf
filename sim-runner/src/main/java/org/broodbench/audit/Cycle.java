package org.broodbench.audit;

import org.broodbench.colony.ColonyHeat;
import org.broodbench.colony.ColonySpec;
import org.broodbench.controller.Setting;
import org.broodbench.hive.BoxSpec;
import org.broodbench.hive.HeatFlow;
import org.broodbench.hive.HiveSpec;
import org.broodbench.hive.Pan;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Requirement;
import org.broodbench.rig.Scenario;

/**
 * How a relay with a differential cycles a heater, in closed form. At half duty the pan of heat
 * capacity C swings by P h/(2 C) in a half cycle h.
 *
 * <ul>
 *   <li>A probe in air, which follows the pan by a share a at once: D = a P h/(2 C), so h = 2 C
 *       D/(a P).
 *   <li>A probe in the nest of capacity N, which the pan warms through g: the triangle of the pan
 *       adds g P h²/(8 C N) = D, so h = √(8 C N D/(g P)).
 * </ul>
 *
 * <p>At a duty d the heater is on for h/(2(1−d)) and off for h/(2d). The lag of the probe adds
 * twice its time constant to h. Estimates within a factor of two to three of the simulation.
 *
 * @param duty share of time on
 * @param differentialK differential, K
 * @param bareS half cycle without the probe's lag, s
 * @param lagS time constant of the probe, s
 * @param straight whether the half cycle goes with the differential, or with its root
 * @param minOnS shortest run, s
 * @param minOffS shortest pause, s
 * @param mostStarts most starts a day
 * @param formula the arithmetic of the half cycle
 */
record Cycle(
    double duty,
    double differentialK,
    double bareS,
    double lagS,
    boolean straight,
    double minOnS,
    double minOffS,
    double mostStarts,
    String formula) {
  /** Two starts an hour, with which 100,000 operations last five years; own choice. */
  private static final double USUAL_STARTS = 48;

  /** Brood frame, J/K per m² of one side, and bees, J/(kg K): as in the model of the hive. */
  private static final double BROOD_FRAME_JK_M2 = 4.0e3 / 0.088;

  private static final double BEES_J_KG_K = 3500;

  static Cycle of(Scenario s, double duty) {
    ProbeSpec probe = s.probe(ProbeSpec.Role.BROOD_A);
    double d = s.controller().settings().get(Setting.HEAT_DIFFERENTIAL_CENTI_K) / 100.0;
    double powerW = s.heater().powerW();
    Pan pan = s.heater().pan();
    double storeJK = pan.heatJK() + s.heater().plateJK();
    double followed = airFollows(s);
    double bareS;
    String formula;
    boolean comb = probe.place() == ProbeSpec.Place.BROOD_COMB;
    if (comb) {
      double nestJK = nestJK(s);
      double g = pan.nestWK() + followed * nestLossWK(s);
      bareS = Math.sqrt(8 * storeJK * nestJK * d / (Math.max(g, 1e-3) * powerW));
      formula =
          Words.of(
              "root of 8 x %.0f J/K x %.0f J/K x %.2f K / (%.2f W/K x %.1f W)",
              storeJK, nestJK, d, g, powerW);
    } else {
      double share =
          followed * (1 - (probe.place() == ProbeSpec.Place.NEST_EDGE ? probe.nestShare() : 0));
      bareS = 2 * storeJK * d / (Math.max(share, 1e-3) * powerW);
      formula = Words.of("2 x %.0f J/K x %.2f K / (%.3f x %.1f W)", storeJK, d, share, powerW);
    }
    return new Cycle(
        duty,
        d,
        bareS,
        probe.lagS(),
        !comb,
        s.controller().settings().get(Setting.RELAY_MIN_ON_MILLIS) / 1000.0,
        s.controller().settings().get(Setting.RELAY_MIN_OFF_MILLIS) / 1000.0,
        mostStarts(s),
        formula);
  }

  private static double mostStarts(Scenario s) {
    double most = USUAL_STARTS;
    for (Requirement r : s.requirements()) {
      most = r.kind() == Requirement.Kind.STARTS_PER_DAY ? r.limit() : most;
    }
    return Math.max(1, most);
  }

  /** Share of a swing of the pan that the air follows at once, with combs and walls at rest. */
  private static double airFollows(Scenario s) {
    HiveSpec h = s.hive();
    BoxSpec box = h.boxes().get(h.broodBox());
    double sideM2 = (h.lengthM() - 0.03) * (box.heightM() - 0.03);
    double combWK = box.frames() * 2 * sideM2 / h.guesses().combFilmM2KW();
    double planM2 = h.lengthM() * h.widthM();
    double wallM2 = 2 * (h.lengthM() + h.widthM()) * box.heightM();
    double facesWK =
        wallM2 / HeatFlow.SIDEWAYS.surfaceM2KW()
            + planM2 / HeatFlow.UP.surfaceM2KW()
            + planM2 / HeatFlow.DOWN.surfaceM2KW();
    double panWK = s.heater().pan().airWK();
    return panWK / (panWK + combWK + facesWK);
  }

  private static double nestJK(Scenario s) {
    ColonySpec c = HeatNeed.colony(s);
    HiveSpec h = s.hive();
    double sideM2 = (h.lengthM() - 0.03) * (h.boxes().get(h.broodBox()).heightM() - 0.03);
    return c.massKg() * BEES_J_KG_K + c.broodFrames() * sideM2 * BROOD_FRAME_JK_M2 + 200;
  }

  private static double nestLossWK(Scenario s) {
    ColonySpec c = HeatNeed.colony(s);
    if (c.massKg() <= 0) {
      return 0;
    }
    ColonyHeat heat = new ColonyHeat(c);
    heat.evaluate(33, 20);
    return heat.lossWK();
  }

  /** Whether it switches at all: neither never needed nor always on. */
  boolean cycles() {
    return duty > 0.01 && duty < 0.99;
  }

  /** Half cycle at half duty, s. */
  double halfS() {
    return bareS + 2 * lagS;
  }

  double onS() {
    return halfS() / (2 * (1 - duty));
  }

  double offS() {
    return halfS() / (2 * duty);
  }

  double startsPerDay() {
    return 86_400 / (onS() + offS());
  }

  /** Whether the minimum times and the number of starts are kept by the differential alone. */
  boolean enough() {
    return onS() >= minOnS && offS() >= minOffS && startsPerDay() <= mostStarts;
  }

  /** The least half cycle with which that is so, s. */
  double leastHalfS() {
    double forStarts = 86_400 / mostStarts * 2 * duty * (1 - duty);
    return Math.max(forStarts, Math.max(2 * (1 - duty) * minOnS, 2 * duty * minOffS));
  }
}
