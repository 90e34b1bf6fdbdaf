package org.broodbench.calibrate;

/** What a column of a field log may hold, in the units of the simulation. */
public enum LogColumn {
  /** First brood probe, °C. */
  BROOD_A("brood_a", Sort.TEMPERATURE),
  /** Second brood probe, °C. */
  BROOD_B("brood_b", Sort.TEMPERATURE),
  /** Thermal mass over the heater, °C. */
  PAN("pan", Sort.TEMPERATURE),
  /** Air under the lid, °C. */
  TOP("top", Sort.TEMPERATURE),
  /** Outdoor air, °C. */
  OUTDOOR("outdoor", Sort.TEMPERATURE),
  /** Battery volts, V. */
  BATTERY_V("battery_volts", Sort.VOLTAGE),
  /** Battery current, A, positive while it charges. */
  BATTERY_A("battery_current", Sort.CURRENT),
  /** Humidity between the combs, percent. */
  HUMIDITY("humidity", Sort.PERCENT),
  /** Heater relay, 1 on, 0 off. */
  HEATER("heater", Sort.STATE),
  /** Fan relay, 1 on, 0 off. */
  FAN("fan", Sort.STATE),
  /** Hours that the heater was on since the row before, h. */
  HEATER_HOURS("heater_hours", Sort.HOURS),
  /** Global irradiance on level ground, W/m². */
  SUN("sun", Sort.IRRADIANCE),
  /** Wind, m/s. */
  WIND("wind", Sort.SPEED);

  /** Kinds of units. */
  public enum Sort {
    /** A temperature. */
    TEMPERATURE,
    /** A voltage. */
    VOLTAGE,
    /** A current. */
    CURRENT,
    /** A share in percent. */
    PERCENT,
    /** On or off. */
    STATE,
    /** A time in hours. */
    HOURS,
    /** Sunlight. */
    IRRADIANCE,
    /** A speed. */
    SPEED
  }

  /** Number of columns. */
  public static final int COUNT = values().length;

  private final String key;
  private final Sort sort;

  LogColumn(String key, Sort sort) {
    this.key = key;
    this.sort = sort;
  }

  /** Name in mappings. */
  public String key() {
    return key;
  }

  /** Kind of its unit. */
  public Sort sort() {
    return sort;
  }

  /** Whether it is a temperature inside the hive. */
  public boolean inside() {
    return sort == Sort.TEMPERATURE && this != OUTDOOR;
  }
}
