package org.broodbench.power;

import java.util.List;

/**
 * What the parts of the supply chain did over a run, for reports.
 *
 * @param groups module groups in their order
 * @param loads further loads in their order
 * @param cutOuts everything that may open by itself
 * @param charging hours in the stages of charging
 * @param battery what the battery came through
 */
public record SupplyUse(
    List<Group> groups,
    List<Load> loads,
    List<Opened> cutOuts,
    Charging charging,
    BatteryStress battery) {
  /** Copies the lists. */
  public SupplyUse {
    groups = List.copyOf(groups);
    loads = List.copyOf(loads);
    cutOuts = List.copyOf(cutOuts);
  }

  /**
   * A module group.
   *
   * @param powerW rated power, W
   * @param tiltDeg slope, degrees
   * @param azimuthDeg direction, degrees from north eastward
   * @param availableWh the most it could have given, Wh
   */
  public record Group(double powerW, double tiltDeg, double azimuthDeg, double availableWh) {}

  /**
   * A further load.
   *
   * @param name what the user calls it
   * @param wantedH hours in which its clock had it on
   * @param fedH hours of these in which it was fed
   * @param energyWh what it took, Wh
   */
  public record Load(String name, double wantedH, double fedH, double energyWh) {}

  /**
   * Something that may open by itself.
   *
   * @param name what it is
   * @param trips how often it opened
   * @param hoursOpen how long it was open, h
   * @param returnsByItself whether it closes again without a hand
   * @param openAtEnd whether it was open when the run ended
   */
  public record Opened(
      String name, int trips, double hoursOpen, boolean returnsByItself, boolean openAtEnd) {}

  /** Hours in the stages of charging. */
  public record Charging(double bulkH, double absorptionH, double floatH) {}

  /**
   * What the battery came through.
   *
   * @param hoursBelowHalf hours below half of its charge
   * @param frostChargeAh charge forced into lithium cells below 0 °C, Ah
   * @param lowestC coldest, °C
   * @param highestDischargeA highest discharge current, A
   * @param highestChargeA highest charge current, A
   * @param highestV highest volts at the bus, V
   * @param chargedWh what the bus gave it, Wh
   * @param dischargedWh what it gave the bus, Wh
   */
  public record BatteryStress(
      double hoursBelowHalf,
      double frostChargeAh,
      double lowestC,
      double highestDischargeA,
      double highestChargeA,
      double highestV,
      double chargedWh,
      double dischargedWh) {}
}
