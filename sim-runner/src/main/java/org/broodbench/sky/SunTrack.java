package org.broodbench.sky;

/**
 * The sun over one place through one stretch of time, for many instants: the ephemeris is computed
 * once an hour and taken as straight in between (the declination bends by less than 2e-6 degree in
 * an hour); the parallax of at most 8.8 seconds of arc is added in elevation. Agrees with {@link
 * Sun#position} within 2e-5 degree in elevation.
 */
final class SunTrack {
  private static final double KNOT_S = 3600;

  private final long fromEpochS;
  private final double longitudeDeg;
  private final double sinLatitude;
  private final double cosLatitude;
  private final double[] declinationRad;
  private final double[] hourAngleDeg;
  private final double[] distanceAu;

  private double east;
  private double north;
  private double up;

  SunTrack(Place place, long fromEpochS, long toEpochS) {
    this.fromEpochS = fromEpochS;
    longitudeDeg = place.longitudeDeg();
    double phi = StrictMath.toRadians(place.latitudeDeg());
    sinLatitude = StrictMath.sin(phi);
    cosLatitude = StrictMath.cos(phi);
    int n = (int) ((toEpochS - fromEpochS) / (long) KNOT_S) + 2;
    declinationRad = new double[n];
    hourAngleDeg = new double[n];
    distanceAu = new double[n];
    for (int i = 0; i < n; i++) {
      Sun.Ephemeris e = Sun.ephemeris(fromEpochS + i * KNOT_S, Sun.DELTA_T_S);
      declinationRad[i] = StrictMath.toRadians(e.declinationDeg());
      distanceAu[i] = Math.rint(e.distanceAu() * 1e9) / 1e9;
      double h = e.hourAngleDeg(longitudeDeg);
      // unrolled, so that it can be interpolated across midnight
      while (i > 0 && h < hourAngleDeg[i - 1]) {
        h += 360;
      }
      hourAngleDeg[i] = h;
    }
  }

  /** Moves to an instant; the getters then speak of it. */
  void at(double epochS) {
    double x = (epochS - fromEpochS) / KNOT_S;
    int i = Math.max(0, Math.min(declinationRad.length - 2, (int) x));
    double f = x - i;
    double delta = declinationRad[i] + f * (declinationRad[i + 1] - declinationRad[i]);
    double omega =
        StrictMath.toRadians(hourAngleDeg[i] + f * (hourAngleDeg[i + 1] - hourAngleDeg[i]));
    double sinDelta = StrictMath.sin(delta);
    double cosDelta = StrictMath.cos(delta);
    double cosOmega = StrictMath.cos(omega);
    double s = sinLatitude * sinDelta + cosLatitude * cosDelta * cosOmega;
    // 8.794 seconds of arc of horizontal parallax, Reda and Andreas equation 33
    double parallax = StrictMath.toRadians(8.794 / 3600) / distanceAu[i];
    up = s - parallax * (1 - s * s);
    // what the upward part loses, the level part gains
    double gain = 1 + parallax * s;
    east = -gain * cosDelta * StrictMath.sin(omega);
    north = gain * (cosLatitude * sinDelta - sinLatitude * cosDelta * cosOmega);
  }

  /** Eastward part of the unit vector to the sun. */
  double east() {
    return east;
  }

  /** Northward part. */
  double north() {
    return north;
  }

  /** Upward part: sine of the true elevation, cosine of the zenith angle. */
  double up() {
    return up;
  }

  /** True elevation, degrees. */
  double elevationDeg() {
    return StrictMath.toDegrees(StrictMath.asin(Math.max(-1, Math.min(1, up))));
  }

  /** From north, eastward, 0 to 360. */
  double azimuthDeg() {
    double deg = StrictMath.toDegrees(StrictMath.atan2(east, north));
    return deg < 0 ? deg + 360 : deg;
  }

  /** Extraterrestrial irradiance on a plane that faces the sun, W/m2. */
  double extraterrestrialNormalWM2(double epochS) {
    int i = Math.max(0, Math.min(distanceAu.length - 1, (int) ((epochS - fromEpochS) / KNOT_S)));
    return Irradiance.SOLAR_CONSTANT_W_M2 / (distanceAu[i] * distanceAu[i]);
  }
}
