package org.broodbench.hive;

/** What water did on one surface over a run: how much, for how long, when first and when most. */
final class WaterBook {
  /** Film from which a surface counts as wet, kg/m²: a hundredth of a millimetre; own choice. */
  private static final double WET_KG_M2 = 0.01;

  private final double areaM2;

  double condensedKg;
  double evaporatedKg;
  double drainedKg;
  double condensingS;
  double wetS;
  double firstAtS = -1;
  double mostKgS;
  double mostAtS = -1;

  WaterBook(double areaM2) {
    this.areaM2 = areaM2;
  }

  /** Books a step that ends at a time. */
  void book(double kg, double ranOffKg, double filmKg, double stepS, double endS) {
    if (kg > 0) {
      condensedKg += kg;
      condensingS += stepS;
      if (firstAtS < 0) {
        firstAtS = endS;
      }
      if (kg > mostKgS * stepS) {
        mostKgS = kg / stepS;
        mostAtS = endS;
      }
    } else {
      evaporatedKg -= kg;
    }
    drainedKg += ranOffKg;
    if (filmKg > WET_KG_M2 * areaM2) {
      wetS += stepS;
    }
  }

  /** Goes on from the book of the same surface before a change of the hive. */
  void goOnFrom(WaterBook old) {
    condensedKg += old.condensedKg;
    evaporatedKg += old.evaporatedKg;
    drainedKg += old.drainedKg;
    condensingS = Math.max(condensingS, old.condensingS);
    wetS = Math.max(wetS, old.wetS);
    firstAtS = old.firstAtS;
    mostKgS = old.mostKgS;
    mostAtS = old.mostAtS;
  }
}
