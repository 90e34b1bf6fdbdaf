package org.broodbench.plant;

/** The state of everything that the controller drives, as held over a step. */
public final class Actuators {
  /** Heater relay and isolation closed. */
  public boolean heater;

  /** Fan on. */
  public boolean fan;

  /** Inverter enabled. */
  public boolean inverter;

  /** Copies from another. */
  public void copy(Actuators other) {
    heater = other.heater;
    fan = other.fan;
    inverter = other.inverter;
  }
}
