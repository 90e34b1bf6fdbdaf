package org.broodbench.sky;

/** Sunlight outside the air, and how much of what arrives is diffuse. */
public final class Irradiance {
  /** Total solar irradiance at one astronomical unit, W/m2: Kopp and Lean 2011. */
  public static final double SOLAR_CONSTANT_W_M2 = 1361;

  /**
   * Below this cosine of the zenith angle (sun lower than 3.7 degrees) a beam is not split off: the
   * division by a tiny cosine would make noise into sun. Common practice, no source.
   */
  public static final double LOWEST_BEAM_COS_ZENITH = 0.065;

  private Irradiance() {}

  /** Squared ratio of mean to actual distance, day of year 1 to 366: Spencer 1971. */
  public static double spencerDistanceFactor(int dayOfYear) {
    double g = 2 * StrictMath.PI * (dayOfYear - 1) / 365;
    return 1.00011
        + 0.034221 * StrictMath.cos(g)
        + 0.00128 * StrictMath.sin(g)
        + 0.000719 * StrictMath.cos(2 * g)
        + 0.000077 * StrictMath.sin(2 * g);
  }

  /**
   * Hourly diffuse fraction of global horizontal irradiance from the clearness index kt: Erbs,
   * Klein and Duffie 1982. The published curve jumps by 0.0003 and 0.0002 where its pieces meet.
   */
  public static double erbsDiffuseFraction(double kt) {
    if (kt <= 0.22) {
      return 1 - 0.09 * Math.max(kt, 0);
    }
    if (kt <= 0.80) {
      return 0.9511 + kt * (-0.1604 + kt * (4.388 + kt * (-16.638 + kt * 12.336)));
    }
    return 0.165;
  }

  /**
   * Daily diffuse fraction from the daily clearness index: Erbs, Klein and Duffie 1982, winter and
   * summer form by the sunset hour angle.
   */
  public static double erbsDailyDiffuseFraction(double k, double sunsetHourAngleDeg) {
    if (sunsetHourAngleDeg <= 81.4) {
      return k < 0.715 ? 1 + k * (-0.2727 + k * (2.4495 + k * (-11.9514 + k * 9.3879))) : 0.143;
    }
    return k < 0.722 ? 1 + k * (0.2832 + k * (-2.5557 + k * 0.8448)) : 0.175;
  }

  /** Daily diffuse fraction: Collares-Pereira and Rabl 1979. */
  public static double collaresPereiraRablDailyDiffuseFraction(double k) {
    if (k <= 0.17) {
      return 0.99;
    }
    if (k < 0.75) {
      return 1.188 + k * (-2.272 + k * (9.473 + k * (-21.865 + k * 14.648)));
    }
    return k < 0.8 ? 0.632 - 0.54 * k : 0.2;
  }
}
