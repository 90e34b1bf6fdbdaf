package org.broodbench.colony;

/**
 * Numbers of bees and brood, hour by hour: brood by day of laying ({@link BroodNest}), hive bees by
 * day of age, bees that were there at the start, foragers.
 *
 * <p>Recruitment of foragers and the shares for food and nurses are those of the published
 * two-compartment models ({@link SocialRates}); that recruits and losses of foragers go with flight
 * weather, that nobody forages in the first five days, and everything about pollen is our own
 * choice. Left out: drones, swarming, robbing, disease, mites, a change of queen.
 */
public final class Population {
  /** Age bins of hive bees, d; the last holds all older ones. */
  private static final int AGES = 60;

  /** Nobody forages before this age, d; own choice. */
  private static final int FORAGES_FROM_D = 5;

  /** Loss of hive bees, 1/d: the winter value, 0.004 to 0.01; from memory. */
  private static final double HIVE_LOSS = 0.004;

  /** Hours of flight that make a whole day's work, and no more; own choice. */
  private static final double FULL_DAY_H = 8;

  /** Nurses at which half of the laying is brought up, 2013 model. */
  private static final double NURSES_HALF = 5000;

  /** Store at which laying halves, kg, and the colony for which that was meant; 2013 model. */
  private static final double FOOD_HALF_KG = 0.5;

  private static final double FOOD_HALF_BEES = 12_500;

  /** The same of pollen, kg: a few days of need; own choice. */
  private static final double POLLEN_HALF_KG = 0.25;

  /**
   * Net honey of a nectar forager in a whole day, kg: the 2013 model has 0.1 g for all foragers, of
   * whom a third is taken to gather pollen.
   */
  private static final double NECTAR_KG = 1.5e-4;

  /** Pollen of a pollen forager in a whole day, kg: ten loads of 15 mg; from memory. */
  private static final double POLLEN_KG = 1.5e-4;

  /** Share of foragers that gather pollen where there is plenty, and more where it lacks. */
  private static final double POLLEN_LEAST = 0.2;

  private static final double POLLEN_MORE = 0.6;

  /** Pollen that a larva takes in all, kg: 25 to 37.5 mg of protein at a quarter of pollen. */
  private static final double POLLEN_LARVA_KG = 1.2e-4;

  /** Water in the food of a larva, kg; from memory, low confidence. */
  private static final double WATER_LARVA_KG = 1.5e-4;

  private static final double OPEN_DAYS = 6;

  /** Days from egg to bee in a warm nest. */
  private static final double BROOD_DAYS = 20.5;

  /** Share of bees on brood when the nest is laid out; own choice. */
  private static final double ON_BROOD = 0.6;

  /** The same when it must be, before brood is left bare; own choice. */
  private static final double ON_BROOD_MOST = 0.8;

  /** Share of the bees at the start that forage; own choice. */
  private static final double FORAGERS_AT_START = 0.15;

  /** Honey in one cell, kg: a full deep frame of 2.9 kg over 6,900 cells. */
  private static final double CELL_HONEY_KG = 4.2e-4;

  private final LifeSpec spec;
  private final BroodNest brood = new BroodNest();
  private final double[] hive = new double[AGES];
  private final AdultDose dose = new AdultDose();
  private double old;
  private double foragers;
  private double pollenKg;
  private int hours;
  private double workToday;

  private double laid;
  private double emerged;
  private double lost;
  private double chilled;
  private double nectarKg;
  private double waterKg;
  private double pollenEatenKg;
  private double uncovered;

  /** A colony at the start of a run. */
  public Population(ColonySpec colony) {
    spec = colony.life();
    pollenKg = colony.bees() > 0 ? spec.pollenKg() : 0;
    come(colony.bees(), colony.broodCells());
  }

  /** Bees and brood of all ages move in. */
  public void come(double bees, double broodCells) {
    if (pollenKg == 0 && bees > 0) {
      pollenKg = spec.pollenKg();
    }
    foragers += FORAGERS_AT_START * bees;
    old += (1 - FORAGERS_AT_START) * bees;
    if (broodCells > 0) {
      brood.addMixed(broodCells);
    }
  }

  /** An hour passes. */
  public void hour(Hour h) {
    if (hours > 0 && hours % 24 == 0) {
      newDay();
    }
    hours++;
    temperatureDeaths(h);
    double work = StrictMath.min(h.flight / FULL_DAY_H, 1 - workToday);
    workToday += work;
    double all = bees();
    double half = FOOD_HALF_KG * StrictMath.min(1, all / FOOD_HALF_BEES);
    double food = SocialRates.plenty(h.storesKg, half);
    adults(work, food, h.storesKg);
    double share = pollenShare(all);
    forage(work, POLLEN_LEAST + POLLEN_MORE * (1 - share));
    lay(h, food, share);
    double larvae = brood.larvae();
    double needKg = POLLEN_LARVA_KG * larvae / OPEN_DAYS / 24;
    double eatenKg = StrictMath.min(pollenKg, needKg);
    pollenKg -= eatenKg;
    pollenEatenKg += eatenKg;
    waterKg += WATER_LARVA_KG * larvae / OPEN_DAYS / 24;
    boolean hungry = h.storesKg <= 0 || needKg > 0 && eatenKg < 0.5 * needKg;
    double total = brood.all();
    double covered = spec.coverCells() * ON_BROOD_MOST * bees();
    uncovered = total > covered ? 1 - covered / total : 0;
    // larvae that cannot be fed: half are given up within a day; own choice
    brood.hour(h.nestC, h.airC, uncovered, hungry ? 1 - StrictMath.pow(0.5, 1.0 / 24) : 0);
    hive[0] += brood.emerged();
    emerged += brood.emerged();
  }

  private double pollenShare(double all) {
    double half = POLLEN_HALF_KG * StrictMath.min(1, all / FOOD_HALF_BEES);
    return SocialRates.plenty(pollenKg, half);
  }

  private void newDay() {
    workToday = 0;
    brood.newDay();
    double last = hive[AGES - 1];
    System.arraycopy(hive, 0, hive, 1, AGES - 1);
    hive[AGES - 1] += last;
    hive[0] = 0;
  }

  private void temperatureDeaths(Hour h) {
    double cold = dose.outlivesCold();
    double hot = dose.outlivesHeat();
    dose.add(h.nestC, 3600);
    double colder = dose.outlivesCold();
    double lives = cold > 1e-9 ? StrictMath.min(1, colder / cold) : 0;
    lives *= hot > 1e-9 ? dose.outlivesHeat() / hot : 0;
    if (lives < 1) {
      chilled += bees() * (1 - lives);
      keep(lives, lives, lives);
    }
  }

  private void adults(double work, double food, double storesKg) {
    double before = bees();
    double resting = 1 - HIVE_LOSS / 24;
    double starved = storesKg <= 0 ? StrictMath.pow(0.5, 1.0 / 24) : 1;
    double flying = StrictMath.max(0, 1 - spec.foragerLoss() * work);
    keep(resting * starved, (1 - spec.oldLoss() / 24) * starved, resting * starved * flying);
    lost += before - bees();
    // SocialRates counts days; a whole day of flight is worth one
    double ready = old;
    for (int a = FORAGES_FROM_D; a < AGES; a++) {
      ready += hive[a];
    }
    double rate = work * SocialRates.recruitment(inHive(), foragers, food);
    if (rate > 0) {
      double share = StrictMath.min(1, rate);
      foragers += share * ready;
      old *= 1 - share;
      for (int a = FORAGES_FROM_D; a < AGES; a++) {
        hive[a] *= 1 - share;
      }
    } else {
      double back = StrictMath.min(foragers, -rate * inHive());
      foragers -= back;
      hive[AGES - 1] += back;
    }
  }

  private void keep(double ofHive, double ofOld, double ofForagers) {
    for (int a = 0; a < AGES; a++) {
      hive[a] *= ofHive;
    }
    old *= ofOld;
    foragers *= ofForagers;
  }

  private void forage(double work, double onPollen) {
    double days = foragers * work * spec.forage();
    nectarKg += NECTAR_KG * (1 - onPollen) * days;
    pollenKg += POLLEN_KG * onPollen * days;
  }

  private void lay(Hour h, double food, double pollen) {
    if (!spec.queen()) {
      return;
    }
    double total = brood.all();
    double free = h.combCells - total - h.storesKg / CELL_HONEY_KG;
    double covered = spec.coverCells() * ON_BROOD * bees();
    double room = StrictMath.max(0, StrictMath.min(free, covered - total));
    double warm = clamp((h.nestC - 30) / 3);
    double season = season(h.lightHours);
    double nurses = SocialRates.raised(inHive(), NURSES_HALF);
    double perDay = spec.highestLaying() * nurses * food * pollen * warm * season;
    // as many as keep the nest covered when all of them have grown: no more at once than at length
    double lasting = StrictMath.min(room, covered / BROOD_DAYS);
    double eggs = StrictMath.min(perDay, lasting) / 24;
    brood.lay(eggs);
    laid += eggs;
  }

  /** How willing the queen is by day length: none below 9 h, all from 11 h on; own choice. */
  private static double season(double lightHours) {
    return clamp((lightHours - 9) / 2);
  }

  /**
   * Cells for whose sake bees keep the nest at brood temperature: the brood, or a first cell that
   * they get ready for a queen about to lay.
   */
  public double broodToWarm(double lightHours) {
    boolean ready = spec.queen() && season(lightHours) > 0.5;
    return StrictMath.max(brood.all(), ready ? 1 : 0);
  }

  private static double clamp(double x) {
    return x < 0 ? 0 : x > 1 ? 1 : x;
  }

  private double inHive() {
    double sum = old;
    for (double n : hive) {
      sum += n;
    }
    return sum;
  }

  /** The colony is dead: bees and brood. */
  public void die() {
    chilled += bees();
    keep(0, 0, 0);
    brood.die();
  }

  /** Adult bees. */
  public double bees() {
    return inHive() + foragers;
  }

  /** Foragers among them. */
  public double foragers() {
    return foragers;
  }

  /** The brood. */
  public BroodNest brood() {
    return brood;
  }

  /** Share of the brood that no bee covers. */
  public double uncovered() {
    return uncovered;
  }

  /** Pollen in the combs, kg. */
  public double pollenKg() {
    return pollenKg;
  }

  /** Pollen fed to larvae so far, kg. */
  public double pollenEatenKg() {
    return pollenEatenKg;
  }

  /** Net nectar brought so far, as honey, kg. */
  public double nectarKg() {
    return nectarKg;
  }

  /** Water that larvae took in their food so far, kg. */
  public double waterKg() {
    return waterKg;
  }

  /** Eggs laid so far. */
  public double laid() {
    return laid;
  }

  /** Bees emerged so far. */
  public double emerged() {
    return emerged;
  }

  /** Bees dead of age, flight or hunger so far. */
  public double lost() {
    return lost;
  }

  /** Bees dead of cold or heat in the nest so far. */
  public double chilled() {
    return chilled;
  }
}
