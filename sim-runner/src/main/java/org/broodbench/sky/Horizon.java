package org.broodbench.sky;

import java.util.List;

/**
 * What stands around and hides the lower sky: hills, buildings, trees. Its height is straight in
 * azimuth between the points and closes in a ring; one point makes a ring of even height, none an
 * open field.
 *
 * @param points azimuths rising from 0 to below 360
 * @param openShare share of the light behind it that comes through, 0 to 1: 0 for a hill, about a
 *     half for bare broad-leaved trees
 */
public record Horizon(List<Point> points, double openShare) {
  /** Nothing around. */
  public static final Horizon OPEN = new Horizon(List.of(), 0);

  /** Steps of azimuth for the light of the sky; a quarter of a degree. */
  private static final int AZIMUTHS = 1440;

  /**
   * One point of the outline.
   *
   * @param azimuthDeg 0 north, 90 east, 0 to below 360
   * @param elevationDeg height over the level, 0 to 89
   */
  public record Point(double azimuthDeg, double elevationDeg) {
    /** Refuses values out of range. */
    public Point {
      if (!(azimuthDeg >= 0 && azimuthDeg < 360) || !(elevationDeg >= 0 && elevationDeg <= 89)) {
        throw new IllegalArgumentException("horizon at " + azimuthDeg + ": " + elevationDeg);
      }
    }
  }

  /** Refuses points that do not rise in azimuth. */
  public Horizon {
    points = List.copyOf(points);
    for (int i = 1; i < points.size(); i++) {
      if (points.get(i).azimuthDeg() <= points.get(i - 1).azimuthDeg()) {
        throw new IllegalArgumentException("azimuths of the horizon do not rise");
      }
    }
    if (!(openShare >= 0 && openShare <= 1)) {
      throw new IllegalArgumentException("open share " + openShare + " is not 0 to 1");
    }
  }

  /** Height over the level in a direction, degrees; any turn is accepted. */
  public double elevationDeg(double azimuthDeg) {
    int n = points.size();
    if (n == 0) {
      return 0;
    }
    double a = azimuthDeg - 360 * StrictMath.floor(azimuthDeg / 360);
    int after = 0;
    while (after < n && points.get(after).azimuthDeg() <= a) {
      after++;
    }
    Point p = points.get((after + n - 1) % n);
    Point q = points.get(after % n);
    double span = q.azimuthDeg() - p.azimuthDeg();
    span = span <= 0 ? span + 360 : span;
    double into = a - p.azimuthDeg();
    into = into < 0 ? into + 360 : into;
    return p.elevationDeg() + into / span * (q.elevationDeg() - p.elevationDeg());
  }

  /** Share of the direct light that arrives with the sun's centre at a true elevation, 0 to 1. */
  public double beamShare(double sunElevationDeg, double sunAzimuthDeg) {
    return points.isEmpty() || sunElevationDeg >= elevationDeg(sunAzimuthDeg) ? 1 : openShare;
  }

  /**
   * Light of an evenly bright sky on a plane over that on open level ground: the integral of the
   * cosine of incidence over the visible sky, divided by π. Exact in elevation, summed over
   * azimuths. Open field: (1 + cos tilt)/2.
   */
  public double skyShare(double tiltDeg, double planeAzimuthDeg) {
    double tilt = StrictMath.toRadians(tiltDeg);
    double open = 0;
    double seen = 0;
    for (int i = 0; i < AZIMUTHS; i++) {
      double azimuthDeg = (i + 0.5) * 360 / AZIMUTHS;
      double up = StrictMath.cos(tilt);
      double along =
          StrictMath.sin(tilt) * StrictMath.cos(StrictMath.toRadians(azimuthDeg - planeAzimuthDeg));
      open += strip(up, along, 0);
      seen += strip(up, along, StrictMath.toRadians(elevationDeg(azimuthDeg)));
    }
    double perStrip = 2 * StrictMath.PI / AZIMUTHS / StrictMath.PI;
    return perStrip * (seen + openShare * (open - seen));
  }

  /** Integral over elevation of the positive part of (up sin e + along cos e) cos e. */
  private static double strip(double up, double along, double from) {
    double low = from;
    double high = StrictMath.PI / 2;
    double turn = StrictMath.atan2(-along, up); // the cosine of incidence changes its sign here
    if (turn > 0 && turn < high) {
      low = StrictMath.max(low, turn);
    } else if (turn < 0 && turn + StrictMath.PI < high) {
      high = turn + StrictMath.PI;
    } else if (up * StrictMath.sin(0.7) + along * StrictMath.cos(0.7) < 0) {
      return 0;
    }
    return high > low ? primitive(up, along, high) - primitive(up, along, low) : 0;
  }

  private static double primitive(double up, double along, double e) {
    double s = StrictMath.sin(e);
    return 0.5 * up * s * s + along * (0.5 * e + 0.25 * StrictMath.sin(2 * e));
  }
}
