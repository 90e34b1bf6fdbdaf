package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
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
import org.broodbench.input.TuneSeasons;
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
 * comb and weather, and what nobody can do better. Writes its tables into docs/baselines.md when
 * {@code broodbench.rewrite} is true; {@code broodbench.climate}, a part of a name, leaves the
 * other climates out.
 */
@Tag("campaign")
class BaselinesCampaignTest {
  private static final Path DEMO = Path.of("..", "scenarios", "late-split.toml");
  private static final Path PAGE = Path.of("docs", "baselines.md");
  private static final int SEASONS = 6;
  private static final int EVALUATIONS = 500;
  private static final int CONSTANT_TRIES = 20;
  private static final String INSULATED = "no heat, 50 mm more insulation";
  private static final String TUNED = "reference core, tuned";
  private static final String CONSTANT = "reference core, best constant settings of each season";
  private static final String FORESIGHT = "foresight: knows comb and season, no pauses, no limits";
  private static final String BOUND = "bound: nobody has fewer";

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

  /** Every season by itself. */
  private static List<Scores> each(List<Season> seasons, Way way) {
    List<Callable<Scores>> tasks = new ArrayList<>();
    for (Season s : seasons) {
      Scenario rig = way.rig().apply(s.scenario());
      tasks.add(() -> run(s, rig, way.brain().apply(rig.controller().settings())));
    }
    return all(tasks);
  }

  /** Fewest hours out of band, then least energy. */
  private static Scores best(List<Callable<Scores>> tasks) {
    return all(tasks).stream()
        .min(
            Comparator.comparingDouble((Scores x) -> x.get(Aim.OUT_OF_BAND))
                .thenComparingDouble(x -> x.get(Aim.ENERGY)))
        .orElseThrow();
  }

  /** For every season by itself the settings with the fewest hours out of band in it. */
  private static List<Scores> bestConstant(
      List<Season> seasons, List<Candidate> known, TuneSpec spec, Settings settings) {
    List<Candidate> tried = new ArrayList<>(known);
    SplittableRandom random = new SplittableRandom(spec.seed());
    while (tried.size() < known.size() + CONSTANT_TRIES) {
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
      best.add(best(tasks));
    }
    return best;
  }

  private static List<Scores> foresight(List<Season> seasons) {
    List<Scores> best = new ArrayList<>();
    for (Season s : seasons) {
      List<Callable<Scores>> tasks = new ArrayList<>();
      for (Foresight f : Foresight.tries(s.scenario())) {
        tasks.add(
            () ->
                Scores.of(
                    f.run(s.scenario(), s.forcing()),
                    s.scenario().battery().chemistry().leadAcid()));
      }
      best.add(best(tasks));
    }
    return best;
  }

  /** Hours out of band that nobody can spare; it says nothing of the other aims. */
  private static List<Scores> bound(List<Season> seasons) {
    List<Callable<Scores>> tasks = new ArrayList<>();
    for (Season s : seasons) {
      tasks.add(
          () -> {
            double hours = Foresight.leastHoursBelow(s.scenario(), s.forcing());
            return new Scores(
                Arrays.stream(Aim.values())
                    .map(aim -> aim == Aim.OUT_OF_BAND ? hours : Double.NaN)
                    .toList());
          });
    }
    return all(tasks);
  }

  @Test
  void everyStepFromNoHeatToTheBoundInThreeClimates() throws IOException {
    Assumptions.assumeTrue(
        Integer.getInteger("broodbench.campaign.percent", 100) == 100,
        "half an hour of runs: only in the whole campaign");
    String only = System.getProperty("broodbench.climate", "");
    int made = 0;
    for (Map.Entry<String, List<String>> climate : CLIMATES.entrySet()) {
      if (climate.getKey().contains(only)) {
        Map<String, List<Scores>> rows = rows(climate.getKey(), climate.getValue());
        check(climate.getKey(), rows);
        if (Boolean.getBoolean("broodbench.rewrite")) {
          rewrite(climate.getKey(), table(rows));
        }
        made++;
      }
    }
    assertTrue(made > 0, "no climate is called " + only);
  }

  /** Puts a climate's table into the page, in place of the one that stands there. */
  private static void rewrite(String climate, String table) throws IOException {
    String page = Files.readString(PAGE);
    String head = "\n## " + climate + "\n\n";
    int from = page.indexOf(head) + head.length();
    assertTrue(from > head.length(), "the page has no part " + climate);
    int next = page.indexOf("\n## ", from);
    Files.writeString(
        PAGE, page.substring(0, from) + table + (next < 0 ? "" : page.substring(next)));
  }

  /** Who knows more is not worse, and nobody is better than the bound, in any season. */
  private static void check(String climate, Map<String, List<Scores>> rows) {
    double foresight = Scores.over(rows.get(FORESIGHT)).get(Aim.OUT_OF_BAND);
    rows.forEach(
        (name, seasons) -> {
          if (name.equals(INSULATED) || name.equals(BOUND)) {
            return; // another hive, which loses less; and the bound itself
          }
          for (int i = 0; i < SEASONS; i++) {
            double hours = seasons.get(i).get(Aim.OUT_OF_BAND);
            double bound = rows.get(BOUND).get(i).get(Aim.OUT_OF_BAND);
            assertTrue(hours >= bound, climate + ", " + name + ": " + hours + " under " + bound);
          }
          double over = Scores.over(seasons).get(Aim.OUT_OF_BAND);
          assertTrue(foresight <= over, climate + ", " + name + ": " + over + " h");
        });
    double constant = Scores.over(rows.get(CONSTANT)).get(Aim.OUT_OF_BAND);
    double tuned = Scores.over(rows.get(TUNED)).get(Aim.OUT_OF_BAND);
    assertTrue(constant <= tuned, climate + ": constant settings chosen in hindsight");
  }

  private static String table(Map<String, List<Scores>> rows) {
    StringBuilder table = new StringBuilder("| way |");
    for (Aim aim : Aim.values()) {
      table.append(' ').append(aim.words()).append(", ").append(aim.unit()).append(" |");
    }
    table.append("\n| --- |").append(" ---: |".repeat(Aim.values().length)).append('\n');
    rows.forEach(
        (name, seasons) -> {
          Scores scores = Scores.over(seasons);
          table.append("| ").append(name).append(" |");
          for (Aim aim : Aim.values()) {
            String pattern = aim == Aim.BATTERY_WEAR ? " %.2f |" : " %.0f |";
            double x = scores.get(aim);
            table.append(Double.isNaN(x) ? " – |" : String.format(Locale.ROOT, pattern, x));
          }
          table.append('\n');
        });
    return table.toString();
  }

  private Map<String, List<Scores>> rows(String climate, List<String> settings) throws IOException {
    byte[] bytes = Files.readAllBytes(DEMO);
    List<String> set = new ArrayList<>(settings);
    set.add("tune.evaluations=" + EVALUATIONS);
    Scenario s = ScenarioReader.read("late-split.toml", bytes, set);
    TuneSpec spec = Tuning.spec(s, bytes, set);
    ScenarioWeather weather = ScenarioWeather.of(s, null, List.of());
    List<Season> seen = TuneCommand.seasons(weather, spec, 0, spec.seasons());
    List<Season> unseen = TuneCommand.seasons(weather, spec, spec.seasons(), spec.unseenSeasons());
    ScenarioWeather first = TuneSeasons.of(weather, spec.seasonDays(), 0, 1, spec.seed()).get(0);
    // further ones: those before have a say in what is recommended
    List<Season> scored =
        TuneCommand.seasons(weather, spec, spec.seasons() + spec.unseenSeasons(), SEASONS);
    Settings own = s.controller().settings();
    int setPoint = own.get(Setting.HEAT_SET_POINT_CENTI_C);
    List<String> board = new ArrayList<>(settings);
    board.add("hive.insulation=70 mm");
    Scenario insulated = ScenarioReader.read("late-split.toml", bytes, board);
    TuneReport tuned;
    Path journal = folder.resolve(climate.replaceAll("\\W+", "-"));
    try (Journal j = Journal.open(journal, climate)) {
      tuned =
          new TuneStudy(s, spec, seen, unseen, TuneCommand.permitted(first))
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
                INSULATED,
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
            new Way(TUNED, r -> r, x -> new ReferenceController(best)));
    Map<String, List<Scores>> rows = new LinkedHashMap<>();
    for (Way way : ways) {
      rows.put(way.name(), each(scored, way));
    }
    List<Candidate> known = new ArrayList<>(List.of(tuned.now().candidate()));
    known.add(tuned.recommended().candidate());
    tuned.front().stream().map(Judged::candidate).forEach(known::add);
    rows.put(CONSTANT, bestConstant(scored, known, spec, own));
    rows.put(FORESIGHT, foresight(scored));
    rows.put(BOUND, bound(scored));
    return rows;
  }
}
