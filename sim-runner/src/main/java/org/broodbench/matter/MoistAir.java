package org.broodbench.matter;

/**
 * Moist air as a mixture of ideal gases: saturation, humidity ratio, enthalpy, dew point, wet bulb.
 *
 * <p>Temperatures in degrees Celsius, pressures in Pa, humidity ratio in kg of vapour per kg of dry
 * air, enthalpy in J per kg of dry air counted from dry air and liquid water at 0 degC.
 *
 * <p>Source: relations of the ASHRAE Handbook of Fundamentals 2017, chapter 1 (saturation pressure
 * after Hyland and Wexler 1983). The real-gas factor of about 1.0045 is left out, so the humidity
 * ratio of saturated air is 0.4 to 0.5 percent below printed tables.
 */
public final class MoistAir {
  /** Ice point, K. */
  public static final double ZERO_C_IN_K = 273.15;

  /** Ratio of the molar masses of water and dry air; source as the class. */
  public static final double MOLAR_MASS_RATIO = 0.621945;

  /** Gas constant of dry air, J/(kg K); source as the class. */
  public static final double GAS_CONSTANT_DRY_AIR = 287.042;

  /** Specific heat of dry air at constant pressure, J/(kg K); source as the class. */
  public static final double HEAT_DRY_AIR = 1006.0;

  /** Specific heat of water vapour, J/(kg K); source as the class. */
  public static final double HEAT_VAPOUR = 1860.0;

  private static final double LATENT_AT_ZERO = 2_501_000.0;

  private MoistAir() {}

  /**
   * Saturation pressure over liquid water, -60 (supercooled) to 200 degC. Hyland and Wexler state
   * it from 0 degC; below, it is the extrapolation that weather services' relative humidity refers
   * to.
   */
  public static double saturationWaterPa(double tC) {
    double k = tC + ZERO_C_IN_K;
    return StrictMath.exp(
        -5800.2206 / k
            + 1.3914993
            + k * (-0.048640239 + k * (4.1764768e-5 - k * 1.4452093e-8))
            + 6.5459673 * StrictMath.log(k));
  }

  /**
   * Saturation pressure over liquid water in the form that weather services use to turn dew point
   * and relative humidity into one another, -45 to 60 degC: WMO No. 8 (Sonntag 1990).
   */
  public static double magnusWaterPa(double tC) {
    return 611.2 * StrictMath.exp(17.62 * tC / (243.12 + tC));
  }

  /** Saturation pressure over ice, -100 to 0 degC. */
  public static double saturationIcePa(double tC) {
    double k = tC + ZERO_C_IN_K;
    return StrictMath.exp(
        -5674.5359 / k
            + 6.3925247
            + k * (-0.009677843 + k * (6.2215701e-7 + k * (2.0747825e-9 - k * 9.484024e-13)))
            + 4.1635019 * StrictMath.log(k));
  }

  /** Saturation pressure over the stable phase: ice below 0 degC, water from there. */
  public static double saturationPa(double tC) {
    return tC < 0 ? saturationIcePa(tC) : saturationWaterPa(tC);
  }

  /**
   * Saturation pressure over liquid water by + and * alone, for the simulation step: the fourth
   * power of a polynomial in (t - 10)/70 that was fitted to the fourth root of {@link
   * #saturationWaterPa} with equal relative error; within 1e-7 of it from -60 to 80 degC. Outside
   * that range it must not be used. Coefficients: own minimax fit.
   */
  public static double fastSaturationWaterPa(double tC) {
    double x = (tC - 10.0) * (1.0 / 70.0);
    double root = 0.0004063867543499566;
    root = root * x - 0.001497538448713792;
    root = root * x - 0.0007051645585953393;
    root = root * x + 0.026811207195531827;
    root = root * x - 0.08427514859309956;
    root = root * x - 0.1790138891486716;
    root = root * x + 2.1339350628348384;
    root = root * x + 6.940732469848766;
    root = root * x + 5.919692900620759;
    double square = root * root;
    return square * square;
  }

  /**
   * Saturation pressure over ice by + and * alone, made as {@link #fastSaturationWaterPa}; within
   * 2e-7 of {@link #saturationIcePa} from -80 to 0 degC.
   */
  public static double fastSaturationIcePa(double tC) {
    double x = (tC + 39.995) * (1.0 / 40.005);
    double root = 0.0003286993511573744;
    root = root * x - 0.0016416056437102112;
    root = root * x - 0.010732549714688953;
    root = root * x + 0.10370565454190163;
    root = root * x + 0.8454307436218796;
    root = root * x + 2.1425864774859065;
    root = root * x + 1.8934204446025222;
    double square = root * root;
    return square * square;
  }

  /** Temperature at which liquid water has this saturation pressure, degC; 1 Pa to 1 MPa. */
  public static double dewPointC(double vapourPa) {
    return inverse(vapourPa, true);
  }

  /** Temperature at which ice has this saturation pressure, degC; up to 611 Pa. */
  public static double frostPointC(double vapourPa) {
    return inverse(vapourPa, false);
  }

  /** The dew point, or the frost point where that lies below 0 degC. */
  public static double dewOrFrostPointC(double vapourPa) {
    return vapourPa < saturationIcePa(0) ? frostPointC(vapourPa) : dewPointC(vapourPa);
  }

  /** Newton's method on the logarithm of the pressure, from the inverse of a Magnus form. */
  private static double inverse(double vapourPa, boolean water) {
    if (!(vapourPa > 0)) {
      throw new IllegalArgumentException("vapour pressure must be positive: " + vapourPa + " Pa");
    }
    double logP = StrictMath.log(vapourPa);
    double m = logP - StrictMath.log(611.2);
    // Magnus constants of WMO No. 8; only a start value
    double t = water ? 243.12 * m / (17.62 - m) : 272.62 * m / (22.46 - m);
    for (int i = 0; i < 50; i++) {
      double k = t + ZERO_C_IN_K;
      double p = water ? saturationWaterPa(t) : saturationIcePa(t);
      double slope =
          water
              ? 5800.2206 / (k * k)
                  - 0.048640239
                  + k * (2 * 4.1764768e-5 - k * 3 * 1.4452093e-8)
                  + 6.5459673 / k
              : 5674.5359 / (k * k)
                  - 0.009677843
                  + k * (2 * 6.2215701e-7 + k * (3 * 2.0747825e-9 - k * 4 * 9.484024e-13))
                  + 4.1635019 / k;
      double step = (logP - StrictMath.log(p)) / slope;
      t += step;
      if (Math.abs(step) < 1e-10) {
        return t;
      }
    }
    return t;
  }

  /** Humidity ratio, kg/kg dry air, of air that holds this partial pressure of vapour. */
  public static double humidityRatio(double vapourPa, double pressurePa) {
    return MOLAR_MASS_RATIO * vapourPa / (pressurePa - vapourPa);
  }

  /** Partial pressure of the vapour, Pa; the inverse of {@link #humidityRatio}. */
  public static double vapourPa(double humidityRatio, double pressurePa) {
    return pressurePa * humidityRatio / (MOLAR_MASS_RATIO + humidityRatio);
  }

  /** Relative humidity over liquid water, 0 to 1 and above where supersaturated. */
  public static double relativeHumidityOverWater(double vapourPa, double tC) {
    return vapourPa / saturationWaterPa(tC);
  }

  /** Enthalpy, J per kg of dry air. */
  public static double enthalpyJPerKg(double tC, double humidityRatio) {
    return HEAT_DRY_AIR * tC + humidityRatio * (LATENT_AT_ZERO + HEAT_VAPOUR * tC);
  }

  /** Volume of the mixture, m3 per kg of dry air. */
  public static double specificVolumeM3PerKg(double tC, double humidityRatio, double pressurePa) {
    return GAS_CONSTANT_DRY_AIR
        * (tC + ZERO_C_IN_K)
        * (1 + humidityRatio / MOLAR_MASS_RATIO)
        / pressurePa;
  }

  /** Mass of the mixture per volume, kg/m3. */
  public static double densityKgPerM3(double tC, double humidityRatio, double pressurePa) {
    return (1 + humidityRatio) / specificVolumeM3PerKg(tC, humidityRatio, pressurePa);
  }

  /**
   * Latent heat of vaporisation, J/kg: 2501 - 2.36 t kJ/kg, a straight line through the values of
   * IAPWS-IF97 that is within 0.5 kJ/kg from 0 to 40 degC.
   */
  public static double latentHeatJPerKg(double tC) {
    return LATENT_AT_ZERO - 2360.0 * tC;
  }

  /** Humidity ratio of air at dry bulb {@code tC} whose thermodynamic wet bulb is {@code wetC}. */
  public static double humidityRatioFromWetBulb(double tC, double wetC, double pressurePa) {
    double saturated = humidityRatio(saturationPa(wetC), pressurePa);
    return wetC >= 0
        ? ((2501 - 2.326 * wetC) * saturated - 1.006 * (tC - wetC))
            / (2501 + 1.86 * tC - 4.186 * wetC)
        : ((2830 - 0.24 * wetC) * saturated - 1.006 * (tC - wetC))
            / (2830 + 1.86 * tC - 2.1 * wetC);
  }

  /** Thermodynamic wet bulb, degC, by bisection to 1e-9 K; over ice below 0 degC. */
  public static double wetBulbC(double tC, double humidityRatio, double pressurePa) {
    double low = tC - 100;
    double high = tC;
    for (int i = 0; i < 60 && high - low > 1e-9; i++) {
      double middle = 0.5 * (low + high);
      if (humidityRatioFromWetBulb(tC, middle, pressurePa) > humidityRatio) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return 0.5 * (low + high);
  }

  /** Pressure of the standard atmosphere, Pa, -5000 to 11000 m. */
  public static double standardPressurePa(double altitudeM) {
    return 101325.0 * StrictMath.pow(1 - 2.25577e-5 * altitudeM, 5.2559);
  }
}
