package org.broodbench.tune;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.broodbench.study.Crew;
import org.broodbench.study.Journal;
import org.broodbench.study.Pieces;

/** Evaluates candidates over seasons, each pair once; what a journal knows is not run again. */
final class Evaluator {
  private record Pair(Candidate candidate, Season season) {
    String key() {
      return SeasonRuns.name(candidate, season);
    }
  }

  private final Pieces runs;
  private final Journal journal;
  private final Crew crew;
  private final Runnable each;
  private final Map<Pair, Scores> known = new HashMap<>();
  private int evaluations;

  /**
   * @param runs carries out one candidate over one season
   * @param each called after every evaluation
   */
  Evaluator(Pieces runs, Journal journal, Crew crew, Runnable each) {
    this.runs = runs;
    this.journal = journal;
    this.crew = crew;
    this.each = each;
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
    return crew.run(
        open.stream().map(Pair::key).toList(),
        runs,
        (piece, line) -> {
          journal.put(open.get(piece).key(), line);
          note(open.get(piece), Scores.of(line));
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
}
