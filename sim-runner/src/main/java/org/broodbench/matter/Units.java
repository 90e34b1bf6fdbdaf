package org.broodbench.matter;

import static org.broodbench.matter.Dimension.*;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The units that people write in this trade, and their factors.
 *
 * <p>A table of our own rather than a library: what keepers write ("3/4 in", "14 AWG", "°F" for a
 * set point and for a differential) is a few dozen rows; the general libraries want other
 * spellings, do not tell a temperature from a difference of temperatures, cannot word a refusal for
 * a keeper, and cost more start-up time than all the rest of reading a scenario.
 *
 * <p>Sources of the factors. SI units and prefixes, minute, hour, day, litre, bar by definition: SI
 * Brochure, 9th edition. Inch 25.4 mm, foot, mile, pound 0.45359237 kg: international yard and
 * pound agreement of 1959, exact. US gallon 231 cubic inches, exact; pint 1/8, quart 1/4 of it
 * (NIST SP 811 appendix B). Btu(IT) 1055.05585262 J, exact in the same table; pound-force from
 * standard gravity 9.80665 m/s2, exact; inch of mercury 3386.389 Pa (NIST SP 811, rounded there).
 * Month 30.44 days: mean of the Gregorian calendar, 365.2425/12, rounded by common practice. Wire
 * gauge: see {@link #awgAreaM2}.
 */
public final class Units {
  private static final double INCH = 0.0254;
  private static final double FOOT = 0.3048;
  private static final double POUND = 0.45359237;
  private static final double GALLON_M3 = 231 * 1.6387064e-5;
  private static final double BTU_J = 1055.05585262;
  private static final double PSI_PA = POUND * 9.80665 / (INCH * INCH);
  private static final double DAYS_PER_MONTH = 30.44;

  /** Name under which a wire gauge is written; its value is not proportional to the area. */
  public static final String WIRE_GAUGE = "AWG";

  private static final List<Unit> ALL = List.copyOf(table());

  private Units() {}

  private static List<Unit> table() {
    List<Unit> t = new ArrayList<>();
    t.add(
        new Unit(
            TEMPERATURE, "degC", "°C", List.of("deg C", "C", "℃", "Celsius", "celsius"), 0, 1, 1));
    t.add(
        new Unit(
            TEMPERATURE,
            "degF",
            "°F",
            List.of("deg F", "F", "℉", "Fahrenheit", "fahrenheit"),
            -32,
            5,
            9));
    t.add(new Unit(TEMPERATURE, "K", "K", List.of("kelvin"), -273.15, 1, 1));
    add(t, TEMPERATURE_DIFFERENCE, "K", "K", 1, 1, "kelvin");
    add(t, TEMPERATURE_DIFFERENCE, "degC", "°C", 1, 1, "deg C", "C", "℃");
    add(t, TEMPERATURE_DIFFERENCE, "degF", "°F", 5, 9, "deg F", "F", "℉");
    add(t, TEMPERATURE_RATE, "K/h", "K/h", 1, 1, "degC/h", "°C/h");
    add(t, TEMPERATURE_RATE, "degF/h", "°F/h", 5, 9);
    add(t, TEMPERATURE_RATE, "K/min", "K/min", 60, 1, "degC/min", "°C/min");
    add(t, TEMPERATURE_RATE, "K/s", "K/s", 3600, 1, "degC/s", "°C/s");
    add(t, TEMPERATURE_RATE, "degF/min", "°F/min", 300, 9);

    add(t, LENGTH, "mm", "mm", 1, 1000, "millimetre", "millimeter");
    add(t, LENGTH, "cm", "cm", 1, 100, "centimetre", "centimeter");
    add(t, LENGTH, "m", "m", 1, 1, "metre", "meter", "metres", "meters");
    add(t, LENGTH, "km", "km", 1000, 1);
    add(t, LENGTH, "in", "in", INCH, 1, "inch", "inches", "\"", "″");
    add(t, LENGTH, "ft", "ft", FOOT, 1, "foot", "feet", "′");
    add(t, AREA, "mm2", "mm²", 1, 1e6, "mm^2", "sq mm");
    add(t, AREA, "cm2", "cm²", 1, 1e4, "cm^2", "sq cm");
    add(t, AREA, "m2", "m²", 1, 1, "m^2", "sq m");
    add(t, AREA, "in2", "in²", INCH * INCH, 1, "in^2", "sq in");
    add(t, AREA, "ft2", "ft²", FOOT * FOOT, 1, "ft^2", "sq ft");
    add(t, AREA, WIRE_GAUGE, WIRE_GAUGE, Double.NaN, 1, "awg");
    add(t, VOLUME, "L", "L", 1, 1000, "l", "litre", "liter", "litres", "liters");
    add(t, VOLUME, "mL", "mL", 1, 1e6, "ml", "cm3", "cm³");
    add(t, VOLUME, "m3", "m³", 1, 1, "m^3");
    add(t, VOLUME, "gal", "gal", GALLON_M3, 1, "US gal", "gallon", "gallons");
    add(t, VOLUME, "qt", "qt", GALLON_M3, 4, "quart", "quarts");
    add(t, VOLUME, "pt", "pt", GALLON_M3, 8, "pint", "pints");
    add(t, VOLUME, "ft3", "ft³", FOOT * FOOT * FOOT, 1, "ft^3", "cu ft");
    add(t, MASS, "kg", "kg", 1, 1);
    add(t, MASS, "g", "g", 1, 1000, "gram", "grams");
    add(t, MASS, "mg", "mg", 1, 1e6);
    add(t, MASS, "lb", "lb", POUND, 1, "lbs", "pound", "pounds");
    add(t, MASS, "oz", "oz", POUND, 16, "ounce", "ounces");

    add(t, TIME, "s", "s", 1, 1, "sec", "second", "seconds");
    add(t, TIME, "min", "min", 60, 1, "minute", "minutes", "mins");
    add(t, TIME, "h", "h", 3600, 1, "hr", "hour", "hours", "hrs");
    add(t, TIME, "d", "d", 86400, 1, "day", "days");
    add(t, TIME, "ms", "ms", 1, 1000);
    add(t, TIME, "week", "week", 604800, 1, "weeks", "wk");

    add(t, POWER, "W", "W", 1, 1, "watt", "watts", "Wp");
    add(t, POWER, "mW", "mW", 1, 1000);
    add(t, POWER, "kW", "kW", 1000, 1, "kWp");
    add(t, POWER, "Btu/h", "Btu/h", BTU_J, 3600, "BTU/h");
    add(t, ENERGY, "Wh", "Wh", 3600, 1, "W.h", "W h");
    add(t, ENERGY, "kWh", "kWh", 3.6e6, 1, "kW.h", "kW h");
    add(t, ENERGY, "J", "J", 1, 1);
    add(t, ENERGY, "kJ", "kJ", 1000, 1);
    add(t, ENERGY, "MJ", "MJ", 1e6, 1);
    add(t, ENERGY, "Btu", "Btu", BTU_J, 1, "BTU");
    add(t, VOLTAGE, "V", "V", 1, 1, "volt", "volts");
    add(t, VOLTAGE, "mV", "mV", 1, 1000);
    add(t, CURRENT, "A", "A", 1, 1, "amp", "amps", "ampere");
    add(t, CURRENT, "mA", "mA", 1, 1000);
    add(t, CURRENT, "uA", "µA", 1, 1e6, "μA");
    add(t, CHARGE, "Ah", "Ah", 3600, 1, "A.h", "A h", "amp hours", "amp-hours");
    add(t, CHARGE, "mAh", "mAh", 3.6, 1);
    add(t, RESISTANCE, "ohm", "Ω", 1, 1, "Ohm", "ohms", "\u2126");
    add(t, RESISTANCE, "mOhm", "mΩ", 1, 1000, "mohm", "m\u2126", "milliohm", "milliohms");
    add(t, RESISTANCE, "kOhm", "kΩ", 1000, 1, "kohm", "k\u2126");

    add(t, RATIO, "%", "%", 1, 100, "percent", "per cent");
    add(t, RATIO, "", "", 1, 1);
    add(t, RATIO, "ppm", "ppm", 1, 1e6);
    add(t, DAILY_RATE, "/day", "/day", 1, 1, "/d", "per day");
    add(t, DAILY_RATE, "%/day", "%/day", 1, 100, "%/d", "% per day", "% a day");
    add(t, DAILY_RATE, "%/month", "%/month", 1, 100 * DAYS_PER_MONTH, "% per month", "% a month");
    add(t, DAILY_RATE, "/h", "/h", 24, 1, "per hour", "/hour");
    add(t, DAILY_RATE, "%/h", "%/h", 24, 100, "% per hour");
    add(t, RATIO_PER_KELVIN, "%/K", "%/K", 1, 100, "%/degC", "%/°C");
    add(t, RATIO_PER_KELVIN, "/K", "/K", 1, 1, "/degC", "/°C");
    add(t, VOLTAGE_PER_KELVIN, "mV/K", "mV/K", 1, 1000, "mV/degC", "mV/°C");
    add(t, VOLTAGE_PER_KELVIN, "V/K", "V/K", 1, 1, "V/degC", "V/°C");
    add(t, ANGLE, "deg", "°", 1, 1, "degree", "degrees");
    add(t, LATITUDE, "N", "N", 1, 1, "deg N", "° N", "°N");
    add(t, LATITUDE, "S", "S", -1, 1, "deg S", "° S", "°S");
    add(t, LATITUDE, "deg", "°", 1, 1);
    add(t, LONGITUDE, "E", "E", 1, 1, "deg E", "° E", "°E");
    add(t, LONGITUDE, "W", "W", -1, 1, "deg W", "° W", "°W");
    add(t, LONGITUDE, "deg", "°", 1, 1);

    add(t, SPEED, "m/s", "m/s", 1, 1);
    add(t, SPEED, "km/h", "km/h", 10, 36, "kph");
    add(t, SPEED, "mph", "mph", 1609.344, 3600);
    add(t, SPEED, "ft/min", "ft/min", FOOT, 60, "fpm");
    add(t, IRRADIANCE, "W/m2", "W/m²", 1, 1, "W/m^2");
    add(t, IRRADIANCE, "Btu/(h ft2)", "Btu/(h·ft²)", BTU_J, 3600 * FOOT * FOOT);
    add(t, FLOW, "L/s", "L/s", 1, 1000, "l/s");
    add(t, FLOW, "L/min", "L/min", 1, 60000, "l/min");
    add(t, FLOW, "m3/h", "m³/h", 1, 3600, "m^3/h");
    add(t, FLOW, "m3/s", "m³/s", 1, 1, "m^3/s");
    add(t, FLOW, "cfm", "cfm", FOOT * FOOT * FOOT, 60, "ft3/min", "CFM");
    add(t, THERMAL_CONDUCTANCE, "W/K", "W/K", 1, 1, "W/degC", "W/°C");
    add(t, THERMAL_CONDUCTANCE, "mW/K", "mW/K", 1, 1000);
    add(t, THERMAL_CONDUCTANCE, "Btu/(h degF)", "Btu/(h·°F)", BTU_J * 9, 3600 * 5, "Btu/h/degF");
    add(t, THERMAL_RESISTANCE, "K/W", "K/W", 1, 1, "degC/W", "°C/W");
    add(t, INSULANCE, "m2K/W", "m²K/W", 1, 1, "m2 K/W", "m² K/W");
    add(
        t,
        INSULANCE,
        "ft2.degF.h/Btu",
        "ft²·°F·h/Btu",
        FOOT * FOOT * 5 * 3600,
        9 * BTU_J,
        "R-value");
    add(t, THERMAL_CONDUCTIVITY, "W/(m K)", "W/(m·K)", 1, 1, "W/mK", "W/m/K", "W/m K", "W/(mK)");
    add(t, SPECIFIC_HEAT, "J/(kg K)", "J/(kg·K)", 1, 1, "J/kgK", "J/kg/K", "J/kg K", "J/(kgK)");
    add(t, SPECIFIC_HEAT, "kJ/(kg K)", "kJ/(kg·K)", 1000, 1, "kJ/kgK", "kJ/kg/K", "kJ/kg K");
    add(t, HEAT_CAPACITY, "J/K", "J/K", 1, 1, "J/degC", "J/°C");
    add(t, HEAT_CAPACITY, "kJ/K", "kJ/K", 1000, 1, "kJ/degC", "kJ/°C");
    add(t, SPECIFIC_POWER, "W/kg", "W/kg", 1, 1, "mW/g");
    add(t, DENSITY, "kg/m3", "kg/m³", 1, 1, "kg/m^3");
    add(t, DENSITY, "g/cm3", "g/cm³", 1000, 1, "kg/L", "g/mL");
    add(t, DENSITY, "lb/ft3", "lb/ft³", POUND, FOOT * FOOT * FOOT);
    add(t, PRESSURE, "hPa", "hPa", 100, 1, "mbar");
    add(t, PRESSURE, "Pa", "Pa", 1, 1);
    add(t, PRESSURE, "kPa", "kPa", 1000, 1);
    add(t, PRESSURE, "bar", "bar", 1e5, 1);
    add(t, PRESSURE, "psi", "psi", PSI_PA, 1);
    add(t, PRESSURE, "inHg", "inHg", 3386.389, 1);
    for (String code : List.of("EUR", "USD", "CHF", "GBP", "CAD", "AUD", "NZD", "SEK", "NOK")) {
      add(t, MONEY, code, code, 1, 1);
    }
    return t;
  }

  private static void add(
      List<Unit> t,
      Dimension dimension,
      String spelling,
      String symbol,
      double numerator,
      double denominator,
      String... others) {
    t.add(new Unit(dimension, spelling, symbol, List.of(others), 0, numerator, denominator));
  }

  /** Every unit of a dimension, the usual one first. */
  public static List<Unit> of(Dimension dimension) {
    return ALL.stream().filter(u -> u.dimension() == dimension).toList();
  }

  /** Every unit. */
  public static List<Unit> all() {
    return ALL;
  }

  /** The unit of this dimension that is spelled exactly so. */
  public static Optional<Unit> find(Dimension dimension, String spelling) {
    return ALL.stream()
        .filter(u -> u.dimension() == dimension && u.isSpelled(spelling))
        .findFirst();
  }

  /**
   * The unit of this dimension that is spelled exactly so.
   *
   * @throws IllegalArgumentException where there is none: the name stands in the program, not in a
   *     file
   */
  public static Unit get(Dimension dimension, String spelling) {
    return find(dimension, spelling)
        .orElseThrow(
            () -> new IllegalArgumentException("no unit " + spelling + " of " + dimension.words()));
  }

  /**
   * Cross-section of a solid round wire of a gauge number: d = 0.127 mm * 92^((36 - n) / 39), the
   * form of ASTM B258. Gauge 1/0 is number 0, 4/0 is number -3.
   *
   * @param gauge number, -3 to 40
   * @return square metres
   */
  public static double awgAreaM2(int gauge) {
    double diameterM = 0.127e-3 * StrictMath.pow(92, (36 - gauge) / 39.0);
    return StrictMath.PI * diameterM * diameterM / 4;
  }

  /** A base value in a unit, with a fixed number of decimals: "32.0 °C". For people, not files. */
  public static String show(double base, Unit unit, int decimals) {
    double value = unit.fromBase(base);
    String number = String.format(Locale.ROOT, "%." + decimals + "f", value);
    // "-0.0" would make a reader look for a sign that is not there
    if (Double.parseDouble(number) == 0) {
      number = String.format(Locale.ROOT, "%." + decimals + "f", 0.0);
    }
    return join(number, unit.symbol());
  }

  /**
   * A base value in a unit as a text that can stand in a scenario: "32 degC", at most twelve
   * significant digits, so that a value that came through a conversion reads as it was written.
   */
  public static String write(double base, Unit unit) {
    BigDecimal value = new BigDecimal(unit.fromBase(base)).round(new MathContext(12));
    String number = value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    return join(number, unit.spelling());
  }

  private static String join(String number, String unit) {
    return unit.isEmpty() ? number : number + " " + unit;
  }

  /** The unit in which a reader of US habits wants to see what is kept in this one. */
  public static Unit usual(Unit metric) {
    String us =
        switch (metric.spelling()) {
          case "degC" -> "degF";
          case "K" -> "degF";
          case "K/h" -> "degF/h";
          case "mm", "cm" -> "in";
          case "m" -> "ft";
          case "cm2" -> "in2";
          case "m2" -> "ft2";
          case "L" -> "gal";
          case "kg" -> "lb";
          case "g" -> "oz";
          case "m/s", "km/h" -> "mph";
          case "L/min", "L/s", "m3/h" -> "cfm";
          default -> metric.spelling();
        };
    return find(metric.dimension(), us).orElse(metric);
  }
}
