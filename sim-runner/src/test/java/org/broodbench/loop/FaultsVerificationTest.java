package org.broodbench.loop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.broodbench.plant.Plant;
import org.broodbench.power.InverterSpec;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.FaultKind;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.ForcingSettings;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.WeatherGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class FaultsVerificationTest {
  private static final long FROM_EPOCH_S = 20_530L * 86_400;
  private static final double AT_S = 6 * 3600;
  private static final Scenario RIG =
      TestRigs.small(FROM_EPOCH_S, 2).withHive(TestRigs.insulated(0, 1));
  private static final Forcing WEATHER =
      Forcing.of(
          WeatherGenerator.generate(GeneratorSettings.uplandSpring(3, FROM_EPOCH_S / 86_400, 2)),
          RIG.place(),
          RIG.window().fromEpochS(),
          RIG.window().toEpochS(),
          Plant.planes(RIG),
          ForcingSettings.DEFAULT);

  private static RunResult run(EventSpec.Fault... faults) {
    Scenario s = RIG.withEvents(List.of(faults));
    return new Simulation(s, WEATHER, new ReferenceController(s.controller().settings()), true)
        .run();
  }

  private static RunResult run(FaultKind kind) {
    return run(new EventSpec.Fault(AT_S, kind));
  }

  private static boolean alarmed(RunResult r, String name) {
    return r.alarms().stream().anyMatch(a -> a.name().equals(name) && a.firstAtS() >= AT_S);
  }

  private static double after(RunResult r, String column, boolean most) {
    double[] values = r.trace().column(column);
    var part = Arrays.stream(values, (int) (AT_S / 60) + 30, values.length);
    return most ? part.max().orElseThrow() : part.min().orElseThrow();
  }

  /** A microjoule in a kilojoule, a microgram in a kilogram: round-off. */
  private static void balancesClose(RunResult r) {
    var h = r.hive();
    double heat = h.heaterJ + h.colonyJ + h.lostWallsJ + h.latentTakenJ + Math.abs(h.storedJ);
    assertEquals(0, h.heatResidualJ() / heat, 1e-9);
    assertEquals(0, h.waterResidualKg() / (h.waterInKg + h.waterOutKg + h.waterMadeKg), 1e-9);
    var p = r.power();
    double energy =
        p.pvUsedJ + p.heaterJ + p.controllerJ + p.batteryLossJ + Math.abs(p.batteryChangeJ);
    assertEquals(0, p.energyResidualJ() / energy, 1e-9);
    double charge = p.chargeInAh + p.chargeOutAh + p.chargeLostAh + Math.abs(p.chargeStoredAh);
    assertEquals(0, p.chargeResidualAh() / charge, 1e-9);
  }

  @ParameterizedTest
  @EnumSource(FaultKind.class)
  void balancesCloseUnderEveryFault(FaultKind kind) {
    RunResult r = run(kind);
    balancesClose(r);
    boolean carriedOut =
        r.events().stream()
            .anyMatch(e -> e.what().equals("fault " + kind.key()) && e.atS() == AT_S);
    assertEquals(kind.appliesTo(RIG), carriedOut);
  }

  @Test
  void aProbeThatGivesNothingOrNonsenseIsSeen() {
    for (FaultKind kind : List.of(FaultKind.PROBE_OPEN, FaultKind.PROBE_SHORT)) {
      RunResult r = run(kind);
      assertTrue(alarmed(r, "brood_probe"), kind.key());
      assertTrue(alarmed(r, "fallback"), kind.key());
    }
    assertTrue(alarmed(run(FaultKind.PAN_PROBE_OPEN), "pan_probe"));
    assertTrue(alarmed(run(FaultKind.OUTDOOR_PROBE_OPEN), "outdoor_probe"));
    assertTrue(alarmed(run(FaultKind.VOLTS_LOST), "blind"));
  }

  @Test
  void aProbeThatReadsLowMakesTheBroodWarmerByAsMuch() {
    double wholeC = run().brood().meanC();
    double lowC =
        run(new EventSpec.Fault(0, FaultKind.PROBE_OFFSET, Double.POSITIVE_INFINITY, -2))
            .brood()
            .meanC();
    // it creeps in over two hours, and hours without heating do not change
    assertTrue(lowC > wholeC + 0.7 && lowC < wholeC + 2.2, wholeC + " and " + lowC);
  }

  @Test
  void heaterFaultsShowInTheHeat() {
    double wholeJ = run().power().heaterJ;
    for (FaultKind kind :
        List.of(
            FaultKind.RELAY_OPEN,
            FaultKind.ELEMENT_BURNT,
            FaultKind.HEATER_FUSE_BLOWN,
            FaultKind.CONTROLLER_DEAD,
            FaultKind.BATTERY_GONE,
            FaultKind.BATTERY_FUSE_BLOWN)) {
      RunResult r = run(kind);
      assertEquals(0, after(r, "heater_w", true), kind.key());
      assertTrue(r.power().heaterJ < wholeJ, kind.key());
    }
    RunResult half =
        run(new EventSpec.Fault(AT_S, FaultKind.ELEMENT_BURNT, Double.POSITIVE_INFINITY, 0.5));
    // half the power, a little more because the bus sags less; hours of charging differ as well
    double share = after(half, "heater_w", true) / after(run(), "heater_w", true);
    assertTrue(share > 0.48 && share < 0.6, "share " + share);
    RunResult hangs = run(FaultKind.CONTROLLER_HANGS);
    assertTrue(after(hangs, "heater_w", false) > 30, "on without end");
    assertTrue(hangs.pan().value() > run().pan().value() + 10);
  }

  /** Without an isolation switch nothing parts a welded relay; with one the controller does. */
  @Test
  void aWeldedRelayHeatsUntilItIsIsolated() {
    RunResult r = run(FaultKind.RELAY_WELDED);
    assertTrue(after(r, "heater_w", false) > 30);
    assertTrue(alarmed(r, "welded"));
  }

  @Test
  void airFaultsShowInTheAir() {
    RunResult whole = run();
    RunResult lid = run(FaultKind.LID_OFF);
    assertTrue(after(lid, "top_c", true) < after(whole, "top_c", true) - 3);
    RunResult shut = run(FaultKind.ENTRANCE_BLOCKED);
    assertTrue(shut.air().highCo2().value() > 1.2 * whole.air().highCo2().value());
    RunResult blows = run(FaultKind.FAN_STUCK_ON);
    assertTrue(blows.air().meanCo2Percent() < whole.air().meanCo2Percent());
    RunResult toppled = run(FaultKind.TOPPLED);
    assertTrue(toppled.brood().low().value() < lid.brood().low().value());
  }

  @Test
  void beesWithoutStoresLiveOnTheirCropsAndStarve() {
    RunResult r = run(FaultKind.STORES_GONE);
    double diedAtS =
        r.events().stream()
            .filter(e -> e.reason().equals("starved"))
            .findFirst()
            .orElseThrow()
            .atS();
    // 2500 crops of 20 mg at 12.6 kJ/g are 630 kJ: 8 to 24 h at 7 to 20 W
    assertTrue(diedAtS > AT_S + 8 * 3600 && diedAtS < AT_S + 24 * 3600, "at " + diedAtS);
    assertEquals(0, r.colony().beesEnd());
  }

  @Test
  void aBatteryAgesAndLosesACell() {
    Scenario old = RIG.withEvents(List.of(new EventSpec.Fault(0, FaultKind.BATTERY_AGED)));
    Simulation sim =
        new Simulation(old, WEATHER, new ReferenceController(old.controller().settings()), false);
    double freshOhm = sim.plant().supply().battery().resistanceOhm();
    double charge = sim.plant().supply().battery().stateOfCharge();
    RunResult r = sim.run();
    assertTrue(sim.plant().supply().battery().resistanceOhm() > 1.4 * freshOhm, "grown by 1/0.6");
    // 40 % of what 100 Ah of the 20-hour rate hold in all
    assertTrue(r.power().chargeLostAh > 0.4 * 100 * charge, "lost " + r.power().chargeLostAh);
    double whole = after(run(), "battery_v", false);
    double short1 = after(run(FaultKind.CELL_LOST), "battery_v", false);
    assertTrue(short1 < whole - 1.5, "about 2 V less: " + whole + " and " + short1);
  }

  @Test
  void panelFaultsTakeTheLight() {
    double wholeJ = run().power().pvAvailableJ;
    double snowJ =
        run(new EventSpec.Fault(0, FaultKind.PANEL_COVERED, Double.POSITIVE_INFINITY, 0.05))
            .power()
            .pvAvailableJ;
    assertTrue(snowJ < 0.06 * wholeJ && snowJ > 0.01 * wholeJ, snowJ + " of " + wholeJ);
    assertEquals(0, run(new EventSpec.Fault(0, FaultKind.STRING_LOST)).power().pvAvailableJ);
  }

  @Test
  void aFaultThatEndsIsOver() {
    RunResult r = run(new EventSpec.Fault(AT_S, FaultKind.CONTROLLER_DEAD, 7200, Double.NaN));
    double[] heater = r.trace().column("heater_w");
    int begin = (int) (AT_S / 60) + 2;
    int end = (int) ((AT_S + 7200) / 60);
    assertEquals(0, Arrays.stream(heater, begin, end).max().orElseThrow());
    assertTrue(Arrays.stream(heater, end, heater.length).max().orElseThrow() > 30, "heats again");
  }

  @Test
  void aControllerThatResetsEveryHourStartsAnewEveryTime() {
    double[] resets = run(FaultKind.CONTROLLER_RESETS).trace().column("heater_on");
    double[] whole = run().trace().column("heater_on");
    double others = 0;
    for (int hour = (int) (AT_S / 3600); hour < 48; hour++) {
      // minimum off is 5 min and begins anew with every power-up
      for (int minute = 2; minute < 5; minute++) {
        assertEquals(0, resets[60 * hour + minute], "hour " + hour + ", minute " + minute);
        others += whole[60 * hour + minute];
      }
    }
    assertTrue(others > 0, "without resets there is heat in some of these minutes");
  }

  @Test
  void whatIsNotFittedDoesNotBreak() {
    assertFalse(FaultKind.INVERTER_TRIPPED.appliesTo(RIG));
    assertFalse(FaultKind.SHORE_LOST.appliesTo(RIG));
    assertEquals(0, new InverterSpec(0, 0, 0, 0).ratedW());
  }
}
