package org.broodbench.scenarios;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.broodbench.hive.HiveLedger;
import org.broodbench.input.ScenarioReader;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.loop.Judge;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.RunResult;
import org.broodbench.loop.Simulation;
import org.broodbench.plant.Plant;
import org.broodbench.power.PowerLedger;
import org.broodbench.rig.Requirement;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;
import org.broodbench.study.Evaluation;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Holds every shipped scenario to what its head says of it. Each is run once for all tests. */
class ShippedScenariosTest {
  private static final List<ScenarioHead> HEADS = new ArrayList<>();
  private static final Map<String, Case> SHIPPED = new LinkedHashMap<>();
  private static final Map<String, Case> CURED = new LinkedHashMap<>();
  private static final Map<String, Case> NOT_CURED = new LinkedHashMap<>();

  /** A scenario and its runs at its own, the highest and the lowest heat loss. */
  private record Case(Scenario scenario, List<RunResult> runs) {
    /** The requirements that some run misses. */
    List<String> missed() {
      return scenario.requirements().stream()
          .filter(q -> runs.stream().anyMatch(r -> !meets(q, r)))
          .map(q -> q.kind().key())
          .toList();
    }

    boolean meets(Requirement q, RunResult r) {
      return Judge.measure(q.kind(), r, scenario).meets(q);
    }
  }

  @BeforeAll
  static void runAllOnce() throws Exception {
    HEADS.addAll(ScenarioHead.all());
    ExecutorService pool =
        Executors.newFixedThreadPool(Math.max(2, Runtime.getRuntime().availableProcessors()));
    Map<String, Future<Case>> shipped = new LinkedHashMap<>();
    Map<String, Future<Case>> cured = new LinkedHashMap<>();
    Map<String, Future<Case>> notCured = new LinkedHashMap<>();
    try {
      for (ScenarioHead head : HEADS) {
        shipped.put(head.name(), pool.submit(() -> run(head, List.of(), false)));
        for (List<String> cure : head.cures()) {
          cured.put(head.name() + " " + cure, pool.submit(() -> run(head, cure, false)));
        }
        for (List<String> other : head.noCures()) {
          notCured.put(head.name() + " " + other, pool.submit(() -> run(head, other, true)));
        }
      }
      collect(shipped, SHIPPED);
      collect(cured, CURED);
      collect(notCured, NOT_CURED);
    } finally {
      pool.shutdownNow();
    }
  }

  private static void collect(Map<String, Future<Case>> from, Map<String, Case> to)
      throws Exception {
    for (Map.Entry<String, Future<Case>> e : from.entrySet()) {
      to.put(e.getKey(), e.getValue().get());
    }
  }

  /**
   * @param untilMissed whether one run that misses something is enough
   */
  private static Case run(ScenarioHead head, List<String> settings, boolean untilMissed) {
    ScenarioWeather weather =
        ScenarioWeather.of(
            ScenarioReader.read(head.file(), settings), head.file().getParent(), List.of());
    Scenario s = weather.scenario();
    Forcing forcing = weather.forcing(Plant.planes(s));
    List<RunResult> runs = new ArrayList<>();
    Case all = new Case(s, runs);
    for (double factor :
        new double[] {s.colony().clusterLossFactor(), Evaluation.HIGH_LOSS, Evaluation.LOW_LOSS}) {
      Scenario one = s.withColony(s.colony().withClusterLossFactor(factor));
      runs.add(
          new Simulation(one, forcing, new ReferenceController(one.controller().settings()), false)
              .run());
      if (untilMissed && !all.missed().isEmpty()) {
        break;
      }
    }
    return all;
  }

  @Test
  void everyScenarioMissesWhatItSays() {
    SHIPPED.forEach(
        (name, shipped) -> {
          Set<String> said = new TreeSet<>(head(name).missed());
          assertEquals(said, new TreeSet<>(shipped.missed()), name);
        });
  }

  private static ScenarioHead head(String name) {
    return HEADS.stream().filter(h -> h.name().equals(name)).findFirst().orElseThrow();
  }

  @Test
  void everyCureMeetsEveryRequirement() {
    for (ScenarioHead head : HEADS) {
      assertEquals(head.missed().isEmpty(), head.cures().isEmpty(), head.name() + " has cures");
    }
    CURED.forEach((name, cured) -> assertEquals(List.of(), cured.missed(), name));
  }

  @Test
  void whatIsSaidNotToHelpDoesNot() {
    assertFalse(NOT_CURED.isEmpty());
    NOT_CURED.forEach((name, other) -> assertFalse(other.missed().isEmpty(), name));
  }

  /** The collection teaches more than one thing, and shows a rig that is in order. */
  @Test
  void theyMissDifferentThingsAndOneIsInOrder() {
    Set<List<String>> kinds = new java.util.HashSet<>();
    SHIPPED.values().forEach(s -> kinds.add(s.missed()));
    assertTrue(kinds.contains(List.of()), "one meets everything");
    assertTrue(kinds.size() >= 6, kinds.toString());
  }

  /** In the desert the fan keeps the brood from what the dark paint would do to it. */
  @Test
  void theFanMattersAtTheEdgeOfTheDesert() {
    Case without = NOT_CURED.get("desert-edge.toml [fan.power=0 W]");
    double withoutC = without.runs().get(0).brood().high().value();
    assertTrue(withoutC > 37.8, "without the fan at its limit: " + withoutC);
    double coolerK =
        withoutC - SHIPPED.get("desert-edge.toml").runs().get(0).brood().high().value();
    assertTrue(coolerK > 1, coolerK + " K");
  }

  /** The head of the demonstration: without heat its colony dies, with heat it does not. */
  @Test
  void theColonyOfTheDemonstrationLivesByItsHeater() {
    Case demo = SHIPPED.get("late-split.toml");
    demo.runs().forEach(r -> assertTrue(r.colony().beesEnd() > 0));
    Case unheated = run(head("late-split.toml"), List.of("heater.power=0 W"), true);
    assertEquals(0, unheated.runs().get(0).colony().beesEnd());
  }

  /** No heater is broken in them, so none may be taken for broken. */
  @Test
  void noSoundHeaterIsFoundWithoutEffect() {
    SHIPPED.forEach(
        (name, c) ->
            c.runs()
                .forEach(
                    r ->
                        assertFalse(
                            r.events().stream().anyMatch(e -> e.what().equals("alarm effect")),
                            name)));
  }

  /** What the heads tell in figures. */
  @Test
  void theFiguresOfTheHeadsAreThoseOfTheRuns() {
    PowerLedger north = SHIPPED.get("far-north-march.toml").runs().get(0).power();
    assertTrue(north.pvAvailableJ > 3 * 3.6e6 && north.pvUsedJ < 0.06 * north.pvAvailableJ);
    PowerLedger inverter = SHIPPED.get("inverter-fed.toml").runs().get(0).power();
    assertTrue(inverter.inverterLossJ > inverter.heaterJ);
    assertTrue(inverter.inverterLossJ > 0.8 * inverter.pvUsedJ);
    RunResult wrapped = SHIPPED.get("over-insulated.toml").runs().get(0);
    assertEquals(0, wrapped.heaterCommanded().starts());
    assertEquals(0, SHIPPED.get("rooftop-mains.toml").runs().get(0).power().pvAvailableJ);
    RunResult season = SHIPPED.get("eight-weeks.toml").runs().get(0);
    assertTrue(season.power().shoreJ > 0 && season.power().pvUsedJ > 0);
    assertEquals(6000, season.colony().beesStart());
    for (String what : List.of("colony", "feed", "lid", "upper vent", "shore power", "boxes")) {
      assertTrue(season.events().stream().anyMatch(e -> e.what().equals(what)), what);
    }
    assertFalse(
        season.events().stream().anyMatch(e -> e.reason().contains("refused")),
        "the controller takes every set point");
  }

  /** The residual of every ledger is at most a millionth of what went in. */
  @Test
  void everyLedgerOfEveryRunCloses() {
    List<Map<String, Case>> all = List.of(SHIPPED, CURED, NOT_CURED);
    all.forEach(
        cases ->
            cases.forEach(
                (name, c) ->
                    c.runs()
                        .forEach(
                            r -> {
                              HiveLedger h = r.hive();
                              PowerLedger p = r.power();
                              closes(name, h.heatResidualJ(), h.colonyJ + h.sunJ);
                              closes(name, h.waterResidualKg(), h.waterMadeKg + h.waterInKg);
                              closes(name, h.co2ResidualKg(), h.co2MadeKg + h.co2InKg);
                              closes(name, p.energyResidualJ(), p.pvUsedJ + p.shoreJ);
                              closes(name, p.chargeResidualAh(), p.chargeInAh + p.chargeOutAh);
                            })));
  }

  private static void closes(String name, double residual, double through) {
    assertTrue(through > 0, name);
    assertTrue(Math.abs(residual) <= 1e-6 * through, name + ": " + residual + " of " + through);
  }

  /** Some keeper works in degrees Fahrenheit, inches and gauge numbers. */
  @Test
  void unitsOfBothWorldsAreShown() throws IOException {
    String text = java.nio.file.Files.readString(head("over-insulated.toml").file());
    for (String unit : List.of("°F\"", " in\"", "AWG", " lb\"", " ft\"")) {
      assertTrue(text.contains(unit), unit);
    }
  }
}
