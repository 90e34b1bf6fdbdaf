package org.broodbench.hive;

/** What surrounds the hive during one step; filled in place by the owner of the step. */
public final class Outside {
  /** Index of the horizontal roof in {@link #sunWM2}. */
  public static final int ROOF = 0;

  /** Index of the wall that faces north; east, south and west follow. */
  public static final int NORTH = 1;

  /** Air temperature, °C. */
  public double airC;

  /** Water in the air, kg per kg of dry air. */
  public double humidityRatio;

  /** Wind at the hive, m/s. */
  public double windMS;

  /** Effective temperature of the sky for long-wave exchange, °C. */
  public double skyC;

  /** Irradiance on roof, north, east, south and west face, W/m². */
  public final double[] sunWM2 = new double[5];
}
