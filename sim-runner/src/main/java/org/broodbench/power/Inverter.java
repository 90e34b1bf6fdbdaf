package org.broodbench.power;

/**
 * Loss curve of an inverter: input = P + idle + a P + b P². A usual second-order fit; see the
 * maker's sheet.
 */
public final class Inverter {
  private Inverter() {}

  /** Input power for an output power, W. */
  public static double inputW(InverterSpec spec, double outputW) {
    return outputW
        + spec.idleW()
        + spec.linearLoss() * outputW
        + spec.quadraticLossPerW() * outputW * outputW;
  }

  /** Output over input, 0 to 1. */
  public static double efficiency(InverterSpec spec, double outputW) {
    return outputW / inputW(spec, outputW);
  }
}
