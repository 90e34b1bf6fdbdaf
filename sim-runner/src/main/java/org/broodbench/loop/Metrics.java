package org.broodbench.loop;

import org.broodbench.colony.AdultDose;
import org.broodbench.colony.BroodDose;
import org.broodbench.hive.HeaterSpec;
import org.broodbench.hive.HiveView;
import org.broodbench.plant.Plant;
import org.broodbench.rig.RunSpec;

/**
 * What is measured along a run, step by step: bands, extremes, counts. Carbon dioxide and humidity
 * are judged after the first hour, because the air inside starts from a guess.
 */
final class Metrics {
  /**
   * Time after the start from which the air is judged, s; own choice, many times its time constant.
   */
  static final double SETTLED_S = 3600;

  /** State of charge that counts as full; common practice, no source. */
  private static final double FULL_SOC = 0.98;

  private final RunSpec spec;
  private final HeaterSpec heaterSpec;
  private final double colonyFromS;
  private final double startSoc;
  final double[] probeSumKs;
  final double[] probeOffKs;
  final double[] probeLagK;

  final SwitchCount heater = new SwitchCount();
  final SwitchCount heaterPower = new SwitchCount();
  final SwitchCount fan = new SwitchCount();
  final Extreme broodLow = new Extreme(false);
  final Extreme broodHigh = new Extreme(true);
  final Extreme panHigh = new Extreme(true);
  final Extreme plateHigh = new Extreme(true);
  final Extreme fillingHigh = new Extreme(true);
  final Extreme plateWM2High = new Extreme(true);
  final Extreme socLow = new Extreme(false);
  final Extreme voltsLow = new Extreme(false);
  final Extreme humidityLow = new Extreme(false);
  final Extreme co2High = new Extreme(true);
  final BroodDose dose = new BroodDose();
  final AdultDose adults = new AdultDose();

  double broodS;
  double broodSumKs;
  double belowS;
  double aboveS;
  double belowKs;
  double aboveKs;
  double humiditySum;
  double co2Sum;
  double airS;
  double condensingS;
  double shedS;
  double plateOverS;
  double contactOverS;
  double lastFullAtS = -1;
  double totalS;

  /**
   * @param colonyFromS when the first colony moves in, s since the start: an empty hive before it
   *     has no brood to be judged
   */
  Metrics(RunSpec spec, HeaterSpec heater, Plant plant, double colonyFromS) {
    this.spec = spec;
    this.colonyFromS = colonyFromS;
    heaterSpec = heater;
    startSoc = plant.supply().battery().stateOfCharge();
    socLow.take(startSoc, 0);
    probeSumKs = new double[plant.probes()];
    probeOffKs = new double[plant.probes()];
    probeLagK = new double[plant.probes()];
  }

  /** Books the solved step; called before the plant moves on. */
  void book(
      Plant plant, double fromS, double lengthS, boolean heaterOn, boolean fanOn, boolean shed) {
    double endS = fromS + lengthS;
    totalS = endS;
    var hive = plant.hive();
    var view = hive.view();
    var supply = plant.supply();
    if (endS > colonyFromS) {
      bookBrood(view, endS, lengthS);
    }
    double broodMeanC = view.meanC(view.nestNode());
    for (int p = 0; p < probeSumKs.length; p++) {
      double readC = 0.5 * (plant.probeC(p, 0) + plant.probeC(p, 1));
      double behindK = Math.abs(plant.placeC(p) - readC);
      probeSumKs[p] += readC * lengthS;
      probeOffKs[p] += (readC - broodMeanC) * lengthS;
      probeLagK[p] = Math.max(probeLagK[p], behindK);
    }
    if (view.panNode() >= 0) {
      double contactC = view.nodeC(view.panNode(), 1);
      double plateC = view.nodeC(view.plateNode(), 1);
      panHigh.take(contactC, endS);
      plateHigh.take(plateC, endS);
      fillingHigh.take(view.nodeC(view.panCoreNode(), 1), endS);
      plateWM2High.take(supply.heaterW() / heaterSpec.plateM2(), endS);
      plateOverS += plateC > heaterSpec.limits().plateC() ? lengthS : 0;
      contactOverS += contactC > heaterSpec.limits().contactC() ? lengthS : 0;
    }
    if (view.condensing()) {
      condensingS += lengthS;
    }
    if (hive.alive() && hive.bees() > 0) {
      adults.add(view.nestC(1), lengthS);
    }
    heater.interval(fromS, lengthS, heaterOn);
    heaterPower.interval(fromS, lengthS, supply.heaterW() > 0);
    fan.interval(fromS, lengthS, fanOn && !supply.dead());
    voltsLow.take(supply.volts(), endS);
    if (shed) {
      shedS += lengthS;
    }
  }

  private void bookBrood(HiveView view, double endS, double lengthS) {
    broodS += lengthS;
    double meanC = view.meanC(view.nestNode());
    broodSumKs += meanC * lengthS;
    if (meanC < spec.bandLowC()) {
      belowS += lengthS;
      belowKs += (spec.bandLowC() - meanC) * lengthS;
    } else if (meanC > spec.bandHighC()) {
      aboveS += lengthS;
      aboveKs += (meanC - spec.bandHighC()) * lengthS;
    }
    dose.add(meanC, lengthS);
    double endC = view.nestC(1);
    broodLow.take(endC, endS);
    broodHigh.take(endC, endS);
    if (endS > colonyFromS + SETTLED_S) {
      double rhPercent = view.broodRhPercent(1);
      double co2Percent = view.broodCo2Percent(1);
      humidityLow.take(rhPercent, endS);
      co2High.take(co2Percent, endS);
      humiditySum += rhPercent * lengthS;
      co2Sum += co2Percent * lengthS;
      airS += lengthS;
    }
  }

  /** What the bees just died of, all at once; empty where they live. */
  String deathBy() {
    if (adults.frozen()) {
      return "frozen to death";
    }
    if (adults.comaHours() >= AdultDose.COMA_HALF_H) {
      return "in chill coma for 50 h";
    }
    return adults.outlivesHeat() < 0.5 ? "killed by heat" : "";
  }

  /** Books what stands after the plant has moved on. */
  void bookState(Plant plant, double atS) {
    double soc = plant.supply().battery().stateOfCharge();
    socLow.take(soc, atS);
    if (soc >= FULL_SOC) {
      lastFullAtS = atS;
    }
  }
}
