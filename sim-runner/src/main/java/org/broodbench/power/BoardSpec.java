package org.broodbench.power;

/**
 * The protection board of a lithium battery.
 *
 * @param fitted whether there is one
 * @param lowV volts of the bank under which it stops discharge, V
 * @param lowReturnV volts at which it may let go of that, V
 * @param returns what lets it go
 * @param highV volts over which it stops charging, V
 * @param highReturnV volts under which it lets go of that, V
 * @param dischargeLimitA current over which it stops discharge, A
 * @param limitReturnS time after which it lets go of that, s
 */
public record BoardSpec(
    boolean fitted,
    double lowV,
    double lowReturnV,
    Return returns,
    double highV,
    double highReturnV,
    double dischargeLimitA,
    double limitReturnS) {

  /** What brings a board back that stopped discharge because the battery was low. */
  public enum Return {
    /** Volts alone, once the loads are gone. */
    ITSELF,
    /** Charging. */
    CHARGE,
    /** Only a hand. */
    HAND
  }

  /** No board. */
  public static final BoardSpec NONE = new BoardSpec(false, 0, 0, Return.ITSELF, 0, 0, 0, 0);

  /**
   * The usual board of four cells at 12 V: 2.5 V a cell, back at 3.0 V by charging; 3.65 V a cell,
   * back at 3.45 V; one hour's current, back after 30 s. Common practice, no source.
   */
  public static BoardSpec usual(double capacityAh, double nominalV) {
    double scale = nominalV / 12;
    return new BoardSpec(
        true, 10 * scale, 12 * scale, Return.CHARGE, 14.6 * scale, 13.8 * scale, capacityAh, 30);
  }
}
