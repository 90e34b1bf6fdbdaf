package org.broodbench.power;

/**
 * A further load of constant power on the battery bus.
 *
 * @param name what the user calls it
 * @param powerW power while it is on, W
 * @param fromHourUtc hour of the day at which it comes on, 0 to 24, UTC
 * @param toHourUtc hour of the day at which it goes off, 0 to 24, UTC; equal to {@code fromHourUtc}
 *     means always on
 */
public record LoadSpec(String name, double powerW, double fromHourUtc, double toHourUtc) {}
