package org.broodbench.colony;

/** What a colony met in an hour; filled by whoever runs it. */
public final class Hour {
  /** Mean temperature of the nest, °C. */
  public double nestC;

  /** Mean temperature of the air of the brood box, °C. */
  public double airC;

  /** Share of the hour in which bees can forage, 0 to 1. */
  public double flight;

  /** Hours of daylight in the day before. */
  public double lightHours;

  /** Honey and its like in the combs, kg. */
  public double storesKg;

  /** Worker cells of all combs, whatever stands in them. */
  public double combCells;
}
