package org.broodbench.sky;

/**
 * The sun by the short formulas of handbooks, for whole days and for checks; {@link Sun} is the one
 * for instants. Angles in degrees unless the name says otherwise; n is the day of the year, 1 to
 * 366. Declinations are within 1.3 degrees (Cooper, FAO) and 0.6 degrees (Spencer) of the true
 * ones.
 */
public final class Almanac {
  /** Solar constant of FAO-56, MJ/(m2 min). */
  private static final double FAO_SOLAR_CONSTANT = 0.0820;

  private Almanac() {}

  /** Declination: Cooper 1969. */
  public static double cooperDeclinationDeg(int n) {
    return 23.45 * StrictMath.sin(StrictMath.toRadians(360 * (284 + n) / 365.0));
  }

  /** Declination, radians: FAO Irrigation and Drainage Paper 56, equation 24. */
  public static double faoDeclinationRad(int n) {
    return 0.409 * StrictMath.sin(2 * StrictMath.PI * n / 365 - 1.39);
  }

  /** Equation of time, minutes: Spencer 1971. */
  public static double spencerEquationOfTimeMin(int n) {
    double g = 2 * StrictMath.PI * (n - 1) / 365;
    return 229.2
        * (0.000075
            + 0.001868 * StrictMath.cos(g)
            - 0.032077 * StrictMath.sin(g)
            - 0.014615 * StrictMath.cos(2 * g)
            - 0.04089 * StrictMath.sin(2 * g));
  }

  /** Squared ratio of mean to actual distance: FAO-56, equation 23. */
  public static double faoDistanceFactor(int n) {
    return 1 + 0.033 * StrictMath.cos(2 * StrictMath.PI * n / 365);
  }

  /** Solar time, hours, of a clock at a standard meridian; longitudes east positive. */
  public static double solarTimeH(double clockH, double meridianDeg, double longitudeDeg, int n) {
    return clockH + (4 * (longitudeDeg - meridianDeg) + spencerEquationOfTimeMin(n)) / 60;
  }

  /**
   * Hour angle at which the centre sets, without refraction: 0 in polar night, 180 in polar day.
   */
  public static double sunsetHourAngleDeg(double latitudeDeg, double declinationDeg) {
    double x =
        -StrictMath.tan(StrictMath.toRadians(latitudeDeg))
            * StrictMath.tan(StrictMath.toRadians(declinationDeg));
    return StrictMath.toDegrees(StrictMath.acos(Math.max(-1, Math.min(1, x))));
  }

  /** Time between rise and set of the centre, hours. */
  public static double dayLengthH(double latitudeDeg, double declinationDeg) {
    return sunsetHourAngleDeg(latitudeDeg, declinationDeg) / 7.5;
  }

  /** Azimuth from south, west positive. */
  public static double azimuthFromSouthDeg(
      double latitudeDeg, double declinationDeg, double hourAngleDeg) {
    double phi = StrictMath.toRadians(latitudeDeg);
    double delta = StrictMath.toRadians(declinationDeg);
    double omega = StrictMath.toRadians(hourAngleDeg);
    return StrictMath.toDegrees(
        StrictMath.atan2(
            StrictMath.cos(delta) * StrictMath.sin(omega),
            StrictMath.sin(phi) * StrictMath.cos(delta) * StrictMath.cos(omega)
                - StrictMath.cos(phi) * StrictMath.sin(delta)));
  }

  /** Extraterrestrial radiation of a day on the horizontal, MJ/m2: FAO-56, equation 21. */
  public static double faoDailyMJ(double latitudeDeg, int n) {
    double phi = StrictMath.toRadians(latitudeDeg);
    double delta = faoDeclinationRad(n);
    double ws = StrictMath.toRadians(sunsetHourAngleDeg(latitudeDeg, StrictMath.toDegrees(delta)));
    return 24
        * 60
        / StrictMath.PI
        * FAO_SOLAR_CONSTANT
        * faoDistanceFactor(n)
        * sum(ws, phi, delta);
  }

  /** The same for any solar constant and declination; both W/m2 and degrees. */
  public static double dailyMJ(double latitudeDeg, double declinationDeg, double outsideNormalWM2) {
    double ws = StrictMath.toRadians(sunsetHourAngleDeg(latitudeDeg, declinationDeg));
    return 0.0864
        / StrictMath.PI
        * outsideNormalWM2
        * sum(ws, StrictMath.toRadians(latitudeDeg), StrictMath.toRadians(declinationDeg));
  }

  private static double sum(double ws, double phi, double delta) {
    return ws * StrictMath.sin(phi) * StrictMath.sin(delta)
        + StrictMath.cos(phi) * StrictMath.cos(delta) * StrictMath.sin(ws);
  }

  /** Extraterrestrial radiation between two hour angles, MJ/m2: FAO-56, equation 28. */
  public static double faoHourlyMJ(double latitudeDeg, int n, double fromDeg, double toDeg) {
    double phi = StrictMath.toRadians(latitudeDeg);
    double delta = faoDeclinationRad(n);
    double ws = sunsetHourAngleDeg(latitudeDeg, StrictMath.toDegrees(delta));
    double a = StrictMath.toRadians(Math.max(-ws, Math.min(ws, fromDeg)));
    double b = StrictMath.toRadians(Math.max(-ws, Math.min(ws, toDeg)));
    return 12
        * 60
        / StrictMath.PI
        * FAO_SOLAR_CONSTANT
        * faoDistanceFactor(n)
        * ((b - a) * StrictMath.sin(phi) * StrictMath.sin(delta)
            + StrictMath.cos(phi)
                * StrictMath.cos(delta)
                * (StrictMath.sin(b) - StrictMath.sin(a)));
  }
}
