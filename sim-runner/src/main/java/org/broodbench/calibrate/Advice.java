package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.hive.HiveSpec;
import org.broodbench.hive.Layer;
import org.broodbench.loop.Replay;
import org.broodbench.matter.Material;
import org.broodbench.rig.ControllerSpec;
import org.broodbench.rig.Scenario;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;

/**
 * What a change would have done over the weather of the log, with the controller in the loop: at
 * the best fit and at some hives that the log allows as well, drawn from the covariance. All begin
 * with the charge of the log's first row; the first day is not counted.
 */
final class Advice {
  /** Other hives; of so many the 5 and 95 % quantiles are the second and last but one. */
  private static final int DRAWS = 24;

  private static final double OUTSIDE = 0.05;

  /** Times that the first day is driven through before the log begins; own choice. */
  private static final int WARM_DAYS = 2;

  /** What is counted begins a day after the log does, of short ones a fifth: the nest forgets. */
  private static final int FIRST_STEPS = Model.DAY_STEPS;

  /** What two runs of one hive differ by in themselves, by when it switches; own choices. */
  private static final double LEAST_WH = 2;

  private static final double HEATER_SHARE = 0.05;
  private static final double LEAST_POINTS = 2;

  /** How far the simulation may be off, K: 0.06 K as the fit has it, nine times in ten. */
  private static final double OFF_K = 0.06 * Profile.Z90;

  /** From here on nothing has to change: share of the time, of the charge; own choices. */
  private static final double WARM_ENOUGH = 0.95;

  private static final double CHARGED_ENOUGH = 0.5;
  private static final double BOARD_M = 0.02;

  private record Change(String name, String words, UnaryOperator<Scenario> apply) {}

  /**
   * Heater, Wh a day; share of the time with the nest at or above the band; by how much of the time
   * that share is off where the simulation is by {@link #OFF_K}; lowest charge.
   */
  private record Effect(double heaterWhDay, double inBand, double doubtful, double lowestSoc) {}

  private final Model model;
  private final Fit fit;
  private final ExecutorService pool;

  /** Probes whose offset the fit has: the controller is taken to read them as the log does. */
  private final List<Knob> read;

  private Advice(Model model, Fit fit, ExecutorService pool) {
    this.model = model;
    this.fit = fit;
    this.pool = pool;
    read = fit.misfit().free();
  }

  static List<Calibration.Advised> of(Model model, Fit fit, ExecutorService pool) {
    return new Advice(model, fit, pool).all();
  }

  private List<Calibration.Advised> all() {
    List<double[]> hives = draws();
    List<Effect> now = effects(hives, s -> s);
    Effect best = now.get(0);
    List<Calibration.Advised> changes = new ArrayList<>();
    for (Change c : changes(best)) {
      changes.add(advised(c, now, effects(hives, c.apply())));
    }
    List<Calibration.Advised> out = new ArrayList<>();
    out.add(first(best, changes));
    out.addAll(changes);
    return out;
  }

  private static Calibration.Advised advised(Change c, List<Effect> now, List<Effect> then) {
    double ownWh = LEAST_WH + HEATER_SHARE * now.get(0).heaterWhDay();
    Calibration.Range heater =
        range(now, then, Effect::heaterWhDay, ownWh, Double.POSITIVE_INFINITY);
    double ownPoints = LEAST_POINTS + 100 * root(now.get(0).doubtful(), then.get(0).doubtful());
    Calibration.Range warm = range(now, then, e -> 100 * e.inBand(), ownPoints, 100);
    Calibration.Range lowest = range(now, then, e -> 100 * e.lowestSoc(), LEAST_POINTS, 100);
    String text =
        c.words()
            + ": "
            + words(heater, "the heater needs", "Wh a day", "more", "less")
            + ", "
            + words(warm, "the brood is warm", "points of the time", "more", "less")
            + ", "
            + words(lowest, "the lowest charge is", "points", "higher", "lower")
            + ".";
    return new Calibration.Advised(c.name(), text, "", heater, warm, lowest);
  }

  private static String words(
      Calibration.Range r, String what, String unit, String more, String less) {
    boolean up = r.best() >= 0;
    double low = up ? r.low() : -r.high();
    double high = up ? r.high() : -r.low();
    if (Math.abs(r.best()) < 0.5) {
      return String.format(
          Locale.ROOT,
          "%s as now (%+.0f to %+.0f %s)",
          what,
          Math.rint(r.low()) + 0.0,
          Math.rint(r.high()) + 0.0,
          unit);
    }
    return String.format(
        Locale.ROOT,
        "%s %.0f %s %s (%.0f to %.0f)",
        what,
        Math.abs(r.best()),
        unit,
        up ? more : less,
        Math.rint(low) + 0.0,
        Math.rint(high) + 0.0);
  }

  /** What to do first, and how things stand. */
  private Calibration.Advised first(Effect now, List<Calibration.Advised> changes) {
    String stands =
        String.format(
            Locale.ROOT,
            "as it is, with its controller, the heater takes %.0f Wh a day, the brood is at or above %.0f degC for %.0f %% of the time and the charge never falls below %.0f %%",
            now.heaterWhDay(),
            model.scenario().run().bandLowC(),
            100 * now.inBand(),
            100 * now.lowestSoc());
    boolean cold = now.inBand() < WARM_ENOUGH;
    boolean empty = now.lowestSoc() < CHARGED_ENOUGH;
    Calibration.Advised pick = null;
    for (Calibration.Advised c : changes) {
      Calibration.Range helps = cold ? c.bandPoints() : c.chargePoints();
      boolean harms = c.bandPoints().best() < -LEAST_POINTS;
      if (helps.low() > 0
          && !harms
          && (pick == null
              || helps.best() > (cold ? pick.bandPoints() : pick.chargePoints()).best())) {
        pick = c;
      }
    }
    String text;
    if (!cold && !empty) {
      text = "Nothing has to change: " + stands + ".";
    } else if (pick == null) {
      text = "None of these changes helps for certain: " + stands + ".";
    } else {
      String change = pick.text().substring(0, pick.text().indexOf(':'));
      text = "First: " + lower(change) + ". For " + stands + ".";
    }
    Calibration.Range none = new Calibration.Range(0, 0, 0);
    return new Calibration.Advised(
        pick == null || !cold && !empty ? "as_it_is" : "first_" + pick.name(),
        text,
        "the best fit over the weather of the log from its second day on, begun with the charge that it began with; the brackets span nine tenths of the hives that the log allows",
        none,
        none,
        none);
  }

  private static String lower(String words) {
    return words.substring(0, 1).toLowerCase(Locale.ROOT) + words.substring(1);
  }

  /**
   * Best value with its range: nine tenths of the hives, and what one hive's runs differ by.
   *
   * @param own what two runs of one hive differ by
   * @param most no figure is more
   */
  private static Calibration.Range range(
      List<Effect> now, List<Effect> then, ToDoubleFunction<Effect> of, double own, double most) {
    double[] d = new double[now.size()];
    double[] before = now.stream().mapToDouble(of).toArray();
    for (int i = 0; i < d.length; i++) {
      d[i] = of.applyAsDouble(then.get(i)) - before[i];
    }
    double below = Math.max(0, d[0] - Robust.quantile(d, OUTSIDE));
    double above = Math.max(0, Robust.quantile(d, 1 - OUTSIDE) - d[0]);
    double from = -Arrays.stream(before).max().orElse(0);
    double to = most - Arrays.stream(before).min().orElse(0);
    return new Calibration.Range(
        d[0], Math.max(from, d[0] - root(below, own)), Math.min(to, d[0] + root(above, own)));
  }

  /** Of two doubts that have nothing to do with each other. */
  private static double root(double a, double b) {
    return Math.sqrt(a * a + b * b);
  }

  private List<Change> changes(Effect now) {
    List<Change> out = new ArrayList<>();
    out.add(
        new Change(
            "more_insulation", "20 mm more board all round", s -> s.withHive(insulated(s.hive()))));
    if (now.heaterWhDay() > 1) {
      out.add(new Change("lower_set_point", "A set point 1 K lower", s -> setPoint(s, -100)));
      if (now.inBand() < 0.95) {
        out.add(new Change("higher_set_point", "A set point 1 K higher", s -> setPoint(s, 100)));
      }
    }
    if (model.scenario().hive().topVentM2() > 0) {
      out.add(
          new Change(
              "narrower_openings",
              "All openings half as free",
              s -> {
                double[] z = new double[Knob.COUNT];
                z[Knob.AIR_LEAKAGE.ordinal()] = StrictMath.log(0.5) / Knob.AIR_LEAKAGE.spread();
                return FittedRig.turned(s, z);
              }));
    }
    if (model.scenario().pv().powerW() > 0) {
      out.add(
          new Change(
              "bigger_panel",
              "Half as much panel again",
              s -> {
                double[] z = new double[Knob.COUNT];
                z[Knob.PANEL_FACTOR.ordinal()] = StrictMath.log(1.5) / Knob.PANEL_FACTOR.spread();
                return FittedRig.turned(s, z);
              }));
    }
    return out;
  }

  /** Board all round. */
  static HiveSpec insulated(HiveSpec h) {
    return h.withLayers(thicker(h.wall()), thicker(h.floor()), thicker(h.lid()));
  }

  private static List<Layer> thicker(List<Layer> layers) {
    List<Layer> out = new ArrayList<>(layers);
    out.add(new Layer(Material.EPS, BOARD_M));
    return out;
  }

  /** Another set point, if that is a legal one. */
  static Scenario setPoint(Scenario s, int byCentiK) {
    ControllerSpec c = s.controller();
    int now = c.settings().get(Setting.HEAT_SET_POINT_CENTI_C);
    Settings changed = c.settings().with(Setting.HEAT_SET_POINT_CENTI_C, now + byCentiK);
    Settings legal = changed.problems().isEmpty() ? changed : c.settings();
    return FittedRig.withController(
        s,
        new ControllerSpec(
            legal,
            c.tickMillis(),
            c.powerW(),
            c.heatInHiveShare(),
            c.brownOutV(),
            c.restartV(),
            c.bootS()));
  }

  /** The best fit first, then others from its covariance; a fixed seed. */
  private List<double[]> draws() {
    List<double[]> out = new ArrayList<>();
    out.add(fit.all());
    double[][] root =
        new CholeskyDecomposition(MatrixUtils.createRealMatrix(fit.covariance()), 1e-9, 1e-12)
            .getL()
            .getData();
    SplittableRandom random = new SplittableRandom(model.scenario().run().seed());
    for (int d = 0; d < DRAWS; d++) {
      double[] n = new double[root.length];
      double[] point = fit.point().clone();
      for (int j = 0; j < n.length; j++) {
        double u = 1 - random.nextDouble();
        n[j] =
            StrictMath.sqrt(-2 * StrictMath.log(u))
                * StrictMath.cos(2 * StrictMath.PI * random.nextDouble());
      }
      for (int j = 0; j < n.length; j++) {
        for (int k = 0; k <= j; k++) {
          point[j] += root[j][k] * n[k];
        }
      }
      out.add(fit.misfit().all(point));
    }
    return out;
  }

  private List<Effect> effects(List<double[]> hives, UnaryOperator<Scenario> change) {
    List<Callable<Effect>> tasks = new ArrayList<>();
    for (double[] z : hives) {
      tasks.add(() -> effect(z, change));
    }
    try {
      List<Effect> out = new ArrayList<>();
      for (Future<Effect> f : pool.invokeAll(tasks)) {
        out.add(f.get());
      }
      return out;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("the advice was interrupted", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause());
    }
  }

  private Effect effect(double[] z, UnaryOperator<Scenario> change) {
    Scenario s = change.apply(FittedRig.reading(FittedRig.at(model.scenario(), z), read, z));
    int steps = model.seen().steps();
    int from = Math.min(FIRST_STEPS, steps / 5);
    int lap = Math.min(Model.DAY_STEPS, steps);
    double[] heaterJ = new double[1];
    int[] warm = new int[2];
    double[] soc = {1};
    double bandC = s.run().bandLowC();
    new Replay(s, model.forcing(z), Replay.CONTROLLED, Observations.STEP_S)
        .run(
            WARM_DAYS * lap,
            lap,
            steps,
            (step, plant, on) -> {
              if (step < from) {
                return;
              }
              heaterJ[0] += plant.supply().heaterW() * Observations.STEP_S;
              double over = plant.hive().view().nestC(0.5) - bandC;
              warm[0] += over >= 0 ? 1 : 0;
              warm[1] += Math.abs(over) < OFF_K ? 1 : 0;
              soc[0] = Math.min(soc[0], plant.supply().battery().stateOfCharge());
            });
    int counted = steps - from;
    double days = counted * Observations.STEP_S / 86_400.0;
    return new Effect(
        heaterJ[0] / 3600 / days, (double) warm[0] / counted, 0.5 * warm[1] / counted, soc[0]);
  }
}
