package org.broodbench.power;

import java.util.List;

/**
 * Modules of one kind on one plane.
 *
 * @param powerW rated power at standard test conditions, W
 * @param tiltDeg slope from the horizontal, degrees
 * @param azimuthDeg direction it faces, degrees from north eastward
 * @param coefficientPerK change of power with cell temperature, 1/K, negative
 * @param mounting how the air gets to its back
 * @param shades what shades it by the time of day
 */
public record PvGroup(
    double powerW,
    double tiltDeg,
    double azimuthDeg,
    double coefficientPerK,
    Mounting mounting,
    List<Shade> shades) {

  /** How modules are mounted. */
  public enum Mounting {
    /** On an open rack: D. Faiman, Progress in Photovoltaics 16 (2008) 307-315. */
    OPEN(25, 6.84),
    /** Flat on a lid or wall, nearly no air behind: half the loss; own choice. */
    FLUSH(15, 3);

    private final double stillWM2K;
    private final double windWSM3K;

    Mounting(double stillWM2K, double windWSM3K) {
      this.stillWM2K = stillWM2K;
      this.windWSM3K = windWSM3K;
    }

    /** Loss in still air, W/(m² K). */
    public double stillWM2K() {
      return stillWM2K;
    }

    /** Further loss by wind, W s/(m³ K). */
    public double windWSM3K() {
      return windWSM3K;
    }
  }

  /**
   * Something that takes direct light at certain hours.
   *
   * @param fromHourUtc start, 0 to 24
   * @param toHourUtc end, 0 to 24
   * @param openShare share of the direct light that still arrives, 0 to 1
   */
  public record Shade(double fromHourUtc, double toHourUtc, double openShare) {}

  /** Copies the list. */
  public PvGroup {
    shades = List.copyOf(shades);
  }

  /** Usual crystalline modules (−0.4 %/K, middle of makers' sheets) on an open, unshaded rack. */
  public PvGroup(double powerW, double tiltDeg, double azimuthDeg) {
    this(powerW, tiltDeg, azimuthDeg, -0.004, Mounting.OPEN, List.of());
  }
}
