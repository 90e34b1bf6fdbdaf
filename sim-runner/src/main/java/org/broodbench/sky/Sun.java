package org.broodbench.sky;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.OptionalLong;
import net.e175.klaus.solarpositioning.SPA;
import net.e175.klaus.solarpositioning.SolarPosition;

/**
 * Where the sun stands, by the algorithm of Reda and Andreas (2004, NREL/TP-560-34302; stated
 * uncertainty 0.0003 degrees from year -2000 to 6000).
 *
 * <p>The library that does the sum uses the platform's sine and cosine, which may differ in the
 * last bit between machines; so angles are rounded to 1e-6 degree before anything is built on them.
 * Times are seconds since 1970-01-01T00:00:00Z; UT1 is taken as UTC (never more than 0.9 s, 0.004
 * degrees, apart).
 */
public final class Sun {
  /**
   * Terrestrial time minus UT1, s: 69.2 is the value the IERS published for 2024. A year off by
   * decades moves the sun by less than 0.001 degree.
   */
  public static final double DELTA_T_S = 69.2;

  /**
   * Elevation of the centre at rise and set, degrees: 34 minutes of arc of refraction and 16 of
   * semidiameter, the convention of almanacs.
   */
  public static final double RISE_ELEVATION_DEG = -0.8333;

  private Sun() {}

  /**
   * Topocentric place of the sun's centre without refraction.
   *
   * @param zenithDeg 0 overhead
   * @param azimuthDeg 0 north, 90 east
   */
  public record Position(double zenithDeg, double azimuthDeg) {
    /** Height above the horizon, degrees. */
    public double elevationDeg() {
      return 90 - zenithDeg;
    }
  }

  /**
   * Place of the sun among the stars.
   *
   * @param declinationDeg apparent, of date
   * @param rightAscensionDeg apparent, of date, 0 to 360
   * @param siderealDeg apparent sidereal time at Greenwich, 0 to 360
   * @param distanceAu Earth to sun, astronomical units
   */
  public record Ephemeris(
      double declinationDeg, double rightAscensionDeg, double siderealDeg, double distanceAu) {
    /** Hour angle at this longitude, degrees, -180 to 180, 0 at transit. */
    public double hourAngleDeg(double longitudeDeg) {
      return wrap180(siderealDeg + longitudeDeg - rightAscensionDeg);
    }
  }

  /** The position at an instant, with {@link #DELTA_T_S}. */
  public static Position position(double epochS, Place place) {
    return position(epochS, place, DELTA_T_S);
  }

  /** The position at an instant with a stated terrestrial time minus UT1. */
  public static Position position(double epochS, Place place, double deltaTS) {
    SolarPosition p =
        SPA.calculateSolarPosition(
            clock(epochS), place.latitudeDeg(), place.longitudeDeg(), place.altitudeM(), deltaTS);
    return new Position(micro(p.zenithAngle()), micro(p.azimuth()));
  }

  /** Geocentric ephemeris at an instant. */
  public static Ephemeris ephemeris(double epochS, double deltaTS) {
    SPA.SpaTimeDependent t = SPA.calculateSpaTimeDependentParts(clock(epochS), deltaTS);
    return new Ephemeris(
        micro(t.deltaDegrees()), micro(t.alphaDegrees()), micro(t.nuDegrees()), t.r());
  }

  /** Apparent minus mean solar time, minutes. */
  public static double equationOfTimeMin(double epochS) {
    double utcDeg = Math.floorMod((long) Math.floor(epochS), 86400L) / 240.0;
    return 4 * wrap180(ephemeris(epochS, DELTA_T_S).hourAngleDeg(0) + 180 - utcDeg);
  }

  /**
   * By how much the air lifts the sun, degrees, for a true elevation in degrees; 0 where the upper
   * limb is below the horizon. Source: Reda and Andreas, equation 42.
   */
  public static double refractionDeg(double trueElevationDeg, double pressurePa, double airC) {
    if (trueElevationDeg < RISE_ELEVATION_DEG) {
      return 0;
    }
    double h = trueElevationDeg + 10.3 / (trueElevationDeg + 5.11);
    return pressurePa
        / 101000
        * (283 / (273 + airC))
        * 1.02
        / (60 * StrictMath.tan(StrictMath.toRadians(h)));
  }

  /**
   * Rise, transit and set that belong to one local noon.
   *
   * @param transitEpochS highest stand, to the second
   * @param riseEpochS empty where the sun does not rise in the twelve hours before
   * @param setEpochS empty where it does not set in the twelve hours after
   * @param upAtNoon false in the polar night
   */
  public record Day(
      long transitEpochS, OptionalLong riseEpochS, OptionalLong setEpochS, boolean upAtNoon) {}

  /**
   * The day whose local mean noon falls on this UTC day number shifted by the longitude: the search
   * runs outward from noon, so a western evening that lies in the next UTC day is found.
   *
   * @param epochDay days since 1970-01-01, the local date
   */
  public static Day day(long epochDay, Place place) {
    double noon = epochDay * 86400.0 + 43200.0 - place.longitudeDeg() * 240.0;
    for (int i = 0; i < 3; i++) {
      noon -= ephemeris(noon, DELTA_T_S).hourAngleDeg(place.longitudeDeg()) * 240.0;
    }
    boolean up = aboveHorizonDeg(noon, place) > 0;
    return new Day(
        Math.round(noon),
        up ? crossing(noon - 43200, noon, place) : OptionalLong.empty(),
        up ? crossing(noon + 43200, noon, place) : OptionalLong.empty(),
        up);
  }

  private static OptionalLong crossing(double midnight, double noon, Place place) {
    double dark = midnight;
    double light = noon;
    if (aboveHorizonDeg(dark, place) > 0) {
      return OptionalLong.empty();
    }
    while (Math.abs(light - dark) > 0.1) {
      double middle = 0.5 * (dark + light);
      if (aboveHorizonDeg(middle, place) > 0) {
        light = middle;
      } else {
        dark = middle;
      }
    }
    return OptionalLong.of(Math.round(0.5 * (dark + light)));
  }

  /** Geocentric elevation minus that of rise and set, degrees. */
  private static double aboveHorizonDeg(double epochS, Place place) {
    Ephemeris e = ephemeris(epochS, DELTA_T_S);
    return elevationDeg(
            place.latitudeDeg(), e.declinationDeg(), e.hourAngleDeg(place.longitudeDeg()))
        - RISE_ELEVATION_DEG;
  }

  /** Elevation from latitude, declination and hour angle, all degrees. */
  static double elevationDeg(double latitudeDeg, double declinationDeg, double hourAngleDeg) {
    double phi = StrictMath.toRadians(latitudeDeg);
    double delta = StrictMath.toRadians(declinationDeg);
    double s =
        StrictMath.sin(phi) * StrictMath.sin(delta)
            + StrictMath.cos(phi)
                * StrictMath.cos(delta)
                * StrictMath.cos(StrictMath.toRadians(hourAngleDeg));
    return StrictMath.toDegrees(StrictMath.asin(Math.max(-1, Math.min(1, s))));
  }

  private static ZonedDateTime clock(double epochS) {
    long millis = Math.round(epochS * 1000);
    return Instant.ofEpochMilli(millis).atZone(ZoneOffset.UTC);
  }

  static double wrap180(double deg) {
    double turned = (deg + 180) - 360 * Math.floor((deg + 180) / 360);
    return turned - 180;
  }

  private static double micro(double deg) {
    return Math.rint(deg * 1e6) / 1e6;
  }
}
