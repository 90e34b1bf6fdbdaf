package org.broodbench.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.broodbench.calibrate.Calibration;
import org.broodbench.calibrate.Calibrator;
import org.broodbench.calibrate.FieldLog;
import org.broodbench.calibrate.LogColumn;
import org.broodbench.calibrate.LogMapping;
import org.broodbench.calibrate.LogRefused;
import org.broodbench.input.BadInput;
import org.broodbench.input.FieldLogReader;
import org.broodbench.input.FittedScenario;
import org.broodbench.input.Problem;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.output.CalibrationJson;
import org.broodbench.output.CalibrationPage;
import org.broodbench.output.CalibrationText;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.Window;
import org.broodbench.sky.TypicalYear;
import org.broodbench.sky.WeatherSeries;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

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

  @Mixin private StudyOptions options;

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

  CalibrateCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() {
    int threads = options.threads();
    Scenario scenario = options.scenario();
    Path folder = options.folder(scenario);
    FieldLog log = FieldLogReader.read(logFile, mapping());
    Calibration found = calibrate(scenario, log, threads);
    Results.write(folder, files(found));
    if (options.json()) {
      console().out().print(CalibrationJson.of(found));
    } else {
      console().out().print(CalibrationText.of(found));
      console()
          .out()
          .println("Written: " + folder + " (calibration.html, calibration.json, calibrated.toml)");
    }
    return found.fits() ? 0 : 1;
  }

  private LogMapping mapping() {
    if (map != null) {
      return FieldLogReader.mapping(map);
    }
    return FieldLogReader.mapping(options.fileName(), options.bytes(), options.settings());
  }

  private Calibration calibrate(Scenario scenario, FieldLog log, int threads) {
    boolean whole = !log.byHand() && log.has(LogColumn.SUN) && log.has(LogColumn.OUTDOOR);
    boolean generated = options.weatherFiles().isEmpty() && scenario.weather().generated();
    Scenario placed = scenario;
    WeatherSeries series = null;
    if (!(whole && generated)) {
      Window of = new Window(log.fromS(), (int) ((log.toS() - log.fromS()) / DAY_S) + 1);
      Window own = scenario.window();
      boolean covered = own.fromEpochS() <= log.fromS() && own.toEpochS() >= log.toS();
      ScenarioWeather read = options.weatherOf(covered ? scenario : scenario.withWindow(of));
      placed = read.scenario().withWindow(own);
      series =
          read.series().typicalYear()
              ? TypicalYear.covering(read.series(), of.fromEpochS(), of.toEpochS())
              : read.series();
      boolean typical = read.series().typicalYear();
      generated |= typical;
      refuseUncovered(series, log);
    }
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
                  options.weatherFiles().isEmpty()
                      ? "the scenario's weather"
                      : options.weatherFiles().get(0).toString(),
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

  /** Each stage is told where somebody sees it. */
  private Consumer<String> progress() {
    return ProgressLine.wanted()
        ? stage -> console().err().println("calibrate: " + stage)
        : stage -> {};
  }

  private Map<String, byte[]> files(Calibration found) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    String text = new String(options.bytes(), StandardCharsets.UTF_8);
    files.put("calibration.json", utf8(CalibrationJson.of(found)));
    files.put("calibration.html", utf8(CalibrationPage.html(found)));
    files.put("calibrated.toml", utf8(FittedScenario.text(text, options.settings(), found)));
    return files;
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
