package org.broodbench.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.rig.Scenario;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What every study of many runs takes from the command line. */
final class StudyOptions {
  @Mixin private ScenarioOptions rig;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "Folder for the results; broodbench-out/<scenario name> when left out.")
  private Path out;

  @Option(names = "--seed", paramLabel = "N", description = "Seed of all noise.")
  private Long seed;

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
    return threads(1);
  }

  /** The same, where fewer, or none, may be left to this machine. */
  int threads(int least) {
    int most = Runtime.getRuntime().availableProcessors();
    int asked = threads == null ? most : threads;
    if (asked < least || asked > 256) {
      String allowed = least + " to 256";
      throw new BadInput(
          List.of(new Problem("--threads", 0, 0, "", String.valueOf(asked), allowed, "")));
    }
    return asked;
  }

  /** What was set on the command line, as settings of the scenario. */
  List<String> settings() {
    List<String> settings = new ArrayList<>();
    if (seed != null) {
      settings.add("run.seed=" + seed);
    }
    settings.addAll(rig.settings(null));
    return settings;
  }

  /** The scenario's file's name for messages. */
  String fileName() {
    return rig.fileName();
  }

  /** Files that replace the scenario's weather. */
  List<Path> weatherFiles() {
    return rig.weatherFiles();
  }

  /** The bytes of the scenario's file. */
  byte[] bytes() {
    return rig.bytes();
  }

  /** The scenario with the settings of the command line on top. */
  Scenario scenario() {
    return scenario(List.of());
  }

  /** The scenario with the settings of the command line, and further ones, on top. */
  Scenario scenario(List<String> further) {
    List<String> settings = new ArrayList<>(settings());
    settings.addAll(further);
    return rig.readWith(settings);
  }

  /** Its weather, or what replaces it. */
  ScenarioWeather weatherOf(Scenario scenario) {
    return rig.weather(scenario);
  }

  /** The folder for the results; checked, not yet made. */
  Path folder(Scenario scenario) {
    Path folder =
        out != null ? out : Path.of("broodbench-out", RunCommand.baseName(scenario.fileName()));
    RunCommand.checkFolder(folder);
    return folder;
  }
}
