package org.broodbench.study;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.broodbench.controller.Setting;
import org.broodbench.loop.Pace;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.RunResult;
import org.broodbench.loop.Simulation;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.FaultKind;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.Window;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.RigClass;
import org.broodbench.sky.WeatherSeries;
import org.broodbench.sky.WorstWindows;

/**
 * From when on a rig can stand without mains: from that week on the hardest week to come, begun
 * with a full battery and without shore power, sheds no heat. The colony is that of the start,
 * which is the weakest where it grows.
 *
 * @param mains whether the rig has shore power at all
 * @param weeks one answer a week of the season
 * @param limitV battery volts at dusk below which the mains come back; 0 where shedding goes by
 *     charge
 */
public record BatteryAlone(boolean mains, List<Week> weeks, double limitV) {
  private static final int DAYS = 7;

  /** Copies the list. */
  public BatteryAlone {
    weeks = List.copyOf(weeks);
  }

  /**
   * A week of the season in which the mains would be taken away.
   *
   * @param fromEpochS its first day
   * @param hardestFromEpochS the hardest seven days from then on
   * @param shedHours hours of these with the heat shed, at own, low and high heat loss
   */
  public record Week(long fromEpochS, long hardestFromEpochS, List<Double> shedHours) {
    /** Whether no heat is shed at the scenario's own heat loss. */
    public boolean holds() {
      return shedHours.get(0) == 0;
    }

    /** Whether no heat is shed whatever the heat loss. */
    public boolean holdsForAll() {
      return shedHours.stream().allMatch(h -> h == 0);
    }
  }

  /** The first week from which on all hold at own heat loss; −1 where the last does not. */
  public int readyFrom() {
    int ready = -1;
    for (int w = weeks.size() - 1; w >= 0 && weeks.get(w).holds(); w--) {
      ready = w;
    }
    return ready;
  }

  /**
   * Looks for it.
   *
   * @param season rig, with the window of the season, whole weeks
   * @param series a record that holds it, in steps that divide the day
   * @param forcing the weather of any week of it
   */
  public static BatteryAlone of(
      Scenario season, WeatherSeries series, Function<Scenario, Forcing> forcing, int threads) {
    double[] losses = {
      season.colony().clusterLossFactor(), Evaluation.LOW_LOSS, Evaluation.HIGH_LOSS
    };
    long end = season.window().toEpochS();
    Map<Long, List<Double>> known = new HashMap<>();
    List<Week> weeks = new ArrayList<>();
    for (long from = season.window().fromEpochS();
        from + DAYS * 86_400L <= end;
        from += DAYS * 86_400L) {
      long hardest =
          WorstWindows.find(series.between(from, end), DAYS, 1, RigClass.SMALL, 0).stream()
              .map(WorstWindows.Window::fromEpochS)
              .findFirst()
              .orElse(from);
      weeks.add(
          new Week(
              from,
              hardest,
              known.computeIfAbsent(hardest, at -> shed(season, at, losses, forcing, threads))));
    }
    var set = season.controller().settings();
    boolean byCharge = set.is(Setting.SHED_BY_STATE_OF_CHARGE);
    double limit = byCharge ? 0 : set.get(Setting.SHED_SET_BACK_ENTER_MILLI_V) / 1000.0;
    return new BatteryAlone(FaultKind.SHORE_LOST.appliesTo(season), weeks, limit);
  }

  private static List<Double> shed(
      Scenario season,
      long fromEpochS,
      double[] losses,
      Function<Scenario, Forcing> forcing,
      int threads) {
    Scenario week =
        season
            .withWindow(new Window(fromEpochS, DAYS))
            .withBattery(season.battery().withInitialSoc(1))
            .withEvents(
                FaultKind.SHORE_LOST.appliesTo(season)
                    ? List.of(new EventSpec.Fault(0, FaultKind.SHORE_LOST))
                    : List.of());
    Forcing sky = forcing.apply(week);
    List<Callable<Double>> runs = new ArrayList<>();
    for (double loss : losses) {
      runs.add(
          () -> {
            Scenario s = week.withColony(week.colony().withClusterLossFactor(loss));
            RunResult r =
                new Simulation(
                        s,
                        sky,
                        new ReferenceController(s.controller().settings()),
                        Pace.exact(s, Pace.Keep.FIGURES))
                    .run();
            return r.hoursShed();
          });
    }
    return Runs.all(runs, threads);
  }
}
