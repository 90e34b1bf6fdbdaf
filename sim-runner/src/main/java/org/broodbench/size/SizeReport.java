package org.broodbench.size;

import java.util.List;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.SizeSpec;

/**
 * What sizing found.
 *
 * @param scenario the rig
 * @param weather what the seasons were made from, in words
 * @param seasons how many
 * @param days length of a season
 * @param spec what could be bought and what was asked
 * @param best cheapest that reaches it; null where none does
 * @param curve with the other parts of the best: for each panel the smallest battery that does
 * @param byFirst for each choice of the first part the cheapest whole rig that does
 * @param trials everything that was simulated, cheapest first
 * @param candidates how many combinations there are
 * @param whole whether the search came to its end
 */
public record SizeReport(
    Scenario scenario,
    String weather,
    int seasons,
    int days,
    SizeSpec spec,
    Trial best,
    List<Trial> curve,
    List<Trial> byFirst,
    List<Trial> trials,
    int candidates,
    boolean whole) {
  /** Share of nominal energy that is used; half of lead-acid is common practice, no source. */
  private static final double USED = 0.5;

  /** Copies the lists. */
  public SizeReport {
    curve = List.copyOf(curve);
    byFirst = List.copyOf(byFirst);
    trials = List.copyOf(trials);
  }

  /** Energy for a day of the best rig, as battery, Wh: what its loads take over half a battery. */
  public double dayOfBatteryWh() {
    return best == null ? Double.NaN : best.dailyWh() / USED;
  }
}
