package org.broodbench.study;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import org.broodbench.hive.HiveSpec;
import org.broodbench.hive.Layer;
import org.broodbench.loop.ColonyDay;
import org.broodbench.loop.Explain;
import org.broodbench.loop.Judge;
import org.broodbench.loop.Onlooker;
import org.broodbench.loop.Pace;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.RunResult;
import org.broodbench.loop.Simulation;
import org.broodbench.matter.Material;
import org.broodbench.rig.Requirement;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;

/**
 * Runs a scenario at the low, its own and the high heat loss of small clusters, and the two
 * baselines, on as many threads as asked for. The answer does not depend on their number.
 */
public final class Evaluation {
  /** Lowest published factor on the size law: the laboratory clusters it was measured on. */
  public static final double LOW_LOSS = 1.0;

  /**
   * Highest: 0.57 W/K per kg of whole colonies in hives over 0.20, second-hand from a review of
   * Southwick's work.
   */
  public static final double HIGH_LOSS = 2.85;

  private static final double BASELINE_INSULATION_M = 0.05;

  private Evaluation() {}

  /** Runs all of it. */
  public static Outcome of(
      Scenario s, Forcing forcing, Outcome.WeatherNote weather, List<String> assumed, int threads) {
    return of(s, forcing, weather, assumed, threads, main -> {});
  }

  /**
   * Runs all of it.
   *
   * @param mainDone told of the main run as soon as it is over, while others still run; its own
   *     thread waits meanwhile
   */
  public static Outcome of(
      Scenario s,
      Forcing forcing,
      Outcome.WeatherNote weather,
      List<String> assumed,
      int threads,
      Consumer<RunResult> mainDone) {
    return watched(s, forcing, weather, assumed, threads, false, Onlooker.NOBODY, mainDone);
  }

  /**
   * Runs all of it while somebody looks on.
   *
   * @param quick whether every run takes the pace of a search; the main run still keeps its trace
   * @param onlooker looks at the main run, from a thread of its own
   * @param mainDone told of the main run as soon as it is over, while others still run; its own
   *     thread waits meanwhile
   */
  public static Outcome watched(
      Scenario s,
      Forcing forcing,
      Outcome.WeatherNote weather,
      List<String> assumed,
      int threads,
      boolean quick,
      Onlooker onlooker,
      Consumer<RunResult> mainDone) {
    List<UnaryOperator<Scenario>> variants =
        List.of(
            v -> v,
            v -> v.withColony(v.colony().withClusterLossFactor(LOW_LOSS)),
            v -> v.withColony(v.colony().withClusterLossFactor(HIGH_LOSS)),
            v -> v.withHeater(v.heater().withoutPower()),
            v -> v.withHeater(v.heater().withoutPower()).withHive(insulated(v.hive())));
    List<RunResult> results = runAll(s, forcing, variants, threads, quick, onlooker, mainDone);
    RunResult main = results.get(0);
    List<RunResult> three = results.subList(0, 3);
    List<JudgedRequirement> judged = new ArrayList<>();
    for (Requirement r : s.requirements()) {
      long meets = three.stream().filter(x -> Judge.measure(r.kind(), x, s).meets(r)).count();
      Judge.Measured m = Judge.measure(r.kind(), main, s);
      judged.add(
          new JudgedRequirement(
              r,
              meets == three.size(),
              meets > 0 && meets < three.size(),
              m.value(),
              m.atS(),
              Explain.why(r, main, s)));
    }
    return new Outcome(
        s,
        weather,
        main,
        results.get(1),
        results.get(2),
        results.get(3),
        results.get(4),
        judged,
        assumed,
        Flags.of(s, main),
        RemedySearch.NONE);
  }

  /** The same hive with more insulation around every face. */
  static HiveSpec insulated(HiveSpec h) {
    return h.withLayers(thicker(h.wall()), thicker(h.floor()), thicker(h.lid()));
  }

  private static List<Layer> thicker(List<Layer> layers) {
    List<Layer> out = new ArrayList<>(layers);
    out.add(new Layer(Material.EPS, BASELINE_INSULATION_M));
    return out;
  }

  /**
   * Only the scenario's own run is shown in its course; without a heater the tick hardly counts.
   */
  private static Pace pace(int variant, Scenario s, boolean quick) {
    Pace search = Pace.search(s);
    if (variant == 0) {
      return quick
          ? new Pace(search.tickMillis(), search.stepMillis(), Pace.Keep.TRACE)
          : Pace.exact(s, Pace.Keep.TRACE);
    }
    return s.heater().powerW() > 0 && !quick ? Pace.exact(s, Pace.Keep.FIGURES) : search;
  }

  private static List<RunResult> runAll(
      Scenario s,
      Forcing forcing,
      List<UnaryOperator<Scenario>> variants,
      int threads,
      boolean quick,
      Onlooker onlooker,
      Consumer<RunResult> mainDone) {
    List<Callable<RunResult>> runs = new ArrayList<>();
    for (int i = 0; i < variants.size(); i++) {
      Scenario variant = variants.get(i).apply(s);
      Pace pace = pace(i, variant, quick);
      Onlooker looksOn = i == 0 ? onlooker : Onlooker.NOBODY;
      Consumer<RunResult> done = i == 0 ? mainDone : result -> {};
      runs.add(
          () -> {
            ReferenceController core = new ReferenceController(variant.controller().settings());
            RunResult result = new Simulation(variant, forcing, core, pace, looksOn).run();
            done.accept(result);
            return result;
          });
    }
    return Runs.all(runs, threads);
  }

  /**
   * The lives of the colony in variants of a scenario whose numbers move, at the pace of a search.
   *
   * @param done told after every run, by one thread at a time
   */
  static List<List<ColonyDay>> lives(
      Scenario s,
      Forcing forcing,
      List<UnaryOperator<Scenario>> variants,
      int threads,
      Runnable done) {
    List<Callable<List<ColonyDay>>> runs = new ArrayList<>();
    for (UnaryOperator<Scenario> v : variants) {
      Scenario variant = v.apply(s);
      runs.add(
          () -> {
            ReferenceController core = new ReferenceController(variant.controller().settings());
            List<ColonyDay> days =
                new Simulation(variant, forcing, core, Pace.search(variant)).run().life();
            synchronized (runs) {
              done.run();
            }
            return days;
          });
    }
    return Runs.all(runs, threads);
  }
}
