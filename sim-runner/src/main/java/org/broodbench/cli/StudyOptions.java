package org.broodbench.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;
import org.broodbench.input.ScenarioReader;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.output.WholeFile;
import org.broodbench.rig.Scenario;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What every study of many runs takes from the command line. */
final class StudyOptions {
  @Parameters(
      index = "0",
      arity = "0..1",
      paramLabel = "SCENARIO",
      description = "A scenario file; the demo when left out.")
  private Path scenarioFile;

  @Option(
      names = "--weather",
      paramLabel = "FILE",
      description =
          "A weather file that replaces the scenario's; given more than once, the files make one record.")
  private List<Path> weather = new ArrayList<>();

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "Folder for the results; broodbench-out/<scenario name> when left out.")
  private Path out;

  @Option(names = "--seed", paramLabel = "N", description = "Seed of all noise.")
  private Long seed;

  @Option(
      names = "--set",
      paramLabel = "KEY=VALUE",
      description = "Set any scenario key by its dotted path; may be given more than once.")
  private List<String> set = new ArrayList<>();

  @Option(
      names = "--threads",
      paramLabel = "N",
      description =
          "How many runs at a time; all processors when left out. The answer is the same.")
  private Integer threads;

  @Option(
      names = "--json",
      description = "Print the result as JSON on standard output and nothing else there.")
  private boolean json;

  boolean json() {
    return json;
  }

  int threads() {
    int most = Runtime.getRuntime().availableProcessors();
    int asked = threads == null ? most : threads;
    if (asked < 1 || asked > 256) {
      throw new BadInput(
          List.of(new Problem("--threads", 0, 0, "", String.valueOf(asked), "1 to 256", "")));
    }
    return asked;
  }

  /** What was set on the command line, as settings of the scenario. */
  List<String> settings() {
    List<String> settings = new ArrayList<>();
    if (seed != null) {
      settings.add("run.seed=" + seed);
    }
    settings.addAll(set);
    return settings;
  }

  /** The bytes of the scenario's file. */
  byte[] bytes() {
    try {
      if (scenarioFile != null) {
        return Files.readAllBytes(scenarioFile);
      }
      String demo = "/scenarios/" + RunCommand.DEMO;
      try (InputStream in = StudyOptions.class.getResourceAsStream(demo)) {
        if (in == null) {
          throw new IllegalStateException("the demo scenario is missing from the program");
        }
        return in.readAllBytes();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The scenario with the settings of the command line on top. */
  Scenario scenario() {
    return scenario(List.of());
  }

  /** The scenario with the settings of the command line, and further ones, on top. */
  Scenario scenario(List<String> further) {
    List<String> settings = new ArrayList<>(settings());
    settings.addAll(further);
    return scenarioFile != null
        ? ScenarioReader.read(scenarioFile, settings)
        : ScenarioReader.read(RunCommand.DEMO, bytes(), settings);
  }

  /** Its weather, or what replaces it. */
  ScenarioWeather weatherOf(Scenario scenario) {
    Path beside = scenarioFile == null ? null : scenarioFile.toAbsolutePath().getParent();
    return ScenarioWeather.of(scenario, beside, weather);
  }

  /** The folder for the results; checked, not yet made. */
  Path folder(Scenario scenario) {
    Path folder =
        out != null ? out : Path.of("broodbench-out", RunCommand.baseName(scenario.fileName()));
    RunCommand.checkFolder(folder);
    return folder;
  }

  /** Writes all files, each whole or not at all. */
  static void write(Path folder, Map<String, byte[]> files) {
    try {
      Files.createDirectories(folder);
      for (Map.Entry<String, byte[]> f : new LinkedHashMap<>(files).entrySet()) {
        WholeFile.write(folder.resolve(f.getKey()), f.getValue());
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
