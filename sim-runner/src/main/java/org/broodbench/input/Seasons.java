package org.broodbench.input;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.WeatherChoice;
import org.broodbench.rig.Window;
import org.broodbench.sky.BlockResampler;
import org.broodbench.sky.GapBridge;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.RigClass;
import org.broodbench.sky.StressVariant;
import org.broodbench.sky.WeatherGenerator;
import org.broodbench.sky.WeatherSeries;

/**
 * The same weeks of the year in other years: of the generator where a scenario has no record, else
 * drawn in runs of days from the record.
 */
public final class Seasons {
  /** A season reaches so far beyond both ends of its window, days. */
  private static final int MARGIN_DAYS = 2;

  private Seasons() {}

  /**
   * Makes them.
   *
   * @param found the weather of a scenario, whose window is the season
   * @param count how many
   * @param seed equal seeds give equal seasons
   * @throws BadInput where the record is too short to draw from
   */
  public static List<ScenarioWeather> of(ScenarioWeather found, int count, long seed) {
    Scenario s = found.scenario();
    WeatherChoice choice = s.weather();
    List<ScenarioWeather> seasons = new ArrayList<>();
    try {
      BlockResampler record =
          found.file().isEmpty()
              ? null
              : new BlockResampler(GapBridge.over(found.series(), choice.generatorSeed()));
      for (int k = 0; k < count; k++) {
        WeatherSeries series =
            record == null ? generated(s, seed + k) : drawn(record, s.window(), seed + k);
        seasons.add(new ScenarioWeather(s, series, found.file(), found.assumed()));
      }
    } catch (IllegalArgumentException e) {
      throw new BadInput(
          List.of(
              new Problem(
                  found.file(),
                  0,
                  0,
                  "",
                  e.getMessage(),
                  "a record of at least 40 days that holds the season, in steps that divide the day",
                  "Give a longer record, or another window with --from.")));
    }
    return seasons;
  }

  /** The scenario's own spell is a part of its story and not of every year. */
  private static WeatherSeries generated(Scenario s, long seed) {
    GeneratorSettings own = s.weather().generator(s.place(), s.window());
    WeatherSeries made =
        WeatherGenerator.generate(
            new GeneratorSettings(
                seed,
                own.place(),
                own.normals(),
                own.firstEpochDay(),
                own.days(),
                List.of(),
                GeneratorSettings.Stress.NONE));
    GeneratorSettings.Stress harder = s.weather().harder();
    return harder.equals(GeneratorSettings.Stress.NONE)
        ? made
        : StressVariant.of(made, harder, RigClass.SMALL);
  }

  private static WeatherSeries drawn(BlockResampler record, Window window, long seed) {
    long first = Math.floorDiv(window.fromEpochS(), 86_400L) - MARGIN_DAYS;
    return record.season(BlockResampler.Draw.of(seed, first, window.days() + 2 * MARGIN_DAYS));
  }
}
