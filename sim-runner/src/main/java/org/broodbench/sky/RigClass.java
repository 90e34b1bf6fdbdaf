package org.broodbench.sky;

/**
 * The little that must be known of a rig to tell hard weather from easy.
 *
 * @param conductanceWPerK heat that the hive loses per kelvin
 * @param baseC outdoor temperature above which the heater rests
 * @param harvestKWh electricity gained per kWh/m2 of global irradiation
 */
public record RigClass(double conductanceWPerK, double baseC, double harvestKWh) {
  /**
   * One insulated box with a weak colony and a 100 W panel: 0.6 W/K, heated below 20 degC, 0.065
   * kWh per kWh/m2 (performance ratio 0.65). Own choice; only the ranking of weeks depends on it.
   */
  public static final RigClass SMALL = new RigClass(0.6, 20, 0.065);

  /** Heat needed minus sun harvested over an interval, kWh; higher is harder. */
  public double hardnessKWh(double airC, double ghiWM2, double seconds) {
    double heat = conductanceWPerK * Math.max(0, baseC - airC);
    return (heat - harvestKWh * ghiWM2) * seconds / 3.6e6;
  }
}
