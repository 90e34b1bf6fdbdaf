package org.broodbench.matter;

/**
 * A homogeneous building material or bulk.
 *
 * <p>Sources: ISO 10456:2007 tables 3 and 4 (design values for wood, metals, glass; moisture
 * coefficients); class declarations of expanded and extruded polystyrene makers (EN 13163, EN
 * 13164) at 10 °C; the others as named beside them.
 *
 * @param key name in scenario files
 * @param conductivityWMK thermal conductivity, W/(m K)
 * @param densityKgM3 density, kg/m³
 * @param specificHeatJKgK specific heat capacity, J/(kg K)
 * @param moistureCoefficient f_ψ of ISO 10456: conductivity goes with e^(f_ψ ψ), ψ m³ of water per
 *     m³
 */
public record Material(
    String key,
    double conductivityWMK,
    double densityKgM3,
    double specificHeatJKgK,
    double moistureCoefficient) {
  /** Density of water, kg/m³, and its specific heat, J/(kg K); handbook values at 10 °C. */
  private static final double WATER_J_M3_K = 999.7 * 4192;

  /** Softwood such as pine or spruce; ISO 10456 design values, at the moisture of use. */
  public static final Material SOFTWOOD = new Material("softwood", 0.13, 500, 1600);

  /** Hardwood; ISO 10456 design values. */
  public static final Material HARDWOOD = new Material("hardwood", 0.18, 700, 1600);

  /**
   * Dense tropical hardwood; wood handbook formula across the grain at 12 % moisture and a specific
   * gravity of 0.9.
   */
  public static final Material DENSE_HARDWOOD = new Material("dense_hardwood", 0.24, 900, 1600);

  /** Plywood, 500 kg/m³ class; ISO 10456 design values. */
  public static final Material PLYWOOD = new Material("plywood", 0.13, 500, 1600);

  /** Expanded polystyrene board; EN 13163 classes lie between 0.033 and 0.041. */
  public static final Material EPS = new Material("eps", 0.035, 20, 1450, 4);

  /**
   * Expanded polystyrene moulded dense enough to make boxes of, 100 kg/m³; from memory, medium
   * confidence.
   */
  public static final Material DENSE_EPS = new Material("dense_eps", 0.036, 100, 1450, 4);

  /** Extruded polystyrene board; EN 13164 classes lie between 0.029 and 0.036. */
  public static final Material XPS = new Material("xps", 0.033, 35, 1450, 2.5);

  /** Rigid polyurethane board; EN 13165 classes lie between 0.022 and 0.028. */
  public static final Material PUR = new Material("pur", 0.026, 32, 1400, 6);

  /** Sheep wool batt; from memory, medium confidence; moisture as mineral wool. */
  public static final Material WOOL = new Material("wool", 0.039, 20, 1700, 4);

  /** Wood fibre board; ISO 10456 gives 0.05 to 0.07 by density, soft boards declare 0.040. */
  public static final Material WOOD_FIBRE = new Material("wood_fibre", 0.040, 160, 2100, 1.4);

  /** Expanded cork board; ISO 10456 gives 0.045 to 0.050; moisture as wood fibre. */
  public static final Material CORK = new Material("cork", 0.045, 120, 1560, 1.4);

  /** Rye straw pressed across, as in straw boxes; from memory, low confidence. */
  public static final Material STRAW = new Material("straw", 0.055, 130, 1600, 4);

  /** Roofing felt; ISO 10456, bitumen felt. */
  public static final Material FELT = new Material("felt", 0.23, 1100, 1000);

  /** Steel; ISO 10456. */
  public static final Material STEEL = new Material("steel", 50, 7800, 450);

  /** Stainless steel, austenitic; ISO 10456. */
  public static final Material STAINLESS = new Material("stainless", 17, 7900, 500);

  /** Aluminium alloy; ISO 10456. */
  public static final Material ALUMINIUM = new Material("aluminium", 160, 2800, 880);

  /** Dry sand in bulk; handbooks give 0.22 to 0.35 by grain and packing. */
  public static final Material SAND = new Material("sand", 0.27, 1600, 800);

  /** Glass beads in bulk, by P. Zehner and E. U. Schlünder (1970) for a porosity of 0.38. */
  public static final Material GLASS_BEADS = new Material("glass_beads", 0.18, 1550, 800);

  /** Water at rest at 20 °C; handbook value. */
  public static final Material WATER = new Material("water", 0.60, 998, 4182);

  /** A material whose conductivity is taken at the moisture of use. */
  public Material(String key, double conductivityWMK, double densityKgM3, double specificHeatJKgK) {
    this(key, conductivityWMK, densityKgM3, specificHeatJKgK, 0);
  }

  /** Every material that a part of a hive may be made of. */
  public static java.util.List<Material> all() {
    return java.util.List.of(
        SOFTWOOD,
        HARDWOOD,
        DENSE_HARDWOOD,
        PLYWOOD,
        EPS,
        DENSE_EPS,
        XPS,
        PUR,
        WOOL,
        WOOD_FIBRE,
        CORK,
        STRAW,
        FELT,
        STEEL,
        STAINLESS,
        ALUMINIUM);
  }

  /** Heat capacity of a cubic metre, J/(m³K). */
  public double heatCapacityJM3K() {
    return densityKgM3 * specificHeatJKgK;
  }

  /**
   * The same material with water in its pores: conductivity by ISO 10456:2007, equation for
   * moisture by volume; the heat capacity of the water comes to its own.
   *
   * @param volumeShare m³ of water per m³, 0 to 0.1
   */
  public Material wetted(double volumeShare) {
    if (volumeShare == 0) {
      return this;
    }
    return new Material(
        key,
        conductivityWMK * StrictMath.exp(moistureCoefficient * volumeShare),
        densityKgM3,
        specificHeatJKgK + volumeShare * WATER_J_M3_K / densityKgM3,
        moistureCoefficient);
  }
}
