package org.broodbench.power;

/**
 * The battery bank; figures are those of the whole bank.
 *
 * @param chemistry kind
 * @param capacityAh charge at the 20-hour rate and 25 °C, Ah
 * @param nominalV 12 or 24 V
 * @param resistanceOhm internal resistance at 25 °C, Ω
 * @param initialSoc state of charge at the start, 0 to 1
 * @param chargeLimitA highest charge current that the maker allows, A
 * @param charge stages of charging
 * @param coulombicEfficiency share of charge stored at low state of charge, 0 to 1
 * @param selfDischargePerMonth share of charge lost in a month of rest at 25 °C, 0 to 1
 * @param timeConstantS time constant of the battery's temperature towards that of its place, s
 * @param place where it stands
 * @param warmedShare how far its place is warmed by the hive: 0 outdoor air, 1 the air of the brood
 *     box
 * @param frostCutOff whether charging stops below 0 °C, to return at 5 °C
 * @param board its protection board
 */
public record BatterySpec(
    Chemistry chemistry,
    double capacityAh,
    double nominalV,
    double resistanceOhm,
    double initialSoc,
    double chargeLimitA,
    ChargeProfile charge,
    double coulombicEfficiency,
    double selfDischargePerMonth,
    double timeConstantS,
    Place place,
    double warmedShare,
    boolean frostCutOff,
    BoardSpec board) {
  /** Where a battery stands, which decides its temperature. */
  public enum Place {
    /** Outdoors in a ventilated case. */
    OUTDOORS(0),
    /** In the stand under the hive; how far that is warmed is our own choice. */
    STAND(0.15),
    /** Inside the hive body, next to the brood box air. */
    HIVE(1);

    private final double warmedShare;

    Place(double warmedShare) {
      this.warmedShare = warmedShare;
    }

    /** How far the place is warmed by the hive. */
    public double warmedShare() {
      return warmedShare;
    }
  }

  /** A bank with the usual stages of charging and, for lithium, the usual board. */
  public BatterySpec(
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
    this(
        chemistry,
        capacityAh,
        nominalV,
        resistanceOhm,
        initialSoc,
        chargeLimitA,
        ChargeProfile.usual(chemistry, absorptionV, capacityAh, nominalV),
        coulombicEfficiency,
        selfDischargePerMonth,
        timeConstantS,
        place,
        place.warmedShare(),
        !chemistry.leadAcid(),
        chemistry.leadAcid() ? BoardSpec.NONE : BoardSpec.usual(capacityAh, nominalV));
  }

  /** The same at another state of charge at the start, 0 to 1. */
  public BatterySpec withInitialSoc(double soc) {
    return new BatterySpec(
        chemistry,
        capacityAh,
        nominalV,
        resistanceOhm,
        soc,
        chargeLimitA,
        charge,
        coulombicEfficiency,
        selfDischargePerMonth,
        timeConstantS,
        place,
        warmedShare,
        frostCutOff,
        board);
  }

  /** Volts of bulk and absorption at 25 °C, V. */
  public double absorptionV() {
    return charge.absorptionV();
  }
}
