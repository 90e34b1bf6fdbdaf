package org.broodbench.bench;

/** A thermostat with hysteresis on one probe: the same for the run's step and for others. */
final class Relay {
  static final double ON_C = 33;
  static final double OFF_C = 34;
  boolean on;
  int switches;

  /** Looks once. */
  void look(double probeC) {
    boolean next = on ? probeC < OFF_C : probeC <= ON_C;
    if (next != on) {
      on = next;
      switches++;
    }
  }
}
