package org.broodbench.audit;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.broodbench.input.AuditWeather;
import org.broodbench.input.BadInput;
import org.broodbench.input.ScenarioReader;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.plant.Plant;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.Window;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.RigClass;
import org.broodbench.sky.WorstWindows;

/**
 * A rig of the base file with settings on top, audited.
 *
 * @param settings what was set
 * @param weather its season
 * @param season what the audit sees of that
 * @param report what the audit says
 */
record PaperRig(List<String> settings, ScenarioWeather weather, Season season, AuditReport report) {
  static final Path BASE = Path.of("src/test/resources/org/broodbench/audit/random-base.toml");

  /** Empty where the settings do not make a rig. */
  static Optional<PaperRig> of(List<String> settings) {
    try {
      ScenarioWeather w = ScenarioWeather.of(ScenarioReader.read(BASE, settings), null, List.of());
      Season season = AuditWeather.of(w, false, Plant.planes(w.scenario()));
      return Optional.of(new PaperRig(settings, w, season, Audit.of(w.scenario(), season)));
    } catch (BadInput refused) {
      return Optional.empty();
    }
  }

  Scenario scenario() {
    return weather.scenario();
  }

  Optional<PaperRig> with(List<String> more) {
    return of(Stream.concat(settings.stream(), more.stream()).toList());
  }

  /** The rig over the days that follow the beginning of its worst week. */
  Scenario worst(int days) {
    long end = weather.scenario().window().toEpochS() - 86_400L * days;
    long week = WorstWindows.find(weather.series(), 7, 1, RigClass.SMALL, 0).get(0).fromEpochS();
    long from = Math.max(weather.scenario().window().fromEpochS(), Math.min(week, end));
    return scenario().withWindow(new Window(from, days));
  }

  Forcing forcing(Scenario over) {
    return new ScenarioWeather(over, weather.series(), weather.file(), weather.assumed())
        .forcing(Plant.planes(over));
  }
}
