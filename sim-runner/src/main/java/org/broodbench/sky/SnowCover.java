package org.broodbench.sky;

/**
 * A store of snow, mm of water: what falls below 1 degC stays, and above 0 degC it melts by 3 mm
 * per degree and day. Degree-day method; 1 degC and 3 mm/(K d) lie inside handbook ranges (1 to 8
 * mm/(K d)), own choice. Meant for the colour of the ground alone.
 */
final class SnowCover {
  private static final double SNOW_BELOW_C = 1;
  private static final double MELT_MM_PER_K_DAY = 3;

  /** The ground counts as white from here: about a centimetre of fresh snow. */
  private static final double WHITE_FROM_MM = 1;

  private double waterMm;

  /** Adds one interval. Missing precipitation counts as none. */
  void pass(double airC, double precipMm, double stepS) {
    if (precipMm > 0 && airC < SNOW_BELOW_C) {
      waterMm += precipMm;
    }
    if (airC > 0) {
      waterMm = Math.max(0, waterMm - MELT_MM_PER_K_DAY * airC * stepS / 86400);
    }
  }

  boolean white() {
    return waterMm >= WHITE_FROM_MM;
  }
}
