package org.broodbench.colony;

/**
 * Cold and heat damage to brood as doses. The magnitudes are unpublished: cold keeps only the order
 * that Q. Wang and others, PLoS ONE 11 (2016), report (longer is worse; prepupae and emerging pupae
 * worst), heat is anchored at 28 % and 84 % failed after 12 and 16 h at 40 °C (Apis cerana
 * prepupae; Xu and others, Front. Ecol. Evol. (2023), abstract) with an assumed tenfold change of
 * time in 4 K.
 */
public final class BroodDose {
  /** Degree-hours below 32 °C that kill half of the sensitive brood, K·h; low confidence. */
  static final double SENSITIVE_KH = 600;

  /** The same for eggs in their first day aside, open larvae and mid pupae, K·h; low confidence. */
  static final double RESISTANT_KH = 1500;

  /** Share of brood in the sensitive ages; own choice, about 8 of 21 days. */
  private static final double SENSITIVE_SHARE = 0.4;

  private double coldKh;
  private double heatDose;

  /** Adds an interval at a temperature. */
  public void add(double broodC, double seconds) {
    double hours = seconds / 3600;
    if (broodC < 32) {
      coldKh += (32 - broodC) * hours;
    }
    heatDose += heatDose(broodC, seconds);
  }

  /** Dose of heat of an interval; 1 kills half. */
  static double heatDose(double broodC, double seconds) {
    return broodC > 37 ? seconds / 3600 / (13.5 * StrictMath.pow(10, (40 - broodC) / 4)) : 0;
  }

  /** Share of brood that outlives a dose of heat: ½^(D⁶). */
  static double outlivesHeat(double dose) {
    return StrictMath.pow(0.5, StrictMath.pow(dose, 6));
  }

  /** Share of brood that the cold so far has killed, 0 to 1. */
  public double lostToCold() {
    return SENSITIVE_SHARE * (1 - StrictMath.pow(0.5, coldKh / SENSITIVE_KH))
        + (1 - SENSITIVE_SHARE) * (1 - StrictMath.pow(0.5, coldKh / RESISTANT_KH));
  }

  /** Share of brood that the heat so far has killed, 0 to 1: 1 − ½^(D⁶). */
  public double lostToHeat() {
    return 1 - outlivesHeat(heatDose);
  }
}
