package org.broodbench.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.audit.Audit;
import org.broodbench.audit.AuditReport;
import org.broodbench.audit.Season;
import org.broodbench.input.AuditWeather;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;
import org.broodbench.input.ScenarioReader;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.output.AuditJson;
import org.broodbench.output.AuditText;
import org.broodbench.plant.Plant;
import org.broodbench.rig.Scenario;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code audit}: the rig on paper, in under a second. */
@Command(
    name = "audit",
    description = {
      "Checks the rig on paper, without simulating it: every finding with its arithmetic, what to change, and its source.",
      "Exit code 0: no stop; 1: a finding is a stop; 2: bad input."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class AuditCommand extends Verb {
  @Parameters(index = "0", paramLabel = "SCENARIO", description = "A scenario file.")
  private Path scenarioFile;

  @Option(
      names = "--weather",
      paramLabel = "FILE",
      description =
          "A weather file that replaces the scenario's; its darkest month and its worst week are judged. More than one make one record.")
  private List<Path> weather = new ArrayList<>();

  @Option(
      names = "--from",
      paramLabel = "DATE",
      description = "First day of the part of the weather that is judged, UTC.")
  private String from;

  @Option(names = "--days", paramLabel = "N", description = "Days of that part.")
  private Integer days;

  @Option(
      names = "--set",
      paramLabel = "KEY=VALUE",
      description = "Set any scenario key by its dotted path; may be given more than once.")
  private List<String> set = new ArrayList<>();

  @Option(
      names = "--json",
      description = "Print the audit as JSON on standard output and nothing else there.")
  private boolean json;

  AuditCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() {
    List<String> settings = new ArrayList<>(window());
    settings.addAll(set);
    Scenario scenario = ScenarioReader.read(scenarioFile, settings);
    ScenarioWeather found =
        ScenarioWeather.of(scenario, scenarioFile.toAbsolutePath().getParent(), weather);
    Season season =
        AuditWeather.of(found, from != null || days != null, Plant.planes(found.scenario()));
    AuditReport report = Audit.of(found.scenario(), season);
    console().out().print(json ? AuditJson.of(report) : AuditText.of(found.scenario(), report));
    return report.stops() > 0 ? 1 : 0;
  }

  private List<String> window() {
    List<Problem> problems = new ArrayList<>();
    List<String> settings = new ArrayList<>();
    if (from != null) {
      try {
        settings.add("run.from=" + LocalDate.parse(from));
      } catch (DateTimeParseException e) {
        problems.add(
            new Problem(
                "--from", 0, 0, "", from, "a date such as 2000-12-24", "Year, month and day."));
      }
    }
    if (days != null) {
      if (days < 1 || days > 3660) {
        problems.add(
            new Problem("--days", 0, 0, "", String.valueOf(days), "1 to 3660 whole days", ""));
      }
      settings.add("run.days=" + days);
    }
    if (!problems.isEmpty()) {
      throw new BadInput(problems);
    }
    return settings;
  }
}
