package org.broodbench.hive;

/**
 * Exhaust fan in the upper vent.
 *
 * @param powerW electrical power, W; 0 for no fan
 * @param freeFlowM3S flow at no pressure, m³/s
 * @param shutOffPa pressure at no flow at sea level, Pa
 * @param curve shape of the curve between the two
 */
public record FanSpec(double powerW, double freeFlowM3S, double shutOffPa, Curve curve) {
  /** Shapes of fan curves. */
  public enum Curve {
    /** p₀ (1 − (Q/Q₀)²). */
    PARABOLA,
    /** p₀ (1 − Q/Q₀). */
    LINE
  }

  /** A fan with a parabola for its curve. */
  public FanSpec(double powerW, double freeFlowM3S, double shutOffPa) {
    this(powerW, freeFlowM3S, shutOffPa, Curve.PARABOLA);
  }

  /**
   * The same fan at another speed: flow goes with it, pressure with its square, power with its
   * cube. Fan laws, ASHRAE Handbook of Systems and Equipment, chapter on fans.
   */
  public FanSpec atSpeed(double ratio) {
    return new FanSpec(
        powerW * ratio * ratio * ratio, freeFlowM3S * ratio, shutOffPa * ratio * ratio, curve);
  }
}
