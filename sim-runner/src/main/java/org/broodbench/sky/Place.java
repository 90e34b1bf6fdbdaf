package org.broodbench.sky;

/**
 * A point on the ground.
 *
 * @param latitudeDeg -90 to 90, north positive
 * @param longitudeDeg -180 to 180, east positive
 * @param altitudeM above sea level, -500 to 9000
 */
public record Place(double latitudeDeg, double longitudeDeg, double altitudeM) {
  /** Refuses values out of range. */
  public Place {
    if (!(latitudeDeg >= -90 && latitudeDeg <= 90)) {
      throw new IllegalArgumentException("latitude " + latitudeDeg + " degrees is not -90 to 90");
    }
    if (!(longitudeDeg >= -180 && longitudeDeg <= 180)) {
      throw new IllegalArgumentException(
          "longitude " + longitudeDeg + " degrees is not -180 to 180");
    }
    if (!(altitudeM >= -500 && altitudeM <= 9000)) {
      throw new IllegalArgumentException("altitude " + altitudeM + " m is not -500 to 9000");
    }
  }
}
