package org.broodbench.card;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What gauges and counters show on one sort of day, over all its nights and the published heat
 * losses of small clusters.
 *
 * @param sort which sort
 * @param nights how many nights of the season are of this sort
 * @param lowC lowest outdoor temperature of the night
 * @param duskV battery volts at dusk
 * @param dawnV battery volts at dawn
 * @param duskProbeC first brood probe at dusk
 * @param dawnProbeC first brood probe at dawn
 * @param dawnPanC top of the thermal mass at dawn
 * @param nightHeaterH heater hours from dusk to dawn
 * @param nightStarts heater starts from dusk to dawn
 * @param dayHeaterH heater hours from dawn to dusk
 * @param dayStarts heater starts from dawn to dusk
 * @param highestLevel highest shed level of a night
 * @param typical the night in the middle of the sort, at the scenario's own loss
 */
public record Expectation(
    Sort sort,
    int nights,
    Range lowC,
    Range duskV,
    Range dawnV,
    Range duskProbeC,
    Range dawnProbeC,
    Range dawnPanC,
    Range nightHeaterH,
    Range nightStarts,
    Range dayHeaterH,
    Range dayStarts,
    int highestLevel,
    NightLog typical) {

  /** Sorts of days. */
  public enum Sort {
    /** The warmer half of the nights. */
    MILD,
    /** The colder half, but for the bad ones. */
    COLD,
    /** The tenth of the nights, at least one, after which the battery is lowest. */
    BAD
  }

  /**
   * Sorts the nights of a season.
   *
   * @param runs the same nights at each heat loss; the first is the scenario's own
   * @return those sorts that have a night
   */
  static List<Expectation> of(List<List<NightLog>> runs) {
    List<NightLog> own = runs.get(0);
    int n = own.size();
    int bad = Math.max(1, n / 10);
    List<Integer> byCharge = order(n, Comparator.comparingDouble(i -> own.get(i).dawn().soc()));
    List<Integer> worst = byCharge.subList(0, Math.min(bad, n));
    List<Integer> rest =
        new ArrayList<>(order(n, Comparator.comparingDouble(i -> own.get(i).lowC())));
    rest.removeAll(worst);
    int cold = rest.size() / 2;
    List<Expectation> out = new ArrayList<>();
    add(out, Sort.MILD, rest.subList(cold, rest.size()), runs);
    add(out, Sort.COLD, rest.subList(0, cold), runs);
    add(out, Sort.BAD, worst, runs);
    return out;
  }

  private static List<Integer> order(int n, Comparator<Integer> by) {
    List<Integer> all = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      all.add(i);
    }
    all.sort(by);
    return all;
  }

  private static void add(
      List<Expectation> out, Sort sort, List<Integer> which, List<List<NightLog>> runs) {
    if (which.isEmpty()) {
      return;
    }
    Range[] r = new Range[10];
    java.util.Arrays.fill(r, Range.NONE);
    int level = 0;
    for (List<NightLog> run : runs) {
      for (int i : which) {
        NightLog x = run.get(i);
        r[0] = r[0].with(x.lowC());
        r[1] = r[1].with(x.dusk().volts());
        r[2] = r[2].with(x.dawn().volts());
        r[3] = r[3].with(x.dusk().probeC());
        r[4] = r[4].with(x.dawn().probeC());
        r[5] = r[5].with(x.dawn().panC());
        r[6] = r[6].with(x.nightHeaterH());
        r[7] = r[7].with(x.nightStarts());
        r[8] = r[8].with(x.dayHeaterH());
        r[9] = r[9].with(x.dayStarts());
        level = Math.max(level, x.highestLevel());
      }
    }
    out.add(
        new Expectation(
            sort,
            which.size(),
            r[0],
            r[1],
            r[2],
            r[3],
            r[4],
            r[5],
            r[6],
            r[7],
            r[8],
            r[9],
            level,
            runs.get(0).get(which.get(which.size() / 2))));
  }
}
