package org.broodbench.sky;

/**
 * What covers a surface, for light that falls in at an angle.
 *
 * <p>Direct light: {@link Law#LINEAR} 1 − 0.05 (1/cosθ − 1), not below 0 (A. Souka and H. Safwat,
 * Solar Energy 10 (1966) 170; ASHRAE Standard 93), or {@link Law#GLASS} reflection and absorption
 * of one pane, n 1.526, 4/m, 2 mm (W. De Soto, S. A. Klein and W. A. Beckman, Solar Energy 80
 * (2006) 78-88), both over their value at right angles. Diffuse light from sky and ground: the same
 * at the equivalent angles 59.7 − 0.1388 β + 0.001497 β² and 90 − 0.5788 β + 0.002693 β² (M. J.
 * Brandemuehl and W. A. Beckman, Solar Energy 24 (1980) 511-513, as in Duffie and Beckman's book).
 *
 * @param law how direct light is lost with the angle
 * @param snowShare share of all light that is left while snow lies, 0 to 1
 */
public record Cover(Law law, double snowShare) {
  /** Bare: every angle counts alike, snow slides off. */
  public static final Cover NONE = new Cover(Law.NONE, 1);

  /** The law of incidence. */
  public enum Law {
    /** No loss. */
    NONE,
    /** Straight in 1/cosθ. */
    LINEAR,
    /** One pane of glass. */
    GLASS
  }

  private static final double B0 = 0.05;
  private static final double N = 1.526;
  private static final double DEPTH = 4 * 0.002;

  /** Share of the direct light that gets in, over that at right angles; 0 behind the surface. */
  public double beamShare(double cosIncidence) {
    if (cosIncidence <= 0) {
      return 0;
    }
    return switch (law) {
      case NONE -> 1;
      case LINEAR -> StrictMath.max(0, 1 - B0 * (1 / cosIncidence - 1));
      case GLASS -> pane(cosIncidence) / pane(1);
    };
  }

  /** The same for the diffuse light of the sky on a plane of this tilt. */
  public double skyShare(double tiltDeg) {
    double deg = 59.7 - 0.1388 * tiltDeg + 0.001497 * tiltDeg * tiltDeg;
    return beamShare(StrictMath.cos(StrictMath.toRadians(deg)));
  }

  /** The same for light from the ground. */
  public double groundShare(double tiltDeg) {
    double deg = 90 - 0.5788 * tiltDeg + 0.002693 * tiltDeg * tiltDeg;
    return beamShare(StrictMath.cos(StrictMath.toRadians(deg)));
  }

  private static double pane(double cos) {
    double sin = StrictMath.sqrt(StrictMath.max(0, 1 - cos * cos));
    double cosIn = StrictMath.sqrt(1 - sin * sin / (N * N));
    double absorbed = StrictMath.exp(-DEPTH / cosIn);
    if (sin < 1e-6) {
      double r = (N - 1) / (N + 1);
      return absorbed * (1 - r * r);
    }
    double across = (cos - N * cosIn) / (cos + N * cosIn);
    double along = (N * cos - cosIn) / (N * cos + cosIn);
    return absorbed * (1 - 0.5 * (across * across + along * along));
  }
}
