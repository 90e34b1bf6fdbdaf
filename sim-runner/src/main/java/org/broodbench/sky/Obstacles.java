package org.broodbench.sky;

import java.util.List;

/**
 * What keeps light from a plane: the horizon, and things that shade it at hours of the day.
 *
 * @param horizon what stands around
 * @param shades shading by the time of day; it takes direct light only
 */
public record Obstacles(Horizon horizon, List<HourShade> shades) {
  /** Nothing in the way. */
  public static final Obstacles NONE = new Obstacles(Horizon.OPEN, List.of());

  /**
   * Something that shades at certain hours.
   *
   * @param fromHourUtc start, 0 to 24
   * @param toHourUtc end, 0 to 24; before the start: it goes on over midnight
   * @param openShare share of the direct light that still arrives, 0 to 1
   */
  public record HourShade(double fromHourUtc, double toHourUtc, double openShare) {
    boolean at(double hour) {
      return fromHourUtc <= toHourUtc
          ? hour >= fromHourUtc && hour < toHourUtc
          : hour >= fromHourUtc || hour < toHourUtc;
    }
  }

  /** Copies the list. */
  public Obstacles {
    shades = List.copyOf(shades);
  }

  /** Whether nothing is in the way. */
  boolean none() {
    return horizon.points().isEmpty() && shades.isEmpty();
  }

  /** Share of the direct light that arrives, 0 to 1. */
  double beamShare(double sunElevationDeg, double sunAzimuthDeg, double hourUtc) {
    double share = horizon.beamShare(sunElevationDeg, sunAzimuthDeg);
    for (HourShade s : shades) {
      if (s.at(hourUtc)) {
        share *= s.openShare();
      }
    }
    return share;
  }
}
