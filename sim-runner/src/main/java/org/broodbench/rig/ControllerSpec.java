package org.broodbench.rig;

import org.broodbench.controller.Settings;

/**
 * The controller as fitted.
 *
 * @param settings what is keyed in; the simulated board runs the reference core with them
 * @param tickMillis time between two steps of the controller, ms
 * @param powerW what the board with relay coils draws, W
 * @param heatInHiveShare share of that power which ends as heat inside the hive, 0 to 1
 */
public record ControllerSpec(
    Settings settings, int tickMillis, double powerW, double heatInHiveShare) {}
