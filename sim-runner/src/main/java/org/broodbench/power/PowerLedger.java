package org.broodbench.power;

/** Electrical energy in J and charge in Ah, each term integrated by itself over a run. */
public final class PowerLedger {
  public double pvAvailableJ;
  public double pvUsedJ;
  public double shoreJ;
  public double batteryChangeJ;
  public double heaterJ;
  public double fanJ;
  public double controllerJ;
  public double otherLoadsJ;
  public double chargeLossJ;
  public double batteryLossJ;
  public double inverterLossJ;
  public double wiringLossJ;

  public double chargeInAh;
  public double chargeOutAh;
  public double chargeLostAh;
  public double chargeStoredAh;

  /** What the energy terms leave over, J. */
  public double energyResidualJ() {
    return pvUsedJ
        + shoreJ
        - batteryChangeJ
        - (heaterJ
            + fanJ
            + controllerJ
            + otherLoadsJ
            + chargeLossJ
            + batteryLossJ
            + inverterLossJ
            + wiringLossJ);
  }

  /** What the charge terms leave over, Ah. */
  public double chargeResidualAh() {
    return chargeInAh - chargeOutAh - chargeLostAh - chargeStoredAh;
  }
}
