package org.broodbench.sky;

/**
 * From horizontal and direct irradiance to a tilted plane. W/m2 and degrees; azimuths from north,
 * eastward.
 */
public final class Transposition {
  private static final double[][] PEREZ = {
    {1.000, -0.008, 0.588, -0.062, -0.060, 0.072, -0.022},
    {1.065, 0.130, 0.683, -0.151, -0.019, 0.066, -0.029},
    {1.230, 0.330, 0.487, -0.221, 0.055, -0.064, -0.026},
    {1.500, 0.568, 0.187, -0.295, 0.109, -0.152, -0.014},
    {1.950, 0.873, -0.392, -0.362, 0.226, -0.462, 0.001},
    {2.800, 1.132, -1.237, -0.412, 0.288, -0.823, 0.056},
    {4.500, 1.060, -1.600, -0.359, 0.264, -1.127, 0.131},
    {6.200, 0.678, -0.327, -0.250, 0.156, -1.377, 0.251}
  };

  private Transposition() {}

  /** How diffuse light is spread over the sky. */
  public enum Model {
    /** The same from everywhere: Liu and Jordan 1963. */
    ISOTROPIC,
    /** A share comes from the sun's direction: Hay and Davies 1980. */
    HAY_DAVIES
  }

  /** Cosine of the angle between the sun and the normal of the plane; negative behind it. */
  public static double cosIncidence(
      double zenithDeg, double sunAzimuthDeg, double tiltDeg, double planeAzimuthDeg) {
    double z = StrictMath.toRadians(zenithDeg);
    double b = StrictMath.toRadians(tiltDeg);
    return StrictMath.cos(z) * StrictMath.cos(b)
        + StrictMath.sin(z)
            * StrictMath.sin(b)
            * StrictMath.cos(StrictMath.toRadians(sunAzimuthDeg - planeAzimuthDeg));
  }

  /** Light that the ground throws on the plane: isotropic, albedo 0 to 1. */
  public static double groundWM2(double ghi, double albedo, double tiltDeg) {
    return ghi * albedo * 0.5 * (1 - StrictMath.cos(StrictMath.toRadians(tiltDeg)));
  }

  /** Diffuse sky light on the plane, the same from everywhere: Liu and Jordan 1963. */
  public static double isotropicWM2(double dhi, double tiltDeg) {
    return dhi * 0.5 * (1 + StrictMath.cos(StrictMath.toRadians(tiltDeg)));
  }

  /**
   * Diffuse sky light: Hay and Davies 1980.
   *
   * @param cosIncidence of the plane, negative behind it
   * @param cosZenith kept at or above 0.01745, 1 degree above the horizon
   * @param extraterrestrialNormal W/m2
   */
  public static double hayDaviesWM2(
      double dhi,
      double dni,
      double extraterrestrialNormal,
      double cosIncidence,
      double cosZenith,
      double tiltDeg) {
    double a = dni / extraterrestrialNormal;
    double rb = Math.max(0, cosIncidence) / Math.max(cosZenith, 0.01745);
    return dhi * a * rb + (1 - a) * isotropicWM2(dhi, tiltDeg);
  }

  /** As {@link #hayDaviesWM2} with a brighter horizon: Reindl, Beckman and Duffie 1990. */
  public static double reindlWM2(
      double dhi,
      double dni,
      double ghi,
      double extraterrestrialNormal,
      double cosIncidence,
      double cosZenith,
      double tiltDeg) {
    double a = dni / extraterrestrialNormal;
    double rb = Math.max(0, cosIncidence) / Math.max(cosZenith, 0.01745);
    double s = StrictMath.sin(StrictMath.toRadians(0.5 * tiltDeg));
    double f = ghi > 0 ? StrictMath.sqrt(Math.max(0, dni * cosZenith / ghi)) : 0;
    return dhi * a * rb + (1 - a) * isotropicWM2(dhi, tiltDeg) * (1 + f * s * s * s);
  }

  /**
   * Diffuse sky light: Perez, Ineichen, Seals, Michalsky and Stewart 1990, coefficients of the
   * composite of all sites.
   *
   * @param airMass relative, see {@link ClearSky#airMass}
   */
  public static double perezWM2(
      double dhi,
      double dni,
      double extraterrestrialNormal,
      double cosIncidence,
      double zenithDeg,
      double airMass,
      double tiltDeg) {
    if (dhi <= 0) {
      return 0;
    }
    double z = StrictMath.toRadians(zenithDeg);
    double cubic = 1.041 * z * z * z;
    double clearness = ((dhi + dni) / dhi + cubic) / (1 + cubic);
    double brightness = dhi * airMass / extraterrestrialNormal;
    double[] c = PEREZ[0];
    for (double[] row : PEREZ) {
      if (clearness >= row[0]) {
        c = row;
      }
    }
    double f1 = Math.max(0, c[1] + c[2] * brightness + c[3] * z);
    double f2 = c[4] + c[5] * brightness + c[6] * z;
    double a = Math.max(0, cosIncidence);
    double b = Math.max(StrictMath.cos(StrictMath.toRadians(85)), StrictMath.cos(z));
    return (1 - f1) * isotropicWM2(dhi, tiltDeg)
        + dhi * (f1 * a / b + f2 * StrictMath.sin(StrictMath.toRadians(tiltDeg)));
  }
}
