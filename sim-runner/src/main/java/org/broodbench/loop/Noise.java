package org.broodbench.loop;

/**
 * Noise that depends on seed, channel and tick alone, so that a step worked out again draws the
 * same. The mixing function is the finaliser of G. L. Steele, D. Lea and C. H. Flood, "Fast
 * splittable pseudorandom number generators", OOPSLA 2014.
 */
final class Noise {
  /** Standard deviation of the sum of four uniform numbers of 16 bits, 65536·√(4/12). */
  private static final double SCALE = 1 / (65_536 * Math.sqrt(4.0 / 12));

  private Noise() {}

  static long mix(long z) {
    long a = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
    long b = (a ^ (a >>> 27)) * 0x94d049bb133111ebL;
    return b ^ (b >>> 31);
  }

  /** What a seed and a channel amount to, worked out once. */
  static long key(long seed, int channel) {
    return mix(seed * 0x9e3779b97f4a7c15L + channel);
  }

  /**
   * About normal (a sum of four uniform numbers), mean 0, standard deviation 1, never beyond ±3.47.
   */
  static double normal(long key, long tick) {
    long bits = mix(key + tick * 0x9e3779b97f4a7c15L);
    long sum = (bits & 0xffff) + (bits >>> 16 & 0xffff) + (bits >>> 32 & 0xffff) + (bits >>> 48);
    return (sum - 131_070) * SCALE;
  }
}
