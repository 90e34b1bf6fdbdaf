package org.broodbench.sky;

/**
 * A flat surface that faces the sky.
 *
 * @param tiltDeg 0 lies flat, 90 stands upright, up to 180 (faces the ground)
 * @param azimuthDeg where it looks: 0 north, 90 east, 180 south; any turn is accepted
 * @param obstacles what keeps light from it
 * @param cover what covers it
 */
public record Plane(double tiltDeg, double azimuthDeg, Obstacles obstacles, Cover cover) {
  /** A bare surface in an open field. */
  public Plane(double tiltDeg, double azimuthDeg) {
    this(tiltDeg, azimuthDeg, Obstacles.NONE, Cover.NONE);
  }

  /** Refuses a tilt out of range and an azimuth that is not a number. */
  public Plane {
    if (!(tiltDeg >= 0 && tiltDeg <= 180)) {
      throw new IllegalArgumentException("tilt " + tiltDeg + " degrees is not 0 to 180");
    }
    if (!Double.isFinite(azimuthDeg)) {
      throw new IllegalArgumentException("azimuth " + azimuthDeg + " is not a number");
    }
  }
}
