package org.broodbench.tune;

import org.broodbench.loop.Pace;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;

/**
 * A season to evaluate candidates on.
 *
 * @param label what to call it; tells it from every other
 * @param scenario the scenario over it, at the heat loss of small clusters that belongs to it
 * @param forcing its weather
 * @param pace how finely runs over it are worked out
 */
public record Season(String label, Scenario scenario, Forcing forcing, Pace pace) {
  /** A season at the pace of a search. */
  public static Season of(String label, Scenario scenario, Forcing forcing) {
    return new Season(label, scenario, forcing, Pace.search(scenario));
  }

  /**
   * The same with the controller at another tick.
   *
   * @param tickMillis time between two steps of the controller, ms
   */
  public static Season of(String label, Scenario scenario, Forcing forcing, int tickMillis) {
    return new Season(label, scenario, forcing, Pace.search(scenario, tickMillis));
  }
}
