package org.broodbench.colony;

/**
 * What the numbers of bees and brood hang on. Nearly all of it is uncertain; the ranges stand with
 * the scenario keys.
 *
 * @param moves whether numbers move during a plain run; an outlook always lets them
 * @param queen whether a laying queen is there
 * @param highestLaying eggs a day that the queen lays in a strong colony
 * @param foragerLoss share of foragers lost in a day of flight, of eight hours
 * @param oldLoss share of the bees there at the start that die in a day, flight apart
 * @param forage what the land gives: 0 nothing, 1 plenty
 * @param pollenKg pollen in the combs at the start, kg
 * @param flightFromC air from which bees forage, °C
 * @param coverCells brood cells that one bee on the brood covers
 */
public record LifeSpec(
    boolean moves,
    boolean queen,
    double highestLaying,
    double foragerLoss,
    double oldLoss,
    double forage,
    double pollenKg,
    double flightFromC,
    double coverCells) {
  /** The defaults of the scenario keys, where their sources stand. */
  public static final LifeSpec USUAL =
      new LifeSpec(false, true, 1500, 0.154, 0.02, 0.8, 0.3, 12, 3.2);

  /** The same with numbers that move. */
  public LifeSpec moving() {
    return new LifeSpec(
        true,
        queen,
        highestLaying,
        foragerLoss,
        oldLoss,
        forage,
        pollenKg,
        flightFromC,
        coverCells);
  }
}
