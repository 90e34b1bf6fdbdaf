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
import java.util.function.Predicate;
import org.broodbench.audit.SettingsAudit;
import org.broodbench.controller.Settings;
import org.broodbench.input.AuditWeather;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.input.TuneSeasons;
import org.broodbench.input.Tuning;
import org.broodbench.output.TuneCsv;
import org.broodbench.output.TuneHtml;
import org.broodbench.output.TuneJson;
import org.broodbench.output.TuneText;
import org.broodbench.plant.Plant;
import org.broodbench.recipe.Recipe;
import org.broodbench.recipe.Studies;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TuneSpec;
import org.broodbench.study.Crew;
import org.broodbench.study.Journal;
import org.broodbench.tune.Season;
import org.broodbench.tune.TuneReport;
import org.broodbench.tune.TuneStudy;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code tune}: the best trade-offs between settings over many seasons. */
@Command(
    name = "tune",
    description = {
      "Searches for settings over many seasons: the best trade-offs between brood, energy, starts and battery, and one to take.",
      "Writes tune.json, tune.csv, tune.html and the tuned scenario. The scenario's [tune] table says what may change.",
      "A search that was ended goes on with the same command."
    },
    mixinStandardHelpOptions = true,
    sortOptions = false)
final class TuneCommand extends Verb {
  @Mixin private StudyOptions options;
  @Mixin private MemberOptions members;

  @Option(
      names = "--evaluations",
      paramLabel = "N",
      description = "Most runs of one candidate over one season; overrides tune.evaluations.")
  private Integer evaluations;

  TuneCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() {
    int threads = options.threads(members.least());
    members.check();
    List<String> extra =
        evaluations == null ? List.of() : List.of("tune.evaluations=" + evaluations);
    Scenario scenario = options.scenario(extra);
    List<String> settings = new ArrayList<>(options.settings());
    settings.addAll(extra);
    TuneSpec spec = Tuning.spec(scenario, options.bytes(), settings);
    Path folder = options.folder(scenario);
    ScenarioWeather weather = options.weatherOf(scenario);
    List<Season> seen = seasons(weather, spec, 0, spec.seasons());
    List<Season> unseen = seasons(weather, spec, spec.seasons(), spec.unseenSeasons());
    ScenarioWeather first = TuneSeasons.of(weather, spec.seasonDays(), 0, 1, spec.seed()).get(0);
    TuneStudy study = new TuneStudy(weather.scenario(), spec, seen, unseen, permitted(first));
    Recipe recipe =
        new Recipe(Recipe.Kind.TUNE, options.bytes(), settings, weather, spec.seasons());
    try (Interrupt interrupt = new Interrupt();
        Crew crew = members.crew(recipe, threads, interrupt, console())) {
      return tell(carryOut(study, weather, spec, folder, crew, interrupt), folder);
    }
  }

  private int tell(TuneReport report, Path folder) {
    if (report == null) {
      console().err().println("Stopped before anything was known; the same command goes on.");
      return 1;
    }
    TuneSpec spec = report.spec();
    List<String> now = Tuning.shown(spec.knobs(), report.now().candidate().counts());
    if (options.json()) {
      console().out().print(TuneJson.of(report));
    } else {
      console().out().print(TuneText.of(report, now, recommended(report)));
      console()
          .out()
          .println("Written: " + folder + " (tune.json, tune.csv, tune.html" + tuned(report) + ")");
    }
    return report.recommended() == null || report.stopped() ? 1 : 0;
  }

  private static List<String> recommended(TuneReport r) {
    return r.recommended() == null
        ? List.of()
        : Tuning.shown(r.spec().knobs(), r.recommended().candidate().counts());
  }

  private static String tunedName(TuneReport r) {
    return RunCommand.baseName(r.scenario().fileName()) + "-tuned.toml";
  }

  private static String tuned(TuneReport r) {
    return r.recommended() == null ? "" : ", " + tunedName(r);
  }

  /**
   * Seasons of the scenario, in turn at its own, the lowest and the highest published heat loss of
   * small clusters.
   */
  static List<Season> seasons(ScenarioWeather weather, TuneSpec spec, int first, int count) {
    return Studies.seasons(weather, spec, first, count);
  }

  /** Whether the audit lets settings pass on this rig, in the first of the seasons. */
  static Predicate<Settings> permitted(ScenarioWeather season) {
    Scenario s = season.scenario();
    org.broodbench.audit.Season weather = AuditWeather.of(season, true, Plant.planes(s));
    SettingsAudit audit = new SettingsAudit(s, weather);
    return settings -> audit.of(settings).stops() == 0;
  }

  private TuneReport carryOut(
      TuneStudy study,
      ScenarioWeather weather,
      TuneSpec spec,
      Path folder,
      Crew crew,
      Interrupt interrupt) {
    String source =
        weather.file().isEmpty()
            ? "invented by our weather generator; no measurement"
            : "drawn in runs of days from: " + weather.series().source();
    String name =
        ("tune of "
                + weather.scenario().sha256()
                + " with "
                + options.settings()
                + " "
                + spec.knobs()
                + " days "
                + spec.seasonDays()
                + " seed "
                + spec.seed()
                + " in "
                + source
                + " "
                + weather.file()
                + " "
                + weather.series().startEpochS()
                + " "
                + weather.series().n())
            .replaceAll("[\\r\\n\\t]", " ");
    Path file = folder.resolve("tune.journal");
    try {
      Files.createDirectories(folder);
      TuneReport report;
      try (ProgressLine progress = new ProgressLine(console());
          Journal journal = Journal.open(file, name)) {
        report = study.run(source, journal, crew, interrupt, progress);
        if (report == null) {
          return null;
        }
        Results.write(folder, files(report));
      }
      if (!report.stopped()) {
        Files.delete(file);
      }
      return report;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Map<String, byte[]> files(TuneReport report) {
    List<TuneSpec.Knob> knobs = report.spec().knobs();
    List<String> now = Tuning.shown(knobs, report.now().candidate().counts());
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("tune.csv", TuneCsv.bytes(report));
    files.put("tune.html", utf8(TuneHtml.of(report, now, recommended(report))));
    if (report.recommended() != null) {
      String text = new String(options.bytes(), StandardCharsets.UTF_8);
      files.put(
          tunedName(report),
          utf8(Tuning.text(text, knobs, report.recommended().candidate().counts())));
    }
    files.put("tune.json", utf8(TuneJson.of(report)));
    return files;
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
