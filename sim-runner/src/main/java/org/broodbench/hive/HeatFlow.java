package org.broodbench.hive;

/**
 * Direction in which heat goes through a horizontal or upright part, with its inside surface
 * resistance (ISO 6946:2017, table 7) and the convective coefficient behind it (annex C).
 */
public enum HeatFlow {
  /** Through a lid. */
  UP(0.10, 5.0),
  /** Through a wall. */
  SIDEWAYS(0.13, 2.5),
  /** Through a floor. */
  DOWN(0.17, 0.7);

  private final double surfaceM2KW;
  private final double convectionWM2K;

  HeatFlow(double surfaceM2KW, double convectionWM2K) {
    this.surfaceM2KW = surfaceM2KW;
    this.convectionWM2K = convectionWM2K;
  }

  /** Inside surface resistance, m²K/W. */
  public double surfaceM2KW() {
    return surfaceM2KW;
  }

  /** Convective coefficient, W/(m²K). */
  public double convectionWM2K() {
    return convectionWM2K;
  }
}
