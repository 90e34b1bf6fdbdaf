package org.broodbench.hive;

import org.broodbench.matter.Material;

/**
 * One layer of a wall, floor or lid, named from the inside outwards in its list.
 *
 * @param material what it is made of
 * @param thicknessM thickness, m
 */
public record Layer(Material material, double thicknessM) {
  /** Resistance of one square metre, m²K/W. */
  public double resistanceM2KW() {
    return thicknessM / material.conductivityWMK();
  }

  /** Heat capacity of one square metre, J/(m²K). */
  public double capacityJM2K() {
    return thicknessM * material.densityKgM3() * material.specificHeatJKgK();
  }
}
