package org.broodbench.hive;

/** Heat in J, water and carbon dioxide in kg, each term integrated by itself over a run. */
public final class HiveLedger {
  public double heaterJ;
  public double colonyJ;
  public double sunJ;
  public double electronicsJ;
  public double latentReleasedJ;
  public double lostWallsJ;
  public double lostAirJ;
  public double latentTakenJ;
  public double storedJ;

  public double waterMadeKg;
  public double waterFetchedKg;
  public double waterInKg;
  public double waterOutKg;
  public double waterDrainedKg;
  public double waterCondensedKg;
  public double waterStoredKg;

  public double co2MadeKg;
  public double co2InKg;
  public double co2OutKg;
  public double co2StoredKg;

  /** What the heat terms leave over, J. */
  public double heatResidualJ() {
    return heaterJ
        + colonyJ
        + sunJ
        + electronicsJ
        + latentReleasedJ
        - (lostWallsJ + lostAirJ + latentTakenJ + storedJ);
  }

  /** What the water terms leave over, kg. */
  public double waterResidualKg() {
    return waterMadeKg + waterFetchedKg + waterInKg - (waterOutKg + waterDrainedKg + waterStoredKg);
  }

  /** What the carbon dioxide terms leave over, kg. */
  public double co2ResidualKg() {
    return co2MadeKg + co2InKg - (co2OutKg + co2StoredKg);
  }
}
