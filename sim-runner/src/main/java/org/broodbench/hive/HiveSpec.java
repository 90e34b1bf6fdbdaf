package org.broodbench.hive;

import java.util.List;

/**
 * The hive without bees and without electrics.
 *
 * @param lengthM inside length along the frames, m
 * @param widthM inside width, m
 * @param frontDeg azimuth of the front, which is one of the short sides, degrees from north over
 *     east
 * @param boxes the stack from the bottom up; the brood nest is in the box {@code broodBox}
 * @param broodBox index of the box with the brood nest, 0 is the lowest
 * @param wall layers of the side walls from the inside outwards
 * @param floor layers of the floor from the inside outwards
 * @param lid layers of the lid from the inside outwards
 * @param edgeFactor factor on the conductance of insulated faces for edges, joints and thin spots;
 *     1 is edge-free
 * @param wallSkin what the weather sees of the walls
 * @param lidSkin what the weather sees of the lid
 * @param entranceWidthM width of the entrance, m
 * @param entranceHeightM height of the entrance slot, m
 * @param topVentM2 free area of the upper vent, m²; 0 for none. The fan, where there is one, blows
 *     out through it
 * @param openShare share of the free opening areas that combs, mesh and bees leave open, 0 to 1
 * @param dischargeCoefficient orifice coefficient of the openings
 * @param windEffectiveness flow through the entrance per entrance area and wind speed at the hive
 * @param guesses numbers that nobody has measured well
 */
public record HiveSpec(
    double lengthM,
    double widthM,
    double frontDeg,
    List<BoxSpec> boxes,
    int broodBox,
    List<Layer> wall,
    List<Layer> floor,
    List<Layer> lid,
    double edgeFactor,
    Skin wallSkin,
    Skin lidSkin,
    double entranceWidthM,
    double entranceHeightM,
    double topVentM2,
    double openShare,
    double dischargeCoefficient,
    double windEffectiveness,
    Guesses guesses) {
  /** Copies the lists. */
  public HiveSpec {
    boxes = List.copyOf(boxes);
    wall = List.copyOf(wall);
    floor = List.copyOf(floor);
    lid = List.copyOf(lid);
  }

  /** A hive that faces south, with one finish on all faces. */
  public HiveSpec(
      double lengthM,
      double widthM,
      List<BoxSpec> boxes,
      int broodBox,
      List<Layer> wall,
      List<Layer> floor,
      List<Layer> lid,
      double edgeFactor,
      double solarAbsorptance,
      double entranceWidthM,
      double entranceHeightM,
      double topVentM2,
      double openShare,
      double dischargeCoefficient,
      double windEffectiveness) {
    this(
        lengthM,
        widthM,
        180,
        boxes,
        broodBox,
        wall,
        floor,
        lid,
        edgeFactor,
        new Skin(solarAbsorptance, false),
        new Skin(solarAbsorptance, false),
        entranceWidthM,
        entranceHeightM,
        topVentM2,
        openShare,
        dischargeCoefficient,
        windEffectiveness,
        Guesses.USUAL);
  }

  /** The same with another stack of boxes. */
  public HiveSpec withBoxes(List<BoxSpec> other) {
    return with(widthM, other, broodBox, wall, floor, lid);
  }

  /** The same with other walls, floor and lid. */
  public HiveSpec withLayers(List<Layer> otherWall, List<Layer> otherFloor, List<Layer> otherLid) {
    return with(widthM, boxes, broodBox, otherWall, otherFloor, otherLid);
  }

  /** The same with another width and another stack, the brood nest in its lowest box. */
  public HiveSpec narrowed(double otherWidthM, List<BoxSpec> otherBoxes) {
    return with(otherWidthM, otherBoxes, 0, wall, floor, lid);
  }

  private HiveSpec with(
      double otherWidthM,
      List<BoxSpec> otherBoxes,
      int otherBroodBox,
      List<Layer> otherWall,
      List<Layer> otherFloor,
      List<Layer> otherLid) {
    return new HiveSpec(
        lengthM,
        otherWidthM,
        frontDeg,
        otherBoxes,
        otherBroodBox,
        otherWall,
        otherFloor,
        otherLid,
        edgeFactor,
        wallSkin,
        lidSkin,
        entranceWidthM,
        entranceHeightM,
        topVentM2,
        openShare,
        dischargeCoefficient,
        windEffectiveness,
        guesses);
  }

  /**
   * Length of the walls in the middle of their innermost layer, the box proper, m. What edges and
   * corners of insulation around it add is the edge factor's part, so that a factor of 1 is
   * edge-free.
   */
  double wallPerimeterM() {
    return 2 * (lengthM + widthM) + 4 * wall.get(0).thicknessM();
  }

  /** Area of floor or lid in the middle of the walls that carry it, m². */
  double planM2(List<Layer> face) {
    double thicknessM = face.get(0).thicknessM();
    return (lengthM + thicknessM) * (widthM + thicknessM);
  }

  /**
   * Factor on the conductance of a face: for its edges, of insulated ones alone, and for what a log
   * showed.
   */
  double edgeFactor(List<Layer> face) {
    for (Layer l : face) {
      if (l.insulates()) {
        return guesses.lossFactor() * edgeFactor;
      }
    }
    return guesses.lossFactor();
  }
}
