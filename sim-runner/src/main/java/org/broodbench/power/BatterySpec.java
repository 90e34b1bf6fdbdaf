package org.broodbench.power;

/**
 * The battery bank.
 *
 * @param chemistry kind
 * @param capacityAh charge at the 20-hour rate and 25 °C, Ah
 * @param nominalV 12 or 24 V
 * @param resistanceOhm internal resistance at 25 °C, Ω
 * @param initialSoc state of charge at the start, 0 to 1
 * @param chargeLimitA highest charge current that the maker allows, A
 * @param absorptionV charging volts at 25 °C, V
 * @param coulombicEfficiency share of charge stored at low state of charge, 0 to 1
 * @param selfDischargePerMonth share of charge lost in a month of rest, 0 to 1
 * @param timeConstantS time constant of the battery's temperature towards that of its place, s
 * @param place where it stands
 */
public record BatterySpec(
    Chemistry chemistry,
    double capacityAh,
    double nominalV,
    double resistanceOhm,
    double initialSoc,
    double chargeLimitA,
    double absorptionV,
    double coulombicEfficiency,
    double selfDischargePerMonth,
    double timeConstantS,
    Place place) {
  /** Where a battery stands, which decides its temperature. */
  public enum Place {
    /** Outdoors in a ventilated case. */
    OUTDOORS,
    /** Inside the hive body, next to the brood box air. */
    HIVE
  }
}
