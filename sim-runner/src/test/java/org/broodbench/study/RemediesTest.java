package org.broodbench.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.broodbench.input.ScenarioReader;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.loop.Judge;
import org.broodbench.loop.Pace;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.RunResult;
import org.broodbench.loop.Simulation;
import org.broodbench.plant.Plant;
import org.broodbench.rig.Requirement;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The search for single changes on a rig whose inverter eats the sun. */
class RemediesTest {
  private static final Path FILE = Path.of("..", "scenarios", "inverter-fed.toml");
  private static final List<String> WEEK = List.of("run.days=7");

  private static Outcome outcome;
  private static Forcing forcing;
  private static RemedySearch found;

  @BeforeAll
  static void searchOnce() {
    ScenarioWeather weather = ScenarioWeather.of(ScenarioReader.read(FILE, WEEK), null, List.of());
    forcing = weather.forcing(Plant.planes(weather.scenario()));
    outcome =
        Evaluation.of(
            weather.scenario(),
            forcing,
            new Outcome.WeatherNote("generated", "generated", 0, List.of()),
            List.of(),
            2);
    found = Remedies.search(outcome, RemediesTest::rebuilt, 2);
  }

  private static Optional<Remedies.Variant> rebuilt(List<String> changes) {
    List<String> all = new ArrayList<>(WEEK);
    all.addAll(changes);
    return Optional.of(new Remedies.Variant(ScenarioReader.read(FILE, all), forcing));
  }

  @Test
  void theInverterIsBypassedFirstAndThatMendsEverything() {
    Remedy best = found.helpful().get(0);
    assertTrue(best.change().settings().contains("heater.supply=dc"), best.toString());
    assertEquals(Remedy.Reach.EVERY_COLONY, best.reach());
    for (Remedy.Effect e : best.effects()) {
      assertTrue(e.metAfter(), e.toString());
      assertFalse(e.metBefore(), e.toString());
    }
    assertTrue(found.tried() >= 10, found.tried() + " tried");
  }

  /** What is compared was run at the pace that is told. */
  @Test
  void everyRunIsAtTheRougherPace() {
    Scenario s = outcome.scenario();
    Scenario tried = s.withColony(s.colony().withClusterLossFactor(found.lossFactor()));
    ReferenceController core = new ReferenceController(s.controller().settings());
    RunResult before = new Simulation(tried, forcing, core, Pace.search(s, 20_000)).run();
    assertEquals(20_000, found.tickMillis());
    for (Remedy.Effect e : found.helpful().get(0).effects()) {
      assertEquals(Judge.measure(e.requirement().kind(), before, s).value(), e.before());
    }
  }

  /** A bigger battery alone is what the head of the scenario says not to buy. */
  @Test
  void aBiggerBatteryDoesNotMendEverything() {
    for (Remedy r : found.helpful()) {
      if (r.change().settings().get(0).startsWith("battery.capacity")) {
        assertEquals(Remedy.Reach.NONE, r.reach());
      }
    }
  }

  @Test
  void theBestStandFirst() {
    for (int i = 1; i < found.helpful().size(); i++) {
      Remedy before = found.helpful().get(i - 1);
      Remedy after = found.helpful().get(i);
      assertTrue(before.reach().compareTo(after.reach()) <= 0, after.toString());
      assertTrue(before.reach() != after.reach() || before.left() <= after.left());
    }
  }

  @Test
  void oneThreadFindsTheSameAsThree() {
    assertEquals(found, Remedies.search(outcome, RemediesTest::rebuilt, 1));
    assertEquals(found, Remedies.search(outcome, RemediesTest::rebuilt, 3));
  }

  /** What the rig cannot take is left out, and where nothing is left, none is found. */
  @Test
  void changesThatCannotBeMadeAreNotCounted() {
    RemedySearch none =
        Remedies.search(
            outcome,
            changes -> changes.isEmpty() ? rebuilt(changes) : Optional.<Remedies.Variant>empty(),
            2);
    assertEquals(0, none.tried());
    assertEquals(List.of(), none.helpful());
  }

  @Test
  void nothingIsSearchedWhereNothingIsMissed() {
    Scenario s = outcome.scenario();
    Outcome met =
        new Outcome(
            s,
            outcome.weather(),
            outcome.main(),
            outcome.lowLoss(),
            outcome.highLoss(),
            outcome.noHeat(),
            outcome.insulationOnly(),
            List.of(),
            List.of(),
            List.of(),
            RemedySearch.NONE);
    assertSame(RemedySearch.NONE, Remedies.search(met, RemediesTest::rebuilt, 2));
  }

  /** A miss counts by its size against what was missed before, and a new miss counts too. */
  @Test
  void theShortfallIsOneForEachRequirementThatIsAsFarOffAsBefore() {
    Scenario s = outcome.scenario();
    List<Requirement> all = s.requirements();
    assertEquals(
        all.size(), Shortfall.left(all, outcome.main(), outcome.main(), s), 0.7, "all are missed");
    List<Requirement> warm = List.of(new Requirement(Requirement.Kind.BROOD_IN_BAND, 95));
    assertEquals(1, Shortfall.left(warm, outcome.main(), outcome.main(), s), 1e-12);
    assertEquals(0, Shortfall.left(List.of(), outcome.main(), outcome.main(), s));
  }

  @Test
  void aRigThatIsColdAndSparedNeedsWarmthAndCharge() {
    assertEquals(
        java.util.EnumSet.of(Need.WARMTH, Need.CHARGE),
        Need.of(List.of(new Requirement(Requirement.Kind.BROOD_IN_BAND, 95)), outcome.main()));
  }
}
