package org.broodbench.tune;

import java.util.List;
import org.broodbench.loop.Pace;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TuneSpec;

/**
 * What a search for settings found.
 *
 * @param scenario what was tuned
 * @param weather where its seasons are from, in words
 * @param spec what was asked
 * @param evaluations runs of one candidate over one season that the search took
 * @param candidates candidates that were begun
 * @param now the present settings
 * @param front best trade-offs
 * @param recommended one of them; null where nothing may be recommended
 * @param why in words
 * @param refused trade-offs that stood before it and did not hold on unseen seasons
 * @param unseenNow the present settings over seasons that the search did not see; null if stopped
 * @param unseenRecommended the recommended settings over the same
 * @param stopped whether it was stopped early
 */
public record TuneReport(
    Scenario scenario,
    String weather,
    TuneSpec spec,
    int evaluations,
    int candidates,
    Judged now,
    List<Judged> front,
    Judged recommended,
    String why,
    int refused,
    Scores unseenNow,
    Scores unseenRecommended,
    boolean stopped) {
  /** Time between two steps of the controller on the seasons that the search looked at, s. */
  public double tickS() {
    return Pace.search(scenario, spec.tickMillis()).tickMillis() * 1e-3;
  }
}
