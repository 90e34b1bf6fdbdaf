package org.broodbench.hive;

import java.util.List;

/**
 * The hive without bees and without electrics.
 *
 * @param lengthM inside length along the frames, m
 * @param widthM inside width, m
 * @param boxes the stack from the bottom up; the brood nest is in the box {@code broodBox}
 * @param broodBox index of the box with the brood nest, 0 is the lowest
 * @param wall layers of the side walls from the inside outwards
 * @param floor layers of the floor from the inside outwards
 * @param lid layers of the lid from the inside outwards
 * @param edgeFactor factor on the conductance of insulated faces for edges, joints and thin spots;
 *     1 is edge-free
 * @param solarAbsorptance share of sunlight that the outer faces absorb, 0 to 1
 * @param entranceWidthM width of the entrance, m
 * @param entranceHeightM height of the entrance slot, m
 * @param topVentM2 free area of the upper vent, m²; 0 for none. The fan, where there is one, blows
 *     out through it
 * @param openShare share of the free opening areas that combs, mesh and bees leave open, 0 to 1
 * @param dischargeCoefficient orifice coefficient of the openings
 * @param windEffectiveness flow through the entrance per entrance area and wind speed at the hive
 */
public record HiveSpec(
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
  /** Copies the lists. */
  public HiveSpec {
    boxes = List.copyOf(boxes);
    wall = List.copyOf(wall);
    floor = List.copyOf(floor);
    lid = List.copyOf(lid);
  }

  /** The same with another stack of boxes. */
  public HiveSpec withBoxes(List<BoxSpec> other) {
    return new HiveSpec(
        lengthM,
        widthM,
        other,
        broodBox,
        wall,
        floor,
        lid,
        edgeFactor,
        solarAbsorptance,
        entranceWidthM,
        entranceHeightM,
        topVentM2,
        openShare,
        dischargeCoefficient,
        windEffectiveness);
  }

  /** The same with other walls, floor and lid. */
  public HiveSpec withLayers(List<Layer> otherWall, List<Layer> otherFloor, List<Layer> otherLid) {
    return new HiveSpec(
        lengthM,
        widthM,
        boxes,
        broodBox,
        otherWall,
        otherFloor,
        otherLid,
        edgeFactor,
        solarAbsorptance,
        entranceWidthM,
        entranceHeightM,
        topVentM2,
        openShare,
        dischargeCoefficient,
        windEffectiveness);
  }
}
