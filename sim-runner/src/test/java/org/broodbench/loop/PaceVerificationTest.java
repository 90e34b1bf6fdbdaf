package org.broodbench.loop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Locale;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.FaultKind;
import org.broodbench.rig.RandomRigs;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.broodbench.rig.Window;
import org.broodbench.sky.Forcing;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the pace of a search changes, and what it does not. */
class PaceVerificationTest {
  private static RunResult run(Scenario rig, Forcing forcing, Pace pace) {
    return new Simulation(rig, forcing, new ReferenceController(rig.controller().settings()), pace)
        .run();
  }

  private static List<String> switches(RunResult r) {
    return r.events().stream()
        .filter(e -> List.of("heater", "fan", "shed level").contains(e.what()))
        .map(e -> e.what() + " " + e.to())
        .toList();
  }

  /** Readings of fine resolution without noise: the tick then delays a switch and does no more. */
  @Test
  void switchesInTheSameOrderAndKeepsTheMeansWithoutNoise() {
    Scenario rig = ClosedLoopVerificationTest.rig(1000);
    Forcing forcing = RandomRigs.forcing(rig, 3, 6);
    RunResult exact = run(rig, forcing, Pace.exact(rig, Pace.Keep.EVENTS));
    Pace search = Pace.search(rig);
    RunResult quick =
        run(rig, forcing, new Pace(search.tickMillis(), search.stepMillis(), Pace.Keep.EVENTS));
    String found =
        String.format(
            Locale.ROOT,
            "%d against %d switches; mean %.4f against %.4f °C; heater %.2f against %.2f Wh",
            switches(quick).size(),
            switches(exact).size(),
            quick.brood().meanC(),
            exact.brood().meanC(),
            quick.power().heaterJ / 3600,
            exact.power().heaterJ / 3600);
    assertTrue(switches(exact).size() > 100, found);
    assertEquals(switches(exact), switches(quick), found);
    assertEquals(exact.brood().meanC(), quick.brood().meanC(), 0.005, found);
    assertEquals(1, quick.power().heaterJ / exact.power().heaterJ, 0.01, found);
    assertEquals(
        exact.battery().lowestSoc().value(), quick.battery().lowestSoc().value(), 0.005, found);
    assertEquals(exact.pan().value(), quick.pan().value(), 0.1, found);
  }

  /**
   * Delays of up to 20 s tell where a rig sheds and leaves shedding all day long, as this one does;
   * measured: 147 instead of 153 switches, 0.04 K, 2.7 % of the heat.
   */
  @Test
  void atTickOfTwentySecondsARigOnTheEdgeStaysWithinItsBounds() {
    Scenario rig = ClosedLoopVerificationTest.rig(1000);
    Forcing forcing = RandomRigs.forcing(rig, 3, 6);
    RunResult exact = run(rig, forcing, Pace.exact(rig, Pace.Keep.EVENTS));
    RunResult rough = run(rig, forcing, Pace.search(rig, 20_000));
    assertEquals(exact.brood().meanC(), rough.brood().meanC(), 0.1);
    assertEquals(1, rough.power().heaterJ / exact.power().heaterJ, 0.05);
    assertEquals(exact.battery().lowestSoc().value(), rough.battery().lowestSoc().value(), 0.01);
    assertEquals(exact.pan().value(), rough.pan().value(), 0.5);
  }

  /** With noise a slower tick is another draw; the step of the plant hardly counts beside it. */
  @ParameterizedTest
  @ValueSource(ints = {10_000, 20_000})
  void theLongerPlantStepAloneMovesNoFigureOfARigWithNoise(int tickMillis) {
    Scenario rig = TestRigs.small(1_706_745_600L, 7);
    Forcing forcing = RandomRigs.forcing(rig, 3, 4);
    RunResult fine = run(rig, forcing, new Pace(tickMillis, 10_000, Pace.Keep.FIGURES));
    RunResult quick = run(rig, forcing, Pace.search(rig, tickMillis));
    assertEquals(fine.heaterCommanded().starts(), quick.heaterCommanded().starts());
    assertEquals(fine.brood().meanC(), quick.brood().meanC(), 0.005);
    assertEquals(fine.brood().low().value(), quick.brood().low().value(), 0.02);
    assertEquals(1, quick.power().heaterJ / fine.power().heaterJ, 0.003);
    assertEquals(fine.air().highCo2().value(), quick.air().highCo2().value(), 0.01);
    assertTrue(Math.abs(quick.hive().heatResidualJ()) < 1e-6 * quick.hive().colonyJ);
  }

  @Test
  void figuresAloneAreThoseOfTheWholeResult() {
    Scenario rig = ClosedLoopVerificationTest.rig(10_000);
    Forcing forcing = RandomRigs.forcing(rig, 3, 6);
    RunResult whole = run(rig, forcing, Pace.exact(rig, Pace.Keep.TRACE));
    RunResult lean = run(rig, forcing, Pace.exact(rig, Pace.Keep.FIGURES));
    assertFalse(whole.events().isEmpty());
    assertTrue(lean.events().isEmpty());
    assertNull(lean.trace());
    assertNull(lean.coldest());
    assertEquals(whole.brood().meanC(), lean.brood().meanC());
    assertEquals(whole.brood().low().value(), lean.brood().low().value());
    assertEquals(whole.worst(), lean.worst());
    assertEquals(whole.power().heaterJ, lean.power().heaterJ);
    assertEquals(whole.hive().heatResidualJ(), lean.hive().heatResidualJ());
    assertEquals(whole.heaterCommanded().starts(), lean.heaterCommanded().starts());
    assertEquals(whole.earlyStops(), lean.earlyStops());
    assertEquals(whole.alarms(), lean.alarms());
    assertEquals(whole.hoursShed(), lean.hoursShed());
    assertEquals(whole.battery().wentDead(), lean.battery().wentDead());
  }

  @Test
  void aDeadBusIsToldWithoutEvents() {
    Scenario whole = ClosedLoopVerificationTest.rig(10_000);
    Scenario rig = whole.withEvents(List.of(new EventSpec.Fault(86_400, FaultKind.BATTERY_GONE)));
    Forcing forcing = RandomRigs.forcing(rig, 3, 6);
    assertFalse(run(whole, forcing, Pace.search(rig)).battery().wentDead());
    assertTrue(run(rig, forcing, Pace.search(rig)).battery().wentDead());
    assertTrue(run(rig, forcing, Pace.exact(rig, Pace.Keep.TRACE)).battery().wentDead());
  }

  /** A run allocates what it is made of, and nothing a step. */
  @Test
  void allocatesNothingAStep() {
    Scenario week = TestRigs.small(1_706_745_600L, 7);
    Scenario fortnight = week.withWindow(new Window(1_706_745_600L, 14));
    Forcing forcing = RandomRigs.forcing(fortnight, 3, 4);
    long one = bytes(week, forcing);
    long two = bytes(fortnight, forcing);
    double aStep = (two - one) / (7.0 * 86_400 / 60);
    assertTrue(aStep < 0.5, two - one + " bytes more in a second week");
  }

  private static long bytes(Scenario rig, Forcing forcing) {
    run(rig, forcing, Pace.search(rig));
    var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    long before = threads.getCurrentThreadAllocatedBytes();
    run(rig, forcing, Pace.search(rig));
    return threads.getCurrentThreadAllocatedBytes() - before;
  }

  @Test
  void keepsALongerTickOfTheScenarioAndRefusesNone() {
    Scenario rig = ClosedLoopVerificationTest.rig(60_000);
    assertEquals(60_000, Pace.search(rig).tickMillis());
    assertEquals(60_000, Pace.search(rig).stepMillis());
    assertEquals(60_000, Pace.search(rig, 20_000).tickMillis());
    assertEquals(120_000, Pace.search(rig, 20_000).stepMillis());
    assertEquals(120_000, Pace.search(rig, 60_000).stepMillis());
    assertThrows(IllegalArgumentException.class, () -> new Pace(0, 10_000, Pace.Keep.FIGURES));
    assertThrows(IllegalArgumentException.class, () -> new Pace(1000, 0, Pace.Keep.FIGURES));
  }
}
