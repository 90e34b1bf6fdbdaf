package org.broodbench.hive;

import org.broodbench.matter.Portable;

/**
 * Flows through the openings of a hive and between its boxes.
 *
 * <p>Sources: buoyant flow through openings at a height difference and its neutral level, discharge
 * coefficient of two-way flow, wind-driven flow and addition in quadrature: ASHRAE Handbook of
 * Fundamentals, chapter on ventilation and infiltration. Two-way exchange through one upright
 * opening: W. G. Brown and K. R. Solvason, Int. J. Heat Mass Transfer 5 (1962) 859-868. Volumes are
 * those of the colder, denser air.
 */
public final class AirFlow {
  /** Standard acceleration of free fall, m/s² (ISO 80000-3). */
  public static final double GRAVITY_M_S2 = 9.80665;

  /**
   * Temperature differences below about this size are rounded off, K; own choice, far below what a
   * probe resolves.
   */
  static final double ROUNDING_K = 0.005;

  /** Flow through over exchange from which an opening is passed one way only, 2√2. */
  private static final double TURNED = 2 * Math.sqrt(2);

  /** Far below any flow, so that nothing is divided by nothing, m³/s. */
  private static final double LEAST_M3S = 1e-9;

  private AirFlow() {}

  /** Area of two openings in series: 1/A² = 1/A₁² + 1/A₂². */
  public static double seriesAreaM2(double area1M2, double area2M2) {
    return area1M2 * area2M2 / Math.sqrt(area1M2 * area1M2 + area2M2 * area2M2);
  }

  /** Height of the neutral level above the lower opening, m: H/(1+(A_low/A_high)² T_in/T_out). */
  public static double neutralLevelM(
      double lowM2, double highM2, double heightM, double insideC, double outsideC) {
    double ratio = lowM2 / highM2;
    return heightM / (1 + ratio * ratio * (insideC + 273.15) / (outsideC + 273.15));
  }

  /**
   * Buoyant flow through an opening at a distance from the neutral level: C_d A √(2 g h ΔT/T_in);
   * negative where inside is colder.
   *
   * @return m³/s of outdoor air, positive upwards
   */
  public static double stackM3S(
      double dischargeCoefficient, double areaM2, double heightM, double insideC, double outsideC) {
    double differenceK = insideC - outsideC;
    double warmerK = (differenceK > 0 ? insideC : outsideC) + 273.15;
    return dischargeCoefficient
        * areaM2
        * Math.sqrt(2 * GRAVITY_M_S2 * heightM / warmerK)
        * Portable.signedRoot(differenceK, ROUNDING_K);
  }

  /** Buoyant flow through a lower and an upper opening, m³/s of outdoor air, positive upwards. */
  public static double twoOpeningsM3S(
      double dischargeCoefficient,
      double lowM2,
      double highM2,
      double heightM,
      double insideC,
      double outsideC) {
    double lowHeightM = neutralLevelM(lowM2, highM2, heightM, insideC, outsideC);
    return stackM3S(dischargeCoefficient, lowM2, lowHeightM, insideC, outsideC);
  }

  /** Discharge coefficient of a single opening with two-way flow: 0.40 + 0.0045 |ΔT|. */
  public static double twoWayDischarge(double insideC, double outsideC) {
    double differenceK = insideC - outsideC;
    return 0.40 + 0.0045 * (differenceK < 0 ? -differenceK : differenceK);
  }

  /**
   * Exchange through one upright opening: (C_d/3) A √(g h ΔT/T), m³/s each way, never negative. T
   * is the mean.
   */
  public static double exchangeM3S(
      double dischargeCoefficient, double areaM2, double heightM, double insideC, double outsideC) {
    double differenceK = insideC - outsideC;
    double meanK = 0.5 * (insideC + outsideC) + 273.15;
    double root = Portable.signedRoot(differenceK, ROUNDING_K);
    return dischargeCoefficient
        / 3
        * areaM2
        * Math.sqrt(GRAVITY_M_S2 * heightM / meanK)
        * (root < 0 ? -root : root);
  }

  /**
   * What is left of a two-way exchange where air also goes through on balance: the neutral level of
   * an upright opening moves to its edge, and from 2√2 times the exchange on all of it flows one
   * way. (1 − x)^1.5 stands within 3 % of the whole exchange for the closed solution x = s^1.5 −
   * (1−s)^1.5, c = 2√2 (1−s)^1.5 over the height s of the neutral level.
   */
  public static double counterM3S(double exchangeM3S, double throughM3S) {
    double through = throughM3S < 0 ? -throughM3S : throughM3S;
    double x = through / (TURNED * exchangeM3S + LEAST_M3S);
    double left = Portable.positivePart(1 - x, 0.02);
    return exchangeM3S * left * Math.sqrt(left);
  }

  /** Wind-driven flow through an opening, m³/s. */
  public static double windM3S(double effectiveness, double areaM2, double windMS) {
    return effectiveness * areaM2 * windMS;
  }

  /** Flows of independent causes add in quadrature, m³/s. */
  public static double inQuadratureM3S(double aM3S, double bM3S) {
    return Math.sqrt(aM3S * aM3S + bM3S * bM3S);
  }
}
