package org.broodbench.loop;

import org.broodbench.rig.Scenario;

/**
 * How finely a run is worked out, and what it keeps.
 *
 * @param tickMillis time between two steps of the controller, ms
 * @param stepMillis longest step of the plant, ms
 * @param keep what the result holds
 */
public record Pace(int tickMillis, int stepMillis, Keep keep) {
  /** Controller tick of {@link #search}, ms. */
  private static final int SEARCH_TICK_MS = 10_000;

  /** Plant step of {@link #search}: so many ticks, within two bounds, ms. */
  private static final int TICKS_A_STEP = 6;

  private static final int LEAST_STEP_MS = 60_000;
  private static final int MOST_STEP_MS = 120_000;

  /** What a result holds beside its figures. */
  public enum Keep {
    /** Figures alone: no events, no trace, no picture of the coldest moment. */
    FIGURES,
    /** Events and the coldest moment as well. */
    EVENTS,
    /** All that and the trace; a row comes where a step ends on its interval. */
    TRACE
  }

  /** Refuses times that are not above 0. */
  public Pace {
    if (tickMillis <= 0 || stepMillis <= 0) {
      throw new IllegalArgumentException("tick and step must be above 0");
    }
  }

  /** As the scenario says. */
  public static Pace exact(Scenario s, Keep keep) {
    return new Pace(s.controller().tickMillis(), (int) Math.round(s.run().stepS() * 1000), keep);
  }

  /**
   * For studies that compare thousands of runs: the controller every 10 s (or at the scenario's own
   * longer tick), the plant in steps of up to a minute, figures alone. What this does to the
   * figures is told in MODEL.md; confirm what a search found by a run at {@link #exact}.
   */
  public static Pace search(Scenario s) {
    return search(s, SEARCH_TICK_MS);
  }

  /**
   * The same with the controller at another tick, and the plant in steps of up to six such ticks,
   * but one minute at least and two at most.
   *
   * @param tickMillis time between two steps of the controller, ms; a longer tick of the scenario
   *     stays
   */
  public static Pace search(Scenario s, int tickMillis) {
    int tick = Math.max(tickMillis, s.controller().tickMillis());
    int step = Math.min(MOST_STEP_MS, Math.max(LEAST_STEP_MS, TICKS_A_STEP * tickMillis));
    return new Pace(tick, Math.max(step, (int) Math.round(s.run().stepS() * 1000)), Keep.FIGURES);
  }
}
