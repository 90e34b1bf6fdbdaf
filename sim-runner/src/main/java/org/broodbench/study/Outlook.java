package org.broodbench.study;

import java.util.List;
import org.broodbench.loop.ColonyDay;

/**
 * What becomes of the colony over some weeks, with heat and without.
 *
 * @param weeks length
 * @param fromEpochS start, seconds since 1970-01-01T00:00Z
 * @param beesAtStart bees at the start, or that came during the outlook
 * @param courses treatments; the first is the scenario as it stands
 * @param gain what heating gains
 * @param advice which other treatment does best
 * @param nextBox day on which the next box is due at low, own and high heat loss; −1 for not yet
 * @param weaning when to wean
 */
public record Outlook(
    int weeks,
    long fromEpochS,
    double beesAtStart,
    List<Course> courses,
    Gain gain,
    Advice advice,
    List<Integer> nextBox,
    Weaning weaning) {
  /** What heating gains against the best of the other treatments. */
  public enum Gain {
    /** There is no heater. */
    NO_HEATER,
    /** A tenth or more of the colony, whatever its heat loss. */
    GAINS,
    /** It depends on the heat loss of the cluster. */
    DEPENDS,
    /** Nothing, or less than a tenth. */
    NOTHING,
    /** The colony dwindles in spite of it. */
    DWINDLES
  }

  /** What to do instead of heating, or beside it. */
  public enum Advice {
    /** Go on as it is. */
    GO_ON,
    /** Unplug the heater and change nothing else. */
    UNPLUG,
    /** Insulate. */
    INSULATE,
    /** Put the colony into a smaller box. */
    CONFINE,
    /** Unite it with another colony. */
    UNITE
  }

  /**
   * Lowering the set point step by step.
   *
   * @param tried whether there was time to try it, and something to lower
   * @param startDay first day on which weaning can begin so that the nest is never below 32 °C for
   *     more than the hours of the abort rule, at the scenario's own heat loss; −1 where no week of
   *     the outlook will do
   * @param atHighLossToo whether that day will do at the highest published loss as well
   * @param fromC set point before, °C
   * @param toC last set point, °C
   * @param stepK size of a step, K
   * @param everyDays time between steps, d
   * @param abortHours go back where the nest is below 32 °C for longer than this in a day, h
   */
  public record Weaning(
      boolean tried,
      int startDay,
      boolean atHighLossToo,
      double fromC,
      double toC,
      double stepK,
      int everyDays,
      double abortHours) {}

  /** The scenario as it stands. */
  public Course first() {
    return courses.get(0);
  }

  /** Days on which a broodless colony was held warm, at the scenario's own heat loss. */
  public long broodlessHeatedDays() {
    return first().own().stream()
        .filter(d -> d.bees() > 0 && d.brood() < 1 && d.heaterWh() > 1)
        .count();
  }

  /** First day from which the heater takes hardly any power; −1 where it goes on. */
  public int heaterRestsFrom() {
    List<ColonyDay> days = first().own();
    int from = -1;
    for (int i = days.size() - 1; i >= 0 && days.get(i).heaterWh() < 5; i--) {
      from = days.get(i).day();
    }
    return from;
  }
}
