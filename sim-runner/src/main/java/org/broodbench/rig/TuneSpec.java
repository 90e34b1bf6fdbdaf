package org.broodbench.rig;

import java.util.List;
import org.broodbench.controller.Setting;

/**
 * What a search for settings may change, and how long it may look.
 *
 * @param knobs the settings that may be changed, with their bounds
 * @param seasons seasons that it searches on
 * @param unseenSeasons further seasons that its finding is held against
 * @param seasonDays length of a season, d
 * @param tickMillis time between two steps of the controller while it searches, ms
 * @param evaluations most runs of one candidate over one season
 * @param seed of the seasons
 * @param searchSeed of the search
 */
public record TuneSpec(
    List<Knob> knobs,
    int seasons,
    int unseenSeasons,
    int seasonDays,
    int tickMillis,
    int evaluations,
    long seed,
    long searchSeed) {
  /** Copies the list. */
  public TuneSpec {
    knobs = List.copyOf(knobs);
  }

  /**
   * A setting that may be changed.
   *
   * @param path its dotted key
   * @param setting the setting
   * @param low lowest value, in counts of the controller
   * @param high highest, in counts
   * @param step values lie so many counts apart
   * @param perUnit counts in a unit of results
   * @param unit that unit, as names end on it; empty for none
   */
  public record Knob(
      String path, Setting setting, int low, int high, int step, double perUnit, String unit) {
    /** How many values it can take. */
    public int values() {
      return (high - low) / step + 1;
    }

    /** Name in results: the key with its unit. */
    public String resultName() {
      return unit.isEmpty() ? path : path + "_" + unit;
    }

    /** A value in the unit of results. */
    public double shown(int count) {
      return count / perUnit;
    }
  }
}
