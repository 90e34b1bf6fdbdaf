package org.broodbench.rig;

/**
 * The readings other than temperatures.
 *
 * @param humidity whether there is a humidity probe between the combs
 * @param humidityErrorPercent its standard deviation, percent points
 * @param voltsResolutionV step of the voltmeter, V
 * @param voltsErrorV reading minus truth of the battery volts, V
 * @param batteryCurrent whether battery current is measured
 * @param stateOfCharge whether a charge counter gives the state of charge
 * @param stateOfChargeError reading minus truth of the state of charge, 0 to 1
 * @param heaterCurrent whether heater current is measured
 * @param chargerFull whether the charge controller reports a full battery
 */
public record SensorSpec(
    boolean humidity,
    double humidityErrorPercent,
    double voltsResolutionV,
    double voltsErrorV,
    boolean batteryCurrent,
    boolean stateOfCharge,
    double stateOfChargeError,
    boolean heaterCurrent,
    boolean chargerFull) {}
