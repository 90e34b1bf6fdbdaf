package org.broodbench.stress;

/**
 * What the controller's display shows at the keeper's first visit after the onset.
 *
 * @param dark whether it shows nothing, for want of power or because the board is dead
 * @param broodC brood temperature, °C; not a number where it shows none
 * @param broodLowC lowest since the onset, °C
 * @param broodHighC highest since the onset, °C
 * @param volts battery volts, V; not a number where it shows none
 * @param heaterH hours of heat since the onset
 * @param alarms bits of the alarms that are lit
 */
public record Gauge(
    boolean dark,
    double broodC,
    double broodLowC,
    double broodHighC,
    double volts,
    double heaterH,
    int alarms) {}
