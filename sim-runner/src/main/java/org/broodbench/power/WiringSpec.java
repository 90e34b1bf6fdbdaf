package org.broodbench.power;

/**
 * Copper between the parts.
 *
 * @param heaterLengthM one-way length of the heater's cable, m
 * @param heaterMm2 cross-section of the heater's cable, mm²
 * @param batteryLeadOhm leads, fuse and contacts between battery and the common bus, Ω
 */
public record WiringSpec(double heaterLengthM, double heaterMm2, double batteryLeadOhm) {}
