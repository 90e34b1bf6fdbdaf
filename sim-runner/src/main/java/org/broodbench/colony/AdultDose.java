package org.broodbench.colony;

/**
 * Death of adult bees by cold and by heat as doses over time.
 *
 * <p>Cold: in chill coma, below 10 °C, most bees are dead after about 50 h, and they freeze to
 * death between −2 and −6 °C ("Chill-coma and cold death temperatures of Apis mellifera",
 * abstract); the exponent 4, few dead after a day and nearly all after 80 h, is our own choice.
 * Bees that were warmed again begin anew. Heat: half dead after 5 min at 50.3 °C (H. Kovac and
 * others, Apidologie 45 (2014), abstract; the 5 min second-hand) with a tenfold change of time in 3
 * K, own choice, so that 45 °C takes five hours; exponent 6 as for brood.
 *
 * <p>Queens: 15 to 38 °C is safe for their store of sperm, 2 h at 40 °C are not (A. McAfee and
 * others, Nature Sustainability 3 (2020), abstract).
 */
public final class AdultDose {
  /** Chill coma begins, °C; published values lie between 9 and 12. */
  public static final double COMA_C = 10;

  /** At and below this bees freeze to death, °C. */
  public static final double FREEZING_C = -6;

  /** Time in coma that kills half, h. */
  public static final double COMA_HALF_H = 50;

  /** Heat below this does no harm within weeks, °C. */
  private static final double HARMLESS_C = 38;

  private static final double HOT_HALF_H = 5.0 / 60;
  private static final double HOT_HALF_C = 50.3;
  private static final double TENFOLD_K = 3;

  /** The queen's store of sperm is safe up to this, °C. */
  private static final double QUEEN_SAFE_C = 38;

  /** Degree-hours above it that harm: 2 h at 40 °C. */
  private static final double QUEEN_HARM_KH = 4;

  private double queenKh;
  private double comaH;
  private double hot;
  private boolean frozen;

  /** Adds an interval at the temperature of the nest. */
  public void add(double nestC, double seconds) {
    double hours = seconds / 3600;
    if (nestC <= FREEZING_C) {
      frozen = true;
    }
    if (nestC < COMA_C) {
      comaH += hours;
    } else {
      comaH = 0;
    }
    if (nestC > QUEEN_SAFE_C) {
      queenKh += (nestC - QUEEN_SAFE_C) * hours;
    }
    if (nestC > HARMLESS_C) {
      hot += hours / (HOT_HALF_H * StrictMath.pow(10, (HOT_HALF_C - nestC) / TENFOLD_K));
    }
  }

  /** Whether the heat so far may have harmed the queen's store of sperm. */
  public boolean queenAtRisk() {
    return queenKh >= QUEEN_HARM_KH;
  }

  /** Hours in chill coma without a break. */
  public double comaHours() {
    return comaH;
  }

  /** Whether the nest was so cold that bees freeze to death. */
  public boolean frozen() {
    return frozen;
  }

  /** Share of bees that outlives the present spell of coma. */
  public double outlivesCold() {
    return frozen ? 0 : StrictMath.pow(0.5, StrictMath.pow(comaH / COMA_HALF_H, 4));
  }

  /** Share of bees that outlives the heat so far. */
  public double outlivesHeat() {
    return StrictMath.pow(0.5, StrictMath.pow(hot, 6));
  }
}
