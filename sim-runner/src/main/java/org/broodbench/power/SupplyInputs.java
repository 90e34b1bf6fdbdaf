package org.broodbench.power;

/** What the rest of the plant tells the supply chain for one step; filled in place. */
public final class SupplyInputs {
  /** Heater relay closed. */
  public boolean heater;

  /** The relay is closed whatever the board does, even with the board dead. */
  public boolean heaterWelded;

  /** Share of the heater's element that still carries current, 0 to 1. */
  public double elementShare = 1;

  /** Fan on. */
  public boolean fan;

  /** Inverter enabled. */
  public boolean inverter;

  /** Irradiance on each module group behind its cover, W/m². */
  public final double[] groupWM2;

  /** Outdoor air, °C. */
  public double airC;

  /** Wind at the modules, m/s. */
  public double windMS;

  /** Temperature where the battery stands, °C. */
  public double batteryPlaceC;

  /** Hour of the day, UTC, 0 to 24. */
  public double hourOfDay;

  /** For some number of module groups. */
  public SupplyInputs(int groups) {
    groupWM2 = new double[groups];
  }
}
