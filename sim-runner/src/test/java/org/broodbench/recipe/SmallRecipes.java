package org.broodbench.recipe;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.broodbench.input.ScenarioReader;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.Window;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.WeatherGenerator;
import org.broodbench.sky.WeatherSeries;
import org.broodbench.stress.StressPlan;

/** One small study of each kind. */
public final class SmallRecipes {
  private static final int DAYS = 3;

  private static final StressPlan PLAN =
      new StressPlan(true, List.of("relay_welded+lid_off"), true);

  private SmallRecipes() {}

  static byte[] demo() {
    try {
      return Files.readAllBytes(Path.of("..", "scenarios", "late-split.toml"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Scenario scenario(int days, List<String> settings) {
    Scenario s = ScenarioReader.read("late-split.toml", demo(), settings);
    return s.withWindow(new Window(s.window().fromEpochS(), days));
  }

  /** The demo with a record instead of its weather. */
  static ScenarioWeather weather(
      WeatherSeries record, String file, int days, List<String> settings) {
    return new ScenarioWeather(scenario(days, settings), record, file, List.of());
  }

  /** Weather that the generator makes. */
  private static ScenarioWeather made(List<String> settings) {
    return ScenarioWeather.of(scenario(DAYS, settings), null, List.of());
  }

  /** Half a year as if it had been measured, around the demo's window. */
  private static ScenarioWeather record(List<String> settings) {
    long day = scenario(DAYS, settings).window().fromEpochS() / 86_400;
    GeneratorSettings made = GeneratorSettings.uplandSpring(4, day - 90, 180);
    return weather(WeatherGenerator.generate(made), "there is no such file.csv", DAYS, settings);
  }

  /** Faults in the two hardest weeks of a record. */
  public static Recipe stress() {
    return new Recipe(Recipe.Kind.STRESS, demo(), List.of(), record(List.of()), 2, false, PLAN);
  }

  /** Settings over seasons of a record. */
  public static Recipe tune() {
    List<String> settings =
        List.of("tune.seasons=4", "tune.unseen_seasons=3", "tune.season_days=7");
    return new Recipe(Recipe.Kind.TUNE, demo(), settings, record(settings), 0);
  }

  /** Parts over three made seasons. */
  public static Recipe size() {
    return new Recipe(Recipe.Kind.SIZE, demo(), List.of(), made(List.of()), 3);
  }

  /** An ensemble over made seasons. */
  public static Recipe sure() {
    List<String> settings = List.of("run.seed=3");
    return new Recipe(Recipe.Kind.SURE, demo(), settings, made(settings), 40);
  }
}
