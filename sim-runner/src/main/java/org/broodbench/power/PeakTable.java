package org.broodbench.power;

/**
 * Maximum power point of {@link DiodeCurve} against irradiance and cell temperature, straight
 * between nodes that lie closer in dim light. Power over that under standard conditions, and volts
 * over those.
 *
 * <p>Within −40 to 90 °C and up to 1400 W/m² it is off from the curve by less than a thousandth of
 * the power from 20 W/m² up (see the test). Beyond the last nodes the last slopes go on.
 */
final class PeakTable {
  /** The one table; it depends on nothing. */
  static final PeakTable CRYSTALLINE = new PeakTable();

  private static final int SUNS = 64;
  private static final double MOST_WM2 = 1400;
  private static final double COLDEST_C = -50;
  private static final double STEP_K = 5;
  private static final int CELLS = 31;

  private final double[] sun = new double[SUNS + 1];
  private final double[] power = new double[(SUNS + 1) * CELLS];
  private final double[] volts = new double[(SUNS + 1) * CELLS];
  private final double standardW;
  private final double standardV;
  private final double coefficientPerK;

  private PeakTable() {
    DiodeCurve curve = new DiodeCurve();
    curve.set(1000, 25);
    standardW = curve.peakW();
    standardV = curve.peakV();
    curve.set(1000, 50);
    coefficientPerK = (curve.peakW() / standardW - 1) / 25;
    for (int i = 0; i <= SUNS; i++) {
      double part = (double) i / SUNS;
      sun[i] = MOST_WM2 * part * part;
      for (int j = 0; j < CELLS; j++) {
        curve.set(sun[i], COLDEST_C + STEP_K * j);
        power[i * CELLS + j] = curve.peakW() / standardW;
        volts[i * CELLS + j] = curve.peakV() / standardV;
      }
    }
  }

  /** Change of power with cell temperature of the tabulated module, 1/K. */
  double coefficientPerK() {
    return coefficientPerK;
  }

  /** Volts at the maximum power point of the tabulated module under standard conditions, V. */
  double standardV() {
    return standardV;
  }

  /** Power of the tabulated module under standard conditions, W. */
  double standardW() {
    return standardW;
  }

  /** Power over that under standard conditions. */
  double power(double irradianceWM2, double cellC) {
    return at(power, irradianceWM2, cellC);
  }

  /** Volts over those under standard conditions. */
  double volts(double irradianceWM2, double cellC) {
    return at(volts, irradianceWM2, cellC);
  }

  private double at(double[] table, double irradianceWM2, double cellC) {
    if (!(irradianceWM2 > 0)) {
      return 0;
    }
    int i = (int) (SUNS * Math.sqrt(irradianceWM2 / MOST_WM2)); // exact by its contract
    i = i < SUNS ? i : SUNS - 1;
    double u = (irradianceWM2 - sun[i]) / (sun[i + 1] - sun[i]);
    double y = (cellC - COLDEST_C) / STEP_K;
    int j = y < 0 ? 0 : (int) y;
    j = j < CELLS - 1 ? j : CELLS - 2;
    double v = y - j;
    int k = i * CELLS + j;
    double low = table[k] + v * (table[k + 1] - table[k]);
    double high = table[k + CELLS] + v * (table[k + CELLS + 1] - table[k + CELLS]);
    double value = low + u * (high - low);
    return value > 0 ? value : 0;
  }
}
