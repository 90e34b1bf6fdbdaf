package org.broodbench.power;

import org.broodbench.matter.Portable;

/**
 * Current against volts of one crystalline module by the single-diode equation with five
 * parameters:
 *
 * <pre>I = I_ph − I_0 (exp((V + I R_s)/a) − 1) − (V + I R_s)/R_sh</pre>
 *
 * <p>Parameters at 1000 W/m² and 25 °C: a published set of a 36-cell module of 20 W, which
 * reproduces its own nameplate (1.17 A, 22.70 V, 18.76 V, 20.07 W). At other irradiance and cell
 * temperature they are translated after W. De Soto, S. A. Klein and W. A. Beckman, Solar Energy 80
 * (2006) 78-88: a ∝ T, I_0 ∝ T³ exp(−E_g/kT), E_g 1.121 eV less 0.0002677/K, I_ph and 1/R_sh ∝
 * irradiance. I_ph grows by 0.04 %/K (from memory; it moves the peak volts by a few millivolts).
 *
 * <p>Solved for the volts across the junction x = V + I R_s, in which both current and volts are
 * explicit. Only portable arithmetic is used, so it may run inside the step. Left out: spectrum,
 * shaded cells.
 */
public final class DiodeCurve {
  private static final double PHOTO_A = 1.173;
  private static final double PHOTO_PER_K = 0.0004;
  private static final double SATURATION_A = 2.6797e-11;
  private static final double IDEALITY = 1.0036;
  private static final int CELLS = 36;
  private static final double SERIES_OHM = 1.0547;
  private static final double SHUNT_OHM = 405.962;

  /** Boltzmann's constant over the elementary charge, V/K: CODATA 2018, exact. */
  private static final double K_PER_Q = 8.617333262e-5;

  private static final double GAP_EV = 1.121;
  private static final double GAP_PER_K = -0.0002677;
  private static final double STANDARD_K = 298.15;

  /** Junction volts to a tenth of a nanovolt; Newton's method needs 4 to 6 rounds. */
  private static final double SETTLED_V = 1e-10;

  private static final int MOST_ROUNDS = 30;

  private double photoA;
  private double saturationA;
  private double a;
  private double shuntPerOhm;

  private double currentA;
  private double slopePerOhm;

  /** A curve in the dark; set the conditions first. */
  public DiodeCurve() {
    set(0, 25);
  }

  /** Conditions: irradiance, W/m², and cell temperature, °C, −80 to 120. */
  public void set(double irradianceWM2, double cellC) {
    double t = cellC + 273.15;
    double hotter = t - STANDARD_K;
    double ratio = t / STANDARD_K;
    double sun = irradianceWM2 > 0 ? irradianceWM2 * 1e-3 : 0;
    double gap = GAP_EV * (1 + GAP_PER_K * hotter);
    photoA = sun * PHOTO_A * (1 + PHOTO_PER_K * hotter);
    saturationA =
        SATURATION_A
            * ratio
            * ratio
            * ratio
            * Portable.exp((GAP_EV / STANDARD_K - gap / t) / K_PER_Q);
    a = IDEALITY * CELLS * K_PER_Q * t;
    shuntPerOhm = sun / SHUNT_OHM;
  }

  private double junctionA(double x) {
    return photoA - saturationA * (Portable.exp(x / a) - 1) - shuntPerOhm * x;
  }

  private double junctionSlope(double x) {
    return -saturationA / a * Portable.exp(x / a) - shuntPerOhm;
  }

  /** Solves for given volts; the results are {@link #currentA()} and {@link #slopePerOhm()}. */
  public void at(double volts) {
    double x = volts;
    for (int round = 0; round < MOST_ROUNDS; round++) {
      double step = (x - SERIES_OHM * junctionA(x) - volts) / (1 - SERIES_OHM * junctionSlope(x));
      x -= step;
      if (step < SETTLED_V && step > -SETTLED_V) {
        break;
      }
    }
    double i = junctionA(x);
    double slope = junctionSlope(x);
    currentA = i;
    slopePerOhm = slope / (1 - SERIES_OHM * slope);
  }

  /** Current at the volts solved for, A; negative above the open-circuit volts. */
  public double currentA() {
    return currentA;
  }

  /** Change of the current with the volts there, 1/Ω; not positive. */
  public double slopePerOhm() {
    return slopePerOhm;
  }

  /** Volts at no current, V. */
  public double openV() {
    return root(false);
  }

  /** Volts at the maximum power point, V. */
  public double peakV() {
    double x = root(true);
    return x - SERIES_OHM * junctionA(x);
  }

  /** Power at the maximum power point, W. */
  public double peakW() {
    double x = root(true);
    return junctionA(x) * (x - SERIES_OHM * junctionA(x));
  }

  /** Junction volts where the power is flat (or the current nought), by bisection. */
  private double root(boolean ofPower) {
    double low = 0;
    double high = 40;
    for (int i = 0; i < 60; i++) {
      double x = 0.5 * (low + high);
      double current = junctionA(x);
      double slope = junctionSlope(x);
      double left =
          ofPower
              ? (1 - SERIES_OHM * slope) * current + (x - SERIES_OHM * current) * slope
              : current;
      if (left > 0) {
        low = x;
      } else {
        high = x;
      }
    }
    return low;
  }
}
