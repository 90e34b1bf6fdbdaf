package org.broodbench.sky;

/**
 * Random numbers that depend on nothing but a seed and the name of the stream: SplitMix64 of
 * Steele, Lea and Flood 2014. One object is one stream and belongs to one user.
 */
final class Draws {
  private static final long GOLDEN = 0x9E3779B97F4A7C15L;

  private long state;
  private double spare = Double.NaN;

  /** A stream of its own for every pair of seed and number. */
  Draws(long seed, long stream) {
    state = mix(mix(seed) + stream * GOLDEN);
  }

  private static long mix(long z) {
    long a = (z ^ z >>> 30) * 0xBF58476D1CE4E5B9L;
    long b = (a ^ a >>> 27) * 0x94D049BB133111EBL;
    return b ^ b >>> 31;
  }

  /** Even on [0, 1). */
  double uniform() {
    state += GOLDEN;
    return (mix(state) >>> 11) * 0x1p-53;
  }

  /** Even on 0 to bound - 1. */
  int below(int bound) {
    return (int) (uniform() * bound);
  }

  /** Normal with mean 0 and standard deviation 1: Marsaglia's polar method. */
  double normal() {
    if (!Double.isNaN(spare)) {
      double kept = spare;
      spare = Double.NaN;
      return kept;
    }
    while (true) {
      double u = 2 * uniform() - 1;
      double v = 2 * uniform() - 1;
      double s = u * u + v * v;
      if (s < 1 && s > 0) {
        double f = StrictMath.sqrt(-2 * StrictMath.log(s) / s);
        spare = v * f;
        return u * f;
      }
    }
  }

  /** Exponential with mean 1. */
  double exponential() {
    return -StrictMath.log(1 - uniform());
  }
}
