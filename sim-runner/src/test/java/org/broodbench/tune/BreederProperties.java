package org.broodbench.tune;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.broodbench.controller.Setting;
import org.broodbench.rig.TuneSpec.Knob;

class BreederProperties {
  private static final List<Knob> KNOBS =
      List.of(
          new Knob("a", Setting.HEAT_SET_POINT_CENTI_C, 3005, 3500, 10, 100, "c"),
          new Knob("b", Setting.RELAY_MIN_OFF_MILLIS, 0, 600_000, 10_000, 1000, "s"),
          new Knob("c", Setting.FALLBACK_ALLOWED, 0, 1, 1, 1, ""));

  private static boolean even(Candidate c) {
    return c.counts().get(1) % 20_000 == 0;
  }

  @Property(tries = 100)
  void everyCandidateLiesOnTheGridWithinBoundsAndIsAllowed(
      @ForAll long seed, @ForAll @IntRange(min = 2, max = 40) int count) {
    Breeder breeder = new Breeder(KNOBS, BreederProperties::even, seed);
    List<Candidate> all = new java.util.ArrayList<>(breeder.spread(count, c -> true));
    assertEquals(count, all.size());
    for (int i = 0; i < 30; i++) {
      all.add(breeder.child(all.subList(0, count)));
    }
    for (Candidate c : all) {
      assertTrue(even(c));
      for (int k = 0; k < KNOBS.size(); k++) {
        Knob knob = KNOBS.get(k);
        int v = c.counts().get(k);
        assertTrue(v >= knob.low() && v <= knob.high(), knob.path() + " " + v);
        assertEquals(0, (v - knob.low()) % knob.step());
      }
    }
    assertEquals(
        all.subList(0, count),
        new Breeder(KNOBS, BreederProperties::even, seed).spread(count, c -> true));
  }

  /** Every tenth of the range is taken once; the grid moves a value by half a step at most. */
  @Property(tries = 50)
  void theFirstGenerationIsSpreadEvenly(@ForAll long seed) {
    List<Candidate> ten = new Breeder(KNOBS, c -> true, seed).spread(10, c -> true);
    Knob knob = KNOBS.get(0);
    int[] sorted = ten.stream().mapToInt(c -> c.counts().get(0)).sorted().toArray();
    assertEquals(10, sorted.length);
    double tenth = (knob.values() - 1) * knob.step() / 10.0;
    for (int i = 0; i < 10; i++) {
      double from = knob.low() + i * tenth - 0.5 * knob.step();
      double to = knob.low() + (i + 1) * tenth + 0.5 * knob.step();
      assertTrue(sorted[i] >= from && sorted[i] <= to, i + ": " + sorted[i]);
    }
  }
}
