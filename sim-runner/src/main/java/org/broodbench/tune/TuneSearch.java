package org.broodbench.tune;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.function.Predicate;
import org.broodbench.controller.Settings;
import org.broodbench.rig.TuneSpec;

/**
 * Looks for settings that no others beat in all aims at once.
 *
 * <p>A candidate runs on a few seasons first; a {@link Forecast} made of all that ran tells what
 * any other would score over all seasons. In rounds, those are tried next that promise to add most
 * to the hypervolume of the best trade-offs ({@link Dominated}), were they better than forecast by
 * some standard errors: W. Ponweiser and others, "Multiobjective optimization on a limited budget
 * of evaluations using model-assisted S-metric selection", Parallel Problem Solving from Nature X
 * (2008) 784-794. Of those that were tried, the ones that add most by forecast run on the other
 * seasons too; only they can become trade-offs. All meet the same seasons, so their differences are
 * not those of weather.
 */
final class TuneSearch {
  /** Seasons of the first look: one at each heat loss; own choice, as all numbers here. */
  private static final int FEW = 3;

  /** Candidates of the first, spread round, and among them in corners of the bounds. */
  private static final int FIRST = 32;

  private static final int FIRST_CORNERS = 8;

  /** New candidates in a round, and candidates that go on to all seasons. */
  private static final int FRESH = 8;

  private static final int RAISED = 3;
  private static final int FIRST_RAISED = 5;

  /** Of the new ones so many, and one of those that go on, are such as might be recommended. */
  private static final int FRESH_TO_CHOOSE = 2;

  /** So many go on to all seasons after the last new candidate. */
  private static final int LAST_RAISED = 4;

  /** Standard errors of hope for new candidates, at the beginning; it falls to 0. */
  private static final double HOPE = 1.5;

  /** The same for those that were tried: what is left unsure about them is worth little. */
  private static final double CAUTION = 0.3;

  private static final int POOL_BRED = 600;
  private static final int POOL_CORNERS = 200;
  private static final int POOL_AGAIN = 400;
  private static final int POINTS = 10_000;

  /** A forecast is made of so many candidates at most: its cost grows with their third power. */
  private static final int MOST_IN_FORECAST = 240;

  private final TuneSpec spec;
  private final List<Season> seasons;
  private final List<Season> some;
  private final Evaluator evaluator;
  private final Breeder breeder;
  private final Candidate now;
  private final Predicate<Candidate> permitted;
  private final Map<Candidate, Boolean> asked = new HashMap<>();
  private final Map<Candidate, Scores> whole = new LinkedHashMap<>();
  private final Map<Candidate, Scores> onFew = new LinkedHashMap<>();
  private Forecast forecast;

  TuneSearch(
      TuneSpec spec,
      List<Season> seasons,
      Settings settings,
      Predicate<Settings> permitted,
      Evaluator evaluator) {
    this.spec = spec;
    this.seasons = seasons;
    some = seasons.subList(0, Math.min(FEW, seasons.size()));
    this.evaluator = evaluator;
    now = Candidate.of(settings, spec.knobs());
    this.permitted =
        c -> asked.computeIfAbsent(c, x -> permitted.test(x.put(settings, spec.knobs())));
    breeder =
        new Breeder(
            spec.knobs(),
            c -> c.put(settings, spec.knobs()).problems().isEmpty(),
            spec.searchSeed());
  }

  /**
   * Searches until the evaluations are spent or it is stopped.
   *
   * @return candidates known on all seasons, the present settings first
   */
  List<Judged> run() {
    boolean goesOn = start();
    while (goesOn) {
      int before = evaluator.evaluations();
      forecast = forecast();
      goesOn = raise(whole.size() == 1 ? FIRST_RAISED : RAISED);
      if (goesOn && left() >= LAST_RAISED * restCost() + some.size()) {
        forecast = forecast();
        goesOn = look(fresh());
      }
      goesOn &= evaluator.evaluations() > before; // else nothing is left, to spend or to hope for
    }
    List<Judged> judged = new ArrayList<>();
    whole.forEach((c, s) -> judged.add(new Judged(c, s)));
    return judged;
  }

  private int left() {
    return spec.evaluations() - evaluator.evaluations();
  }

  /** Evaluations that bring a candidate from the few seasons to all. */
  private int restCost() {
    return seasons.size() - some.size();
  }

  private boolean start() {
    if (!evaluator.evaluate(List.of(now), seasons)) {
      return false;
    }
    onFew.put(now, over(now, some));
    whole.put(now, over(now, seasons));
    List<Candidate> first = breeder.spread(FIRST - FIRST_CORNERS, permitted);
    for (int i = 0; i < FIRST_CORNERS; i++) {
      Candidate c = breeder.corner();
      if (permitted.test(c) && !first.contains(c)) {
        first.add(c);
      }
    }
    first.remove(now);
    return !first.isEmpty() && look(first); // empty: no settings are allowed on this rig
  }

  /** Runs candidates on the few seasons, as many as can be paid; false where it was stopped. */
  private boolean look(List<Candidate> candidates) {
    List<Candidate> field =
        candidates.subList(0, Math.max(0, Math.min(candidates.size(), left() / some.size())));
    if (!evaluator.evaluate(field, some)) {
      return false;
    }
    field.forEach(c -> onFew.put(c, over(c, some)));
    if (restCost() == 0) {
      field.forEach(c -> whole.put(c, over(c, seasons)));
    }
    return true;
  }

  private Scores over(Candidate c, List<Season> which) {
    return Scores.over(evaluator.scores(c, which));
  }

  private List<Candidate> unfinished() {
    return onFew.keySet().stream().filter(c -> !whole.containsKey(c)).toList();
  }

  private Forecast forecast() {
    List<Candidate> known = forForecast();
    Map<Integer, Scores> onAll = new LinkedHashMap<>();
    for (int i = 0; i < known.size(); i++) {
      Scores s = whole.get(known.get(i));
      if (s != null) {
        onAll.put(i, s);
      }
    }
    return new Forecast(
        known.stream().map(breeder::place).toList(),
        known.stream().map(onFew::get).toList(),
        onAll,
        forecast);
  }

  /**
   * All that were tried; of more than a forecast can take those that stood best by the last one,
   * and then the latest.
   */
  private List<Candidate> forForecast() {
    List<Candidate> all = new ArrayList<>(onFew.keySet());
    if (all.size() <= MOST_IN_FORECAST) {
      return all;
    }
    Set<Candidate> chosen = new LinkedHashSet<>(best().keySet());
    Collections.reverse(all);
    chosen.addAll(all);
    return chosen.stream().limit(MOST_IN_FORECAST).toList();
  }

  /** What a candidate that was tried scores, or by forecast would score, over all seasons. */
  private Scores known(Candidate c) {
    Scores s = whole.get(c);
    return s != null ? s : forecast.of(breeder.place(c), onFew.get(c), 0).middle();
  }

  /** The best of those that were tried, known or by forecast; the best spread first. */
  private Map<Candidate, Scores> best() {
    List<Candidate> unbeaten = new ArrayList<>();
    List<Scores> scores = new ArrayList<>();
    for (Candidate c : onFew.keySet()) {
      Scores s = known(c);
      if (scores.stream().noneMatch(other -> other.beats(s))) {
        for (int i = scores.size() - 1; i >= 0; i--) {
          if (s.beats(scores.get(i))) {
            scores.remove(i);
            unbeaten.remove(i);
          }
        }
        scores.add(s);
        unbeaten.add(c);
      }
    }
    Map<Candidate, Scores> best = new LinkedHashMap<>();
    for (int i : Ranking.sorted(scores)) {
      best.put(unbeaten.get(i), scores.get(i));
    }
    return best;
  }

  /** Brings those to all seasons that promise most; false where it was stopped. */
  private boolean raise(int most) {
    int count = restCost() == 0 ? 0 : Math.min(most, left() / restCost());
    if (count <= 0) {
      return true;
    }
    List<Scores> best = List.copyOf(best().values());
    Dominated space = new Dominated(best, POINTS);
    whole.values().forEach(space::take);
    Set<Candidate> chosen = new LinkedHashSet<>(toChoose(onFew.keySet(), best, 1));
    chosen.removeIf(whole::containsKey);
    chosen.forEach(c -> space.take(known(c)));
    chosen.addAll(picked(unfinished(), count - chosen.size(), space, CAUTION));
    if (!evaluator.evaluate(List.copyOf(chosen), seasons)) {
      return false;
    }
    chosen.forEach(c -> whole.put(c, over(c, seasons)));
    return true;
  }

  /** Candidates for the few seasons. */
  private List<Candidate> fresh() {
    Map<Candidate, Scores> best = best();
    List<Scores> front = List.copyOf(best.values());
    Dominated space = new Dominated(front, POINTS);
    front.forEach(space::take);
    double hope = HOPE * left() / spec.evaluations();
    List<Candidate> parents = List.copyOf(best.keySet());
    List<Candidate> pool = new ArrayList<>();
    for (int i = 0; i < POOL_BRED; i++) {
      pool.add(breeder.child(parents));
    }
    for (int i = 0; i < POOL_CORNERS; i++) {
      pool.add(breeder.corner());
    }
    pool.removeIf(onFew::containsKey);
    List<Candidate> promising = new ArrayList<>(picked(pool, 2 * FRESH, space.copy(), hope));
    promising.addAll(toChoose(pool, front, FRESH));
    for (int i = 0; !promising.isEmpty() && i < POOL_AGAIN; i++) {
      pool.add(breeder.child(promising));
    }
    pool.removeIf(onFew::containsKey);
    Set<Candidate> fresh = new LinkedHashSet<>(toChoose(pool, front, FRESH_TO_CHOOSE));
    pool.removeAll(fresh);
    fresh.addAll(picked(pool, FRESH - fresh.size(), space, hope));
    for (int tries = 0; fresh.size() < FRESH && tries < POOL_AGAIN; tries++) {
      Candidate c = breeder.child(parents); // nothing promises more: look around the best
      if (!onFew.containsKey(c) && permitted.test(c)) {
        fresh.add(c);
      }
    }
    return List.copyOf(fresh);
  }

  /** Those that by forecast would be recommended first ({@link Choice}). */
  private List<Candidate> toChoose(Collection<Candidate> pool, List<Scores> front, int count) {
    Scores present = whole.get(now);
    record Rated(Candidate candidate, double distance) {}
    List<Rated> rated = new ArrayList<>();
    for (Candidate c : pool) {
      Scores s = known(c);
      if (Choice.spares(s, present)) {
        rated.add(new Rated(c, Choice.distance(s, front)));
      }
    }
    return rated.stream()
        .sorted(Comparator.comparingDouble(Rated::distance))
        .map(Rated::candidate)
        .filter(permitted)
        .limit(count)
        .toList();
  }

  private record Hope(Candidate candidate, int order, Scores hoped, int gain, int taken) {}

  /** Those that add most, one after the other, as many as add anything. */
  private List<Candidate> picked(List<Candidate> pool, int count, Dominated space, double hope) {
    PriorityQueue<Hope> queue =
        new PriorityQueue<>(
            (a, b) ->
                a.gain() != b.gain()
                    ? Integer.compare(b.gain(), a.gain())
                    : Integer.compare(a.order(), b.order()));
    int order = 0;
    for (Candidate c : new LinkedHashSet<>(pool)) {
      Scores hoped = forecast.of(breeder.place(c), onFew.get(c), hope).hoped();
      queue.add(new Hope(c, order++, hoped, space.gain(hoped), 0));
    }
    List<Candidate> chosen = new ArrayList<>();
    while (chosen.size() < count && !queue.isEmpty() && queue.peek().gain() > 0) {
      Hope top = queue.poll();
      if (top.taken() < chosen.size()) {
        // what it adds can only have shrunk
        int gain = space.gain(top.hoped());
        queue.add(new Hope(top.candidate(), top.order(), top.hoped(), gain, chosen.size()));
      } else if (permitted.test(top.candidate())) {
        chosen.add(top.candidate());
        space.take(top.hoped());
      }
    }
    return chosen;
  }

  /** How many candidates were begun. */
  int candidates() {
    return onFew.size();
  }
}
