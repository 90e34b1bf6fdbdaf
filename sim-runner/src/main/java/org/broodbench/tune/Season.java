package org.broodbench.tune;

import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;

/**
 * A season to evaluate candidates on.
 *
 * @param label what to call it; tells it from every other
 * @param scenario the scenario over it, at the heat loss of small clusters that belongs to it
 * @param forcing its weather
 */
public record Season(String label, Scenario scenario, Forcing forcing) {}
