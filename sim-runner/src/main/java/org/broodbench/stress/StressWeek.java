package org.broodbench.stress;

import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.WindowStats;

/**
 * One week that a scenario is stressed in.
 *
 * @param label what to call it
 * @param scenario the scenario over that week
 * @param forcing its weather
 * @param stats what the weather is
 */
public record StressWeek(String label, Scenario scenario, Forcing forcing, WindowStats stats) {}
