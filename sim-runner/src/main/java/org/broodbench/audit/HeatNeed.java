package org.broodbench.audit;

import java.util.List;
import org.broodbench.colony.ColonySpec;
import org.broodbench.controller.Setting;
import org.broodbench.hive.HeaterSpec;
import org.broodbench.hive.HiveSpec;
import org.broodbench.hive.Pan;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Scenario;

/**
 * Heat that the set point asks of the heater in steady weather, for the lowest, the scenario's own
 * and the highest published heat loss of a cluster.
 *
 * @param outsideC outdoor air that it was worked out at, °C
 * @param leastW the favourable case: the smallest need of the three, one box, nothing lost into the
 *     floor, the sun's warmth on the walls counted, W
 * @param ownW at the scenario's own heat loss, W
 * @param mostW the largest of the three, W
 * @param solidWK walls, lid and floor, W/K
 * @param airWK air exchange in the own case, W/K
 * @param airC air of the hive in the own case, °C
 * @param panC top of the pan in the own case, °C
 * @param colonyW heat of the colony in the own case, W
 * @param warmestPanC top of the pan in the case with the warmest one, °C
 * @param coldestNestC brood nest in the coldest of the three cases with the probe at its set point
 *     or above, °C
 * @param warmestNestC the same in the warmest, °C
 */
record HeatNeed(
    double outsideC,
    double leastW,
    double ownW,
    double mostW,
    double solidWK,
    double airWK,
    double airC,
    double panC,
    double colonyW,
    double warmestPanC,
    double coldestNestC,
    double warmestNestC) {
  /** Lowest and highest published heat loss of a cluster; see the model's description. */
  private static final double[] PUBLISHED = {1, 2.85};

  static HeatNeed at(Scenario s, double setPointC, double outsideC, Season.Stretch w) {
    ColonySpec colony = colony(s);
    ProbeSpec probe = s.probe(ProbeSpec.Role.BROOD_A);
    HeaterSpec heater = heater(s);
    SteadyHive own = new SteadyHive(s.hive(), colony, heater, w.meanWindMS());
    double ownW = own.holdW(probe, setPointC, outsideC);
    double airC = own.airC();
    double panC = own.panC();
    double colonyW = own.colonyW();
    double most = ownW;
    double pan = panC;
    double cold = own.nestC();
    double warm = own.nestC();
    double least = ownW;
    HiveSpec one = s.hive().withBoxes(List.of(s.hive().boxes().get(s.hive().broodBox())));
    HeaterSpec ideal = floorless(heater);
    // mean sun on a horizontal face over what wind carries off, as if every wall had half of it
    double sunK =
        0.5 * s.hive().wallSkin().solarAbsorptance() * w.meanGhiWM2() / (9 + 4 * w.meanWindMS());
    for (double factor : PUBLISHED) {
      ColonySpec c = colony.withClusterLossFactor(factor);
      SteadyHive plain = new SteadyHive(s.hive(), c, heater, w.meanWindMS());
      most = Math.max(most, plain.holdW(probe, setPointC, outsideC));
      pan = Math.max(pan, plain.panC());
      cold = Math.min(cold, plain.nestC());
      warm = Math.max(warm, plain.nestC());
      SteadyHive kind = new SteadyHive(oneBox(one), c, ideal, w.meanWindMS());
      least = Math.min(least, kind.holdW(probe, setPointC, outsideC + sunK));
    }
    return new HeatNeed(
        outsideC,
        least,
        ownW,
        most,
        own.solidWK(),
        own.exchangeWK(airC, outsideC),
        airC,
        panC,
        colonyW,
        pan,
        cold,
        warm);
  }

  /** The colony at the start, or the one that moves in where the hive is empty. */
  static ColonySpec colony(Scenario s) {
    ColonySpec c = s.colony();
    if (c.bees() > 0) {
      return c;
    }
    for (EventSpec e : s.events()) {
      if (e instanceof EventSpec.InstallColony in) {
        return new ColonySpec(
            in.bees(),
            c.beeMassG(),
            in.broodCells(),
            Math.max(c.broodFrames(), in.broodCells() / 2500),
            c.clusterLossFactor(),
            c.shiverCeilingWKg(),
            c.broodHeatMW(),
            c.waterNear());
      }
    }
    return c;
  }

  /** The highest set point of the run, °C. */
  static double setPointC(Scenario s) {
    double most = s.controller().settings().get(Setting.HEAT_SET_POINT_CENTI_C) / 100.0;
    for (EventSpec e : s.events()) {
      if (e instanceof EventSpec.SetPoint p) {
        most = Math.max(most, p.setPointC());
      }
    }
    return most;
  }

  /** A heater without a pan heats the air straight away. */
  private static HeaterSpec heater(Scenario s) {
    HeaterSpec h = s.heater();
    return h.pan().heatJK() > 0 ? h : with(h, Pan.mixed(1, 100, 100, 0), 0);
  }

  private static HeaterSpec floorless(HeaterSpec h) {
    return with(h, h.pan(), 0);
  }

  private static HeaterSpec with(HeaterSpec h, Pan pan, double floorWK) {
    return new HeaterSpec(
        h.powerW(),
        h.ratedV(),
        h.onInverter(),
        h.regulated(),
        h.plateJK(),
        h.plateM2(),
        floorWK,
        pan,
        h.limits());
  }

  private static HiveSpec oneBox(HiveSpec h) {
    return new HiveSpec(
        h.lengthM(),
        h.widthM(),
        h.frontDeg(),
        h.boxes(),
        0,
        h.wall(),
        h.floor(),
        h.lid(),
        h.edgeFactor(),
        h.wallSkin(),
        h.lidSkin(),
        h.entranceWidthM(),
        h.entranceHeightM(),
        h.topVentM2(),
        h.openShare(),
        h.dischargeCoefficient(),
        h.windEffectiveness(),
        h.guesses());
  }
}
