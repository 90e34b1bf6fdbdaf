package org.broodbench.hive;

import org.broodbench.matter.Material;

/**
 * One layer of a wall, floor or lid, named from the inside outwards in its list.
 *
 * @param material what it is made of
 * @param thicknessM thickness, m
 * @param bridge what battens through it are made of
 * @param bridgeShare share of the area that battens take, 0 to below 1
 */
public record Layer(Material material, double thicknessM, Material bridge, double bridgeShare) {
  /** A layer of one material. */
  public Layer(Material material, double thicknessM) {
    this(material, thicknessM, material, 0);
  }

  /** Resistance beside the battens, m²K/W. */
  public double plainM2KW() {
    return thicknessM / material.conductivityWMK();
  }

  /** Resistance through a batten, m²K/W. */
  public double bridgeM2KW() {
    return thicknessM / bridge.conductivityWMK();
  }

  /** Resistance of one square metre with both side by side, m²K/W. */
  public double resistanceM2KW() {
    return 1 / ((1 - bridgeShare) / plainM2KW() + bridgeShare / bridgeM2KW());
  }

  /** Heat capacity of one square metre, J/(m²K). */
  public double capacityJM2K() {
    return thicknessM
        * ((1 - bridgeShare) * material.heatCapacityJM3K()
            + bridgeShare * bridge.heatCapacityJM3K());
  }

  /**
   * Whether it insulates: conducts up to 0.065 W/(m K), as building rules have it, and is no air.
   */
  public boolean insulates() {
    return !isAir() && material.conductivityWMK() <= 0.065;
  }

  /** Whether it is a layer of air, which stores next to nothing. */
  public boolean isAir() {
    return material.densityKgM3() < 5;
  }
}
