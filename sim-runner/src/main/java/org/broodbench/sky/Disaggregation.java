package org.broodbench.sky;

import org.broodbench.matter.MoistAir;

/**
 * Published schemes that make hours out of a day's numbers. Hours are of local solar time; degC,
 * MJ/m2, m/s.
 */
public final class Disaggregation {
  /** Hour of the day's highest temperature: de Wit, Goudriaan and van Laar 1978. */
  public static final double HIGH_AT_H = 14;

  private Disaggregation() {}

  /**
   * Shape of the sine-exponential day.
   *
   * @param highLagH a: highest temperature after noon
   * @param lowLagH b: lowest temperature after sunrise
   * @param nightDecay c: how fast it falls in the night
   */
  public record SineExponential(double highLagH, double lowLagH, double nightDecay) {
    /** Air at 1.5 m at Denver: Parton and Logan 1981. */
    public static final SineExponential DENVER = new SineExponential(1.86, -0.17, 2.20);

    /** Wann, Yen and Gold 1985. */
    public static final SineExponential WANN = new SineExponential(2.59, 1.55, 2.2);

    /**
     * Temperature at an hour of a day whose lows and highs repeat: Parton and Logan 1981. The night
     * curve ends above the low by e to the minus c of its fall.
     */
    public double airC(double lowC, double highC, double hour, double riseH, double setH) {
      double day = setH - riseH;
      if (hour >= riseH + lowLagH && hour <= setH) {
        return daytime(lowC, highC, hour, riseH, day);
      }
      double atSet = daytime(lowC, highC, setH, riseH, day);
      double night = hour > setH ? hour - setH : hour + 24 - setH;
      return lowC + (atSet - lowC) * StrictMath.exp(-nightDecay * night / (24 - day + lowLagH));
    }

    private double daytime(double lowC, double highC, double hour, double riseH, double day) {
      double x = (hour - riseH - lowLagH) / (day + 2 * (highLagH - lowLagH));
      return lowC + (highC - lowC) * StrictMath.sin(StrictMath.PI * x);
    }
  }

  /**
   * Temperature as half cosines from low to high to low, with the low at sunrise and the high at 14
   * h: de Wit, Goudriaan and van Laar 1978. Meets every low and high and is continuous.
   *
   * @param highBeforeC highest of the day before
   * @param lowAfterC lowest of the day after
   * @param riseAfterH sunrise of the day after, counted from its own midnight
   */
  public static double cosineAirC(
      double highBeforeC,
      double lowC,
      double highC,
      double lowAfterC,
      double hour,
      double riseH,
      double riseAfterH) {
    if (hour < riseH) {
      return half(highBeforeC, lowC, HIGH_AT_H - 24, riseH, hour);
    }
    return hour <= HIGH_AT_H
        ? half(lowC, highC, riseH, HIGH_AT_H, hour)
        : half(highC, lowAfterC, HIGH_AT_H, riseAfterH + 24, hour);
  }

  /** Half a cosine from (from, a) to (to, b). */
  static double half(double a, double b, double from, double to, double x) {
    return a + 0.5 * (b - a) * (1 - StrictMath.cos(StrictMath.PI * (x - from) / (to - from)));
  }

  /**
   * Share of the day's diffuse light per hour at an hour angle: Liu and Jordan 1960. Degrees; 0
   * outside the day.
   */
  public static double diffuseShare(double hourAngleDeg, double sunsetHourAngleDeg) {
    if (Math.abs(hourAngleDeg) >= sunsetHourAngleDeg) {
      return 0;
    }
    double ws = StrictMath.toRadians(sunsetHourAngleDeg);
    double w = StrictMath.toRadians(hourAngleDeg);
    return StrictMath.PI
        / 24
        * (StrictMath.cos(w) - StrictMath.cos(ws))
        / (StrictMath.sin(ws) - ws * StrictMath.cos(ws));
  }

  /**
   * Share of the day's global light per hour at an hour angle: Collares-Pereira and Rabl 1979. Its
   * sum over the day is 1.000 to 1.002, so hours must be scaled to the day's sum.
   */
  public static double globalShare(double hourAngleDeg, double sunsetHourAngleDeg) {
    double s = StrictMath.sin(StrictMath.toRadians(sunsetHourAngleDeg - 60));
    double a = 0.409 + 0.5016 * s;
    double b = 0.6609 - 0.4767 * s;
    return (a + b * StrictMath.cos(StrictMath.toRadians(hourAngleDeg)))
        * diffuseShare(hourAngleDeg, sunsetHourAngleDeg);
  }

  /**
   * A day's global radiation from its temperatures: Hargreaves and Samani 1982, as FAO-56 equation
   * 50; factor 0.16 inland, 0.19 at coasts.
   */
  public static double hargreavesMJ(
      double lowC, double highC, double factor, double extraterrestrialMJ) {
    return factor * StrictMath.sqrt(Math.max(0, highC - lowC)) * extraterrestrialMJ;
  }

  /** A day's clear-sky radiation: FAO-56 equation 37. */
  public static double faoClearMJ(double altitudeM, double extraterrestrialMJ) {
    return (0.75 + 2e-5 * altitudeM) * extraterrestrialMJ;
  }

  /** A day's radiation from its hours of sun: Angstrom form, FAO-56 equation 35. */
  public static double sunshineMJ(double sunH, double dayH, double extraterrestrialMJ) {
    return (0.25 + 0.50 * sunH / dayH) * extraterrestrialMJ;
  }

  /**
   * A day's transmittance from its range of temperature: Bristow and Campbell 1984 with A = 0.7, C
   * = 2.4, B = 0.036 exp(-0.154 times the month's mean range).
   */
  public static double bristowCampbell(double rangeK, double monthMeanRangeK) {
    double b = 0.036 * StrictMath.exp(-0.154 * monthMeanRangeK);
    return 0.7 * (1 - StrictMath.exp(-b * StrictMath.pow(rangeK, 2.4)));
  }

  /** Relative humidity, 0 to 1 over the stable phase, at an hour of a day with this dew point. */
  public static double relativeHumidity(double dewC, double airC) {
    return Math.min(1, MoistAir.saturationPa(dewC) / MoistAir.saturationPa(airC));
  }
}
