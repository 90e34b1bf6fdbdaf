package org.broodbench.power;

/**
 * The load output of a charge controller, which lets go when the bus is low.
 *
 * @param fitted whether controller, fan, heater and further loads on the battery side hang on it
 * @param cutV volts at which it opens, V
 * @param returnV volts at which it closes again, V
 * @param delayS time below or above before it does, s
 */
public record LoadOutput(boolean fitted, double cutV, double returnV, double delayS) {
  /** Loads go straight to the battery's fuse. */
  public static final LoadOutput NONE = new LoadOutput(false, 0, 0, 0);
}
