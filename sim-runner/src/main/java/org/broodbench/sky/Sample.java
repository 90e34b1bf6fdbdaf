package org.broodbench.sky;

/** What the weather does to the plant at one instant; filled in place, so that nothing is made. */
public final class Sample {
  /** Air temperature, degC. */
  public double airC;

  /** Partial pressure of water vapour, Pa. */
  public double vapourPa;

  /** Wind speed at hive height, m/s. */
  public double windMS;

  /** Temperature of a black body that radiates as the sky does, degC. */
  public double skyC;

  /** Air pressure, Pa. */
  public double pressurePa;

  /** Global horizontal irradiance, W/m2. */
  public double ghiWM2;

  /** Direct normal irradiance, W/m2. */
  public double dniWM2;

  /** Diffuse horizontal irradiance, W/m2. */
  public double dhiWM2;

  /** Precipitation, mm/h; 0 also where the record has none. */
  public double precipMmPerH;

  /** Irradiance on each plane, W/m2, in the order the planes were given. */
  public final double[] planeWM2;

  /** For a forcing with this many planes. */
  public Sample(int planes) {
    planeWM2 = new double[planes];
  }
}
