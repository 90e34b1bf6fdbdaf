package org.broodbench.stress;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.rig.Scenario;
import org.broodbench.study.Evaluation;

/**
 * A heat loss of small clusters that a week is run at.
 *
 * @param key name in results: low, own or high
 * @param factor on the size law of cluster heat loss
 */
public record HeatLoss(String key, double factor) {
  static final String OWN = "own";

  /**
   * The scenario's own, or the lowest and the highest published ones beside it where there are bees
   * and these are not its own.
   */
  static List<HeatLoss> of(Scenario s, boolean all) {
    double own = s.colony().clusterLossFactor();
    List<HeatLoss> losses = new ArrayList<>();
    boolean more = all && s.colony().bees() > 0;
    if (more && own != Evaluation.LOW_LOSS) {
      losses.add(new HeatLoss("low", Evaluation.LOW_LOSS));
    }
    losses.add(new HeatLoss(OWN, own));
    if (more && own != Evaluation.HIGH_LOSS) {
      losses.add(new HeatLoss("high", Evaluation.HIGH_LOSS));
    }
    return losses;
  }

  Scenario put(Scenario s) {
    return key.equals(OWN) ? s : s.withColony(s.colony().withClusterLossFactor(factor));
  }
}
