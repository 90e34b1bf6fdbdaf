package org.broodbench.cli;

import java.util.List;
import org.broodbench.audit.Audit;
import org.broodbench.audit.AuditReport;
import org.broodbench.audit.Season;
import org.broodbench.input.AuditWeather;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.output.AuditJson;
import org.broodbench.output.AuditText;
import org.broodbench.plant.Plant;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

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
  @Mixin private ScenarioOptions rig;

  @Option(
      names = "--days",
      paramLabel = "N",
      description = "Days of the weather that are judged, from --from on.")
  private Integer days;

  @Option(
      names = "--json",
      description = "Print the audit as JSON on standard output and nothing else there.")
  private boolean json;

  AuditCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() {
    if (rig.file() == null) {
      throw new BadInput(
          List.of(
              new Problem(
                  "SCENARIO", 0, 0, "", "none", "a scenario file", "Name the rig's file.")));
    }
    ScenarioWeather found = rig.weather(rig.read(days));
    Season season =
        AuditWeather.of(found, rig.from() != null || days != null, Plant.planes(found.scenario()));
    AuditReport report = Audit.of(found.scenario(), season);
    console().out().print(json ? AuditJson.of(report) : AuditText.of(found.scenario(), report));
    return report.stops() > 0 ? 1 : 0;
  }
}
