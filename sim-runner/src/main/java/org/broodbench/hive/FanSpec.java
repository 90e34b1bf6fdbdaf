package org.broodbench.hive;

/**
 * Exhaust fan in the upper vent.
 *
 * @param powerW electrical power, W; 0 for no fan
 * @param freeFlowM3S flow at no pressure, m³/s
 * @param shutOffPa pressure at no flow, Pa
 */
public record FanSpec(double powerW, double freeFlowM3S, double shutOffPa) {}
