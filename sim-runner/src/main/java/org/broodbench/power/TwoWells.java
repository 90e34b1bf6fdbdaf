package org.broodbench.power;

import org.broodbench.matter.Portable;

/**
 * Kinetic battery model: charge in an available and a bound well. Exact for constant current.
 *
 * <p>Source: J. F. Manwell and J. G. McGowan, "Lead acid battery storage model for hybrid energy
 * systems", Solar Energy 50 (1993) 399-405. Here k is the exponent of the exchange, 1/h; the
 * conductance between wells is k c (1−c). Discharge current is positive. Left out: ageing,
 * temperature of the kinetics.
 */
public final class TwoWells {
  private final double c;
  private final double kPerH;
  private double capacityAh;
  private double availableAh;
  private double boundAh;

  // of the length of time asked for last
  private double hoursBefore = -1;
  private double kept;
  private double ramp;

  /**
   * Wells at equilibrium.
   *
   * @param c share of the available well, above 0 and at most 1 (1 switches the bound well off)
   * @param kPerH rate constant, 1/h
   * @param capacityAh charge of both wells when full, Ah
   * @param stateOfCharge 0 to 1
   */
  public TwoWells(double c, double kPerH, double capacityAh, double stateOfCharge) {
    this.c = c;
    this.kPerH = kPerH;
    this.capacityAh = capacityAh;
    availableAh = c * capacityAh * stateOfCharge;
    boundAh = (1 - c) * capacityAh * stateOfCharge;
  }

  /** Sets both wells, Ah. */
  public void set(double available, double bound) {
    availableAh = available;
    boundAh = bound;
  }

  /** Both wells shrink with what is in them, so that their levels stay. */
  void shrink(double share) {
    capacityAh *= share;
    availableAh *= share;
    boundAh *= share;
  }

  /** Charge in the available well, Ah. */
  public double availableAh() {
    return availableAh;
  }

  /** Charge in the bound well, Ah. */
  public double boundAh() {
    return boundAh;
  }

  /** Charge of both wells when full, Ah. */
  public double capacityAh() {
    return capacityAh;
  }

  /** Charge in both over capacity, 0 to 1. */
  public double stateOfCharge() {
    return (availableAh + boundAh) / capacityAh;
  }

  /** Level of the available well, which sets the volts, 0 to 1. */
  public double availableHead() {
    return availableAh / (c * capacityAh);
  }

  /** Level of the bound well, 0 to 1. */
  public double boundHead() {
    return c < 1 ? boundAh / ((1 - c) * capacityAh) : availableHead();
  }

  private void prepare(double hours) {
    if (hours != hoursBefore) {
      hoursBefore = hours;
      kept = Portable.exp(-kPerH * hours);
      ramp = kPerH * hours - 1 + kept;
    }
  }

  /** Charge that the available well will hold after a current for a time, Ah. */
  private double availableAfter(double currentA, double hours) {
    if (c == 1) {
      return availableAh - currentA * hours;
    }
    prepare(hours);
    return availableAh * kept
        + (((availableAh + boundAh) * kPerH * c - currentA) * (1 - kept) - currentA * c * ramp)
            / kPerH;
  }

  /** Level of the available well after a current for a time; discharge positive. */
  public double headAfter(double currentA, double hours) {
    return availableAfter(currentA, hours) / (c * capacityAh);
  }

  /** Holds a current for a time; discharge positive. */
  public void hold(double currentA, double hours) {
    double total = availableAh + boundAh;
    availableAh = availableAfter(currentA, hours);
    boundAh = c == 1 ? 0 : total - currentA * hours - availableAh;
  }

  /** Highest discharge current that the available well bears for a time, A. */
  public double mostDischargeA(double hours) {
    double r = Portable.exp(-kPerH * hours);
    return (kPerH * availableAh * r + (availableAh + boundAh) * kPerH * c * (1 - r))
        / (1 - r + c * (kPerH * hours - 1 + r));
  }

  /** Highest charge current that the available well takes for a time, A, negative. */
  public double mostChargeA(double hours) {
    double r = Portable.exp(-kPerH * hours);
    return (-kPerH * c * capacityAh
            + kPerH * availableAh * r
            + (availableAh + boundAh) * kPerH * c * (1 - r))
        / (1 - r + c * (kPerH * hours - 1 + r));
  }

  /** Charge that a full battery gives at the constant current that empties it in a time, Ah. */
  public static double dischargedAh(double c, double kPerH, double capacityAh, double hours) {
    double kt = kPerH * hours;
    double r = StrictMath.exp(-kt);
    return capacityAh * kt * c / (1 - r + c * (kt - 1 + r));
  }
}
