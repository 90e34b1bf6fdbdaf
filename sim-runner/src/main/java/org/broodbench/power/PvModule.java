package org.broodbench.power;

/**
 * Cell temperature of modules, and their one-point model.
 *
 * <p>Cell temperature T_a + (NOCT − 20)/800 · G (form of IEC 61215) or T_a + G/(u0 + u1 v) (D.
 * Faiman, Progress in Photovoltaics 16 (2008) 307-315). One point: P = P_stc G/1000 (1 + γ (T_c −
 * 25)); against a single-diode curve at 0 °C it is 2 % high at 200 W/m², 7 % high at 50 W/m².
 */
public final class PvModule {
  private PvModule() {}

  /** Cell temperature by the nominal operating temperature, °C. */
  public static double cellC(double airC, double noctC, double irradianceWM2) {
    return airC + (noctC - 20) / 800 * irradianceWM2;
  }

  /**
   * Cell temperature by wind, °C.
   *
   * @param stillWM2K loss in still air, W/(m² K)
   * @param windWSM3K further loss by wind, W s/(m³ K)
   */
  public static double cellC(
      double airC, double windMS, double irradianceWM2, double stillWM2K, double windWSM3K) {
    return airC + irradianceWM2 / (stillWM2K + windWSM3K * windMS);
  }

  /** Power at the maximum power point, W; never negative. */
  public static double powerW(
      double ratedW, double coefficientPerK, double irradianceWM2, double cellC) {
    double p = ratedW * irradianceWM2 / 1000 * (1 + coefficientPerK * (cellC - 25));
    return p > 0 ? p : 0;
  }
}
