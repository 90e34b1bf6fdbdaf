package org.broodbench.colony;

/**
 * Rates of the published two-compartment models of a colony: D. S. Khoury, M. R. Myerscough and A.
 * B. Barron, PLoS ONE 6 (2011) e18491, abstract and a tutorial; D. S. Khoury, A. B. Barron and M.
 * R. Myerscough, PLoS ONE 8 (2013) e59084, second-hand from a thesis that reproduces it.
 */
public final class SocialRates {
  /** Highest rate at which hive bees become foragers in the 2011 model, 1/d. */
  public static final double ALPHA = 0.25;

  /** Social inhibition: reversion by foragers, 1/d. */
  public static final double SIGMA = 0.75;

  /** Further recruitment where there is no food, 2013 model, 1/d. */
  public static final double ALPHA_HUNGER = 0.25;

  private SocialRates() {}

  /**
   * Rate at which hive bees become foragers, 1/d; negative where foragers go back to the hive.
   *
   * @param hive bees in the hive
   * @param foragers foragers
   * @param plenty how far food suffices, 0 to 1, see {@link #plenty}
   */
  public static double recruitment(double hive, double foragers, double plenty) {
    double all = hive + foragers;
    double share = all > 0 ? foragers / all : 0;
    return ALPHA + ALPHA_HUNGER * (1 - plenty) - SIGMA * share;
  }

  /** How far a store suffices: f²/(f² + b²), b the store at which it halves. */
  public static double plenty(double store, double half) {
    double square = store * store;
    return square > 0 ? square / (square + half * half) : 0;
  }

  /** Share of the queen's laying that so many nurses can bring up: n/(v + n). */
  public static double raised(double nurses, double half) {
    return nurses > 0 ? nurses / (half + nurses) : 0;
  }
}
