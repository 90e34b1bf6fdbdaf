package org.broodbench.power;

/**
 * One-point model of modules at their maximum power point.
 *
 * <p>Cell temperature T_a + (NOCT − 20)/800 · G and P = P_stc G/1000 (1 + γ (T_c − 25)): the forms
 * of IEC 61215 and of any text on photovoltaics. Against a single-diode curve at 0 °C it is 2 %
 * high at 200 W/m², 7 % high at 50 W/m². Left out: angle of incidence, spectrum.
 */
public final class PvModule {
  private PvModule() {}

  /** Cell temperature, °C. */
  public static double cellC(double airC, double noctC, double irradianceWM2) {
    return airC + (noctC - 20) / 800 * irradianceWM2;
  }

  /** Power at the maximum power point, W; never negative. */
  public static double powerW(
      double ratedW, double coefficientPerK, double irradianceWM2, double cellC) {
    double p = ratedW * irradianceWM2 / 1000 * (1 + coefficientPerK * (cellC - 25));
    return p > 0 ? p : 0;
  }
}
