package org.broodbench.calibrate;

/**
 * By how much the word of a log about a knob is to be taken as less (or more) certain than the
 * scatter of the fit alone says. The fit has one scatter for each column, but the simulation is off
 * in ways that look like some knobs more than others: where the air turns it looks like openings,
 * while how fast a pan warms tells element and pan whatever lasts for hours.
 *
 * <p>The factors are such that the 90 % intervals of some thirty made hives held the truth in nine
 * of ten (calibration of intervals by cases that were set apart: H. Papadopoulos and others,
 * Inductive confidence machines for regression, ECML 2002). What was believed before is not
 * doubted: an interval is never wider than the prior's for that.
 */
final class Doubt {
  private Doubt() {}

  /** Factor on the standard deviation that the log alone leaves. */
  private static double factor(Knob k) {
    return switch (k) {
      case HIVE_LOSS, SOLAR_GAIN, COLONY_BEES, CLUSTER_LOSS -> 1.4;
      case BROOD_A_OFFSET, BROOD_B_OFFSET -> 1.4;
      case PAN_OFFSET, TOP_OFFSET -> 1.6;
      case AIR_LEAKAGE -> 2;
      case STORES -> 1.2;
      case START_CHARGE -> 1.8;
      case BATTERY_CAPACITY -> 0.7;
      case HEATER_POWER, PANEL_FACTOR, VOLTS_OFFSET -> 0.6;
      case PAN_HEAT -> 0.5;
      case BATTERY_RESISTANCE -> 0.35;
      default -> 1;
    };
  }

  /**
   * Factor on the standard deviation of a knob.
   *
   * @param sigma its standard deviation in z, the prior of 1 counted in
   */
  static double widening(Knob k, double sigma) {
    // the prior alone leaves 1: then the log said nothing that could be doubted
    if (sigma > 0.999) {
      return 1;
    }
    double ofLog = 1 / (1 / (sigma * sigma) - 1);
    double doubted = factor(k) * factor(k) * ofLog;
    return Math.sqrt(doubted / (1 + doubted)) / sigma;
  }
}
