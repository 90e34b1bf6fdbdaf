package org.broodbench.rig;

/**
 * One temperature probe as fitted.
 *
 * @param role which reading of the controller it feeds
 * @param place where it hangs; for the brood probes it decides the controller's defaults
 * @param lagS time constant, s
 * @param noiseK standard deviation of the noise of one sample, K
 * @param resolutionK step of the reading, K
 * @param offsetK reading minus truth, K
 * @param nestShare how far from the air of the box to the nest a probe at the nest's edge hangs, 0
 *     to 1
 */
public record ProbeSpec(
    Role role,
    Place place,
    double lagS,
    double noiseK,
    double resolutionK,
    double offsetK,
    double nestShare) {
  /** A probe that hangs, at the nest's edge, a quarter of the way in: the mantle of bees. */
  public ProbeSpec(
      Role role, Place place, double lagS, double noiseK, double resolutionK, double offsetK) {
    this(role, place, lagS, noiseK, resolutionK, offsetK, 0.25);
  }

  /** Readings that a probe can feed. */
  public enum Role {
    /** First brood probe. */
    BROOD_A,
    /** Second brood probe. */
    BROOD_B,
    /** Thermal mass over the heater. */
    PAN,
    /** Air under the lid. */
    TOP,
    /** Outdoor air. */
    OUTDOOR
  }

  /** Places where a probe can hang. */
  public enum Place {
    /** Between brood combs. */
    BROOD_COMB,
    /** At the edge of the nest, in the mantle of bees. */
    NEST_EDGE,
    /** In the free air of the brood box. */
    BOX_AIR,
    /** On top of the thermal mass, where bees can touch it. */
    PAN,
    /** In the filling of the thermal mass, its upper half. */
    PAN_FILLING,
    /** In the air under the lid. */
    TOP,
    /** On the inner surface of the lid. */
    LID,
    /** Outside, shaded. */
    OUTDOOR
  }
}
