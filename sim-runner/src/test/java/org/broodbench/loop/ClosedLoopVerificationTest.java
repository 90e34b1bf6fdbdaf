package org.broodbench.loop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.colony.ColonySpec;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.power.BatterySpec;
import org.broodbench.power.PvGroup;
import org.broodbench.power.PvSpec;
import org.broodbench.rig.ControllerSpec;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.RandomRigs;
import org.broodbench.rig.RunSpec;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.SensorSpec;
import org.broodbench.rig.TestRigs;
import org.broodbench.sky.Forcing;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Whole runs under the reference core against a reference of the loop that shares no integrator
 * with them. A switch may come a tick earlier or later, for a reading that lies on the edge of a
 * step of its resolution tips over at the least difference; what counts is that the same things
 * switch in the same order, and the means.
 */
class ClosedLoopVerificationTest {

  @ParameterizedTest
  @ValueSource(ints = {10, 60})
  void switchesAsTheReferenceDoes(int tickS) {
    compare(tickS, false);
  }

  @Test
  void switchesAsTheClassicalMethodDoesAtATickOfASecond() {
    compare(1, true);
  }

  @Test
  @Tag("campaign")
  void switchesAsTheReferenceDoesAtATickOfASecond() {
    compare(1, false);
  }

  private static void compare(int tickS, boolean classical) {
    Scenario rig = rig(tickS * 1000);
    Forcing forcing = RandomRigs.forcing(rig, 3, 6);
    Simulation own =
        new Simulation(rig, forcing, new ReferenceController(rig.controller().settings()), true);
    RunResult result = own.run();
    ReferenceLoop reference = new ReferenceLoop(rig, forcing, classical);
    reference.run();
    List<String> switches = new ArrayList<>();
    List<Double> atS = new ArrayList<>();
    for (EventRow e : result.events()) {
      if (List.of("heater", "fan", "shed level").contains(e.what())) {
        switches.add(e.what() + " " + e.to());
        atS.add(e.atS());
      }
    }
    double apart = 0;
    for (int i = 0; i < Math.min(atS.size(), reference.atS.size()); i++) {
      apart = Math.max(apart, Math.abs(atS.get(i) - reference.atS.get(i)));
    }
    double broodMeanC = reference.meanC[own.plant().hive().view().nestNode()];
    long shedChanges = switches.stream().filter(w -> w.startsWith("shed level")).count();
    String found =
        String.format(
            Locale.ROOT,
            "tick %d s: %d heater starts, %d fan starts, %d changes of shed level; %d switches, at most %.0f s apart;"
                + " mean %.5f against %.5f °C",
            tickS,
            result.heaterCommanded().starts(),
            result.fan().starts(),
            shedChanges,
            switches.size(),
            apart,
            result.brood().meanC(),
            broodMeanC);
    assertTrue(
        result.heaterCommanded().starts() > 20 && result.fan().starts() > 3 && shedChanges > 5,
        found);
    assertEquals(reference.switches, switches, found);
    assertEquals(broodMeanC, result.brood().meanC(), 0.005, found);
  }

  /** A week in which heater, fan and shedding all have work, with readings of fine resolution. */
  static Scenario rig(int tickMillis) {
    Scenario base = TestRigs.small(1_717_027_200L, 7); // 30 May 2024
    Settings settings =
        base.controller()
            .settings()
            .with(Setting.HEAT_SET_POINT_CENTI_C, 2800)
            .with(Setting.ALARM_BROOD_LOW_CENTI_C, 2600)
            .with(Setting.LIMIT_BROOD_CENTI_C, 2910)
            .with(Setting.FAN_ON_CENTI_C, 2920)
            .with(Setting.FAN_OFF_CENTI_C, 2850);
    List<ProbeSpec> probes = new ArrayList<>();
    for (ProbeSpec p : base.probes()) {
      probes.add(new ProbeSpec(p.role(), p.place(), p.lagS(), 0, 0.01, 0));
    }
    BatterySpec b = base.battery();
    return new Scenario(
        base.title(),
        base.fileName(),
        base.sha256(),
        base.place(),
        base.weather(),
        base.window(),
        base.hive(),
        new ColonySpec(2000, 0.115, 0, 2, 2.0, 40, 0.5, true),
        base.heater(),
        base.fan(),
        probes,
        new SensorSpec(false, 0, 0.001, 0, false, false, 0, false, false),
        new ControllerSpec(settings, tickMillis, 0.6, 0),
        new PvSpec(List.of(new PvGroup(38, 60, 180)), -0.004, 45, 0.95, true, 0.94, 18, 0.2),
        new BatterySpec(
            b.chemistry(),
            14,
            12,
            b.resistanceOhm(),
            0.9,
            5,
            b.absorptionV(),
            b.coulombicEfficiency(),
            b.selfDischargePerMonth(),
            b.timeConstantS(),
            b.place()),
        base.inverter(),
        base.wiring(),
        base.shore(),
        base.loads(),
        base.requirements(),
        List.of(),
        new RunSpec(1, 10, 600, 32, 36),
        List.of());
  }
}
