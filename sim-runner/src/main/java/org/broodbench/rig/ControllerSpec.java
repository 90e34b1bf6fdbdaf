package org.broodbench.rig;

import org.broodbench.controller.Settings;

/**
 * The controller as fitted.
 *
 * @param settings what is keyed in; the simulated board runs the reference core with them
 * @param tickMillis time between two steps of the controller, ms
 * @param powerW what the board with relay coils draws, W
 * @param heatInHiveShare share of that power which ends as heat inside the hive, 0 to 1
 * @param brownOutV volts of its supply under which it resets and its relays open, V
 * @param restartV volts at which it starts again, V
 * @param bootS time at these volts until it runs, s
 */
public record ControllerSpec(
    Settings settings,
    int tickMillis,
    double powerW,
    double heatInHiveShare,
    double brownOutV,
    double restartV,
    double bootS) {
  /** A board for a 12 V battery: 9.5 V, 10.5 V, 5 s; own choice. */
  public ControllerSpec(Settings settings, int tickMillis, double powerW, double heatInHiveShare) {
    this(settings, tickMillis, powerW, heatInHiveShare, 9.5, 10.5, 5);
  }

  /** The same board with other settings. */
  public ControllerSpec withSettings(Settings other) {
    return new ControllerSpec(
        other, tickMillis, powerW, heatInHiveShare, brownOutV, restartV, bootS);
  }
}
