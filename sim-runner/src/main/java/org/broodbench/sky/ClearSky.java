package org.broodbench.sky;

/** Sunlight under a sky without clouds, and what clouds leave of it. W/m2. */
public final class ClearSky {
  private ClearSky() {}

  /** Relative optical air mass for an apparent zenith angle of 0 to 90: Kasten and Young 1989. */
  public static double airMass(double apparentZenithDeg) {
    double z = Math.min(apparentZenithDeg, 90);
    return 1
        / (StrictMath.cos(StrictMath.toRadians(z))
            + 0.50572 * StrictMath.pow(96.07995 - z, -1.6364));
  }

  /** Air mass at a pressure: relative air mass times pressure over that of the sea level. */
  public static double absoluteAirMass(double airMass, double pressurePa) {
    return airMass * pressurePa / 101325;
  }

  /**
   * Direct normal: exponential attenuation with the monthly constants A (W/m2) and B of older
   * editions of the ASHRAE Handbook of Fundamentals, times its local clearness number.
   */
  public static double exponentialBeam(double a, double b, double sinElevation, double clearness) {
    return sinElevation <= 0 ? 0 : clearness * a * StrictMath.exp(-b / sinElevation);
  }

  /** Global horizontal: Haurwitz 1945, of the cosine of the apparent zenith angle. */
  public static double haurwitzGhi(double cosZenith) {
    return cosZenith <= 0 ? 0 : 1098 * cosZenith * StrictMath.exp(-0.059 / cosZenith);
  }

  /** Global horizontal: Kasten and Czeplak 1980, of the sine of the elevation. */
  public static double kastenCzeplakGhi(double sinElevation) {
    return Math.max(0, 910 * sinElevation - 30);
  }

  /** Global under cloud over global without, cover in eighths: Kasten and Czeplak 1980. */
  public static double kastenCzeplakCloudFactor(double oktas) {
    return 1 - 0.75 * StrictMath.pow(oktas / 8, 3.4);
  }

  /** Cloud cover 0 to 1 that leaves this share of the clear-sky light: the inverse of the last. */
  public static double cloudCover(double clearSkyIndex) {
    double lost = Math.max(0, Math.min(1, (1 - clearSkyIndex) / 0.75));
    return StrictMath.pow(lost, 1 / 3.4);
  }

  /**
   * Clear-sky irradiances: Ineichen and Perez 2002.
   *
   * @param cosZenith apparent
   * @param absoluteAirMass relative air mass times pressure over 101325 Pa
   * @param linkeTurbidity 2 very clean and cold, 3 usual, 5 hazy
   * @param extraterrestrialNormal W/m2
   */
  public static Components ineichen(
      double cosZenith,
      double absoluteAirMass,
      double linkeTurbidity,
      double altitudeM,
      double extraterrestrialNormal) {
    if (cosZenith <= 0) {
      return new Components(0, 0, 0);
    }
    double f1 = StrictMath.exp(-altitudeM / 8000);
    double f2 = StrictMath.exp(-altitudeM / 1250);
    double g1 = 5.09e-5 * altitudeM + 0.868;
    double g2 = 3.92e-5 * altitudeM + 0.0387;
    double tl = linkeTurbidity;
    double ghi =
        g1
            * extraterrestrialNormal
            * cosZenith
            * StrictMath.exp(-g2 * absoluteAirMass * (f1 + f2 * (tl - 1)));
    double beam =
        extraterrestrialNormal
            * (0.664 + 0.163 / f1)
            * StrictMath.exp(-0.09 * absoluteAirMass * (tl - 1));
    double bound = ghi * (1 - (0.1 - 0.2 * StrictMath.exp(-tl)) / (0.1 + 0.882 / f1)) / cosZenith;
    double dni = Math.max(0, Math.min(beam, bound));
    return new Components(ghi, dni, ghi - dni * cosZenith);
  }

  /** Global horizontal, direct normal and diffuse horizontal irradiance, W/m2. */
  public record Components(double ghi, double dni, double dhi) {}
}
