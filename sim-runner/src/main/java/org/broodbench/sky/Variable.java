package org.broodbench.sky;

/** What a weather record may hold, with its column name in our own files. */
public enum Variable {
  /** Air temperature, degC. */
  AIR("air_c"),
  /** Relative humidity over liquid water, percent. */
  HUMIDITY("rh_percent"),
  /** Wind speed at the height the series states, m/s. */
  WIND("wind_m_s"),
  /** Global horizontal irradiance, W/m2. */
  GHI("ghi_w_m2"),
  /** Direct normal irradiance, W/m2. */
  DNI("dni_w_m2"),
  /** Diffuse horizontal irradiance, W/m2. */
  DHI("dhi_w_m2"),
  /** Precipitation of the interval, mm. */
  PRECIPITATION("precip_mm"),
  /** Air pressure at the place, Pa. */
  PRESSURE("pressure_pa");

  private final String column;

  Variable(String column) {
    this.column = column;
  }

  /** Name with unit, as in the header of a tidy file. */
  public String column() {
    return column;
  }

  /** True for the three irradiances. */
  public boolean isRadiation() {
    return this == GHI || this == DNI || this == DHI;
  }
}
