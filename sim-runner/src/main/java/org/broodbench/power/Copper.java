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

  private static final double[] USUAL_MM2 = {
    0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120
  };

  private Copper() {}

  /**
   * Current that a two-wire cable carries for good, A: 15 A^0.62, within 4 % of the table of IEC
   * 60364-5-52 for cables with PVC on a wall at 30 °C (method C; 1.5 mm² 19.5 A, 25 mm² 112 A, from
   * memory).
   */
  public static double carriesA(double mm2) {
    return 15 * StrictMath.pow(mm2, 0.62);
  }

  /** The least usual cross-section that carries a current, mm²; 120 where none does. */
  public static double sizeForMm2(double currentA) {
    for (double mm2 : USUAL_MM2) {
      if (carriesA(mm2) >= currentA) {
        return mm2;
      }
    }
    return USUAL_MM2[USUAL_MM2.length - 1];
  }

  /** The least usual cross-section that is not smaller, mm²; 120 where none is. */
  public static double usualMm2(double leastMm2) {
    for (double mm2 : USUAL_MM2) {
      if (mm2 >= leastMm2) {
        return mm2;
      }
    }
    return USUAL_MM2[USUAL_MM2.length - 1];
  }

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
