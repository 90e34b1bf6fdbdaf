package org.broodbench.sky;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Finds the hardest stretches of whole days in a series. */
public final class WorstWindows {
  private static final long DAY_S = 86400;

  private WorstWindows() {}

  /**
   * One stretch.
   *
   * @param fromEpochS start of its first day
   * @param days its length
   * @param hardnessKWh heat needed minus sun harvested, for the rig class
   * @param stats what the weather was; records off the grid of days belong to the nearer day
   */
  public record Window(long fromEpochS, int days, double hardnessKWh, WindowStats stats) {}

  /** The hardest windows of seven UTC days for a small rig. */
  public static List<Window> find(WeatherSeries w, int count) {
    return find(w, 7, count, RigClass.SMALL, 0);
  }

  /**
   * The hardest windows, hardest first; none overlaps another. Days with a missing temperature or
   * irradiance are in no window.
   *
   * @param days length of a window
   * @param count how many at most
   * @param rig what counts as hard
   * @param dayShiftS a day begins so many seconds after 00 UTC; 0 for UTC days
   */
  public static List<Window> find(
      WeatherSeries w, int days, int count, RigClass rig, long dayShiftS) {
    if (days < 1 || count < 1 || DAY_S % w.stepS() != 0) {
      throw new IllegalArgumentException(
          "at least one window of one day, and a step that divides the day");
    }
    int perDay = (int) (DAY_S / w.stepS());
    // the first record that begins a day
    long toDay = Math.floorMod(dayShiftS - w.startEpochS(), DAY_S);
    if (toDay - DAY_S >= -w.stepS() / 2) {
      // the series begins at most half a record late: its first day is whole
      toDay -= DAY_S;
    }
    int first = Math.max(0, (int) Math.round((double) toDay / w.stepS()));
    int whole = (w.n() - first) / perDay;
    double[] hardness = new double[Math.max(0, whole)];
    for (int d = 0; d < whole; d++) {
      for (int i = first + d * perDay; i < first + (d + 1) * perDay; i++) {
        hardness[d] +=
            rig.hardnessKWh(w.value(Variable.AIR, i), w.value(Variable.GHI, i), w.stepS());
      }
    }
    boolean[] taken = new boolean[hardness.length];
    List<Window> found = new ArrayList<>();
    while (found.size() < count) {
      int best = -1;
      double most = Double.NEGATIVE_INFINITY;
      for (int d = 0; d + days <= hardness.length; d++) {
        double sum = 0;
        for (int k = d; k < d + days; k++) {
          sum += taken[k] ? Double.NaN : hardness[k];
        }
        if (sum > most) {
          most = sum;
          best = d;
        }
      }
      if (best < 0) {
        break;
      }
      java.util.Arrays.fill(taken, best, best + days, true);
      int from = first + best * perDay;
      long start = w.startEpochS() + toDay + best * DAY_S;
      found.add(new Window(start, days, most, WindowStats.of(w, from, from + days * perDay)));
    }
    return Collections.unmodifiableList(found);
  }
}
