package org.broodbench.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.broodbench.calibrate.Calibration;
import org.broodbench.calibrate.Calibrator;
import org.broodbench.calibrate.FieldLog;
import org.broodbench.calibrate.LogColumn;
import org.broodbench.calibrate.LogRefused;
import org.broodbench.input.BadInput;
import org.broodbench.input.FieldLogReader;
import org.broodbench.input.FittedScenario;
import org.broodbench.input.Problem;
import org.broodbench.input.ScenarioReader;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.output.CalibrationJson;
import org.broodbench.output.CalibrationPage;
import org.broodbench.output.CalibrationText;
import org.broodbench.output.WholeFile;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.Window;
import org.broodbench.sky.TypicalYear;
import org.broodbench.sky.WeatherSeries;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code calibrate}: what a field log says about the hive of a scenario. */
@Command(
    name = "calibrate",
    description = {
      "Fits hive, colony, heater and battery of a scenario to a field log, with error bars, and writes calibration.json, calibration.html and calibrated.toml.",
      "Exit code 0: the log looks like this hive; 1: it does not, and why is said; 2: the log cannot be used."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class CalibrateCommand extends Verb {
  private static final long DAY_S = 86_400;

  @Parameters(index = "0", paramLabel = "SCENARIO", description = "The scenario of the rig.")
  private Path scenarioFile;

  @Option(
      names = "--log",
      required = true,
      paramLabel = "FILE",
      description = "The log: a table with a header; [log] in the scenario says how to read it.")
  private Path logFile;

  @Option(
      names = "--map",
      paramLabel = "FILE",
      description = "A file with the [log] block, instead of the scenario's.")
  private Path map;

  @Option(
      names = "--weather",
      paramLabel = "FILE",
      description =
          "A weather file over the time of the log, for what the log does not hold: sun, wind, outdoor air. May be given more than once.")
  private List<Path> weather = new ArrayList<>();

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description =
          "Folder for the results; broodbench-out/<scenario name>-calibrated when left out.")
  private Path out;

  @Option(
      names = "--json",
      description = "Print the result as JSON on standard output and nothing else there.")
  private boolean json;

  @Option(
      names = "--set",
      paramLabel = "KEY=VALUE",
      description = "Set any scenario key by its dotted path; may be given more than once.")
  private List<String> set = new ArrayList<>();

  CalibrateCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() {
    Scenario scenario = ScenarioReader.read(scenarioFile, set);
    FieldLog log =
        FieldLogReader.read(
            logFile, FieldLogReader.mapping(map == null ? scenarioFile : map, map == null));
    Calibration found = calibrate(scenario, log);
    Path folder =
        out != null
            ? out
            : Path.of(
                "broodbench-out", scenario.fileName().replaceFirst("\\.toml$", "") + "-calibrated");
    write(folder, found);
    if (json) {
      console().out().print(CalibrationJson.of(found));
    } else {
      console().out().print(CalibrationText.of(found));
      console()
          .out()
          .println("Written: " + folder + " (calibration.html, calibration.json, calibrated.toml)");
    }
    return found.fits() ? 0 : 1;
  }

  private Calibration calibrate(Scenario scenario, FieldLog log) {
    boolean whole = !log.byHand() && log.has(LogColumn.SUN) && log.has(LogColumn.OUTDOOR);
    boolean generated = weather.isEmpty() && scenario.weather().generated();
    Scenario placed = scenario;
    WeatherSeries series = null;
    if (!(whole && generated)) {
      Window of = new Window(log.fromS(), (int) ((log.toS() - log.fromS()) / DAY_S) + 1);
      Window own = scenario.window();
      boolean covered = own.fromEpochS() <= log.fromS() && own.toEpochS() >= log.toS();
      ScenarioWeather read =
          ScenarioWeather.of(
              covered ? scenario : scenario.withWindow(of),
              scenarioFile.toAbsolutePath().getParent(),
              weather);
      placed = read.scenario().withWindow(own);
      series =
          read.series().typicalYear()
              ? TypicalYear.covering(read.series(), of.fromEpochS(), of.toEpochS())
              : read.series();
      boolean typical = read.series().typicalYear();
      generated |= typical;
      refuseUncovered(series, log);
    }
    int threads = Math.max(1, Math.min(8, Runtime.getRuntime().availableProcessors()));
    try {
      return Calibrator.calibrate(
          new Calibrator.Question(
              log,
              logFile.getFileName().toString(),
              placed,
              series,
              !generated,
              ScenarioWeather.forcingSettings(placed)),
          new Calibrator.Settings(threads, progress()));
    } catch (LogRefused e) {
      throw new BadInput(
          List.of(
              new Problem(
                  logFile.toString(),
                  e.line(),
                  0,
                  e.column(),
                  e.getMessage(),
                  e.allowed(),
                  e.hint())));
    }
  }

  private void refuseUncovered(WeatherSeries series, FieldLog log) {
    if (series.startEpochS() > log.fromS() + 60 || series.endEpochS() < log.toS()) {
      throw new BadInput(
          List.of(
              new Problem(
                  weather.isEmpty() ? "the scenario's weather" : weather.get(0).toString(),
                  0,
                  0,
                  "",
                  "a record from "
                      + java.time.Instant.ofEpochSecond(series.startEpochS())
                      + " to "
                      + java.time.Instant.ofEpochSecond(series.endEpochS()),
                  "one over the log, "
                      + java.time.Instant.ofEpochSecond(log.fromS())
                      + " to "
                      + java.time.Instant.ofEpochSecond(log.toS()),
                  "Give a weather file of that time with --weather.")));
    }
  }

  /** On a terminal each stage is told; elsewhere nothing is. */
  private Consumer<String> progress() {
    boolean terminal = System.console() != null && System.getenv("NO_PROGRESS") == null;
    return terminal ? stage -> console().err().println("calibrate: " + stage) : stage -> {};
  }

  private void write(Path folder, Calibration found) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("calibration.json", CalibrationJson.of(found).getBytes(StandardCharsets.UTF_8));
    files.put("calibration.html", CalibrationPage.html(found).getBytes(StandardCharsets.UTF_8));
    try {
      String text = Files.readString(scenarioFile, StandardCharsets.UTF_8);
      files.put(
          "calibrated.toml", FittedScenario.text(text, found).getBytes(StandardCharsets.UTF_8));
      Files.createDirectories(folder);
      for (Map.Entry<String, byte[]> f : files.entrySet()) {
        WholeFile.write(folder.resolve(f.getKey()), f.getValue());
      }
    } catch (IOException e) {
      throw new BadInput(
          List.of(
              new Problem(
                  "--out",
                  0,
                  0,
                  "",
                  folder + ": " + e.getMessage(),
                  "a folder that can be written",
                  "")));
    }
  }
}
