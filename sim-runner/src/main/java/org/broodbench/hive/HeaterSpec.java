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
 * @param panJK heat capacity of the thermal mass, J/K
 * @param platePanWK conductance plate to pan, W/K
 * @param panAirWK conductance pan to the air of the lowest box, W/K
 * @param panNestWK conductance pan to the brood nest by radiation and plume, W/K
 * @param plateFloorWK conductance plate to the floor board, W/K
 */
public record HeaterSpec(
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
  /** The same pan with the element taken out of use. */
  public HeaterSpec withoutPower() {
    return new HeaterSpec(
        0,
        ratedV,
        onInverter,
        regulated,
        plateJK,
        panJK,
        platePanWK,
        panAirWK,
        panNestWK,
        plateFloorWK);
  }
}
