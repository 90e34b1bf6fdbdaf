package org.broodbench.matter;

/**
 * What kind of thing a quantity measures. A temperature and a difference of temperatures are two
 * dimensions, because 2 °F means -16.7 °C as the one and 1.11 K as the other.
 */
public enum Dimension {
  /** Base: degrees Celsius, as everywhere in this project. */
  TEMPERATURE("temperature"),
  /** Base: kelvin. */
  TEMPERATURE_DIFFERENCE("temperature difference"),
  /** Base: kelvin per hour. */
  TEMPERATURE_RATE("rate of temperature"),
  /** Base: metre. */
  LENGTH("length"),
  /** Base: square metre; wire gauges are areas. */
  AREA("area"),
  /** Base: cubic metre. */
  VOLUME("volume"),
  /** Base: kilogram. */
  MASS("mass"),
  /** Base: second. */
  TIME("time"),
  /** Base: watt. */
  POWER("power"),
  /** Base: joule. */
  ENERGY("energy"),
  /** Base: volt. */
  VOLTAGE("voltage"),
  /** Base: ampere. */
  CURRENT("current"),
  /** Base: coulomb. */
  CHARGE("charge"),
  /** Base: ohm. */
  RESISTANCE("electrical resistance"),
  /** Base: 1 (a share of one). A bare number is a share too. */
  RATIO("ratio"),
  /** Base: share per day. */
  DAILY_RATE("rate per day"),
  /** Base: share per kelvin. */
  RATIO_PER_KELVIN("ratio per kelvin"),
  /** Base: volt per kelvin. */
  VOLTAGE_PER_KELVIN("voltage per kelvin"),
  /** Base: degree of arc. */
  ANGLE("angle"),
  /** Base: degree of arc, north positive. */
  LATITUDE("latitude"),
  /** Base: degree of arc, east positive. */
  LONGITUDE("longitude"),
  /** Base: metre per second. */
  SPEED("speed"),
  /** Base: watt per square metre. */
  IRRADIANCE("irradiance"),
  /** Base: cubic metre per second. */
  FLOW("flow of air or water"),
  /** Base: watt per kelvin. */
  THERMAL_CONDUCTANCE("thermal conductance"),
  /** Base: kelvin per watt. */
  THERMAL_RESISTANCE("thermal resistance"),
  /** Base: square metre kelvin per watt. */
  INSULANCE("thermal resistance of an area"),
  /** Base: watt per metre kelvin. */
  THERMAL_CONDUCTIVITY("thermal conductivity"),
  /** Base: joule per kilogram kelvin. */
  SPECIFIC_HEAT("specific heat"),
  /** Base: joule per kelvin. */
  HEAT_CAPACITY("heat capacity"),
  /** Base: watt per kilogram. */
  SPECIFIC_POWER("power per mass"),
  /** Base: kilogram per cubic metre. */
  DENSITY("density"),
  /** Base: pascal. */
  PRESSURE("pressure"),
  /** Base: one unit of the currency named; currencies are never converted. */
  MONEY("money");

  private final String words;

  Dimension(String words) {
    this.words = words;
  }

  /** The dimension in words, for messages. */
  public String words() {
    return words;
  }
}
