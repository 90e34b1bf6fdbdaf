package org.broodbench.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.broodbench.loop.Judge;
import org.broodbench.loop.Pace;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.RunResult;
import org.broodbench.loop.Simulation;
import org.broodbench.rig.Requirement;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;

/**
 * Tries single changes of a rig that misses something, by simulation, and ranks those that help.
 *
 * <p>Which changes are tried follows from what is missed ({@link Need}). All are tried with one
 * colony: of those of own, low and high heat loss the one that misses most. The best that then meet
 * every requirement are run with the other two as well. These runs step the controller every 20 s
 * and the plant in up to two minutes, unless the switching of the relay is what is missed, and are
 * compared with a run of the unchanged rig at the same pace.
 */
public final class Remedies {
  /** So many of the best are run with the other colonies. */
  private static final int LOOKED_AT = 3;

  /** Tick of the controller in these runs, ms; own choice. */
  private static final int TICK_MS = 20_000;

  /** What leaves more than this share of the shortfall does not help; own choice. */
  private static final double HELPS = 0.95;

  /**
   * A rig with the weather on its planes.
   *
   * @param scenario the rig
   * @param forcing weather that carries the planes of this rig
   */
  public record Variant(Scenario scenario, Forcing forcing) {}

  /** A loss factor with its name. */
  private record Colony(String name, double factor, RunResult known) {}

  private final Outcome outcome;
  private final Function<List<String>, Optional<Variant>> rebuild;
  private final int threads;
  private final List<Requirement> required;

  private Remedies(
      Outcome outcome, Function<List<String>, Optional<Variant>> rebuild, int threads) {
    this.outcome = outcome;
    this.rebuild = rebuild;
    this.threads = threads;
    required = outcome.scenario().requirements();
  }

  /**
   * Searches.
   *
   * @param outcome what was found without a change
   * @param rebuild the rig with {@code KEY=VALUE} texts on top; empty where they cannot be used.
   *     Called from several threads at once
   * @param threads how many; the answer does not depend on it
   */
  public static RemedySearch search(
      Outcome outcome, Function<List<String>, Optional<Variant>> rebuild, int threads) {
    return outcome.met() ? RemedySearch.NONE : new Remedies(outcome, rebuild, threads).search();
  }

  private RemedySearch search() {
    Scenario s = outcome.scenario();
    List<Colony> colonies =
        List.of(
            new Colony("own", s.colony().clusterLossFactor(), outcome.main()),
            new Colony("low", Evaluation.LOW_LOSS, outcome.lowLoss()),
            new Colony("high", Evaluation.HIGH_LOSS, outcome.highLoss()));
    Colony tried = hardest(colonies);
    List<Requirement> missed =
        required.stream().filter(q -> Shortfall.of(q, tried.known(), s) > 0).toList();
    Set<Need> needs = Need.of(missed, tried.known());
    List<Change> changes = new ArrayList<>();
    changes.addAll(ControllerChanges.of(s, needs, tried.known()));
    changes.addAll(HiveChanges.of(s, needs, tried.known()));
    changes.addAll(PowerChanges.of(s, needs, tried.known()));
    Pace search = Pace.search(s);
    Pace pace =
        needs.contains(Need.CALM)
            ? new Pace(s.controller().tickMillis(), search.stepMillis(), search.keep())
            : Pace.search(s, TICK_MS);
    List<Callable<Optional<RunResult>>> runs = new ArrayList<>();
    runs.add(() -> run(List.of(), tried, pace));
    changes.forEach(c -> runs.add(() -> run(c.settings(), tried, pace)));
    List<Optional<RunResult>> results = Runs.all(runs, threads);
    RunResult before = results.get(0).orElseThrow();
    double allLeft = Shortfall.left(required, before, before, s);
    List<Remedy> helpful = new ArrayList<>();
    int count = 0;
    for (int i = 0; i < changes.size(); i++) {
      Optional<RunResult> after = results.get(i + 1);
      if (after.isEmpty()) {
        continue;
      }
      count++;
      double left = Shortfall.left(required, before, after.get(), s);
      if (left <= HELPS * allLeft) {
        helpful.add(
            new Remedy(
                changes.get(i),
                effects(before, after.get()),
                left,
                left == 0 ? Remedy.Reach.TRIED_COLONY_ONLY_LOOKED_AT : Remedy.Reach.NONE));
      }
    }
    helpful.sort(Comparator.comparingDouble(Remedy::left));
    lookAtOtherColonies(helpful, colonies, tried, pace);
    helpful.sort(Comparator.comparing(Remedy::reach).thenComparingDouble(Remedy::left));
    return new RemedySearch(count, tried.factor(), tried.name(), pace.tickMillis(), helpful);
  }

  private Colony hardest(List<Colony> colonies) {
    Scenario s = outcome.scenario();
    return colonies.stream()
        .max(Comparator.comparingDouble(c -> Shortfall.sum(required, c.known(), s)))
        .orElseThrow();
  }

  private Optional<RunResult> run(List<String> settings, Colony colony, Pace pace) {
    return rebuild
        .apply(settings)
        .map(
            v -> {
              Scenario s =
                  v.scenario()
                      .withColony(v.scenario().colony().withClusterLossFactor(colony.factor()));
              return new Simulation(
                      s, v.forcing(), new ReferenceController(s.controller().settings()), pace)
                  .run();
            });
  }

  /** Runs the best with the colonies that they were not tried with. */
  private void lookAtOtherColonies(
      List<Remedy> helpful, List<Colony> colonies, Colony tried, Pace pace) {
    List<Integer> chosen = new ArrayList<>();
    for (int i = 0; i < helpful.size() && chosen.size() < LOOKED_AT; i++) {
      if (helpful.get(i).left() == 0) {
        chosen.add(i);
      }
    }
    List<Colony> others = colonies.stream().filter(c -> c != tried).toList();
    List<Callable<Optional<RunResult>>> runs = new ArrayList<>();
    for (int i : chosen) {
      for (Colony c : others) {
        runs.add(() -> run(helpful.get(i).change().settings(), c, pace));
      }
    }
    List<Optional<RunResult>> results = Runs.all(runs, threads);
    for (int n = 0; n < chosen.size(); n++) {
      Remedy r = helpful.get(chosen.get(n));
      boolean every =
          results.subList(n * others.size(), (n + 1) * others.size()).stream()
              .allMatch(x -> Shortfall.sum(required, x.orElseThrow(), outcome.scenario()) == 0);
      helpful.set(
          chosen.get(n),
          new Remedy(
              r.change(),
              r.effects(),
              r.left(),
              every ? Remedy.Reach.EVERY_COLONY : Remedy.Reach.TRIED_COLONY));
    }
  }

  private List<Remedy.Effect> effects(RunResult before, RunResult after) {
    Scenario s = outcome.scenario();
    List<Remedy.Effect> effects = new ArrayList<>();
    for (Requirement q : required) {
      Judge.Measured was = Judge.measure(q.kind(), before, s);
      Judge.Measured is = Judge.measure(q.kind(), after, s);
      effects.add(new Remedy.Effect(q, was.value(), is.value(), was.meets(q), is.meets(q)));
    }
    return effects;
  }
}
