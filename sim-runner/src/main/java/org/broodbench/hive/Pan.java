package org.broodbench.hive;

import org.broodbench.matter.Material;

/**
 * The thermal mass over the heater plate: a filling in two halves under a cover that bees can
 * touch; or well mixed.
 *
 * @param heatJK heat capacity of the filling, J/K; 0 for no pan
 * @param fromPlateWK plate to the lower half, or to the whole where it is well mixed, W/K
 * @param throughWK between the halves, W/K; infinite where it is well mixed
 * @param toCoverWK upper half to the cover, W/K
 * @param coverJK heat capacity of the cover, J/K
 * @param airWK top of the pan to the air of the lowest box, W/K
 * @param nestWK top of the pan to the brood nest by radiation and plume, W/K
 * @param bulk what it is made of, for a drawing; null where only its heat is known
 */
public record Pan(
    double heatJK,
    double fromPlateWK,
    double throughWK,
    double toCoverWK,
    double coverJK,
    double airWK,
    double nestWK,
    Bulk bulk) {
  /** Cover of steel sheet, m; own choice. */
  private static final double COVER_M = 0.8e-3;

  /**
   * What a pan is made of.
   *
   * @param fill filling
   * @param massKg its mass, kg
   * @param areaM2 its top, m²
   */
  public record Bulk(Fill fill, double massKg, double areaM2) {
    /** Depth of the filling, m. */
    public double depthM() {
      return Pan.depthM(fill, areaM2, massKg);
    }
  }

  /** The same pan with what it is made of. */
  public Pan of(Bulk what) {
    return new Pan(heatJK, fromPlateWK, throughWK, toCoverWK, coverJK, airWK, nestWK, what);
  }

  /** A well mixed pan. */
  public static Pan mixed(double heatJK, double fromPlateWK, double airWK, double nestWK) {
    return new Pan(heatJK, fromPlateWK, Double.POSITIVE_INFINITY, 0, 0, airWK, nestWK, null);
  }

  /** Whether it has one temperature. */
  boolean isMixed() {
    return Double.isInfinite(throughWK);
  }

  /** Fillings. */
  public enum Fill {
    /** Dry sand. */
    SAND(Material.SAND, 0),
    /** Glass beads. */
    GLASS_BEADS(Material.GLASS_BEADS, 0),
    /**
     * Water, stirred by its own warmth: 300 W/(m²K) from a heated floor, from memory for a few
     * kelvin, medium confidence.
     */
    WATER(Material.WATER, 300),
    /** A bare plate of steel. */
    NONE(Material.STEEL, 1e5);

    private final Material material;
    private final double stirredWM2K;

    Fill(Material material, double stirredWM2K) {
      this.material = material;
      this.stirredWM2K = stirredWM2K;
    }

    /** What it is. */
    public Material material() {
      return material;
    }
  }

  /**
   * How well the plate lies on the floor of the pan, by the air between: 0.05, 0.15 and 0.5 mm with
   * 0.026 W/(m K); own choice.
   */
  public enum Contact {
    /** Paste or glue between. */
    BONDED(500),
    /** Flat metal on flat metal. */
    FLAT(170),
    /** Warped or dusty. */
    LOOSE(50);

    private final double wm2k;

    Contact(double wm2k) {
      this.wm2k = wm2k;
    }

    /** Conductance of a square metre, W/(m²K). */
    public double wm2k() {
      return wm2k;
    }
  }

  /**
   * Plate to the lower half of a filling, W/K: contact and a quarter of the depth in series over
   * the plate's area; the heat is not spread.
   */
  public static double fromPlateWK(
      Fill fill, Contact contact, double plateM2, double panM2, double massKg) {
    double areaM2 = Math.min(plateM2, panM2);
    double into =
        fill.stirredWM2K > 0
            ? 1 / fill.stirredWM2K
            : depthM(fill, panM2, massKg) / 4 / fill.material.conductivityWMK();
    return areaM2 / (1 / contact.wm2k + into);
  }

  /** Between the middles of the halves, half the depth apart, W/K; infinite where it is stirred. */
  public static double throughWK(Fill fill, double panM2, double massKg) {
    return fill.stirredWM2K > 0
        ? Double.POSITIVE_INFINITY
        : panM2 * fill.material.conductivityWMK() / (depthM(fill, panM2, massKg) / 2);
  }

  /** A pan of a filling that goes through heat as its layers do. */
  public static Pan filled(
      double heatJK,
      double fromPlateWK,
      double throughWK,
      double panM2,
      double airWK,
      double nestWK) {
    if (Double.isInfinite(throughWK)) {
      return mixed(heatJK, fromPlateWK, airWK, nestWK);
    }
    // from the middle of the upper half to its top is half as far as between the middles
    return new Pan(
        heatJK,
        fromPlateWK,
        throughWK,
        2 * throughWK,
        panM2 * COVER_M * Material.STEEL.heatCapacityJM3K(),
        airWK,
        nestWK,
        null);
  }

  private static double depthM(Fill fill, double panM2, double massKg) {
    return massKg / (fill.material.densityKgM3() * panM2);
  }
}
