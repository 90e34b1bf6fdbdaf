package org.broodbench.hive;

/**
 * Pressure of the wind on the walls of a low building, averaged over the face.
 *
 * <p>Source: M. V. Swami and S. Chandra, "Correlations for pressure distribution on buildings",
 * ASHRAE Transactions 94 (1988) 243-266. Made for houses; a hive stands in slower and rougher wind.
 */
public final class WindPressure {
  /** Coefficient of a face that the wind meets at right angles. */
  private static final double FRONTAL = 0.6;

  private WindPressure() {}

  /**
   * Pressure coefficient of a wall.
   *
   * @param incidenceDeg angle between the wind and the outward normal of the wall, 0 windward
   * @param sideRatio length of this wall over that of its neighbour
   */
  public static double coefficient(double incidenceDeg, double sideRatio) {
    double a = StrictMath.toRadians(incidenceDeg);
    double g = StrictMath.log(sideRatio);
    double sin = StrictMath.sin(a);
    double sinHalf = StrictMath.sin(a / 2);
    double cosHalf = StrictMath.cos(a / 2);
    double turned = StrictMath.sin(2 * a * g);
    return FRONTAL
        * StrictMath.log(
            1.248
                - 0.703 * sinHalf
                - 1.175 * sin * sin
                + 0.131 * turned * turned * turned
                + 0.769 * cosHalf
                + 0.07 * g * g * sinHalf * sinHalf
                + 0.717 * cosHalf * cosHalf);
  }

  /** Velocity pressure, Pa: ρ/2 U². */
  public static double velocityPressurePa(double densityKgM3, double windMS) {
    return 0.5 * densityKgM3 * windMS * windMS;
  }
}
