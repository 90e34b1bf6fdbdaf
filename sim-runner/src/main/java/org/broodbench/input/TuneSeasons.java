package org.broodbench.input;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.Window;
import org.broodbench.sky.BlockResampler;
import org.broodbench.sky.GapBridge;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.WeatherGenerator;
import org.broodbench.sky.WeatherSeries;

/**
 * Seasons that begin on the first day of a scenario: drawn by runs of days from its record, or made
 * by the generator where it has none.
 */
public final class TuneSeasons {
  private TuneSeasons() {}

  /**
   * Makes them.
   *
   * @param weather the scenario's weather, or the record that replaces it
   * @param days length of each
   * @param first number of the first; equal numbers and seeds give equal seasons
   * @throws BadInput where the record is too short or has no such time of the year
   */
  public static List<ScenarioWeather> of(
      ScenarioWeather weather, int days, int first, int count, long seed) {
    Scenario s = weather.scenario();
    Scenario season = s.withWindow(new Window(s.window().fromEpochS(), days));
    long day = Math.floorDiv(s.window().fromEpochS(), 86_400L);
    List<ScenarioWeather> seasons = new ArrayList<>();
    try {
      BlockResampler record =
          weather.file().isEmpty()
              ? null
              : new BlockResampler(GapBridge.over(weather.series(), seed));
      for (int i = first; i < first + count; i++) {
        // far apart, so that neither seeds of a user nor numbers of seasons meet
        long own = seed * 1_000_003 + i;
        WeatherSeries series =
            record == null
                ? generated(season, own)
                : record.season(BlockResampler.Draw.of(own, day, days + 1));
        seasons.add(new ScenarioWeather(season, series, weather.file(), weather.assumed()));
      }
    } catch (IllegalArgumentException e) {
      throw new BadInput(
          List.of(
              new Problem(
                  weather.file(),
                  0,
                  0,
                  "",
                  e.getMessage(),
                  "a record of the scenario's time of the year",
                  "Give a longer record.")));
    }
    return seasons;
  }

  private static WeatherSeries generated(Scenario season, long seed) {
    GeneratorSettings own = season.weather().generator(season.place(), season.window());
    return WeatherGenerator.generate(
        new GeneratorSettings(
            own.seed() * 31 + seed,
            own.place(),
            own.normals(),
            own.firstEpochDay(),
            own.days(),
            own.spells(),
            own.stress()));
  }
}
