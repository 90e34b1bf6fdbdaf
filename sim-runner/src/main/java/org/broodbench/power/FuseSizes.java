package org.broodbench.power;

/** Usual ratings of blade and bolt fuses. Common practice, no source. */
public final class FuseSizes {
  private static final double[] USUAL_A = {
    1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 80, 100, 125, 150, 200, 250, 300, 400, 500,
    600, 800, 1000
  };

  private FuseSizes() {}

  /** The least usual rating that is not smaller, A; 1000 where none is. */
  public static double atLeastA(double currentA) {
    for (double size : USUAL_A) {
      if (size >= currentA) {
        return size;
      }
    }
    return USUAL_A[USUAL_A.length - 1];
  }

  /** The largest usual rating that is not larger, A; 1 where none is. */
  public static double atMostA(double currentA) {
    double best = USUAL_A[0];
    for (double size : USUAL_A) {
      best = size <= currentA ? size : best;
    }
    return best;
  }
}
