package org.broodbench.tune;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.function.BooleanSupplier;
import org.broodbench.controller.Settings;
import org.broodbench.loop.Pace;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.RunResult;
import org.broodbench.loop.Simulation;
import org.broodbench.rig.TuneSpec;
import org.broodbench.study.Journal;
import org.broodbench.study.Parallel;

/** Evaluates candidates over seasons, each pair once; what a journal knows is not run again. */
final class Evaluator {
  private record Pair(Candidate candidate, Season season) {
    String key() {
      return candidate.key() + " " + season.label();
    }
  }

  private final Settings settings;
  private final List<TuneSpec.Knob> knobs;
  private final Journal journal;
  private final Parallel parallel;
  private final Runnable each;
  private final Map<Pair, Scores> known = new HashMap<>();
  private int evaluations;

  /**
   * @param settings what the knobs are put into
   * @param each called after every evaluation
   */
  Evaluator(
      Settings settings,
      List<TuneSpec.Knob> knobs,
      Journal journal,
      int threads,
      BooleanSupplier stop,
      Runnable each) {
    this.settings = settings;
    this.knobs = knobs;
    this.journal = journal;
    this.each = each;
    parallel = new Parallel(threads, stop);
  }

  /** How many evaluations the search has asked for so far. */
  int evaluations() {
    return evaluations;
  }

  /**
   * Evaluates what is not known yet.
   *
   * @return whether all of it is known now; false when it was stopped
   */
  boolean evaluate(List<Candidate> candidates, List<Season> seasons) {
    List<Pair> open = new ArrayList<>();
    for (Candidate c : candidates) {
      for (Season s : seasons) {
        Pair pair = new Pair(c, s);
        if (!known.containsKey(pair) && !open.contains(pair)) {
          String line = journal.get(pair.key());
          if (line == null) {
            open.add(pair);
          } else {
            note(pair, Scores.of(line));
          }
        }
      }
    }
    List<Callable<Scores>> tasks = new ArrayList<>();
    for (Pair p : open) {
      tasks.add(() -> run(p));
    }
    return parallel.run(
        tasks,
        (task, scores) -> {
          journal.put(open.get(task).key(), scores.line());
          note(open.get(task), scores);
        });
  }

  private void note(Pair pair, Scores scores) {
    known.put(pair, scores);
    evaluations++;
    each.run();
  }

  /** The scores of a candidate, season by season; they must be known. */
  List<Scores> scores(Candidate c, List<Season> seasons) {
    return seasons.stream().map(s -> known.get(new Pair(c, s))).toList();
  }

  private Scores run(Pair pair) {
    Season season = pair.season();
    RunResult r =
        new Simulation(
                season.scenario(),
                season.forcing(),
                new ReferenceController(pair.candidate().put(settings, knobs)),
                Pace.search(season.scenario()))
            .run();
    return Scores.of(r, season.scenario().battery().chemistry().leadAcid());
  }
}
