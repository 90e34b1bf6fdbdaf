package org.broodbench.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** What everyone in the trade says, through the classes of the run: common practice, no source. */
class TradeFactsTest {

  private static double ampere(double watts, double volts) {
    Bus bus = new Bus();
    bus.ocvV = volts;
    bus.ohm = 1e-9;
    bus.highestV = 1000;
    bus.constantW = watts;
    bus.solve();
    return bus.batteryA();
  }

  /**
   * I = P/E: 250 W are 20.8 A at 12 V, 10.4 A at 24 V, 2.08 A at 120 V; 12 A at 120 V are 1440 W.
   */
  @Test
  void powerIsVoltsTimesAmperes() {
    assertEquals(20.833, ampere(250, 12), 1e-3);
    assertEquals(10.417, ampere(250, 24), 1e-3);
    assertEquals(2.0833, ampere(250, 120), 1e-4);
    assertEquals(12, ampere(1440, 120), 1e-4);
  }

  /** Same wire and power: a fourth of the loss at twice the volts. */
  @Test
  void twiceTheVoltsAFourthOfTheLoss() {
    double low = ampere(250, 12);
    double high = ampere(250, 24);
    assertEquals(4, low * low / (high * high), 1e-4);
  }

  /** 12.3 V on a rested lead-acid battery: somewhat over half charged; 12.1 V about half. */
  @Test
  void restedVoltsTellAboutHalfCharge() {
    for (Chemistry chemistry : new Chemistry[] {Chemistry.FLOODED, Chemistry.AGM}) {
      OpenCircuit curve = new OpenCircuit(chemistry, 12);
      assertTrue(curve.volts(0.5) < 12.3 && curve.volts(0.7) > 12.3, chemistry.toString());
      assertTrue(curve.volts(0.45) < 12.1 && curve.volts(0.55) > 12.1, chemistry.toString());
    }
  }
}
