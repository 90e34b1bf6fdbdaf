package org.broodbench.hive;

/**
 * Fan curve against the resistance of openings.
 *
 * <p>Sources: fan laws and system curve, ASHRAE Handbook of Systems and Equipment, chapter on fans;
 * orifice equation Δp = ρ/2 (Q/(C_d A))², any text on fluid mechanics. A parabolic fan curve p = p₀
 * (1 − (Q/Q₀)²) is taken for small axial fans (own choice).
 */
public final class Fan {
  private Fan() {}

  /** Resistance of an opening, Pa s²/m⁶: ρ/(2 C_d² A²). */
  public static double orificeResistance(
      double densityKgM3, double dischargeCoefficient, double areaM2) {
    double effectiveM2 = dischargeCoefficient * areaM2;
    return densityKgM3 / (2 * effectiveM2 * effectiveM2);
  }

  /** Flow where a parabolic fan curve meets Δp = K Q², m³/s. */
  public static double operatingM3S(double shutOffPa, double freeFlowM3S, double resistance) {
    return StrictMath.sqrt(shutOffPa / (resistance + shutOffPa / (freeFlowM3S * freeFlowM3S)));
  }
}
