package org.broodbench.power;

/**
 * Copper, contacts and fuses between the parts, and the regulator of a regulated heater.
 *
 * @param heaterLengthM one-way length of the heater's cable, m
 * @param heaterMm2 cross-section of the heater's cable, mm²
 * @param heaterContactOhm clips, plugs and fuse holder in the heater's circuit, Ω
 * @param batteryLeadOhm leads, clips, fuse and contacts between battery and the common bus, Ω
 * @param batteryFuseA rating of the battery's fuse, A; 0 for none
 * @param heaterFuseA rating of the fuse of a heater on the battery side, A; 0 for none
 * @param regulatorEfficiency share of its input that a regulator passes to the heater, 0 to 1
 */
public record WiringSpec(
    double heaterLengthM,
    double heaterMm2,
    double heaterContactOhm,
    double batteryLeadOhm,
    double batteryFuseA,
    double heaterFuseA,
    double regulatorEfficiency) {
  /** Without fuses, contacts of their own and losses in a regulator. */
  public WiringSpec(double heaterLengthM, double heaterMm2, double batteryLeadOhm) {
    this(heaterLengthM, heaterMm2, 0, batteryLeadOhm, 0, 0, 1);
  }
}
