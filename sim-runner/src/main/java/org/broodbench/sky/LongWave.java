package org.broodbench.sky;

import org.broodbench.matter.MoistAir;

/** Heat radiation from the sky. Temperatures degC, vapour pressure Pa, fluxes W/m2. */
public final class LongWave {
  /** Stefan-Boltzmann constant, W/(m2 K4): CODATA 2018. */
  public static final double STEFAN_BOLTZMANN = 5.670374419e-8;

  private LongWave() {}

  /** Formulas for the emissivity of a clear sky. */
  public enum Model {
    /** Clark and Allen 1978, from the dew point. */
    CLARK_ALLEN,
    /** Berdahl and Martin 1984, from the dew point, without its hour-of-day term. */
    BERDAHL_MARTIN,
    /** Brutsaert 1975, from vapour pressure and temperature. */
    BRUTSAERT,
    /** Idso 1981, from vapour pressure and temperature. */
    IDSO,
    /** Prata 1996, from vapour pressure and temperature. */
    PRATA
  }

  /** Emissivity of a clear sky. */
  public static double clearEmissivity(Model model, double airC, double vapourPa) {
    double k = airC + MoistAir.ZERO_C_IN_K;
    double hPa = vapourPa / 100;
    return switch (model) {
      case CLARK_ALLEN -> clarkAllenEmissivity(MoistAir.dewPointC(vapourPa));
      case BERDAHL_MARTIN -> berdahlMartinEmissivity(MoistAir.dewPointC(vapourPa));
      case BRUTSAERT -> 1.24 * StrictMath.pow(hPa / k, 1.0 / 7);
      case IDSO -> 0.70 + 5.95e-5 * hPa * StrictMath.exp(1500 / k);
      case PRATA -> {
        double w = 46.5 * hPa / k;
        yield 1 - (1 + w) * StrictMath.exp(-StrictMath.sqrt(1.2 + 3 * w));
      }
    };
  }

  /** Clark and Allen 1978; their 273 K, not 273.15. */
  public static double clarkAllenEmissivity(double dewPointC) {
    return 0.787 + 0.764 * StrictMath.log((dewPointC + MoistAir.ZERO_C_IN_K) / 273);
  }

  /** Berdahl and Martin 1984. */
  public static double berdahlMartinEmissivity(double dewPointC) {
    double d = dewPointC / 100;
    return 0.711 + d * (0.56 + 0.73 * d);
  }

  /** Factor on the emissivity of a clear sky, cover in tenths: Walton 1983. */
  public static double cloudFactor(double tenths) {
    return 1 + tenths * (0.0224 + tenths * (-0.0035 + tenths * 0.00028));
  }

  /** Clear-sky temperature, degC, from the air alone: Swinbank 1963. */
  public static double swinbankSkyC(double airC) {
    return 0.0552 * StrictMath.pow(airC + MoistAir.ZERO_C_IN_K, 1.5) - MoistAir.ZERO_C_IN_K;
  }

  /** Downward clear-sky flux from the air alone: Swinbank 1963, regression form. */
  public static double swinbankFluxWM2(double airC) {
    return 1.22 * blackBodyWM2(airC) - 171;
  }

  /** Emission of a black body. */
  public static double blackBodyWM2(double tC) {
    double k = tC + MoistAir.ZERO_C_IN_K;
    return STEFAN_BOLTZMANN * k * k * k * k;
  }

  /** Temperature of a black body that sends as much as this sky, degC. */
  public static double skyC(Model model, double airC, double vapourPa, double cloudCover) {
    double e = Math.min(1, clearEmissivity(model, airC, vapourPa) * cloudFactor(10 * cloudCover));
    return StrictMath.sqrt(StrictMath.sqrt(e)) * (airC + MoistAir.ZERO_C_IN_K)
        - MoistAir.ZERO_C_IN_K;
  }
}
