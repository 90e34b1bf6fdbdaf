package org.broodbench.audit;

/**
 * Power and current of a load at some volts of the battery side.
 *
 * @param name what it is
 * @param volts volts of the battery side, V
 * @param powerW what it takes there, W
 * @param currentA current from the battery side, A
 */
public record LoadLine(String name, double volts, double powerW, double currentA) {}
