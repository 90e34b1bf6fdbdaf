package org.broodbench.input;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.Window;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.RigClass;
import org.broodbench.sky.StressVariant;
import org.broodbench.sky.WeatherGenerator;
import org.broodbench.sky.WeatherSeries;
import org.broodbench.sky.WindowStats;
import org.broodbench.sky.WorstWindows;

/** The hardest weeks that a scenario may meet: of its record, or of many generated seasons. */
public final class HardWeeks {
  /** Length of a week, d. */
  public static final int DAYS = 7;

  /** Seasons that the generator makes to find hard weeks in; own choice. */
  private static final int SEASONS = 20;

  /** Furthest that a week of the season lies from the scenario's own window, d; own choice. */
  private static final int SEASON_DAYS = 30;

  private HardWeeks() {}

  /**
   * One of them.
   *
   * @param label what to call it
   * @param weather the scenario over that week, with its weather
   * @param stats what the weather is
   */
  public record Week(String label, ScenarioWeather weather, WindowStats stats) {}

  private record Found(WeatherSeries series, WorstWindows.Window window, String from) {
    String label() {
      return Instant.ofEpochSecond(window.fromEpochS()).toString().substring(0, 10) + from;
    }
  }

  /**
   * The hardest weeks, hardest first.
   *
   * @param weather the scenario's weather, or the record that replaces it
   * @param count how many at most
   * @param inSeason whether only weeks near the scenario's own time of the year count; weeks that
   *     the generator makes always are
   * @throws BadInput where there is no whole week
   */
  public static List<Week> of(ScenarioWeather weather, int count, boolean inSeason) {
    Scenario s = weather.scenario();
    List<Found> found = new ArrayList<>();
    if (weather.file().isEmpty()) {
      for (int season = 0; season < SEASONS; season++) {
        String from = ", weather seed " + (s.weather().generatorSeed() + season);
        find(season(s, season), count, from, found);
      }
    } else {
      find(weather.series(), inSeason ? Integer.MAX_VALUE : count, "", found);
      found.removeIf(f -> inSeason && daysApart(f.window().fromEpochS(), s.window()) > SEASON_DAYS);
    }
    found.sort(Comparator.comparingDouble((Found f) -> -f.window().hardnessKWh()));
    if (found.isEmpty()) {
      throw new BadInput(
          List.of(
              new Problem(
                  weather.file().isEmpty() ? "generated weather" : weather.file(),
                  0,
                  0,
                  "",
                  "no whole week with temperature and sun" + (inSeason ? " in the season" : ""),
                  "at least one",
                  "Give a longer record.")));
    }
    return found.stream()
        .limit(count)
        .map(
            f ->
                new Week(
                    f.label(),
                    new ScenarioWeather(
                        s.withWindow(new Window(f.window().fromEpochS(), DAYS)),
                        f.series(),
                        weather.file(),
                        weather.assumed()),
                    f.window().stats()))
        .toList();
  }

  private static void find(WeatherSeries series, int count, String from, List<Found> to) {
    if (86_400 % series.stepS() == 0) {
      int most = Math.min(count, series.n() / (86_400 / series.stepS()) / DAYS + 1);
      for (WorstWindows.Window w : WorstWindows.find(series, DAYS, most, RigClass.SMALL, 0)) {
        to.add(new Found(series, w, from));
      }
    }
  }

  /** The scenario's own season as the generator makes it with another seed. */
  private static WeatherSeries season(Scenario s, int number) {
    int days = Math.max(DAYS, s.window().days());
    GeneratorSettings own =
        s.weather().generator(s.place(), new Window(s.window().fromEpochS(), days));
    WeatherSeries made =
        WeatherGenerator.generate(
            new GeneratorSettings(
                own.seed() + number,
                own.place(),
                own.normals(),
                own.firstEpochDay(),
                own.days(),
                own.spells(),
                own.stress()));
    return s.weather().harder().equals(GeneratorSettings.Stress.NONE)
        ? made
        : StressVariant.of(made, s.weather().harder(), RigClass.SMALL);
  }

  /** Days of the year between a week's first day and the window; 0 within it. */
  private static int daysApart(long epochS, Window window) {
    int day = dayOfYear(epochS);
    int first = dayOfYear(window.fromEpochS());
    int after = Math.floorMod(day - first, 365);
    return after < window.days() ? 0 : Math.min(after - window.days(), 365 - after);
  }

  private static int dayOfYear(long epochS) {
    return LocalDate.ofEpochDay(Math.floorDiv(epochS, 86_400L)).getDayOfYear();
  }
}
