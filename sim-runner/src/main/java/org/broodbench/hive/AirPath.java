package org.broodbench.hive;

import org.broodbench.matter.MoistAir;
import org.broodbench.matter.Portable;

/**
 * The way of the air through a stack of boxes, from the entrance below up to the vent or fan above:
 * one flow, driven by the sum of all pressures against the sum of all resistances,
 *
 * <pre>  Q |Q| D/2 = B + W + F,     B = g Σ hᵢ (Tᵢ−Tₒ)/Tᵢ,     W = ΔC_p U²/2,</pre>
 *
 * <p>all per density of the outside air (m²/s²); Q m³/s of outside air, D the sum of 1/(C_d A)²
 * (1/m⁴) of entrance, gaps, separators and vent, each times T/Tₒ of the air that passes it. Without
 * wind and fan this is the two-opening formula of the ASHRAE Handbook of Fundamentals with its
 * neutral level; pressures add, so independent flows add in quadrature. F is the fan's curve, p₀ (1
 * − (Q/Q₀)²) or p₀ (1 − Q/Q₀), which includes the opening that the fan sits in.
 *
 * <p>Resistances are placed as for a flow upwards; where air flows down, entrance and vent change
 * roles, which is left out (some percent at 20 K).
 */
final class AirPath {
  /**
   * Pressure below which a flow is rounded off to a line, m²/s²: a wind of a centimetre a second.
   */
  private static final double ROUNDING_M2_S2 = 1e-4;

  /** Density at which makers rate fans, kg/m³: dry air of 20 °C at sea level. */
  private static final double RATED_KG_M3 = 1.204;

  private final double[] heightM;
  private final double[] dragBetween;
  private final double windCoefficient;
  private double entranceDrag;
  private final double fanM2S2;
  private final double fanLine;
  private final double fanDrag;
  private double ventDrag;

  private double throughM3S;

  /**
   * A way of air.
   *
   * @param heightM inside heights of the boxes from below
   * @param dragBetween 1/(C_d A)² between each box and the one below it, the first unused
   * @param entranceM2 C_d A of the entrance; 0 shuts the way
   * @param windCoefficient ΔC_p of the wind between entrance and vent
   * @param fan the fan
   */
  AirPath(
      double[] heightM,
      double[] dragBetween,
      double entranceM2,
      double windCoefficient,
      FanSpec fan) {
    this.heightM = heightM;
    this.dragBetween = dragBetween;
    this.windCoefficient = windCoefficient;
    entranceDrag = drag(entranceM2);
    boolean turns = fan.freeFlowM3S() > 0 && fan.shutOffPa() > 0;
    boolean line = fan.curve() == FanSpec.Curve.LINE;
    // pressure goes with density, so per density it is that of the rating
    fanM2S2 = turns ? fan.shutOffPa() / RATED_KG_M3 : 0;
    fanLine = turns && line ? fanM2S2 / fan.freeFlowM3S() : 0;
    fanDrag = turns && !line ? 2 * fanM2S2 / (fan.freeFlowM3S() * fan.freeFlowM3S()) : 0;
  }

  /** 1/(C_d A)²; of nothing, so much that no air passes. */
  private static double drag(double effectiveM2) {
    return effectiveM2 > 0 ? 1 / (effectiveM2 * effectiveM2) : Double.POSITIVE_INFINITY;
  }

  /** Sets C_d A of the vent, m²; 0 for none. */
  void setVent(double effectiveM2) {
    ventDrag = drag(effectiveM2);
  }

  /** Sets C_d A of the entrance, m²; 0 shuts the way. */
  void setEntrance(double effectiveM2) {
    entranceDrag = drag(effectiveM2);
  }

  /** C_d A of vent and entrance go over from another way. */
  void takeOpeningsFrom(AirPath other) {
    ventDrag = other.ventDrag;
    entranceDrag = other.entranceDrag;
  }

  /**
   * Sets the flow.
   *
   * @param heatC temperatures of all heat nodes, °C
   * @param air nodes of the air of the boxes
   */
  void evaluate(double[] heatC, int[] air, double outsideC, double windMS, boolean fanOn) {
    double outsideK = outsideC + MoistAir.ZERO_C_IN_K;
    double perOutsideK = 1 / outsideK;
    double driveM2S2 = 0.5 * windCoefficient * windMS * windMS;
    double drag = entranceDrag;
    double ratio = 1;
    for (int i = 0; i < heightM.length; i++) {
      double differenceK = heatC[air[i]] - outsideC;
      ratio = 1 + differenceK * perOutsideK;
      driveM2S2 += AirFlow.GRAVITY_M_S2 * heightM[i] * differenceK * perOutsideK / ratio;
      if (i > 0) {
        drag += dragBetween[i] * ratio;
      }
    }
    if (fanOn && fanM2S2 > 0) {
      throughM3S = against(driveM2S2 + fanM2S2, drag + fanDrag);
    } else {
      throughM3S = rootOf(2 * driveM2S2, drag + ventDrag * ratio);
    }
  }

  private static double rootOf(double doublePressure, double drag) {
    return Portable.signedRoot(doublePressure, ROUNDING_M2_S2) / Math.sqrt(drag);
  }

  /** Where D/2 Q² + line Q meets a pressure. */
  private double against(double pressureM2S2, double drag) {
    double p = Portable.positivePart(pressureM2S2, ROUNDING_M2_S2);
    double root = Math.sqrt(fanLine * fanLine + 2 * drag * p);
    return 2 * p / (fanLine + root);
  }

  /** Air that goes through, m³/s of outside air, positive upwards. */
  double throughM3S() {
    return throughM3S;
  }
}
