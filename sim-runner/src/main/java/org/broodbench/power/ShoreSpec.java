package org.broodbench.power;

/**
 * Shore power through a mains charger on the battery bus.
 *
 * @param present whether it is there at the start of the run
 * @param powerW highest output of the charger on the battery side, W; 0 for none fitted
 * @param efficiency share of mains energy that reaches the battery side, 0 to 1
 */
public record ShoreSpec(boolean present, double powerW, double efficiency) {}
