package org.broodbench.tune;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class ScoresTest {
  private static Scores of(double out, double energy) {
    return new Scores(List.of(out, energy, 100.0, 1.0, 0.0, 50.0));
  }

  @Test
  void whatHurtsBroodIsScoredByMeanAndWorstThird() {
    Scores s = Scores.over(List.of(of(0, 300), of(3, 600), of(9, 900)));
    // mean 4, worst third 9
    assertEquals(6.5, s.get(Aim.OUT_OF_BAND));
    assertEquals(600, s.get(Aim.ENERGY));
  }

  @Test
  void differencesBelowTheGrainCountAsNone() {
    assertFalse(of(10, 1000).beats(of(10.4, 1010)));
    assertTrue(of(10, 1000).like(of(10.4, 1010)));
    assertTrue(of(10, 1000).beats(of(14, 1010)));
    assertFalse(of(10, 1100).beats(of(14, 1000)), "better in one, worse in another");
  }

  @Test
  void linesAreReadBackBitForBit() {
    Scores s = of(1.0 / 3, 2e-300);
    assertEquals(s, Scores.of(s.line()));
  }

  /** Layers first; within a layer the ends before the middle. */
  @Test
  void sortsByLayerThenByRoom() {
    List<Scores> all = List.of(of(50, 2000), of(0, 3000), of(20, 2000), of(23, 1950), of(90, 0));
    List<Integer> order = Ranking.sorted(all);
    assertEquals(0, order.get(4), "beaten by the third");
    assertTrue(order.subList(0, 2).containsAll(List.of(1, 4)), order.toString());
    List<Judged> judged =
        all.stream().map(s -> new Judged(new Candidate(List.of(all.indexOf(s))), s)).toList();
    assertEquals(4, Ranking.front(judged).size());
  }
}
