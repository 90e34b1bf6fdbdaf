package org.broodbench.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.output.Counted;
import org.broodbench.output.HtmlReport;
import org.broodbench.output.SummaryText;
import org.broodbench.output.VerdictJson;
import org.broodbench.plant.Plant;
import org.broodbench.recipe.Recipe;
import org.broodbench.recipe.Studies;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.Window;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.Plane;
import org.broodbench.sky.WeatherSeries;
import org.broodbench.study.Crew;
import org.broodbench.study.Evaluation;
import org.broodbench.study.Outcome;
import org.broodbench.study.Outlooks;
import org.broodbench.study.Remedies;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code run}: one scenario, simulated, judged and written out. */
@Command(
    name = "run",
    description =
        "Simulates one scenario and writes verdict.json, trace.csv, events.csv and report.html.",
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class RunCommand extends Verb {
  /** The scenario that runs when none is named. */
  static final String DEMO = "late-split.toml";

  /** Units for people. */
  enum Units {
    /** Degrees Celsius. */
    C,
    /** Degrees Fahrenheit. */
    F
  }

  @Mixin private ScenarioOptions rig;
  @Mixin private MemberOptions members;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description = "Folder for the results; broodbench-out/<scenario name> when left out.")
  private Path out;

  @Option(names = "--days", paramLabel = "N", description = "Number of days.")
  private Integer days;

  @Option(
      names = "--worst",
      paramLabel = "N",
      description =
          "Replay the N-th hardest window of the weather file, by heat need minus sun, as long as --days or the"
              + " scenario says; 1 is the hardest.")
  private Integer worst;

  @Option(names = "--seed", paramLabel = "N", description = "Seed of all noise.")
  private Long seed;

  @Option(
      names = "--units",
      paramLabel = "C|F",
      description = "Units for people: ${COMPLETION-CANDIDATES}. Files keep SI units.",
      defaultValue = "C")
  private Units units;

  @Option(
      names = "--sure",
      paramLabel = "MEMBERS",
      arity = "0..1",
      fallbackValue = "160",
      description =
          "Tell how sure the verdict is: so many runs with the weather of other years and with uncertain numbers drawn from"
              + " their ranges; 160 when no number is given.")
  private Integer sure;

  @Option(
      names = "--json",
      description = "Print the verdict as JSON on standard output and nothing else there.")
  private boolean json;

  @Option(
      names = "--no-remedies",
      description = "Do not search for single changes that would mend what was missed; quicker.")
  private boolean noRemedies;

  @Option(
      names = "--outlook",
      paramLabel = "WEEKS",
      description =
          "Beside the run, follow the colony for so many weeks from the first day: with heat, without, with"
              + " insulation only and in a smaller box; 1 to 26. Takes a while.")
  private Integer outlook;

  RunCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() {
    Scenario scenario = read(List.of());
    members.check();
    Path folder = out != null ? out : Path.of("broodbench-out", baseName(scenario.fileName()));
    checkFolder(folder);
    ScenarioWeather found = rig.weather(scenario);
    if (worst != null) {
      found = found.atWorst(worst);
    }
    Forcing forcing = found.forcing(Plant.planes(found.scenario()));
    Scenario season = outlook == null ? null : Outlooks.season(found.scenario(), outlook);
    Forcing seasonForcing = season == null ? null : seasonForcing(found, season);
    Recipe ensemble =
        sure == null
            ? null
            : new Recipe(Recipe.Kind.SURE, rig.bytes(), settingsOfOptions(), found, sure);
    EarlyFiles early = new EarlyFiles();
    Outcome outcome;
    // members are called before anything is run
    try (Crew crew =
        sure == null ? null : members.crew(ensemble, threads(), () -> false, console())) {
      outcome = evaluate(found, forcing, early);
      if (!noRemedies) {
        ScenarioWeather weathered = found;
        outcome =
            outcome.withRemedies(
                Remedies.search(
                    outcome, changes -> changed(changes, weathered, forcing), threads()));
      }
      if (season != null) {
        outcome =
            outcome.withOutlook(Outlooks.of(season, seasonForcing, threads(), this::progress));
      }
      if (sure != null) {
        outcome = outcome.withSure(Studies.sure(ensemble).run(crew));
      }
    }
    write(folder, outcome, early);
    if (json) {
      console().out().print(VerdictJson.of(outcome));
    } else {
      console().out().print(SummaryText.of(outcome, units == Units.F));
      console()
          .out()
          .println("Written: " + folder + " (verdict.json, trace.csv, events.csv, report.html)");
    }
    return outcome.met() ? 0 : 1;
  }

  private static int threads() {
    return Math.max(1, Math.min(5, Runtime.getRuntime().availableProcessors()));
  }

  /** The rig with changes on top of all that was given, in the same weather and window. */
  private Optional<Remedies.Variant> changed(
      List<String> changes, ScenarioWeather found, Forcing forcing) {
    Scenario s;
    try {
      s = read(changes);
    } catch (BadInput e) {
      return Optional.empty(); // a change that this rig cannot take
    }
    s = s.withPlace(found.scenario().place()).withWindow(found.scenario().window());
    List<Plane> planes = Plant.planes(s);
    boolean turned = !planes.equals(Plant.planes(found.scenario()));
    Forcing own =
        turned
            ? new ScenarioWeather(s, found.series(), found.file(), List.of()).forcing(planes)
            : forcing;
    return Optional.of(new Remedies.Variant(s, own));
  }

  private Scenario read(List<String> onTop) {
    List<String> settings = new ArrayList<>(settingsOfOptions());
    settings.addAll(onTop);
    return rig.readWith(settings);
  }

  /** Window and seed as settings of the scenario, so that what depends on them follows. */
  private List<String> settingsOfOptions() {
    List<Problem> problems = new ArrayList<>();
    List<String> settings = new ArrayList<>();
    if (worst != null && rig.from() != null) {
      problems.add(
          new Problem("--worst", 0, 0, "", "--from beside it", "one of the two", "Leave one out."));
    }
    if (outlook != null && (outlook < 1 || outlook > 26)) {
      problems.add(
          new Problem("--outlook", 0, 0, "", String.valueOf(outlook), "1 to 26 whole weeks", ""));
    }
    if (sure != null && (sure < 40 || sure > 100_000)) {
      problems.add(new Problem("--sure", 0, 0, "", String.valueOf(sure), "40 to 100000 runs", ""));
    }
    if (members.given() && sure == null) {
      problems.add(
          new Problem(
              "--members", 0, 0, "", "a single run", "--sure beside it", "A run is not spread."));
    }
    if (seed != null) {
      settings.add("run.seed=" + seed);
    }
    settings.addAll(rig.settings(days, problems));
    if (!problems.isEmpty()) {
      throw new BadInput(problems);
    }
    return settings;
  }

  /** Refuses an unusable folder before anything is run; creates nothing yet. */
  static void checkFolder(Path folder) {
    Path existing = folder.toAbsolutePath();
    while (existing != null && !Files.exists(existing)) {
      existing = existing.getParent();
    }
    if (existing == null || !Files.isDirectory(existing) || !Files.isWritable(existing)) {
      throw new BadInput(
          List.of(
              new Problem(
                  "--out",
                  0,
                  0,
                  "",
                  folder.toString(),
                  "a folder that can be written",
                  existing != null && !Files.isDirectory(existing)
                      ? "There is a file of that name in the way."
                      : "Choose another folder or change its permissions.")));
    }
  }

  private Outcome evaluate(ScenarioWeather found, Forcing forcing, EarlyFiles early) {
    List<String> assumed = new ArrayList<>(found.scenario().assumed());
    assumed.addAll(found.assumed());
    assumed.addAll(forcing.assumed());
    Outcome.WeatherNote note =
        new Outcome.WeatherNote(
            found.series().source(),
            found.series().formatId(),
            found.series().filledHours(),
            found.series().warnings());
    Scenario s = found.scenario();
    return Evaluation.of(s, forcing, note, assumed, threads(), main -> early.begin(s, main));
  }

  /** The weather of a season; made weather is made anew, as long as it takes. */
  private Forcing seasonForcing(ScenarioWeather found, Scenario season) {
    ScenarioWeather longer =
        found.file().isEmpty()
            ? ScenarioWeather.of(season, null, List.of())
            : new ScenarioWeather(season, found.series(), found.file(), List.of());
    WeatherSeries w = longer.series();
    Window window = season.window();
    if (!w.typicalYear() && window.toEpochS() > w.endEpochS()) {
      throw new BadInput(
          List.of(
              new Problem(
                  "--outlook",
                  0,
                  0,
                  "",
                  Counted.of(outlook, "week")
                      + ", but weather until "
                      + Instant.ofEpochSecond(w.endEpochS()),
                  "weather until " + Instant.ofEpochSecond(window.toEpochS()),
                  "Give a longer record (--weather may be given more than once), a typical year, an"
                      + " earlier --from, or fewer weeks.")));
    }
    return longer.forcing(Plant.planes(season));
  }

  /** One line that is written over, on a terminal alone. */
  private void progress(int done, int most) {
    if (System.console() != null) {
      console().err().printf(java.util.Locale.ROOT, "\routlook: run %d of at most %d ", done, most);
      console().err().flush();
    }
  }

  private void write(Path folder, Outcome outcome, EarlyFiles early) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("trace.csv", early.trace());
    files.put("events.csv", early.events());
    files.put(
        "report.html",
        HtmlReport.html(outcome, units == Units.F, early.charts())
            .getBytes(StandardCharsets.UTF_8));
    files.put("verdict.json", VerdictJson.of(outcome).getBytes(StandardCharsets.UTF_8));
    Results.write(folder, files);
  }

  static String baseName(String fileName) {
    return fileName.replaceFirst("\\.toml$", "");
  }
}
