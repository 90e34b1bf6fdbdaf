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
 */
public record ProbeSpec(
    Role role, Place place, double lagS, double noiseK, double resolutionK, double offsetK) {
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
    /** On the thermal mass. */
    PAN,
    /** Under the lid. */
    TOP,
    /** Outside, shaded. */
    OUTDOOR
  }
}
