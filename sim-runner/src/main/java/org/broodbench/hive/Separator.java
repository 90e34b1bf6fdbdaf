package org.broodbench.hive;

import org.broodbench.matter.Material;

/**
 * What lies between a box and the one below it.
 *
 * @param kind sort
 * @param openShare share of a perforated sheet that its holes take, 0 to 1
 * @param holeM width of its holes, m
 * @param openingM2 free area of the feed hole of a board, m²
 * @param thicknessM thickness, m
 * @param material what a board is made of
 */
public record Separator(
    Kind kind,
    double openShare,
    double holeM,
    double openingM2,
    double thicknessM,
    Material material) {
  /** Sorts. */
  public enum Kind {
    /** Nothing: the gaps between the frames alone. */
    NONE,
    /** A perforated sheet or a grid, such as keeps a queen below. */
    SHEET,
    /** A board with at most a hole. */
    BOARD
  }

  /** Nothing between the boxes. */
  public static final Separator NONE = new Separator(Kind.NONE, 1, 1, 0, 0, Material.SOFTWOOD);

  /**
   * Loss coefficient on the approach velocity of a thin plate with sharp edges: (0.707 √(1−f) + 1 −
   * f)²/f². I. E. Idelchik, Handbook of Hydraulic Resistance, perforated plates.
   */
  public static double thinPlateLoss(double openShare) {
    double a = (0.707 * Math.sqrt(1 - openShare) + 1 - openShare) / openShare;
    return a * a;
  }

  /**
   * The same of a thick plate with square edges, where the jets meet the walls of the holes again:
   * (0.5 (1−f) + 1 − f²)/f². R. D. Blevins, Applied Fluid Dynamics Handbook (1984).
   */
  public static double thickPlateLoss(double openShare) {
    return (0.5 * (1 - openShare) + 1 - openShare * openShare) / (openShare * openShare);
  }

  /**
   * Inverse square of discharge coefficient times area, 1/m⁴, so that Δp = ρ/2 Q² times it; 0 for
   * nothing. A plate counts as thick from a hole's width on.
   *
   * @param planM2 inside plan of the hive
   * @param freeShare share of the holes that bees leave free
   * @param dischargeCoefficient of the feed hole
   */
  double drag(double planM2, double freeShare, double dischargeCoefficient) {
    switch (kind) {
      case SHEET:
        double free = Math.min(0.999, openShare * freeShare);
        double loss = thicknessM < holeM ? thinPlateLoss(free) : thickPlateLoss(free);
        return loss / (planM2 * planM2);
      case BOARD:
        // a board without a hole still leaks by its rim; own choice, a quarter of a cm²
        double areaM2 = dischargeCoefficient * (openingM2 * freeShare + 2.5e-5);
        return 1 / (areaM2 * areaM2);
      default:
        return 0;
    }
  }
}
