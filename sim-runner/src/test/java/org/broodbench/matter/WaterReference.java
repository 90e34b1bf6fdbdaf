package org.broodbench.matter;

/**
 * Saturation pressures by the reference equations of the International Association for the
 * Properties of Water and Steam, for comparison only.
 */
final class WaterReference {
  private WaterReference() {}

  /** IAPWS-IF97, saturation-pressure equation of region 4 (equation 30), Pa, 273.15 to 647 K. */
  static double if97Pa(double k) {
    double t = k + -0.23855557567849 / (k - 0.65017534844798e3);
    double a = t * t + 0.11670521452767e4 * t - 0.72421316703206e6;
    double b = -0.17073846940092e2 * t * t + 0.12020824702470e5 * t - 0.32325550322333e7;
    double c = 0.14915108613530e2 * t * t - 0.48232657361591e4 * t + 0.40511340542057e6;
    double r = 2 * c / (-b + StrictMath.sqrt(b * b - 4 * a * c));
    return 1e6 * r * r * r * r;
  }

  /** IAPWS R14-08, sublimation pressure of ice Ih (equation 6), Pa, 50 to 273.16 K. */
  static double r14Pa(double k) {
    double theta = k / 273.16;
    double sum =
        -0.212144006e2 * StrictMath.pow(theta, 0.333333333e-2)
            + 0.273203819e2 * StrictMath.pow(theta, 0.120666667e1)
            - 0.610598130e1 * StrictMath.pow(theta, 0.170333333e1);
    return 611.657 * StrictMath.exp(sum / theta);
  }
}
