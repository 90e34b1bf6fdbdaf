package org.broodbench.hive;

import java.util.List;

/**
 * The hive cut open at one moment: what a drawing of its section needs. Temperatures in °C; not a
 * number where there is no such part.
 *
 * @param outdoorC outdoor air
 * @param nestC brood comb with its bees
 * @param mantleC outer bees of the cluster
 * @param plateC surface of the heater plate
 * @param panCoreC middle of the filling of the pan
 * @param contactC top of the pan, which bees can touch
 * @param boxes from the bottom up
 * @param lid the lid
 * @param floor the floor
 * @param throughM3S air that goes in below and out above, m³/s, negative downwards
 * @param twoWayM3S air that goes in and out through the entrance at once, m³/s
 */
public record HiveSection(
    double outdoorC,
    double nestC,
    double mantleC,
    double plateC,
    double panCoreC,
    double contactC,
    List<Box> boxes,
    Face lid,
    Face floor,
    double throughM3S,
    double twoWayM3S) {

  /**
   * One box.
   *
   * @param heightM inside height, m
   * @param airC its air
   * @param combC its combs beside the nest, or its container of feed
   * @param rhPercent relative humidity of its air
   * @param wall its walls
   */
  public record Box(double heightM, double airC, double combC, double rhPercent, Face wall) {}

  /**
   * A wall, the lid or the floor.
   *
   * @param insideC inner surface
   * @param outsideC outer surface, behind a screen where there is one
   * @param condensingGH water that condenses on it, g/h; negative where it dries
   */
  public record Face(double insideC, double outsideC, double condensingGH) {}

  /**
   * Water on one surface over a run.
   *
   * @param surface its name: wall 1, lid, combs 1, nest, ...
   * @param condensedG all that condensed, g
   * @param evaporatedG all that dried again, g
   * @param ranOffG what dripped or ran off, g
   * @param standingG what stands on it at the end, g
   * @param hoursCondensing time with water condensing, h
   * @param hoursWet time with a film of more than a hundredth of a millimetre, h
   * @param firstAtS when water condensed first, s since the start; −1 if never
   * @param mostGH highest rate, g/h
   * @param mostAtS when that was, s since the start; −1 if never
   */
  public record Film(
      String surface,
      double condensedG,
      double evaporatedG,
      double ranOffG,
      double standingG,
      double hoursCondensing,
      double hoursWet,
      double firstAtS,
      double mostGH,
      double mostAtS) {}

  /**
   * Heat that one way took out of the hive over a run.
   *
   * @param way its name: wall 1, lid, floor, air
   * @param areaM2 area, m²; not a number for air
   * @param outJ heat from inside to the outer surface, net of what sun and sky did, J
   * @param sunJ sunlight that the outer surface took up, J; most of it goes off to the air again
   */
  public record Way(String way, double areaM2, double outJ, double sunJ) {}
}
