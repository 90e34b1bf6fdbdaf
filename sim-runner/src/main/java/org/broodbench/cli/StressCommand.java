package org.broodbench.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.broodbench.input.BadInput;
import org.broodbench.input.Problem;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.output.StressCsv;
import org.broodbench.output.StressHtml;
import org.broodbench.output.StressJson;
import org.broodbench.output.StressText;
import org.broodbench.recipe.Recipe;
import org.broodbench.recipe.Studies;
import org.broodbench.rig.Scenario;
import org.broodbench.stress.StressPlan;
import org.broodbench.stress.StressReport;
import org.broodbench.stress.StressRow;
import org.broodbench.stress.StressStudy;
import org.broodbench.stress.StressWeek;
import org.broodbench.study.Crew;
import org.broodbench.study.Journal;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code stress}: the scenario under every fault in the hardest weeks. */
@Command(
    name = "stress",
    description = {
      "Breaks one thing after the other in the hardest weeks and tells what holds, for how long, and who would notice.",
      "Writes stress.json, stress.csv and stress.html. A study that was ended goes on with the same command."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class StressCommand extends Verb {
  @Mixin private StudyOptions options;
  @Mixin private MemberOptions members;

  @Option(
      names = "--weeks",
      paramLabel = "N",
      defaultValue = "5",
      description =
          "How many of the hardest weeks; 5 when left out. Generated weather: of twenty such seasons.")
  private int count;

  @Option(
      names = "--season",
      description = "Only weeks within 30 days of the scenario's own time of the year.")
  private boolean season;

  @Option(names = "--pairs", description = "Every two faults at once as well, in the hardest week.")
  private boolean everyPair;

  @Option(
      names = "--pair",
      paramLabel = "A+B",
      description =
          "These two faults at once as well, in every week; by their names in stress.csv, such as relay_welded+probe_stuck. Can be given again.")
  private List<String> pairs = new ArrayList<>();

  @Option(
      names = "--all-losses",
      description =
          "Each row at the lowest and the highest published heat loss of small clusters as well; told is the worst.")
  private boolean allLosses;

  StressCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() {
    if (count < 1 || count > 100) {
      throw new BadInput(
          List.of(new Problem("--weeks", 0, 0, "", String.valueOf(count), "1 to 100", "")));
    }
    int threads = options.threads(members.least());
    members.check();
    Scenario scenario = options.scenario();
    StressPlan plan = new StressPlan(everyPair, FaultPairs.of(pairs, scenario), allLosses);
    Path folder = options.folder(scenario);
    ScenarioWeather weather = options.weatherOf(scenario);
    Recipe recipe =
        new Recipe(
            Recipe.Kind.STRESS, options.bytes(), options.settings(), weather, count, season, plan);
    List<StressWeek> weeks = Studies.weeks(recipe);
    StressStudy study = new StressStudy(weeks, plan);
    try (Interrupt interrupt = new Interrupt();
        Crew crew = members.crew(recipe, threads, interrupt, console())) {
      return tell(carryOut(study, plan, weather, weeks, folder, crew), folder);
    }
  }

  private int tell(StressReport report, Path folder) {
    if (options.json()) {
      console().out().print(StressJson.of(report));
    } else {
      console().out().print(StressText.of(report));
      console().out().println("Written: " + folder + " (stress.json, stress.csv, stress.html)");
    }
    return report.met() && report.whole() ? 0 : 1;
  }

  private StressReport carryOut(
      StressStudy study,
      StressPlan plan,
      ScenarioWeather weather,
      List<StressWeek> weeks,
      Path folder,
      Crew crew) {
    Path file = folder.resolve("stress.journal");
    try {
      Files.createDirectories(folder);
      StressReport report;
      try (ProgressLine progress = new ProgressLine(console());
          Journal journal = Journal.open(file, name(weather, weeks))) {
        List<StressRow> rows = study.rows(journal, crew, progress);
        report = report(plan, weather, weeks, rows, study.planned());
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("stress.csv", StressCsv.bytes(report));
        files.put("stress.html", StressHtml.of(report).getBytes(StandardCharsets.UTF_8));
        files.put("stress.json", StressJson.of(report).getBytes(StandardCharsets.UTF_8));
        Results.write(folder, files);
      }
      if (report.whole()) {
        Files.delete(file);
      }
      return report;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static StressReport report(
      StressPlan plan,
      ScenarioWeather weather,
      List<StressWeek> weeks,
      List<StressRow> rows,
      int planned) {
    String source =
        weather.file().isEmpty()
            ? "invented by our weather generator, twenty seasons like the scenario's; no measurement"
            : weather.series().source();
    List<String> assumed = new ArrayList<>(weather.assumed());
    assumed.addAll(weeks.get(0).forcing().assumed());
    return new StressReport(weeks.get(0).scenario(), source, plan, weeks, rows, planned, assumed);
  }

  /** What tells this study from any other. */
  private String name(ScenarioWeather weather, List<StressWeek> weeks) {
    StringBuilder name = new StringBuilder("stress of " + weather.scenario().sha256());
    name.append(" with ").append(options.settings());
    name.append(" in ").append(weather.series().source()).append(' ').append(weather.file());
    for (StressWeek w : weeks) {
      name.append(", ").append(w.label()).append(' ').append(w.stats());
    }
    return name.toString().replaceAll("[\\r\\n\\t]", " ");
  }
}
