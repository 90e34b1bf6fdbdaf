package org.broodbench.controller;

/**
 * One analogue reading as a driver hands it in: a raw value in the unit that {@link Readings}
 * states, whether the driver holds it valid, and how old it is.
 */
public final class Sample {
  /** Raw value in the unit of its field in {@link Readings}. */
  public int value;

  /** Whether the driver delivered a value at all (bus answered, checksum good, part fitted). */
  public boolean valid;

  /** Age of the sample in milliseconds. */
  public int ageMillis;

  /** A sample that was not delivered. */
  public Sample() {}

  /**
   * Puts a fresh valid value.
   *
   * @param newValue raw value in the unit of its field in {@link Readings}
   */
  public void put(int newValue) {
    value = newValue;
    valid = true;
    ageMillis = 0;
  }

  /** Marks the sample as not delivered. */
  public void clear() {
    value = 0;
    valid = false;
    ageMillis = 0;
  }
}
