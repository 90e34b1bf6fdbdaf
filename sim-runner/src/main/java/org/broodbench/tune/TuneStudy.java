package org.broodbench.tune;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import org.broodbench.controller.Settings;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TuneSpec;
import org.broodbench.study.Crew;
import org.broodbench.study.Journal;
import org.broodbench.study.Parallel;
import org.broodbench.study.Progress;

/** Searches on some seasons, recommends, and holds the recommendation against other seasons. */
public final class TuneStudy {
  /** Most trade-offs that are held against unseen seasons, one after the other; own choice. */
  private static final int MOST_REFUSED = 6;

  private final Scenario scenario;
  private final TuneSpec spec;
  private final List<Season> seen;
  private final List<Season> unseen;
  private final Predicate<Settings> permitted;

  /**
   * @param seen seasons that the search may look at
   * @param unseen others
   * @param permitted whether nothing speaks against settings for this rig
   */
  public TuneStudy(
      Scenario scenario,
      TuneSpec spec,
      List<Season> seen,
      List<Season> unseen,
      Predicate<Settings> permitted) {
    this.scenario = scenario;
    this.spec = spec;
    this.seen = List.copyOf(seen);
    this.unseen = List.copyOf(unseen);
    this.permitted = permitted;
  }

  /** Carries it out on threads of this machine. */
  public TuneReport run(
      String weather, Journal journal, int threads, BooleanSupplier stop, Progress progress) {
    return run(weather, journal, new Parallel(threads, stop), stop, progress);
  }

  /**
   * Carries it out, or the rest of it: what the journal knows is not run again.
   *
   * @param stop whether the crew was stopped
   * @return null where it was stopped before even the present settings were known
   */
  public TuneReport run(
      String weather, Journal journal, Crew crew, BooleanSupplier stop, Progress progress) {
    Settings settings = scenario.controller().settings();
    int planned = spec.evaluations() + 2 * unseen.size();
    int[] done = {0};
    List<Season> all = new ArrayList<>(seen);
    all.addAll(unseen);
    Evaluator evaluator =
        new Evaluator(
            new SeasonRuns(settings, spec.knobs(), all),
            journal,
            crew,
            () -> progress.at(Math.min(++done[0], planned), planned));
    TuneSearch search = new TuneSearch(spec, seen, settings, permitted, evaluator);
    List<Judged> judged = search.run();
    if (judged.isEmpty()) {
      return null;
    }
    Judged now = judged.get(0);
    int evaluations = evaluator.evaluations();
    List<Judged> sound =
        judged.stream()
            .filter(j -> permitted.test(j.candidate().put(settings, spec.knobs())))
            .toList();
    List<Judged> front =
        Ranking.front(sound).stream()
            .sorted(Comparator.comparingDouble(j -> j.scores().get(Aim.OUT_OF_BAND)))
            .toList();
    List<Judged> chosen = Choice.sorted(front, now.scores());
    // the present settings stand last: nothing better may hold
    List<Judged> line = new ArrayList<>(chosen.stream().limit(MOST_REFUSED).toList());
    if (sound.contains(now) && !line.contains(now)) {
      line.add(now);
    }
    int refused = 0;
    for (Judged j : line) {
      if (!evaluator.evaluate(List.of(now.candidate(), j.candidate()), unseen)) {
        String why = Choice.why(j.scores(), now.scores());
        return report(
            weather, search, evaluations, now, front, new Found(j, why, refused), null, null, stop);
      }
      Scores before = Scores.over(evaluator.scores(now.candidate(), unseen));
      Scores after = Scores.over(evaluator.scores(j.candidate(), unseen));
      if (Choice.spares(after, before)) {
        String why = Choice.why(j.scores(), now.scores());
        return report(
            weather,
            search,
            evaluations,
            now,
            front,
            new Found(j, why, refused),
            before,
            after,
            stop);
      }
      refused++;
    }
    String why = "the audit stops every candidate; mend first what the verb audit names";
    return report(
        weather, search, evaluations, now, front, new Found(null, why, refused), null, null, stop);
  }

  private record Found(Judged recommended, String why, int refused) {}

  private TuneReport report(
      String weather,
      TuneSearch search,
      int evaluations,
      Judged now,
      List<Judged> front,
      Found found,
      Scores unseenNow,
      Scores unseenRecommended,
      BooleanSupplier stop) {
    return new TuneReport(
        scenario,
        weather,
        spec,
        evaluations,
        search.candidates(),
        now,
        front,
        found.recommended(),
        found.why(),
        found.refused(),
        unseenNow,
        unseenRecommended,
        stop.getAsBoolean());
  }
}
