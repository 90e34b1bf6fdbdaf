package org.broodbench.stress;

import java.util.List;

/**
 * What a stress study tries beside every single fault at the scenario's own heat loss.
 *
 * @param everyPair whether every two faults at once are tried in the hardest week
 * @param pairs two faults at once that are tried in every week, each as two names joined by a plus
 * @param allLosses whether each row is run at the lowest and the highest published heat loss of
 *     small clusters as well
 */
public record StressPlan(boolean everyPair, List<String> pairs, boolean allLosses) {
  /** Nothing beside it. */
  public static final StressPlan SINGLES = new StressPlan(false, List.of(), false);

  /** What stands between two names. */
  public static final String AND = "+";

  /** Copies the list. */
  public StressPlan {
    pairs = List.copyOf(pairs);
  }
}
