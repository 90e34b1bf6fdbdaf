package org.broodbench.colony;

/**
 * The colony at the start of a run.
 *
 * @param bees adult bees; 0 for an empty hive
 * @param beeMassG mass of one adult, g
 * @param broodCells cells with brood, open and sealed
 * @param broodFrames frames that hold the nest
 * @param clusterLossFactor factor on the laboratory size law of cluster heat loss: 1 laboratory
 *     cluster, 2.85 intact colony in a hive
 * @param shiverCeilingWKg highest heat that the colony sustains, W per kg of bees
 * @param broodHeatMW heat of one brood cell at 34.5 °C, mW
 * @param waterNear whether bees can fetch water for cooling
 * @param life what its numbers hang on
 */
public record ColonySpec(
    double bees,
    double beeMassG,
    double broodCells,
    double broodFrames,
    double clusterLossFactor,
    double shiverCeilingWKg,
    double broodHeatMW,
    boolean waterNear,
    LifeSpec life) {
  /** A colony whose numbers stay, with the usual rest. */
  public ColonySpec(
      double bees,
      double beeMassG,
      double broodCells,
      double broodFrames,
      double clusterLossFactor,
      double shiverCeilingWKg,
      double broodHeatMW,
      boolean waterNear) {
    this(
        bees,
        beeMassG,
        broodCells,
        broodFrames,
        clusterLossFactor,
        shiverCeilingWKg,
        broodHeatMW,
        waterNear,
        LifeSpec.USUAL);
  }

  /** Cluster mass, kg. */
  public double massKg() {
    return bees * beeMassG * 1e-3;
  }

  /** The same colony with another heat-loss factor. */
  public ColonySpec withClusterLossFactor(double factor) {
    return with(factor, life);
  }

  /** The same colony with numbers that move. */
  public ColonySpec moving() {
    return with(clusterLossFactor, life.moving());
  }

  private ColonySpec with(double factor, LifeSpec otherLife) {
    return new ColonySpec(
        bees,
        beeMassG,
        broodCells,
        broodFrames,
        factor,
        shiverCeilingWKg,
        broodHeatMW,
        waterNear,
        otherLife);
  }
}
