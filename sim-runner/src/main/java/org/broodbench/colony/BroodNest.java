package org.broodbench.colony;

/**
 * Brood by day of laying: development by temperature, natural losses, damage by cold and heat.
 *
 * <p>Development: 0.00237 (T − 14.4) a day, own fit to 20.5 d at 35 °C (Wisconsin counts of
 * 1924–25, abstract) and 24 d at 32 °C; none below 28 °C, no faster above 36 °C. Egg 3 of 21 days,
 * open larva 6, sealed 12. Of 100 eggs 94.2 reach the larva and 85.1 the adult in good conditions
 * (Fukuda and Sakagami 1968, second-hand). Damage as in {@link BroodDose}, magnitude unpublished:
 * prepupae and brood near emergence are the sensitive ages (Q. Wang and others 2016, abstract).
 */
public final class BroodNest {
  static final double EGG_END = 3.0 / 21;
  static final double OPEN_END = 9.0 / 21;
  private static final double PREPUPA_END = 12.0 / 21;
  private static final double LATE_FROM = 18.0 / 21;
  private static final double EGG_LIVES = 0.942;
  private static final double REST_LIVES = 0.851 / 0.942;

  /** Days of laying that are kept; what has not emerged by then is dead. */
  private static final int DAYS = 80;

  private final double[] cells = new double[DAYS];
  private final double[] grown = new double[DAYS];
  private final double[] heatDose = new double[DAYS];
  private int today;

  private double emerged;
  private double lostToCold;
  private double lostToHeat;
  private double lostOtherwise;

  /** Development in a day at a temperature, as share of the whole. */
  public static double growthPerDay(double broodC) {
    return broodC < 28 ? 0 : 0.00237 * ((broodC > 36 ? 36 : broodC) - 14.4);
  }

  /** Adds brood of all ages, evenly. */
  public void addMixed(double newCells) {
    int days = 20;
    for (int k = 0; k < days; k++) {
      int slot = (today - 1 - k + DAYS) % DAYS;
      double age = (k + 0.5) / days;
      double before = cells[slot];
      double sum = before + newCells / days;
      if (sum > 0) {
        grown[slot] = (grown[slot] * before + age * newCells / days) / sum;
        heatDose[slot] *= before / sum;
      }
      cells[slot] = sum;
    }
  }

  /** A new day of laying begins. */
  public void newDay() {
    today = (today + 1) % DAYS;
    lostOtherwise += cells[today];
    cells[today] = 0;
    grown[today] = 0;
    heatDose[today] = 0;
  }

  /** Eggs are laid; they join those of the same day. */
  public void lay(double eggs) {
    double sum = cells[today] + eggs;
    if (sum > 0) {
      grown[today] *= cells[today] / sum;
      heatDose[today] *= cells[today] / sum;
      cells[today] = sum;
    }
  }

  /**
   * An hour passes.
   *
   * @param broodC temperature of the nest, °C
   * @param airC temperature of the box's air, °C: that of brood which no bee covers
   * @param uncovered share of brood that no bee covers
   * @param starving share of open larvae that is given up in this hour
   */
  public void hour(double broodC, double airC, double uncovered, double starving) {
    emerged = 0;
    double growth = growthPerDay(broodC) / 24;
    double coldK = broodC < 32 ? 32 - broodC : 0;
    double bareK = airC < 32 ? 32 - airC : 0;
    for (int i = 0; i < DAYS; i++) {
      if (cells[i] > 0) {
        cold(i, coldK, bareK, uncovered);
        heat(i, broodC);
        ripen(i, growth, starving);
      }
    }
  }

  private void cold(int i, double coldK, double bareK, double uncovered) {
    if (coldK <= 0 && uncovered <= 0) {
      return;
    }
    boolean sensitive = grown[i] >= OPEN_END && grown[i] < PREPUPA_END || grown[i] >= LATE_FROM;
    double half = sensitive ? BroodDose.SENSITIVE_KH : BroodDose.RESISTANT_KH;
    double lives =
        (1 - uncovered) * StrictMath.pow(0.5, coldK / half)
            + uncovered * StrictMath.pow(0.5, bareK / half);
    lostToCold += cells[i] * (1 - lives);
    cells[i] *= lives;
  }

  private void heat(int i, double broodC) {
    double more = BroodDose.heatDose(broodC, 3600);
    if (more > 0) {
      double before = BroodDose.outlivesHeat(heatDose[i]);
      heatDose[i] += more;
      double lives = before > 1e-12 ? BroodDose.outlivesHeat(heatDose[i]) / before : 0;
      lostToHeat += cells[i] * (1 - lives);
      cells[i] *= lives;
    }
  }

  private void ripen(int i, double growth, double starving) {
    boolean egg = grown[i] < EGG_END;
    double lives =
        egg
            ? StrictMath.pow(EGG_LIVES, growth / EGG_END)
            : StrictMath.pow(REST_LIVES, growth / (1 - EGG_END));
    if (grown[i] < OPEN_END) {
      lives *= 1 - starving;
    }
    lostOtherwise += cells[i] * (1 - lives);
    cells[i] *= lives;
    grown[i] += growth;
    if (grown[i] >= 1) {
      emerged += cells[i];
      cells[i] = 0;
    }
  }

  /** Bees that emerged in the last hour. */
  public double emerged() {
    return emerged;
  }

  /** All brood, cells. */
  public double all() {
    double sum = 0;
    for (double c : cells) {
      sum += c;
    }
    return sum;
  }

  /** Open larvae, which must be fed, cells. */
  public double larvae() {
    double sum = 0;
    for (int i = 0; i < DAYS; i++) {
      if (grown[i] >= EGG_END && grown[i] < OPEN_END) {
        sum += cells[i];
      }
    }
    return sum;
  }

  /** Brood killed by cold so far, cells; the magnitude is unpublished. */
  public double lostToCold() {
    return lostToCold;
  }

  /** Brood killed by heat so far, cells; the magnitude is unpublished. */
  public double lostToHeat() {
    return lostToHeat;
  }

  /** Brood that died of anything else so far, cells. */
  public double lostOtherwise() {
    return lostOtherwise;
  }

  /** All brood dies. */
  public void die() {
    for (int i = 0; i < DAYS; i++) {
      lostToCold += cells[i];
      cells[i] = 0;
    }
  }
}
