package org.broodbench.power;

/**
 * An inverter: input power = P + idle + linear P + quadratic P², with P the output power.
 *
 * @param ratedW rated output, W; 0 for none
 * @param idleW draw without load, W
 * @param linearLoss loss per watt of output
 * @param quadraticLossPerW loss per watt of output squared, 1/W
 */
public record InverterSpec(
    double ratedW, double idleW, double linearLoss, double quadraticLossPerW) {}
