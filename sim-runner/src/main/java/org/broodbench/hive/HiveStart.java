package org.broodbench.hive;

import org.broodbench.matter.MoistAir;

/**
 * A hive at rest: the nest at its start temperature, everything else at a steady guess between nest
 * and outside.
 */
final class HiveStart {
  /** Nest at the start: bees that rear brood hold it near 34.5 °C. */
  static final double CLUSTER_C = 34;

  private final HiveLayout layout;
  private final double pressurePa;

  HiveStart(HiveLayout layout, double pressurePa) {
    this.layout = layout;
    this.pressurePa = pressurePa;
  }

  void set(Network heat, Network vapour, Network co2, boolean alive, Outside outside) {
    double nestC = alive ? CLUSTER_C : outside.airC;
    double airC = outside.airC + 0.4 * (nestC - outside.airC);
    for (int i = 0; i < heat.size(); i++) {
      heat.set(i, airC);
    }
    for (OuterFace f : layout.outer) {
      heat.set(f.layerNode, outside.airC + 0.1 * (nestC - outside.airC));
    }
    heat.set(layout.nest, nestC);
    double boxRatio = dryRatio(airC, heat);
    for (int z = 0; z < layout.boxes; z++) {
      vapour.set(z, alive ? boxRatio : outside.humidityRatio);
      co2.set(z, HiveModel.CO2_OUTSIDE * HiveModel.CO2_MASS_RATIO);
    }
    double nestRatio = 0.5 * MoistAir.humidityRatio(MoistAir.saturationWaterPa(nestC), pressurePa);
    vapour.set(layout.boxes, alive ? nestRatio : outside.humidityRatio);
    co2.set(layout.boxes, HiveModel.CO2_OUTSIDE * HiveModel.CO2_MASS_RATIO);
  }

  /** Air at half saturation, or so much less that no inner surface is dewy at the start. */
  private double dryRatio(double airC, Network heat) {
    double ratioAtStart =
        0.5 * MoistAir.humidityRatio(MoistAir.saturationWaterPa(airC), pressurePa);
    for (InnerFace f : layout.inner) {
      double surfaceC = f.surfaceC(heat.start(f.airNode), heat.start(f.solidNode));
      double dewy = MoistAir.humidityRatio(MoistAir.saturationWaterPa(surfaceC), pressurePa);
      ratioAtStart = Math.min(ratioAtStart, 0.95 * dewy);
    }
    return ratioAtStart;
  }
}
