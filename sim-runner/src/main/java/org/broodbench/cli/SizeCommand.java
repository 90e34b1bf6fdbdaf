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
import org.broodbench.input.ScenarioReader;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.output.SizeHtml;
import org.broodbench.output.SizeJson;
import org.broodbench.output.SizeText;
import org.broodbench.plant.Plant;
import org.broodbench.recipe.Recipe;
import org.broodbench.recipe.Studies;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.SizeSpec;
import org.broodbench.rig.Window;
import org.broodbench.size.SizeReport;
import org.broodbench.size.SizeStudy;
import org.broodbench.sky.Plane;
import org.broodbench.study.Crew;
import org.broodbench.study.Journal;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code size}: the cheapest parts that come through many seasons. */
@Command(
    name = "size",
    description = {
      "Finds the cheapest combination of the scenario's list of parts that comes through many seasons.",
      "Writes size.json and size.html. A study that was ended goes on with the same command."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class SizeCommand extends Verb {
  @Mixin private StudyOptions options;
  @Mixin private MemberOptions members;

  @Option(
      names = "--seasons",
      paramLabel = "N",
      defaultValue = "30",
      description = "How many seasons; 30 when left out.")
  private int seasons;

  @Option(
      names = "--weeks",
      paramLabel = "N",
      defaultValue = "8",
      description = "Length of a season from the scenario's first day on; 8 when left out.")
  private int weeks;

  @Option(
      names = "--every",
      description = "Simulate every combination, as a check: takes many times as long.")
  private boolean every;

  SizeCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() {
    List<Problem> problems = new ArrayList<>();
    if (seasons < 1 || seasons > 1000) {
      problems.add(new Problem("--seasons", 0, 0, "", String.valueOf(seasons), "1 to 1000", ""));
    }
    if (weeks < 1 || weeks > 52) {
      problems.add(new Problem("--weeks", 0, 0, "", String.valueOf(weeks), "1 to 52", ""));
    }
    if (!problems.isEmpty()) {
      throw new BadInput(problems);
    }
    int threads = options.threads(members.least());
    members.check();
    Scenario read = options.scenario();
    Scenario scenario = read.withWindow(new Window(read.window().fromEpochS(), 7 * weeks));
    SizeSpec spec = ScenarioReader.sizing(scenario.fileName(), options.bytes(), options.settings());
    Path folder = options.folder(scenario);
    ScenarioWeather weather = options.weatherOf(scenario);
    Recipe recipe =
        new Recipe(Recipe.Kind.SIZE, options.bytes(), options.settings(), weather, seasons);
    refuseBadChoices(spec, recipe);
    SizeStudy study = Studies.size(recipe, !every);
    SizeReport report;
    try (Interrupt interrupt = new Interrupt();
        Crew crew = members.crew(recipe, threads, interrupt, console())) {
      report = carryOut(study, weather, folder, crew, interrupt);
    }
    if (options.json()) {
      console().out().print(SizeJson.of(report));
    } else {
      console().out().print(SizeText.of(report));
      console().out().println("Written: " + folder + " (size.json, size.html)");
    }
    return report.best() != null && report.whole() ? 0 : 1;
  }

  /** Every single choice is built in once before anything is run. */
  private static void refuseBadChoices(SizeSpec spec, Recipe recipe) {
    List<Problem> problems = new ArrayList<>();
    List<Plane> planes = Plant.planes(recipe.weather().scenario());
    for (SizeSpec.Part part : spec.parts()) {
      for (SizeSpec.Choice choice : part.choices()) {
        try {
          if (!Plant.planes(recipe.rebuilt(choice.settings())).equals(planes)) {
            problems.add(
                new Problem(
                    "[[size.choice]] " + part.name(),
                    0,
                    0,
                    "size.choice.set",
                    choice.label(),
                    "parts that do not turn or move a face or a module",
                    "Compare orientations with run --set."));
          }
        } catch (BadInput e) {
          problems.addAll(e.problems());
        }
      }
    }
    if (!problems.isEmpty()) {
      throw new BadInput(problems);
    }
  }

  private SizeReport carryOut(
      SizeStudy study, ScenarioWeather weather, Path folder, Crew crew, Interrupt interrupt) {
    Path file = folder.resolve("size.journal");
    try {
      Files.createDirectories(folder);
      SizeReport report;
      try (ProgressLine progress = new ProgressLine(console());
          Journal journal = Journal.open(file, name(weather))) {
        String source =
            weather.file().isEmpty()
                ? "invented by our weather generator, other years like the scenario's; no measurement"
                : "drawn in runs of days from: " + weather.series().source();
        report = study.run(source, journal, crew, interrupt, progress);
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("size.html", SizeHtml.of(report).getBytes(StandardCharsets.UTF_8));
        files.put("size.json", SizeJson.of(report).getBytes(StandardCharsets.UTF_8));
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

  /** What tells this study from any other. */
  private String name(ScenarioWeather weather) {
    return "size of "
        + weather.scenario().sha256()
        + " with "
        + options.settings()
        + " in "
        + weather.series().source()
        + ", "
        + seasons
        + " seasons of "
        + weeks
        + " weeks"
        + (every ? ", every combination" : "");
  }
}
