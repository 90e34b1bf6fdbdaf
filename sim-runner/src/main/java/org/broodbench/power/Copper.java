package org.broodbench.power;

/**
 * Resistance of copper wire.
 *
 * <p>Sources: ASTM B258 for the diameters of the American wire gauge; 100 % IACS copper, 17.241 Ω
 * mm²/km at 20 °C, IEC 60028; temperature coefficient 0.00393/K, IEC 60028.
 */
public final class Copper {
  /** Resistivity at 20 °C, Ω mm²/m. */
  public static final double OHM_MM2_PER_M = 0.017241;

  private Copper() {}

  /** Diameter of a gauge number, mm: 0.127 · 92^((36−n)/39). */
  public static double gaugeDiameterMm(double gauge) {
    return 0.127 * StrictMath.pow(92, (36 - gauge) / 39);
  }

  /** Cross-section of a gauge number, mm². */
  public static double gaugeMm2(double gauge) {
    double d = gaugeDiameterMm(gauge);
    return StrictMath.PI * d * d / 4;
  }

  /** Resistance of a solid wire at 20 °C, Ω/km. */
  public static double ohmPerKm(double mm2) {
    return 1000 * OHM_MM2_PER_M / mm2;
  }

  /** Resistance of both wires of a cable, Ω. */
  public static double loopOhm(double oneWayM, double mm2, double temperatureC) {
    return 2 * oneWayM * OHM_MM2_PER_M / mm2 * (1 + 0.00393 * (temperatureC - 20));
  }
}
