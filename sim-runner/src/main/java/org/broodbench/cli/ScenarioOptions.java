package org.broodbench.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;
import org.broodbench.input.ScenarioReader;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.rig.Scenario;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Which scenario, weather and window a verb works on. */
final class ScenarioOptions {
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
          "A weather file that replaces the scenario's; the format is detected. Its place, if it names one, replaces the scenario's. Given more than once, the files make one record.")
  private List<Path> weather = new ArrayList<>();

  @Option(
      names = "--from",
      paramLabel = "DATE",
      description = "First day, UTC, such as 2000-12-24.")
  private String from;

  @Option(
      names = "--set",
      paramLabel = "KEY=VALUE",
      description = "Set any scenario key by its dotted path; may be given more than once.")
  private List<String> set = new ArrayList<>();

  private byte[] bytes;

  /** The scenario's file; null for the demo. */
  Path file() {
    return scenarioFile;
  }

  /** The file's name for messages. */
  String fileName() {
    return scenarioFile == null ? RunCommand.DEMO : scenarioFile.toString();
  }

  /** Files that replace the scenario's weather. */
  List<Path> weatherFiles() {
    return List.copyOf(weather);
  }

  /** First day as it was given; null where it was not. */
  String from() {
    return from;
  }

  /**
   * The options as settings of the scenario.
   *
   * @param days length of the window; null as the scenario says
   * @throws BadInput with every option that is wrong
   */
  List<String> settings(Integer days) {
    List<Problem> problems = new ArrayList<>();
    List<String> settings = settings(days, problems);
    if (!problems.isEmpty()) {
      throw new BadInput(problems);
    }
    return settings;
  }

  /** The same, with what is wrong put into a list. */
  List<String> settings(Integer days, List<Problem> problems) {
    List<String> settings = new ArrayList<>();
    if (from != null) {
      try {
        settings.add("run.from=" + LocalDate.parse(from));
      } catch (DateTimeParseException e) {
        problems.add(
            new Problem(
                "--from",
                0,
                0,
                "",
                from,
                "a date such as 2000-12-24",
                "Year, month and day with hyphens; the day begins at 00:00 UTC."));
      }
    }
    if (days != null) {
      if (days < 1 || days > 3660) {
        problems.add(
            new Problem("--days", 0, 0, "", String.valueOf(days), "1 to 3660 whole days", ""));
      }
      settings.add("run.days=" + days);
    }
    settings.addAll(set);
    return settings;
  }

  /**
   * Reads the scenario.
   *
   * @param days length of the window; null as the scenario says
   */
  Scenario read(Integer days) {
    return readWith(settings(days));
  }

  /** Reads the scenario with settings on top. */
  Scenario readWith(List<String> settings) {
    return ScenarioReader.read(fileName(), bytes(), settings);
  }

  /** The bytes of the scenario's file. */
  byte[] bytes() {
    if (bytes == null) {
      // once: a pipe gives them once, and a file may change in between
      bytes = scenarioFile != null ? ScenarioReader.bytes(scenarioFile) : demo();
    }
    return bytes.clone();
  }

  /** The demo's file, which is part of the program. */
  static byte[] demo() {
    try (InputStream in =
        ScenarioOptions.class.getResourceAsStream("/scenarios/" + RunCommand.DEMO)) {
      if (in == null) {
        throw new IllegalStateException("the demo scenario is missing from the program");
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Reads or makes the weather of a scenario. */
  ScenarioWeather weather(Scenario scenario) {
    Path folder = scenarioFile == null ? null : scenarioFile.toAbsolutePath().getParent();
    return ScenarioWeather.of(scenario, folder, weather);
  }
}
