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
 * @param curve with the other parts of the best: for each panel the cheapest battery that does
 * @param byFirst for each choice of the first part the cheapest of the last two with which it does,
 *     the parts between as in the best
 * @param autonomy what one more day without harvest takes; null without a best
 * @param trials everything that was simulated, cheapest first
 * @param candidates how many combinations there are
 * @param seasonsRun how many seasons were simulated for that, of all candidates together
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
    Autonomy autonomy,
    List<Trial> trials,
    int candidates,
    int seasonsRun,
    boolean whole) {
  /** Copies the lists. */
  public SizeReport {
    curve = List.copyOf(curve);
    byFirst = List.copyOf(byFirst);
    trials = List.copyOf(trials);
  }

  /**
   * One more day of autonomy of the best rig.
   *
   * @param dayWh what its loads take on the day that takes most in the hardest season, Wh
   * @param batteryWh nominal energy of a battery for that, Wh
   * @param larger the smallest larger battery of the list, of its kind, that adds that; empty where
   *     the list has none
   * @param price what that costs more than the best's
   * @param days what it adds, d
   */
  public record Autonomy(
      double dayWh, double batteryWh, String larger, double price, double days) {}

  /**
   * Share of the time that a rig stands without heat for want of charge, 0 to 1: the loss-of-load
   * probability, one less the availability.
   */
  static double lossOfLoadShare(double hours, int days) {
    return hours / (24.0 * days);
  }

  /** The same of a candidate. */
  public double lossOfLoadShare(Trial t) {
    return lossOfLoadShare(t.lossOfLoadH(), days);
  }

  /** The same of what was asked. */
  public double lossOfLoadShare() {
    return lossOfLoadShare(spec.lossOfLoadH(), days);
  }
}
