package org.broodbench.hive;

/** What surrounds the hive during one step; filled in place by the owner of the step. */
public final class Outside {
  /** Index of the horizontal roof in {@link #sunWM2}. */
  public static final int ROOF = 0;

  /** Index of the front, a short side; the others follow clockwise seen from above. */
  public static final int FRONT = 1;

  /** Air temperature, °C. */
  public double airC;

  /** Water in the air, kg per kg of dry air. */
  public double humidityRatio;

  /** Wind at the hive, m/s. */
  public double windMS;

  /** Effective temperature of the sky for long-wave exchange, °C. */
  public double skyC;

  /** Irradiance on roof, front and the other three sides, W/m². */
  public final double[] sunWM2 = new double[5];
}
