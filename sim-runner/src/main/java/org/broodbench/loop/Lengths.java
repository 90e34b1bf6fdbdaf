package org.broodbench.loop;

/** Lengths of time as people say them: two units at most, and none that counts nothing. */
public final class Lengths {
  private static final long MINUTE_S = 60;
  private static final long HOUR_S = 3600;
  private static final long DAY_S = 86_400;

  private Lengths() {}

  /**
   * A length in words: {@code 40 s}, {@code 2 min 10 s}, {@code 1 h 10 min}, {@code 3 d 4 h}.
   *
   * @param seconds at least 0; what is not a number is "none"
   */
  public static String of(double seconds) {
    if (Double.isNaN(seconds)) {
      return "none";
    }
    if (seconds > 0 && seconds < 0.5) {
      return "less than 1 s";
    }
    long s = Math.round(seconds);
    if (s < HOUR_S) {
      return two(s, MINUTE_S, " min", " s", 1);
    }
    return s < 2 * DAY_S - MINUTE_S / 2
        ? two(nearest(s, MINUTE_S), HOUR_S, " h", " min", MINUTE_S)
        : two(nearest(s, HOUR_S), DAY_S, " d", " h", HOUR_S);
  }

  private static long nearest(long s, long unitS) {
    return (s + unitS / 2) / unitS * unitS;
  }

  private static String two(long s, long bigS, String big, String small, long smallS) {
    long bigs = s / bigS;
    long smalls = s % bigS / smallS;
    if (bigs == 0) {
      return smalls + small;
    }
    return bigs + big + (smalls == 0 ? "" : " " + smalls + small);
  }
}
