package org.broodbench.sky;

import java.util.ArrayList;
import java.util.List;

/** Nights of a place: from the sun's setting to its rising. */
public final class Nights {
  private static final int STEP_S = 300;
  private static final int DAY_S = 86_400;

  private Nights() {}

  /**
   * One night.
   *
   * @param duskEpochS sunset, to five minutes
   * @param dawnEpochS sunrise after it
   */
  public record Night(long duskEpochS, long dawnEpochS) {}

  /**
   * The whole nights between two times. Where the sun does not set or rise for more than a day and
   * a half, a night runs from 18 h to 6 h of local mean solar time.
   */
  public static List<Night> between(Place place, long fromEpochS, long toEpochS) {
    long first = fromEpochS - Math.floorMod(fromEpochS, STEP_S);
    SunTrack sun = new SunTrack(place, first - DAY_S, toEpochS + DAY_S);
    List<Night> nights = new ArrayList<>();
    sun.at(first);
    boolean up = sun.up() > 0;
    long dusk = -1;
    long changed = first;
    for (long t = first + STEP_S; t <= toEpochS; t += STEP_S) {
      sun.at(t);
      boolean now = sun.up() > 0;
      if (now && !up && dusk >= 0) {
        nights.add(new Night(dusk, t));
      }
      if (!now && up) {
        dusk = t;
      }
      if (now != up) {
        changed = t;
        up = now;
      } else if (t - changed > DAY_S * 3 / 2) {
        return byTheClock(place, first, toEpochS);
      }
    }
    return nights;
  }

  private static List<Night> byTheClock(Place place, long fromEpochS, long toEpochS) {
    // 18 h of local mean solar time, to five minutes
    long eveningS = 18 * 3600 - Math.round(place.longitudeDeg() * 240 / STEP_S) * STEP_S;
    List<Night> nights = new ArrayList<>();
    long midnight = fromEpochS - Math.floorMod(fromEpochS, (long) DAY_S) - DAY_S;
    for (long t = midnight + eveningS; t + DAY_S / 2 <= toEpochS; t += DAY_S) {
      if (t >= fromEpochS) {
        nights.add(new Night(t, t + DAY_S / 2));
      }
    }
    return nights;
  }
}
