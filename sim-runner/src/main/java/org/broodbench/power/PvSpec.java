package org.broodbench.power;

import java.util.List;

/**
 * The solar generator and its charge controller. Every group has a tracker of its own.
 *
 * @param groups module groups; empty for none
 * @param curve how current and power follow from the light
 * @param cells how warm the cells get
 * @param noctC nominal operating cell temperature, °C, for {@link Cells#NOCT}
 * @param soilingFactor share of sunlight left by dirt, 0 to 1
 * @param snowFactor share of sunlight left while snow lies, 0 to 1
 * @param tracking whether the controller tracks the maximum power point; otherwise pulse-width
 *     control at battery volts
 * @param trackingEfficiency conversion efficiency of a tracking controller, 0 to 1
 * @param modulePeakV volts of a group at the maximum power point under standard conditions, V
 * @param controllerPowerW own consumption of the charge controller, W
 * @param output its load output
 */
public record PvSpec(
    List<PvGroup> groups,
    Curve curve,
    Cells cells,
    double noctC,
    double soilingFactor,
    double snowFactor,
    boolean tracking,
    double trackingEfficiency,
    double modulePeakV,
    double controllerPowerW,
    LoadOutput output) {

  /** How current and power follow from the light. */
  public enum Curve {
    /** Single-diode curve. */
    DIODE,
    /** One point with a coefficient; pulse-width control takes the peak current. */
    ONE_POINT
  }

  /** How warm the cells get. */
  public enum Cells {
    /** By light and wind. */
    WIND,
    /** By light alone, with the nominal operating temperature. */
    NOCT
  }

  /** Copies the list. */
  public PvSpec {
    groups = List.copyOf(groups);
  }

  /** One-point modules without wind, snow and load output. */
  public PvSpec(
      List<PvGroup> groups,
      double temperatureCoefficientPerK,
      double noctC,
      double soilingFactor,
      boolean tracking,
      double trackingEfficiency,
      double modulePeakV,
      double controllerPowerW) {
    this(
        groups.stream()
            .map(
                g ->
                    new PvGroup(
                        g.powerW(),
                        g.tiltDeg(),
                        g.azimuthDeg(),
                        temperatureCoefficientPerK,
                        g.mounting(),
                        g.shades()))
            .toList(),
        Curve.ONE_POINT,
        Cells.NOCT,
        noctC,
        soilingFactor,
        1,
        tracking,
        trackingEfficiency,
        modulePeakV,
        controllerPowerW,
        LoadOutput.NONE);
  }

  /** The same with other groups. */
  public PvSpec withGroups(List<PvGroup> other) {
    return new PvSpec(
        other,
        curve,
        cells,
        noctC,
        soilingFactor,
        snowFactor,
        tracking,
        trackingEfficiency,
        modulePeakV,
        controllerPowerW,
        output);
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
