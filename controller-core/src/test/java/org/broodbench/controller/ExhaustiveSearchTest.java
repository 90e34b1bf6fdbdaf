package org.broodbench.controller;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Every state that a part can reach, each part alone, then the heater path with the others as
 * flags. The bounded form runs in every build; the campaign goes on until nothing new is left or
 * memory is the bound.
 */
class ExhaustiveSearchTest {
  private static List<Explorer.Result> search(long partMost, long pathMost) {
    Explorer explorer = new Explorer();
    List<Explorer.Result> results = new ArrayList<>();
    results.add(explorer.explore("relay guard", new SmallModels.Relay(), partMost));
    results.add(explorer.explore("share gate", new SmallModels.Gate(), partMost));
    results.add(explorer.explore("thermostat", new SmallModels.Demand(), partMost));
    results.add(explorer.explore("limits", new SmallModels.LimitFlags(), partMost));
    results.add(explorer.explore("shedding", new SmallModels.Shed(), partMost));
    results.add(explorer.explore("supply, shore first", new SmallModels.Supply(false), partMost));
    results.add(explorer.explore("supply, battery first", new SmallModels.Supply(true), partMost));
    results.add(explorer.explore("button", new SmallModels.Press(), partMost));
    results.add(explorer.explore("probe judge", new SmallModels.Judge(), partMost));
    results.add(explorer.explore("commissioning test", new SmallModels.Test(), partMost));
    results.add(explorer.explore("fan", new SmallModels.Fan(), partMost));
    results.add(explorer.explore("heater path", new SmallModels.Heat(true), pathMost));
    results.add(
        explorer.explore("heater path, no fallback", new SmallModels.Heat(false), pathMost));
    long transitions = 0;
    long states = 0;
    for (Explorer.Result result : results) {
      System.out.println(result);
      transitions += result.transitions();
      states += result.states();
    }
    System.out.printf("%-22s %,12d states %,14d transitions%n", "in all", states, transitions);
    return results;
  }

  @Test
  void boundedSearchFindsNoBrokenRule() {
    assertTrue(transitions(search(300_000, 800_000)) >= 1_000_000);
  }

  /** A short form, enough to catch a changed condition in the small parts. */
  @Test
  @Tag("fast")
  void shortSearchFindsNoBrokenRule() {
    assertTrue(transitions(search(20_000, 20_000)) >= 100_000);
  }

  private static long transitions(List<Explorer.Result> results) {
    return results.stream().mapToLong(Explorer.Result::transitions).sum();
  }

  @Test
  @Tag("campaign")
  void fullSearchFindsNoBrokenRule() {
    List<Explorer.Result> results = search(Campaign.share(60_000_000), Campaign.share(60_000_000));
    long closed = results.stream().filter(Explorer.Result::closed).count();
    System.out.println(closed + " of " + results.size() + " searches are complete");
    assertTrue(closed >= 8, "complete searches " + closed);
  }

  /**
   * The search is not asleep: a guard without minimum off is found, with the shortest way there.
   */
  @Test
  void aGuardWithoutMinimumOffIsFound() {
    AssertionError error =
        assertThrows(
            AssertionError.class,
            () -> new Explorer().explore("broken", new Broken(), Long.MAX_VALUE));
    assertTrue(error.getMessage().contains("C1"), error.getMessage());
  }

  /** A relay that starts after three of the four units of minimum off. */
  private static final class Broken extends Explorer.Model {
    private final RelayGuard guard;

    Broken() {
      this(new RelayGuard(3, 3, 2, 12));
    }

    private Broken(RelayGuard guard) {
      super(1, guard);
      this.guard = guard;
    }

    @Override
    int inputs() {
      return 8;
    }

    @Override
    void apply(int input) {
      int dt = 1 + input / 4;
      boolean was = guard.on();
      aux[0] = Math.min(aux[0] + dt, 9);
      guard.pass(dt);
      boolean on = guard.drive(input % 2 == 1, input / 2 % 2 == 1);
      assertTrue(was || !on || aux[0] >= 4, "C1: off for " + aux[0]);
      if (was && !on) {
        aux[0] = 0;
      }
    }
  }
}
