package org.broodbench.tune;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.broodbench.controller.Settings;
import org.broodbench.rig.TuneSpec;

/**
 * Looks for settings that no others beat in all aims at once.
 *
 * <p>Generations are bred as in NSGA-II ({@link Breeder}, {@link Ranking}). Each generation is
 * raced: all of it runs on a few seasons, the better half on more, the best quarter on all, in the
 * way of K. Jamieson and A. Talwalkar, "Non-stochastic best arm identification and hyperparameter
 * optimization", AISTATS (2016); who is beaten there by a candidate known on all seasons leaves at
 * once. All candidates meet the same seasons, so their differences are not those of weather.
 */
final class TuneSearch {
  /** Candidates in a generation and most that breed; own choice. */
  private static final int GENERATION = 24;

  /** Candidates of the first, spread generation; own choice. */
  private static final int FIRST = 32;

  private final TuneSpec spec;
  private final List<Season> seasons;
  private final Evaluator evaluator;
  private final Breeder breeder;
  private final Candidate now;
  private final Map<Candidate, Scores> whole = new LinkedHashMap<>();
  private final Set<Candidate> tried = new LinkedHashSet<>();

  TuneSearch(
      TuneSpec spec,
      List<Season> seasons,
      Settings settings,
      Predicate<Settings> permitted,
      Evaluator evaluator) {
    this.spec = spec;
    this.seasons = seasons;
    this.evaluator = evaluator;
    now = Candidate.of(settings, spec.knobs());
    Predicate<Candidate> allowed =
        c -> {
          Settings s = c.put(settings, spec.knobs());
          return s.problems().isEmpty() && permitted.test(s);
        };
    breeder = new Breeder(spec.knobs(), allowed, spec.searchSeed());
  }

  /**
   * Searches until the evaluations are spent or it is stopped.
   *
   * @return candidates known on all seasons, the present settings first
   */
  List<Judged> run() {
    tried.add(now);
    boolean goesOn = evaluator.evaluate(List.of(now), seasons);
    if (goesOn) {
      finish(now);
      List<Candidate> first = breeder.spread(FIRST);
      goesOn = !first.isEmpty() && race(first); // empty: no settings are allowed on this rig
    }
    while (goesOn && evaluator.evaluations() < spec.evaluations()) {
      List<Candidate> parents = parents();
      List<Candidate> children = new ArrayList<>();
      for (int tries = 0; children.size() < GENERATION && tries < 20 * GENERATION; tries++) {
        Candidate child = breeder.child(parents);
        if (!tried.contains(child) && !children.contains(child)) {
          children.add(child);
        }
      }
      if (children.isEmpty()) {
        break; // every value of every knob was tried
      }
      goesOn = race(children);
    }
    List<Judged> judged = new ArrayList<>();
    whole.forEach((c, s) -> judged.add(new Judged(c, s)));
    return judged;
  }

  private List<Candidate> parents() {
    List<Candidate> all = new ArrayList<>(whole.keySet());
    List<Scores> scores = new ArrayList<>(whole.values());
    return Ranking.sorted(scores).stream().limit(GENERATION).map(all::get).toList();
  }

  /** Whether it went to its end. */
  private boolean race(List<Candidate> field) {
    tried.addAll(field);
    List<Candidate> left = field;
    int third = Math.max(1, seasons.size() / 10);
    int[] stages = {Math.min(third, seasons.size()), Math.min(3 * third, seasons.size())};
    for (int stage : stages) {
      List<Season> some = seasons.subList(0, stage);
      if (evaluator.evaluations() >= spec.evaluations() || !evaluator.evaluate(left, some)) {
        return false;
      }
      left = betterHalf(left, some);
    }
    if (!evaluator.evaluate(left, seasons)) {
      return false;
    }
    left.forEach(this::finish);
    return true;
  }

  private List<Candidate> betterHalf(List<Candidate> field, List<Season> some) {
    List<Scores> held = whole.keySet().stream().map(c -> over(c, some)).toList();
    List<Candidate> kept = new ArrayList<>();
    List<Scores> scores = new ArrayList<>();
    for (Candidate c : field) {
      Scores s = over(c, some);
      if (held.stream().noneMatch(h -> h.beats(s))) {
        kept.add(c);
        scores.add(s);
      }
    }
    int most = Math.max(1, (field.size() + 1) / 2);
    return Ranking.sorted(scores).stream().limit(most).map(kept::get).toList();
  }

  private Scores over(Candidate c, List<Season> some) {
    return Scores.over(evaluator.scores(c, some));
  }

  private void finish(Candidate c) {
    whole.put(c, over(c, seasons));
  }

  /** How many candidates were begun. */
  int candidates() {
    return tried.size();
  }
}
