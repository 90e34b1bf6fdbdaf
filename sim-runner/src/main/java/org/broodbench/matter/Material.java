package org.broodbench.matter;

/**
 * A homogeneous building material.
 *
 * <p>Sources: ISO 10456 / EN 12524 design values for softwood, hardwood, steel and glass; class
 * declarations of expanded and extruded polystyrene makers (EN 13163, EN 13164) at 10 °C; sheep
 * wool and plywood from memory, medium confidence.
 *
 * @param key name in scenario files
 * @param conductivityWMK thermal conductivity, W/(m K)
 * @param densityKgM3 density, kg/m³
 * @param specificHeatJKgK specific heat capacity, J/(kg K)
 */
public record Material(
    String key, double conductivityWMK, double densityKgM3, double specificHeatJKgK) {
  /** Softwood such as pine or spruce; ISO 10456 design values. */
  public static final Material SOFTWOOD = new Material("softwood", 0.13, 500, 1600);

  /** Hardwood; ISO 10456 design values. */
  public static final Material HARDWOOD = new Material("hardwood", 0.18, 700, 1600);

  /** Plywood, 500 kg/m³ class; ISO 10456 design values. */
  public static final Material PLYWOOD = new Material("plywood", 0.13, 500, 1600);

  /** Expanded polystyrene board; EN 13163 classes lie between 0.033 and 0.041. */
  public static final Material EPS = new Material("eps", 0.035, 20, 1450);

  /** Extruded polystyrene board; EN 13164 classes lie between 0.029 and 0.036. */
  public static final Material XPS = new Material("xps", 0.033, 35, 1450);

  /** Sheep wool batt; from memory, medium confidence. */
  public static final Material WOOL = new Material("wool", 0.039, 20, 1700);

  /** Wood fibre board; ISO 10456 gives 0.05 to 0.07 by density, soft boards declare 0.040. */
  public static final Material WOOD_FIBRE = new Material("wood_fibre", 0.040, 160, 2100);

  /** Every material that a scenario may name. */
  public static java.util.List<Material> all() {
    return java.util.List.of(SOFTWOOD, HARDWOOD, PLYWOOD, EPS, XPS, WOOL, WOOD_FIBRE);
  }
}
