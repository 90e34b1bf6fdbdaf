package org.broodbench.power;

/**
 * Freezing of the acid of a lead-acid battery.
 *
 * <p>Freezing points by specific gravity: technical manual TM 5-1185, table III (1.000 is water),
 * straight in between. Specific gravity from the rested volts, V/6 − 0.845, which meets the
 * state-of-charge table of a deep-cycle battery's data sheet. Taken for glass mat and gel as well.
 */
public final class Electrolyte {
  private static final double[] GRAVITY = {1.000, 1.100, 1.150, 1.200, 1.250, 1.280};
  private static final double[] FREEZES_C = {0, -7.2, -15.0, -26.7, -52.2, -67.8};
  private static final OpenCircuit RESTED = new OpenCircuit(Chemistry.FLOODED, 12);

  private Electrolyte() {}

  /** Specific gravity at a state of charge, 0 to 1. */
  public static double gravity(double stateOfCharge) {
    return RESTED.volts(stateOfCharge) / 6 - 0.845;
  }

  /** Freezing point of acid of a specific gravity, °C. */
  public static double freezesC(double gravity) {
    int i = 0;
    while (i < GRAVITY.length - 2 && gravity > GRAVITY[i + 1]) {
      i++;
    }
    double u = (gravity - GRAVITY[i]) / (GRAVITY[i + 1] - GRAVITY[i]);
    return FREEZES_C[i] + u * (FREEZES_C[i + 1] - FREEZES_C[i]);
  }
}
