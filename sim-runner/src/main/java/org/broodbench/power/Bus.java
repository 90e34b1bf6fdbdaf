package org.broodbench.power;

/**
 * The common bus: battery behind its resistance, loads of constant power, current and resistance,
 * sources of constant power and of a current that falls straight with the volts, and a charge
 * control that holds volts and current of the battery below limits. Solved in closed form: V = OCV
 * − I R gives a quadratic in V. Source: Ohm's and Kirchhoff's laws.
 */
public final class Bus {
  /** Loads of constant power, W. */
  public double constantW;

  /** Loads of constant resistance, as conductance, 1/Ω. */
  public double conductance;

  /** Loads of constant current, A. */
  public double loadA;

  /** Most power of sources that deliver power, W. */
  public double sourceW;

  /** Most current of sources that deliver current, A, at no volts. */
  public double sourceA;

  /** How fast that current falls with the volts, 1/Ω, not negative. */
  public double sourceFallPerOhm;

  /** Open-circuit volts of the battery, V. */
  public double ocvV;

  /** Resistance between the battery's inside and the bus, Ω. */
  public double ohm;

  /** The same while the battery is charged, Ω; 0: no other than {@link #ohm}. */
  public double chargeOhm;

  /** Volts that charging must not pass, V. */
  public double highestV;

  /** Charge current that must not be passed, A, not negative. */
  public double highestChargeA;

  private double volts;
  private double batteryA;
  private double usedShare;
  private boolean brownOut;

  /** Solves for volts, battery current and the share of the sources that is used. */
  public void solve() {
    double surplusW =
        sourceW - constantW + ocvV * (sourceA - loadA - (sourceFallPerOhm + conductance) * ocvV);
    double ohm = surplusW > 0 && chargeOhm > 0 ? chargeOhm : this.ohm;
    double a = 1 + ohm * (conductance + sourceFallPerOhm);
    double e = ocvV + ohm * (sourceA - loadA);
    double root = e * e - 4 * a * ohm * (constantW - sourceW);
    brownOut = root < 0;
    if (brownOut) {
      volts = 0;
      batteryA = 0;
      usedShare = 0;
      return;
    }
    volts = (e + Math.sqrt(root)) / (2 * a);
    double cap = ocvV + ohm * highestChargeA;
    cap = cap < highestV ? cap : highestV;
    cap = cap > ocvV ? cap : ocvV;
    usedShare = 1;
    if (volts > cap) {
      volts = cap;
      double neededW = constantW + volts * (loadA + conductance * volts + (volts - ocvV) / ohm);
      double offeredW = sourceW + volts * (sourceA - sourceFallPerOhm * volts);
      usedShare = neededW / offeredW;
    }
    batteryA = (ocvV - volts) / ohm;
  }

  /** Volts at the bus, V. */
  public double volts() {
    return volts;
  }

  /** Battery current, A, discharge positive. */
  public double batteryA() {
    return batteryA;
  }

  /** Share of what the sources offer that is taken, 0 to 1. */
  public double usedShare() {
    return usedShare;
  }

  /** Whether no volts satisfy the loads. */
  public boolean brownOut() {
    return brownOut;
  }

  /**
   * Current of a load of constant power behind a resistance, A: (V − √(V² − 4 R P))/(2 R); NaN
   * where none exists.
   */
  public static double constantPowerA(double ocvV, double ohm, double powerW) {
    return (ocvV - Math.sqrt(ocvV * ocvV - 4 * ohm * powerW)) / (2 * ohm);
  }
}
