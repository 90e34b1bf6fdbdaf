package org.broodbench.recipe;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.colony.ColonySpec;
import org.broodbench.input.HardWeeks;
import org.broodbench.input.ScenarioReader;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.input.Seasons;
import org.broodbench.input.TuneSeasons;
import org.broodbench.input.Tuning;
import org.broodbench.plant.Plant;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TuneSpec;
import org.broodbench.size.SizeSeason;
import org.broodbench.size.SizeStudy;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.Plane;
import org.broodbench.sky.WorstWindows;
import org.broodbench.stress.StressStudy;
import org.broodbench.stress.StressWeek;
import org.broodbench.study.Evaluation;
import org.broodbench.study.Pieces;
import org.broodbench.study.SureStudy;
import org.broodbench.tune.Season;
import org.broodbench.tune.SeasonRuns;

/** Makes studies and what they are made of from recipes. */
public final class Studies {
  /** Weathers of an ensemble. */
  private static final int SURE_SEASONS = 32;

  private Studies() {}

  /** The pieces of the study of a recipe. */
  public static Pieces pieces(Recipe r) {
    return switch (r.kind()) {
      case STRESS -> new StressStudy(weeks(r), r.plan());
      case TUNE -> seasonRuns(r);
      case SIZE -> size(r, true);
      case SURE -> sure(r);
    };
  }

  /** The weeks that a scenario is stressed in. */
  public static List<StressWeek> weeks(Recipe r) {
    List<StressWeek> weeks = new ArrayList<>();
    for (HardWeeks.Week w : HardWeeks.of(r.weather(), r.count(), r.inSeason())) {
      Scenario s = w.weather().scenario();
      weeks.add(new StressWeek(w.label(), s, w.weather().forcing(Plant.planes(s)), w.stats()));
    }
    return weeks;
  }

  private static Pieces seasonRuns(Recipe r) {
    TuneSpec spec = Tuning.spec(r.rebuilt(List.of()), r.text(), r.settings());
    int all = spec.seasons() + spec.unseenSeasons();
    return new SeasonRuns(
        r.weather().scenario().controller().settings(),
        spec.knobs(),
        seasons(r.weather(), spec, 0, all));
  }

  /**
   * Seasons of the scenario, in turn at its own, the lowest and the highest published heat loss of
   * small clusters.
   */
  public static List<Season> seasons(ScenarioWeather weather, TuneSpec spec, int first, int count) {
    List<Season> seasons = new ArrayList<>();
    int number = first;
    for (ScenarioWeather w :
        TuneSeasons.of(weather, spec.seasonDays(), first, count, spec.seed())) {
      Scenario s = w.scenario();
      ColonySpec colony = s.colony();
      double loss =
          number % 3 == 0
              ? colony.clusterLossFactor()
              : number % 3 == 1 ? Evaluation.LOW_LOSS : Evaluation.HIGH_LOSS;
      Scenario at = s.withColony(colony.withClusterLossFactor(loss));
      String label = "season " + number;
      Forcing forcing = w.forcing(Plant.planes(s));
      // the tick of the search is not that of the seasons that it does not see
      seasons.add(
          number++ < spec.seasons()
              ? Season.of(label, at, forcing, spec.tickMillis())
              : Season.of(label, at, forcing));
    }
    return seasons;
  }

  /**
   * The study of sizes.
   *
   * @param pruned false to try every combination, as a check
   */
  public static SizeStudy size(Recipe r, boolean pruned) {
    Scenario placed = r.weather().scenario();
    List<Plane> planes = Plant.planes(placed);
    List<SizeSeason> made = new ArrayList<>();
    int number = 1;
    for (ScenarioWeather season : Seasons.of(r.weather(), r.count(), placed.run().seed())) {
      made.add(
          new SizeSeason(
              "season " + number++, hardnessKWh(season, placed), season.forcing(planes)));
    }
    return new SizeStudy(
        ScenarioReader.sizing(placed.fileName(), r.text(), r.settings()), made, r::rebuilt, pruned);
  }

  private static double hardnessKWh(ScenarioWeather season, Scenario s) {
    var between = season.series().between(s.window().fromEpochS(), s.window().toEpochS());
    return WorstWindows.find(between, 1).stream()
        .mapToDouble(WorstWindows.Window::hardnessKWh)
        .findFirst()
        .orElse(0);
  }

  /** The ensemble, with the weather of other years and with uncertain numbers drawn. */
  public static SureStudy sure(Recipe r) {
    Scenario s = r.weather().scenario();
    List<Forcing> seasons = new ArrayList<>();
    for (ScenarioWeather season : Seasons.of(r.weather(), SURE_SEASONS, s.run().seed())) {
      seasons.add(season.forcing(Plant.planes(s)));
    }
    return new SureStudy(s, seasons, r.count(), r::rebuilt, s.run().seed());
  }
}
