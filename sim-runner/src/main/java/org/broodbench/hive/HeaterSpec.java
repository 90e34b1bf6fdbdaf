package org.broodbench.hive;

/**
 * Heater plate and thermal mass.
 *
 * @param powerW rated power at the rated volts, W; 0 for no heater
 * @param ratedV rated volts of the element, V
 * @param onInverter whether it hangs on the inverter (mains voltage) instead of the battery
 * @param regulated whether a regulator holds its power at the rated value whatever the battery
 *     volts
 * @param plateJK heat capacity of the plate, J/K
 * @param plateM2 heated area of the plate, m²
 * @param plateFloorWK conductance plate to the floor board, W/K
 * @param pan the thermal mass above it
 * @param limits what its surfaces should not exceed
 */
public record HeaterSpec(
    double powerW,
    double ratedV,
    boolean onInverter,
    boolean regulated,
    double plateJK,
    double plateM2,
    double plateFloorWK,
    Pan pan,
    Limits limits) {

  /**
   * Limits that a run is judged by; the plate, which nothing alive reaches, apart from what bees
   * and comb touch.
   *
   * @param plateC surface of the plate, °C
   * @param contactC surface that bees and comb touch, °C
   * @param plateWM2 heat flux of the plate at full power, W/m²
   */
  public record Limits(double plateC, double contactC, double plateWM2) {
    /**
     * 70 °C is what wood and foam beside a plate stand for years; above 45 °C wax fails and bees
     * die; 1000 W/m² is a low density for a mat. All own choices.
     */
    public static final Limits USUAL = new Limits(70, 45, 1000);
  }

  /** A heater under a well mixed pan, on a plate of 0.09 m² with the usual limits. */
  public HeaterSpec(
      double powerW,
      double ratedV,
      boolean onInverter,
      boolean regulated,
      double plateJK,
      double panJK,
      double platePanWK,
      double panAirWK,
      double panNestWK,
      double plateFloorWK) {
    this(
        powerW,
        ratedV,
        onInverter,
        regulated,
        plateJK,
        0.09,
        plateFloorWK,
        Pan.mixed(panJK, platePanWK, panAirWK, panNestWK),
        Limits.USUAL);
  }

  /** The same pan with the element taken out of use. */
  public HeaterSpec withoutPower() {
    return new HeaterSpec(
        0, ratedV, onInverter, regulated, plateJK, plateM2, plateFloorWK, pan, limits);
  }
}
