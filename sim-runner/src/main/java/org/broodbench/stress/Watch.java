package org.broodbench.stress;

import java.util.Arrays;
import java.util.List;
import org.broodbench.controller.Alarm;
import org.broodbench.controller.Commands;
import org.broodbench.controller.ShedLevel;
import org.broodbench.hive.HiveView;
import org.broodbench.loop.Judge;
import org.broodbench.loop.Onlooker;
import org.broodbench.loop.RunResult;
import org.broodbench.plant.Plant;
import org.broodbench.rig.Requirement;
import org.broodbench.rig.Scenario;

/**
 * Watches a run for what fails, for harm, for alarms, and reads the display at the visit.
 *
 * <p>Harm, own choice: since the onset the brood comb has been more than 2 K below its band for 6 h
 * or more than 1 K above it for 1 h together, or what bees touch was over its limit for 10 min, or
 * the colony is dead.
 */
final class Watch implements Onlooker {
  private static final double COLD_K = 2;
  private static final double COLD_S = 6 * 3600;
  private static final double HOT_K = 1;
  private static final double HOT_S = 3600;
  private static final double TOUCH_S = 600;
  private static final double FAILING_S = 1800;
  private static final double USUAL_SOC = 0.2;
  private static final double USUAL_CO2_PERCENT = 6;

  private final Scenario scenario;
  private final double onsetS;
  private final double visitS;
  private final boolean boardBreaks;
  private final double lowSoc;
  private final double highCo2Percent;
  private final double[] failedAtS = never(Failing.values().length);
  private final double[] alarmAtS = never(Alarm.COUNT);
  private double harmAtS = Double.NaN;
  private double harmColdS;
  private double harmHotS;
  private double harmTouchS;
  private double coldS;
  private double hotS;
  private int alarmsBefore;
  private int heaterSecondsAtOnset = -1;
  private double lowC = Double.NaN;
  private double highC = Double.NaN;
  private Gauge gauge;

  /**
   * @param onsetS when the fault begins, s since the start
   * @param boardBreaks whether the fault takes the display away
   */
  Watch(Scenario scenario, double onsetS, boolean boardBreaks) {
    this.scenario = scenario;
    this.onsetS = onsetS;
    this.boardBreaks = boardBreaks;
    // he left just before it broke: the worst case
    double endS = 86_400.0 * scenario.window().days() - scenario.run().stepS();
    visitS = Math.min(onsetS + scenario.run().visitEveryS(), endS);
    lowSoc = limit(Requirement.Kind.LOWEST_SOC, 100 * USUAL_SOC) / 100;
    highCo2Percent = limit(Requirement.Kind.HIGHEST_CO2, USUAL_CO2_PERCENT);
  }

  private double limit(Requirement.Kind kind, double otherwise) {
    return scenario.requirements().stream()
        .filter(r -> r.kind() == kind)
        .mapToDouble(Requirement::limit)
        .findFirst()
        .orElse(otherwise);
  }

  private static double[] never(int count) {
    double[] times = new double[count];
    Arrays.fill(times, Double.NaN);
    return times;
  }

  @Override
  public void step(double endS, double lengthS, Plant plant, Commands commands) {
    if (endS > onsetS) {
      alarms(endS, commands);
      failing(endS, lengthS, plant, commands);
      harm(endS, lengthS, plant);
      if (gauge == null) {
        display(endS, plant, commands);
      }
    }
    alarmsBefore = commands.alarms;
  }

  private void alarms(double endS, Commands commands) {
    int raised = commands.alarms & ~alarmsBefore;
    for (int bit = 0; raised != 0; bit++, raised >>>= 1) {
      if ((raised & 1) != 0 && Double.isNaN(alarmAtS[bit])) {
        alarmAtS[bit] = endS - onsetS;
      }
    }
  }

  private void failing(double endS, double lengthS, Plant plant, Commands commands) {
    double nestC = plant.hive().view().nestC(1);
    coldS = nestC < scenario.run().bandLowC() ? coldS + lengthS : 0;
    hotS = nestC > scenario.run().bandHighC() ? hotS + lengthS : 0;
    note(Failing.BROOD_COLD, coldS >= FAILING_S, endS);
    note(Failing.BROOD_HOT, hotS >= FAILING_S, endS);
    note(Failing.PAN_HOT, touchedOver(plant), endS);
    note(Failing.BATTERY_LOW, plant.supply().battery().stateOfCharge() < lowSoc, endS);
    note(Failing.HEAT_SHED, commands.shedLevel >= ShedLevel.HEAT_SHED, endS);
    note(Failing.BOARD_DEAD, plant.supply().dead(), endS);
    note(Failing.AIR_BAD, plant.hive().view().broodCo2Percent(1) > highCo2Percent, endS);
    note(Failing.COLONY_DEAD, died(plant), endS);
  }

  private void note(Failing what, boolean fails, double endS) {
    if (fails && Double.isNaN(failedAtS[what.ordinal()])) {
      failedAtS[what.ordinal()] = endS - onsetS;
    }
  }

  private boolean touchedOver(Plant plant) {
    HiveView hive = plant.hive().view();
    return hive.panNode() >= 0
        && hive.nodeC(hive.panNode(), 1) > scenario.heater().limits().contactC();
  }

  private boolean died(Plant plant) {
    return scenario.colony().bees() > 0 && !plant.hive().alive();
  }

  private void harm(double endS, double lengthS, Plant plant) {
    double nestC = plant.hive().view().nestC(1);
    harmColdS += nestC < scenario.run().bandLowC() - COLD_K ? lengthS : 0;
    harmHotS += nestC > scenario.run().bandHighC() + HOT_K ? lengthS : 0;
    harmTouchS += touchedOver(plant) ? lengthS : 0;
    boolean harmed =
        harmColdS >= COLD_S || harmHotS >= HOT_S || harmTouchS >= TOUCH_S || died(plant);
    if (harmed && Double.isNaN(harmAtS)) {
      harmAtS = endS - onsetS;
    }
  }

  private void display(double endS, Plant plant, Commands commands) {
    if (heaterSecondsAtOnset < 0) {
      heaterSecondsAtOnset = commands.heaterSeconds;
    }
    double broodC =
        commands.governingCentiC == Commands.NO_TEMPERATURE
            ? Double.NaN
            : commands.governingCentiC / 100.0;
    lowC = broodC >= lowC ? lowC : Double.isNaN(broodC) ? lowC : broodC;
    highC = broodC <= highC ? highC : Double.isNaN(broodC) ? highC : broodC;
    if (endS >= visitS) {
      boolean dark = boardBreaks || plant.supply().dead();
      gauge =
          new Gauge(
              dark,
              broodC,
              lowC,
              highC,
              commands.correctedMilliV > 0 ? commands.correctedMilliV / 1000.0 : Double.NaN,
              (commands.heaterSeconds - heaterSecondsAtOnset) / 3600.0,
              dark ? 0 : commands.alarms);
    }
  }

  /** What was seen, with the result of the run. */
  Shot shot(RunResult r) {
    List<Double> values =
        scenario.requirements().stream()
            .map(q -> Judge.measure(q.kind(), r, scenario).value())
            .toList();
    Gauge seen =
        gauge != null
            ? gauge
            : new Gauge(true, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, 0);
    return new Shot(
        values,
        Arrays.stream(failedAtS).boxed().toList(),
        Arrays.stream(alarmAtS).boxed().toList(),
        harmAtS,
        seen,
        new Shot.Figures(
            r.brood().percentInBand(),
            r.brood().low().value(),
            r.brood().high().value(),
            100 * r.battery().lowestSoc().value(),
            r.power().heaterJ / 3600,
            r.colony().beesEnd()));
  }
}
