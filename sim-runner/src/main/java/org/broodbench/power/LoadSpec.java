package org.broodbench.power;

/**
 * A further load of constant power.
 *
 * @param name what the user calls it
 * @param powerW power while it is on, W
 * @param fromHourUtc hour of the day at which it comes on, 0 to 24, UTC
 * @param toHourUtc hour of the day at which it goes off, 0 to 24, UTC; equal to {@code fromHourUtc}
 *     means always on
 * @param onInverter whether it hangs on the inverter instead of the battery side
 */
public record LoadSpec(
    String name, double powerW, double fromHourUtc, double toHourUtc, boolean onInverter) {
  /** A load on the battery side. */
  public LoadSpec(String name, double powerW, double fromHourUtc, double toHourUtc) {
    this(name, powerW, fromHourUtc, toHourUtc, false);
  }

  /** Whether its clock has it on. */
  boolean onAt(double hourOfDay) {
    if (fromHourUtc == toHourUtc) {
      return true;
    }
    return fromHourUtc < toHourUtc
        ? hourOfDay >= fromHourUtc && hourOfDay < toHourUtc
        : hourOfDay >= fromHourUtc || hourOfDay < toHourUtc;
  }
}
