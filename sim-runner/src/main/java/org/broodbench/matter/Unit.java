package org.broodbench.matter;

import java.util.List;

/**
 * One unit: base value = (value + shift) * numerator / denominator. The factor is a fraction so
 * that 95 % is exactly 0.95 and 2.5 mm exactly 0.0025.
 *
 * @param dimension what it measures
 * @param spelling the spelling that this program writes into files ("degC")
 * @param symbol the symbol shown to people ("°C")
 * @param otherSpellings further spellings that are read
 * @param shift added before scaling, in this unit
 * @param numerator of the factor to the base unit
 * @param denominator of the factor to the base unit
 */
public record Unit(
    Dimension dimension,
    String spelling,
    String symbol,
    List<String> otherSpellings,
    double shift,
    double numerator,
    double denominator) {

  /** A value in this unit, expressed in the base unit of the dimension. */
  public double toBase(double value) {
    return (value + shift) * numerator / denominator;
  }

  /** A value in the base unit, expressed in this unit. */
  public double fromBase(double base) {
    return base * denominator / numerator - shift;
  }

  /** Whether this text names the unit, exactly as written. */
  boolean isSpelled(String text) {
    return text.equals(spelling) || text.equals(symbol) || otherSpellings.contains(text);
  }
}
