package org.broodbench.loop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import org.broodbench.colony.ColonySpec;
import org.broodbench.hive.HiveLedger;
import org.broodbench.plant.Plant;
import org.broodbench.power.ShoreSpec;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.ForcingSettings;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.WeatherGenerator;
import org.junit.jupiter.api.Test;

class ScenarioEventsVerificationTest {
  private static final long FROM_EPOCH_S = 20_564L * 86_400;
  private static final double HOUR_S = 3600;

  private static RunResult run(Scenario s) {
    Forcing forcing =
        Forcing.of(
            WeatherGenerator.generate(
                GeneratorSettings.uplandSpring(3, FROM_EPOCH_S / 86_400, s.window().days())),
            s.place(),
            s.window().fromEpochS(),
            s.window().toEpochS(),
            Plant.planes(s),
            ForcingSettings.DEFAULT);
    return new Simulation(s, forcing, new ReferenceController(s.controller().settings()), true)
        .run();
  }

  private static ColonySpec noBees() {
    return new ColonySpec(0, 0.115, 0, 2, 2.0, 40, 0.5, true);
  }

  /** Every kind of event in three days; what each does is seen, and all balances still close. */
  @Test
  void everyKindOfEventIsCarriedOutAndTheBalancesClose() {
    Scenario s =
        TestRigs.small(FROM_EPOCH_S, 3)
            .withColony(noBees())
            .withShore(new ShoreSpec(true, 60, 0.85))
            .withEvents(
                List.of(
                    new EventSpec.InstallColony(6 * HOUR_S, 2500, 2000),
                    new EventSpec.Feed(10 * HOUR_S, 0.5, 0.4, 35),
                    new EventSpec.OpenLid(12 * HOUR_S + 7, 600),
                    new EventSpec.ShorePower(20 * HOUR_S, false),
                    new EventSpec.AddBox(30 * HOUR_S, 0.244, 10, 0),
                    new EventSpec.ChangeVent(40 * HOUR_S, 8e-4),
                    new EventSpec.SetPoint(48 * HOUR_S, 34),
                    new EventSpec.ShorePower(50 * HOUR_S, true)));
    RunResult r = run(s);
    HiveLedger h = r.hive();
    double heat =
        h.heaterJ
            + h.colonyJ
            + h.sunJ
            + h.latentReleasedJ
            + h.lostWallsJ
            + Math.abs(h.lostAirJ)
            + h.latentTakenJ
            + Math.abs(h.storedJ);
    assertEquals(0, h.heatResidualJ() / heat, 1e-9, "a microjoule in a kilojoule is round-off");
    assertEquals(0, h.waterResidualKg() / (h.waterInKg + h.waterOutKg), 1e-9);
    assertEquals(0, h.co2ResidualKg() / (h.co2InKg + h.co2OutKg), 1e-9);

    Trace t = r.trace();
    double[] brood = t.column("brood_c");
    double[] colony = t.column("colony_w");
    double[] lid = t.column("top_c");
    assertEquals(0, colony[6 * 60 - 2], "no heat before the colony is there");
    assertTrue(colony[6 * 60 + 30] > 2, "heat once it is: " + colony[6 * 60 + 30]);
    assertTrue(brood[12 * 60] > 25, "it warms its combs: " + brood[12 * 60]);
    assertTrue(lid[12 * 60 + 8] < lid[12 * 60 - 5] - 1, "an open lid lets the warmth out");
    String words =
        r.events().stream().map(e -> e.what() + ":" + e.to()).collect(Collectors.joining(" "));
    for (String expected :
        List.of(
            "colony:",
            "feed:500 g",
            "lid:open",
            "lid:closed",
            "shore power:gone",
            "boxes:2",
            "upper vent:8.0 cm²",
            "set point:34.00 °C",
            "shore power:there")) {
      assertTrue(words.contains(expected), expected + " in " + words);
    }
    double[] setPoint = t.column("set_point_c");
    assertTrue(setPoint[t.rows() - 1] > 33.01, "the new set point is worked towards");
    assertTrue(r.power().shoreJ > 0);
    assertEquals(2500, r.colony().beesStart());
  }

  /** A second box of outdoor air and another pair of walls cost warmth, whoever makes it. */
  @Test
  void aBoxOnTopCostsWarmth() {
    Scenario one = TestRigs.small(FROM_EPOCH_S, 2);
    RunResult without = run(one);
    RunResult with = run(one.withEvents(List.of(new EventSpec.AddBox(12 * HOUR_S, 0.244, 10, 0))));
    double warmthWithout = without.power().heaterJ + without.hive().colonyJ;
    double warmthWith = with.power().heaterJ + with.hive().colonyJ;
    assertTrue(warmthWith > 1.02 * warmthWithout, warmthWith + " against " + warmthWithout);
  }

  /**
   * Four times the vent over the same entrance lets at least a fifth more through: the entrance and
   * the wind set the rest.
   */
  @Test
  void aWiderVentLetsMoreAirThrough() {
    Scenario one = TestRigs.small(FROM_EPOCH_S, 1);
    double[] before = run(one).trace().column("air_l_min");
    double[] after =
        run(one.withEvents(List.of(new EventSpec.ChangeVent(6 * HOUR_S, 8e-4))))
            .trace()
            .column("air_l_min");
    assertEquals(before[5 * 60], after[5 * 60]);
    double sumBefore = 0;
    double sumAfter = 0;
    for (int i = 7 * 60; i < before.length; i++) {
      sumBefore += before[i];
      sumAfter += after[i];
    }
    assertTrue(sumAfter > 1.2 * sumBefore, sumAfter + " against " + sumBefore);
  }

  /** A cold empty hive has no brood to be judged before the first colony moves in. */
  @Test
  void theBroodIsJudgedFromTheArrivalOfTheFirstColony() {
    double arrivesS = 30 * HOUR_S;
    RunResult r =
        run(
            TestRigs.small(FROM_EPOCH_S, 3)
                .withColony(noBees())
                .withEvents(
                    List.of(
                        new EventSpec.OpenLid(2 * HOUR_S, 4 * HOUR_S),
                        new EventSpec.InstallColony(arrivesS, 2500, 2000))));
    assertTrue(r.brood().low().atS() > arrivesS, r.brood().low().toString());
    assertTrue(r.air().lowRh().atS() > arrivesS + HOUR_S, r.air().lowRh().toString());
    double judgedHours = 72 - 30;
    double outsideHours = r.brood().hoursBelow() + r.brood().hoursAbove();
    assertTrue(outsideHours < judgedHours, outsideHours + " h");
    assertEquals(100 * (1 - outsideHours / judgedHours), r.brood().percentInBand(), 1e-6);
    // a day at the few degrees of an open hive would be a dose of many hundred degree-hours
    assertTrue(r.brood().degreeHoursBelow() < 200, r.brood().degreeHoursBelow() + " K h");
    assertTrue(r.colony().lostToCold() < 300, r.colony().lostToCold() + " cells");
  }
}
