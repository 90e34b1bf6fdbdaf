package org.broodbench.hive;

/**
 * The equations of a hive as a state and its rates, for integrators that are not the hive's own.
 */
final class HiveRates {
  private HiveRates() {}

  /**
   * The state: temperatures of the heat nodes, °C, vapour then carbon dioxide of the zones, kg/kg,
   * films of the inner faces, kg.
   */
  static double[] state(HiveModel m) {
    int zones = m.vapour.size();
    double[] y = new double[m.heat.size() + 2 * zones + m.inner.length];
    for (int i = 0; i < m.heat.size(); i++) {
      y[i] = m.heat.start(i);
    }
    for (int z = 0; z < zones; z++) {
      y[m.heat.size() + z] = m.vapour.start(z);
      y[m.heat.size() + zones + z] = m.co2.start(z);
    }
    for (int f = 0; f < m.inner.length; f++) {
      y[m.heat.size() + 2 * zones + f] = m.inner[f].filmKg();
    }
    return y;
  }

  /**
   * Rates of change at any state. Leaves the hive's own films as in the state, so an instance
   * serves either for steps or for this.
   */
  static double[] rates(
      HiveModel m,
      double[] y,
      double heaterWatts,
      boolean fanOn,
      double electronicsWatts,
      Outside outside) {
    int zones = m.vapour.size();
    System.arraycopy(y, 0, m.heatC, 0, m.heatC.length);
    System.arraycopy(y, m.heatC.length, m.ratio, 0, zones);
    for (int f = 0; f < m.inner.length; f++) {
      m.inner[f].addKg(y[m.heatC.length + 2 * zones + f] - m.inner[f].filmKg());
    }
    m.evaluate(heaterWatts, fanOn, electronicsWatts, outside, 0);
    double[] dy = new double[y.length];
    double[] part = new double[zones];
    m.co2.clearForRates();
    m.vapour.clearForRates();
    m.fillGases();
    m.vapour.rates(m.ratio, part);
    System.arraycopy(part, 0, dy, m.heatC.length, zones);
    double[] gas =
        java.util.Arrays.copyOfRange(y, m.heatC.length + zones, m.heatC.length + 2 * zones);
    m.co2.rates(gas, part);
    System.arraycopy(part, 0, dy, m.heatC.length + zones, zones);
    m.heat.clearForRates();
    m.fillHeat();
    double[] heatPart = new double[m.heatC.length];
    m.heat.rates(m.heatC, heatPart);
    System.arraycopy(heatPart, 0, dy, 0, m.heatC.length);
    for (int f = 0; f < m.inner.length; f++) {
      InnerFace face = m.inner[f];
      dy[m.heatC.length + 2 * zones + f] = face.rateKgS * (m.ratio[face.zone] - face.saturated);
    }
    return dy;
  }
}
