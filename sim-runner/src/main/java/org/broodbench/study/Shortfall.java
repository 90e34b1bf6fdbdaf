package org.broodbench.study;

import java.util.List;
import org.broodbench.loop.Judge;
import org.broodbench.loop.RunResult;
import org.broodbench.rig.Requirement;
import org.broodbench.rig.Scenario;

/** How far a run falls short of what is required, to tell better from worse. */
final class Shortfall {
  private Shortfall() {}

  /** By how much a run misses a requirement, in its unit; 0 where it is met. */
  static double of(Requirement q, RunResult r, Scenario s) {
    Judge.Measured m = Judge.measure(q.kind(), r, s);
    return m.meets(q) ? 0 : Math.abs(m.value() - q.limit());
  }

  /** The sum over all requirements, each as a share of a miss that counts as one. */
  static double sum(List<Requirement> all, RunResult r, Scenario s) {
    return all.stream().mapToDouble(q -> of(q, r, s) / noticeable(q.kind())).sum();
  }

  /**
   * The same, where what was missed before counts as one: 0 is nothing left, 1 for each requirement
   * that is as far off as before.
   */
  static double left(List<Requirement> all, RunResult before, RunResult after, Scenario s) {
    double sum = 0;
    for (Requirement q : all) {
      double was = Math.max(of(q, before, s), noticeable(q.kind()));
      sum += of(q, after, s) / was;
    }
    return sum;
  }

  /** A miss that a keeper would care about; own choice. */
  static double noticeable(Requirement.Kind kind) {
    return switch (kind) {
      case BROOD_IN_BAND, LOWEST_SOC, LOWEST_HUMIDITY, HOURS_CONDENSING, HOURS_SHED -> 2;
      case SHORTEST_OFF, SHORTEST_ON -> 30;
      case STARTS_PER_DAY -> 4;
      case HIGHEST_PAN, HIGHEST_BROOD -> 0.5;
      case HIGHEST_CO2 -> 0.2;
    };
  }
}
