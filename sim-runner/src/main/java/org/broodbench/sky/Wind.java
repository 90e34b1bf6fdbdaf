package org.broodbench.sky;

/** Wind at another height. */
public final class Wind {
  private Wind() {}

  /**
   * Wind speed at height {@code toM} over that at {@code fromM}: neutral logarithmic profile above
   * ground of this roughness length, which is 0 at the roughness length and below. Any text on
   * micrometeorology.
   */
  public static double logRatio(double fromM, double toM, double roughnessM) {
    if (!(fromM > roughnessM)) {
      throw new IllegalArgumentException("height " + fromM + " m lies within the roughness");
    }
    return Math.max(0, StrictMath.log(toM / roughnessM)) / StrictMath.log(fromM / roughnessM);
  }
}
