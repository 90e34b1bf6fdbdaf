package org.broodbench.input;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.broodbench.input.weather.ReadOptions;
import org.broodbench.input.weather.WeatherFiles;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.WeatherChoice;
import org.broodbench.rig.Window;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.ForcingSettings;
import org.broodbench.sky.GapBridge;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.NotCovered;
import org.broodbench.sky.Place;
import org.broodbench.sky.Plane;
import org.broodbench.sky.RigClass;
import org.broodbench.sky.StressVariant;
import org.broodbench.sky.TypicalYear;
import org.broodbench.sky.WeatherGenerator;
import org.broodbench.sky.WeatherSeries;
import org.broodbench.sky.WorstWindows;

/**
 * The weather of a run: a file, or the generator.
 *
 * @param scenario the scenario with the place that the weather belongs to
 * @param series the record
 * @param file how messages name it; empty for generated weather
 * @param assumed what was assumed about it
 */
public record ScenarioWeather(
    Scenario scenario, WeatherSeries series, String file, List<String> assumed) {

  /**
   * Reads or makes the weather of a scenario.
   *
   * @param folder folder that the scenario's weather file is relative to; null where it has none
   * @param instead files that replace the scenario's weather; several make one record; may be empty
   * @throws BadInput where a file cannot be used
   */
  public static ScenarioWeather of(Scenario scenario, Path folder, List<Path> instead) {
    WeatherChoice choice = scenario.weather();
    List<String> assumed = new ArrayList<>();
    Scenario placed = scenario;
    WeatherSeries series;
    String shown = "";
    if (instead.isEmpty() && choice.generated()) {
      series = WeatherGenerator.generate(choice.generator(scenario.place(), scenario.window()));
    } else {
      Path own = folder == null ? Path.of(choice.file()) : folder.resolve(choice.file());
      List<Path> files = instead.isEmpty() ? List.of(own) : instead;
      shown =
          instead.isEmpty()
              ? choice.file()
              : instead.stream().map(Path::toString).collect(Collectors.joining(" + "));
      refuseMissing(files, shown);
      ReadOptions options =
          new ReadOptions(
              (int) Math.round(choice.longestGapHours() * 3600), ReadOptions.LongGaps.KEEP);
      series =
          choice.mapping().isPresent() && files.size() == 1
              ? WeatherFiles.read(files.get(0), choice.mapping().get(), options)
              : WeatherFiles.readTogether(files, options);
      if (!instead.isEmpty() && series.place().isPresent()) {
        Place place = series.place().get();
        placed = scenario.withPlace(place);
        assumed.add(
            String.format(
                Locale.ROOT,
                "place of the weather file: latitude %.2f, longitude %.2f, altitude %.0f m",
                place.latitudeDeg(),
                place.longitudeDeg(),
                place.altitudeM()));
      } else if (!instead.isEmpty()) {
        assumed.add("the weather file names no place: the scenario's is kept");
      }
    }
    return new ScenarioWeather(placed, changed(series, choice, shown), shown, assumed);
  }

  /** Bridges long gaps and makes the weather harder, as far as the scenario asks for it. */
  private static WeatherSeries changed(WeatherSeries series, WeatherChoice choice, String shown) {
    try {
      WeatherSeries whole =
          choice.bridgeLongGaps() ? GapBridge.over(series, choice.generatorSeed()) : series;
      return choice.harder().equals(GeneratorSettings.Stress.NONE)
          ? whole
          : StressVariant.of(whole, choice.harder(), RigClass.SMALL);
    } catch (IllegalArgumentException e) {
      throw new BadInput(
          List.of(
              new Problem(
                  shown.isEmpty() ? "generated weather" : shown,
                  0,
                  0,
                  choice.bridgeLongGaps() ? "weather.long_gaps" : "weather.longer_spell_days",
                  e.getMessage(),
                  "a record of at least 40 days, in steps that divide the day",
                  "Leave the setting out, or give a longer record.")));
    }
  }

  private static void refuseMissing(List<Path> files, String shown) {
    List<Problem> problems = new ArrayList<>();
    for (Path file : files) {
      if (!Files.isRegularFile(file)) {
        problems.add(
            new Problem(
                files.size() == 1 ? shown : file.toString(),
                0,
                0,
                "",
                Files.isDirectory(file) ? "a folder" : "no such file",
                "a weather file",
                "Name an existing file; relative names in a scenario start at the scenario's folder."));
      }
    }
    if (!problems.isEmpty()) {
      throw new BadInput(problems);
    }
  }

  /** How a scenario has weather become what the hive feels. */
  public static ForcingSettings forcingSettings(Scenario scenario) {
    ForcingSettings d = ForcingSettings.DEFAULT;
    return new ForcingSettings(
        scenario.weather().diffuseSky(),
        scenario.weather().groundAlbedo(),
        d.snowAlbedo(),
        d.snow(),
        d.longWave(),
        d.linkeTurbidity(),
        d.roughnessM(),
        d.hiveHeightM(),
        d.shelterFactor(),
        d.defaultWindMS());
  }

  /**
   * The forcing of the scenario's window.
   *
   * @throws BadInput where the record does not hold what the window needs
   */
  public Forcing forcing(List<Plane> planes) {
    Window w = scenario.window();
    ForcingSettings settings = forcingSettings(scenario);
    WeatherSeries covering =
        series.typicalYear() ? TypicalYear.covering(series, w.fromEpochS(), w.toEpochS()) : series;
    try {
      return Forcing.of(covering, scenario.place(), w.fromEpochS(), w.toEpochS(), planes, settings);
    } catch (NotCovered e) {
      boolean gap = e.missing() != null;
      String found =
          gap
              ? "no "
                  + e.missing().column()
                  + " somewhere between "
                  + day(w.fromEpochS())
                  + " and "
                  + day(w.toEpochS())
              : "a record from "
                  + Instant.ofEpochSecond(e.seriesFromEpochS())
                  + " to "
                  + Instant.ofEpochSecond(e.seriesToEpochS());
      String allowed =
          gap
              ? "gaps of up to " + scenario.weather().longestGapHours() + " h inside the window"
              : "one that reaches over " + day(w.fromEpochS()) + " to " + day(w.toEpochS());
      throw new BadInput(
          List.of(
              new Problem(
                  file.isEmpty() ? "generated weather" : file,
                  0,
                  0,
                  gap ? "weather.longest_gap" : "window",
                  found,
                  allowed,
                  gap
                      ? "Choose another window with --from and --days, or fill the gap."
                      : "Choose a window inside the record with --from and --days.")));
    }
  }

  /**
   * The same over the hardest window of the record that is as long as the scenario's.
   *
   * @param rank 1 for the hardest
   * @throws BadInput where the record has no such window
   */
  public ScenarioWeather atWorst(int rank) {
    int days = scenario.window().days();
    List<WorstWindows.Window> found =
        rank >= 1 && 86_400 % series.stepS() == 0
            ? WorstWindows.find(series, days, rank, RigClass.SMALL, 0)
            : List.of();
    if (found.size() < rank || rank < 1) {
      throw new BadInput(
          List.of(
              new Problem(
                  "--worst",
                  0,
                  0,
                  "",
                  String.valueOf(rank),
                  "1 to the number of whole, separate windows of " + days + " days in the record",
                  "Choose a smaller number, or shorter windows with --days.")));
    }
    return new ScenarioWeather(
        scenario.withWindow(new Window(found.get(rank - 1).fromEpochS(), days)),
        series,
        file,
        assumed);
  }

  private static LocalDate day(long epochS) {
    return LocalDate.ofInstant(Instant.ofEpochSecond(epochS), ZoneOffset.UTC);
  }
}
