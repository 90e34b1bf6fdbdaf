package org.broodbench.power;

import java.util.List;

/**
 * The solar generator and its charge control.
 *
 * @param groups module groups; empty for none
 * @param temperatureCoefficientPerK change of power with cell temperature, 1/K, negative
 * @param noctC nominal operating cell temperature, °C
 * @param soilingFactor share of sunlight left by dirt, snow and shade, 0 to 1
 * @param tracking whether the controller tracks the maximum power point; otherwise pulse-width
 *     control at battery volts
 * @param trackingEfficiency conversion efficiency of a tracking controller, 0 to 1
 * @param modulePeakV volts at the maximum power point under standard test conditions, V (for
 *     pulse-width control)
 * @param controllerPowerW own consumption of the charge controller, W
 */
public record PvSpec(
    List<PvGroup> groups,
    double temperatureCoefficientPerK,
    double noctC,
    double soilingFactor,
    boolean tracking,
    double trackingEfficiency,
    double modulePeakV,
    double controllerPowerW) {
  /** Copies the list. */
  public PvSpec {
    groups = List.copyOf(groups);
  }

  /** Rated power of all groups, W. */
  public double powerW() {
    double sumW = 0;
    for (PvGroup g : groups) {
      sumW += g.powerW();
    }
    return sumW;
  }
}
