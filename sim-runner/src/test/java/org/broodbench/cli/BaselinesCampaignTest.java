package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Readings;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.input.ScenarioReader;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.input.Tuning;
import org.broodbench.loop.Pace;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.Simulation;
import org.broodbench.loop.SteppedController;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TuneSpec;
import org.broodbench.study.Journal;
import org.broodbench.study.Parallel;
import org.broodbench.study.Progress;
import org.broodbench.tune.Aim;
import org.broodbench.tune.Candidate;
import org.broodbench.tune.Judged;
import org.broodbench.tune.Scores;
import org.broodbench.tune.Season;
import org.broodbench.tune.TuneReport;
import org.broodbench.tune.TuneStudy;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The rig of the demonstration in three climates under ways to heat it, from none to one that knows
 * the weather. Writes docs/baselines.md when {@code broodbench.rewrite} is true.
 */
@Tag("campaign")
class BaselinesCampaignTest {
  private static final Path DEMO = Path.of("..", "scenarios", "late-split.toml");
  private static final int SEASONS = 6;
  private static final int EVALUATIONS = 250;
  private static final int ORACLE_TRIES = 40;

  private static final Map<String, List<String>> CLIMATES = new LinkedHashMap<>();

  static {
    CLIMATES.put("upland valley, 47° N, from 20 April", List.of());
    CLIMATES.put(
        "far north, 65° N, from 1 May",
        List.of(
            "run.from=2027-05-01",
            "site.latitude=65 N",
            "site.longitude=25 E",
            "site.altitude=150 m",
            "weather.climate=far_north"));
    CLIMATES.put(
        "desert edge, 33.5° N, from 10 March",
        List.of(
            "run.from=2027-03-10",
            "site.latitude=33.5 N",
            "site.longitude=58 E",
            "site.altitude=1400 m",
            "weather.climate=desert_edge"));
  }

  @TempDir private Path folder;

  /** A thermostat and nothing else: no limits, no pauses, no eye on the battery, no fan. */
  private record PlainThermostat(int setPointCentiC, int differentialCentiK)
      implements SteppedController {
    @Override
    public void powerUp() {
      // it remembers nothing
    }

    @Override
    public void step(int nowMillis, Readings readings, Commands commands) {
      commands.isolation = true;
      commands.fan = false;
      int c = readings.broodA.value;
      commands.heater =
          commands.heater ? c < setPointCentiC : c <= setPointCentiC - differentialCentiK;
    }

    @Override
    public boolean keyInSetPoint(double setPointC) {
      return false;
    }
  }

  private record Way(
      String name, UnaryOperator<Scenario> rig, Function<Settings, SteppedController> brain) {}

  private static Scores run(Season season, Scenario rig, SteppedController brain) {
    return Scores.of(
        new Simulation(rig, season.forcing(), brain, Pace.search(rig)).run(),
        rig.battery().chemistry().leadAcid());
  }

  private static List<Scores> all(List<Callable<Scores>> tasks) {
    Scores[] found = new Scores[tasks.size()];
    int threads = Runtime.getRuntime().availableProcessors();
    new Parallel(threads, () -> false).run(tasks, (task, scores) -> found[task] = scores);
    return List.of(found);
  }

  private static Scores over(List<Season> seasons, Way way) {
    List<Callable<Scores>> tasks = new ArrayList<>();
    for (Season s : seasons) {
      Scenario rig = way.rig().apply(s.scenario());
      tasks.add(() -> run(s, rig, way.brain().apply(rig.controller().settings())));
    }
    return Scores.over(all(tasks));
  }

  /** For every season by itself the settings with the fewest hours out of band in it. */
  private static Scores oracle(
      List<Season> seasons, List<Candidate> known, TuneSpec spec, Settings settings) {
    List<Candidate> tried = new ArrayList<>(known);
    SplittableRandom random = new SplittableRandom(spec.seed());
    while (tried.size() < known.size() + ORACLE_TRIES) {
      List<Integer> counts = new ArrayList<>();
      for (TuneSpec.Knob k : spec.knobs()) {
        counts.add(k.low() + k.step() * random.nextInt(k.values()));
      }
      Candidate c = new Candidate(counts);
      if (c.put(settings, spec.knobs()).problems().isEmpty()) {
        tried.add(c);
      }
    }
    List<Scores> best = new ArrayList<>();
    for (Season s : seasons) {
      List<Callable<Scores>> tasks = new ArrayList<>();
      for (Candidate c : tried) {
        tasks.add(
            () -> run(s, s.scenario(), new ReferenceController(c.put(settings, spec.knobs()))));
      }
      best.add(
          all(tasks).stream()
              .min(java.util.Comparator.comparingDouble(x -> x.get(Aim.OUT_OF_BAND)))
              .orElseThrow());
    }
    return Scores.over(best);
  }

  @Test
  void everyStepFromNoHeatToTheOracleInThreeClimates() throws IOException {
    Assumptions.assumeTrue(
        Integer.getInteger("broodbench.campaign.percent", 100) == 100,
        "half an hour of runs: only in the whole campaign");
    StringBuilder page = new StringBuilder();
    for (Map.Entry<String, List<String>> climate : CLIMATES.entrySet()) {
      Map<String, Scores> rows = rows(climate.getKey(), climate.getValue());
      page.append("## ").append(climate.getKey()).append("\n\n| way |");
      for (Aim aim : Aim.values()) {
        page.append(' ').append(aim.words()).append(", ").append(aim.unit()).append(" |");
      }
      page.append("\n| --- |").append(" ---: |".repeat(Aim.values().length)).append('\n');
      rows.forEach(
          (name, scores) -> {
            page.append("| ").append(name).append(" |");
            for (Aim aim : Aim.values()) {
              String pattern = aim == Aim.BATTERY_WEAR ? " %.2f |" : " %.0f |";
              page.append(String.format(Locale.ROOT, pattern, scores.get(aim)));
            }
            page.append('\n');
          });
      page.append('\n');
      double oracle = rows.get("oracle").get(Aim.OUT_OF_BAND);
      double tuned = rows.get("reference core, tuned").get(Aim.OUT_OF_BAND);
      assertTrue(oracle <= tuned + 1e-9, "who knows the weather is not worse");
    }
    if (Boolean.getBoolean("broodbench.rewrite")) {
      Path file = Path.of("docs", "baselines.md");
      String old = Files.readString(file);
      String head = old.substring(0, old.indexOf("\n## ") + 1);
      Files.writeString(file, head + page.toString().stripTrailing() + "\n");
    }
  }

  private Map<String, Scores> rows(String climate, List<String> settings) throws IOException {
    byte[] bytes = Files.readAllBytes(DEMO);
    List<String> set = new ArrayList<>(settings);
    set.addAll(List.of("tune.seasons=" + SEASONS, "tune.evaluations=" + EVALUATIONS));
    Scenario s = ScenarioReader.read("late-split.toml", bytes, set);
    TuneSpec spec = Tuning.spec(s, bytes, set);
    ScenarioWeather weather = ScenarioWeather.of(s, null, List.of());
    List<Season> seen = TuneCommand.seasons(weather, spec, 0, SEASONS);
    List<Season> unseen = TuneCommand.seasons(weather, spec, SEASONS, SEASONS);
    Settings own = s.controller().settings();
    int setPoint = own.get(Setting.HEAT_SET_POINT_CENTI_C);
    List<String> board = new ArrayList<>(set);
    board.add("hive.insulation=70 mm");
    Scenario insulated = ScenarioReader.read("late-split.toml", bytes, board);
    TuneReport tuned;
    Path journal = folder.resolve(climate.replaceAll("\\W+", "-"));
    try (Journal j = Journal.open(journal, climate)) {
      tuned =
          new TuneStudy(s, spec, seen, unseen, x -> true)
              .run(
                  climate,
                  j,
                  Runtime.getRuntime().availableProcessors(),
                  () -> false,
                  Progress.NONE);
    }
    Settings best = tuned.recommended().candidate().put(own, spec.knobs());
    List<Way> ways =
        List.of(
            new Way(
                "no heat", r -> r.withHeater(r.heater().withoutPower()), ReferenceController::new),
            new Way(
                "no heat, 50 mm more insulation",
                r -> r.withHive(insulated.hive()).withHeater(r.heater().withoutPower()),
                ReferenceController::new),
            new Way(
                "plain thermostat, differential 3 K",
                r -> r,
                x -> new PlainThermostat(setPoint, 300)),
            new Way(
                "plain thermostat, differential 0.3 K",
                r -> r,
                x -> new PlainThermostat(setPoint, 30)),
            new Way("reference core, settings of the demo", r -> r, ReferenceController::new),
            new Way("reference core, tuned", r -> r, x -> new ReferenceController(best)));
    Map<String, Scores> rows = new LinkedHashMap<>();
    for (Way way : ways) {
      rows.put(way.name(), over(unseen, way));
    }
    List<Candidate> known = new ArrayList<>(List.of(tuned.now().candidate()));
    tuned.front().stream().map(Judged::candidate).forEach(known::add);
    rows.put("oracle", oracle(unseen, known, spec, own));
    return rows;
  }
}
