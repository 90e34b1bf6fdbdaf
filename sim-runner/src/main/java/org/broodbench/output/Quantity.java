package org.broodbench.output;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * Kinds of numbers on the report page, in metric and in US customary units. US value = metric value
 * × factor + shift; factors follow from the exact inch, pound and degree (NIST Special Publication
 * 811, appendix B).
 */
enum Quantity {
  /** Temperature. */
  TEMPERATURE("t", 1.8, 32, "°C", "°F", 0),
  /** Difference of temperatures. */
  DIFFERENCE("k", 1.8, 0, "K", "°F", 0),
  /** Temperature difference over time. */
  DEGREE_HOURS("kh", 1.8, 0, "K·h", "°F·h", 0),
  /** Small mass. */
  GRAMS("g", 1 / 28.349523125, 0, "g", "oz", 1),
  /** Mass. */
  KILOGRAMS("kg", 1 / 0.45359237, 0, "kg", "lb", 0),
  /** Short length. */
  MILLIMETRES("mm", 1 / 25.4, 0, "mm", "in", 2),
  /** Length. */
  METRES("m", 1 / 0.3048, 0, "m", "ft", 0),
  /** Small area. */
  SQUARE_CENTIMETRES("cm2", 1 / 6.4516, 0, "cm²", "in²", 1),
  /** Flow of air. */
  LITRES_PER_MINUTE("lpm", 1 / 28.316846592, 0, "l/min", "ft³/min", 2),
  /** Wind. */
  METRES_PER_SECOND("ms", 3600 / 1609.344, 0, "m/s", "mph", 0),
  /** Conductance. */
  WATTS_PER_KELVIN("wk", 1 / 1.8, 0, "W/K", "W/°F", 1),
  /** Heat energy or electrical energy; the same in both. */
  WATT_HOURS("wh", 1, 0, "Wh", "Wh", 0);

  final String key;
  final double factor;
  final double shift;
  final String metric;
  final String us;
  private final int moreUsDecimals;

  Quantity(String key, double factor, double shift, String metric, String us, int moreUsDecimals) {
    this.key = key;
    this.factor = factor;
    this.shift = shift;
    this.metric = metric;
    this.us = us;
    this.moreUsDecimals = moreUsDecimals;
  }

  /** Unit as shown. */
  String unit(boolean useUs) {
    return useUs ? us : metric;
  }

  /** Decimals to show in US units for a number with some decimals in metric ones. */
  int usDecimals(int decimals) {
    int floor = this == TEMPERATURE || this == DIFFERENCE ? 1 : 0;
    return Math.max(decimals + moreUsDecimals, floor);
  }

  /** The number as shown, without its unit. */
  String number(double metricValue, int decimals, boolean useUs) {
    return useUs
        ? plain(metricValue * factor + shift, usDecimals(decimals))
        : plain(metricValue, decimals);
  }

  /**
   * A number with so many decimals and a true minus sign. Ties go away from zero on the exact
   * binary value, which is what the script's {@code toFixed} does.
   */
  static String plain(double value, int decimals) {
    if (Double.isNaN(value)) {
      return "none";
    }
    BigDecimal rounded = new BigDecimal(value).setScale(decimals, RoundingMode.HALF_UP);
    String digits = rounded.abs().toPlainString();
    return rounded.signum() < 0 ? "−" + digits : digits;
  }

  /** Hours; a time too short for a tenth of an hour is told in minutes or seconds. */
  static String hours(double hours) {
    double seconds = hours * 3600;
    if (seconds >= 0.5 && seconds < 59.5) {
      return plain(seconds, 0) + " s";
    }
    return hours > 0 && hours < 0.95 ? plain(hours * 60, 0) + " min" : plain(hours, 1) + " h";
  }
}
