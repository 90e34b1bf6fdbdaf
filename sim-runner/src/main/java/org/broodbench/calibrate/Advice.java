package org.broodbench.calibrate;

import java.util.ArrayList;
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
 * the best fit and at some hives that the log allows as well, drawn from the covariance.
 */
final class Advice {
  private static final int DRAWS = 6;

  /** A further value of seven: 95 % point of Student's t of six, times the root of 1 + 1/7. */
  private static final double T_OF_SEVEN = 1.943 * 1.069;

  /** What two runs of one hive differ by in themselves, by when it switches; own choices. */
  private static final double LEAST_WH = 2;

  private static final double HEATER_SHARE = 0.05;
  private static final double LEAST_POINTS = 2;

  /** From here on nothing has to change: share of the time, of the charge; own choices. */
  private static final double WARM_ENOUGH = 0.95;

  private static final double CHARGED_ENOUGH = 0.5;
  private static final double BOARD_M = 0.02;

  private record Change(String name, String words, UnaryOperator<Scenario> apply) {}

  /** Heater, Wh a day; share of the time with the nest at or above the band; lowest charge. */
  private record Effect(double heaterWhDay, double inBand, double lowestSoc) {}

  private final Model model;
  private final Fit fit;
  private final ExecutorService pool;

  private Advice(Model model, Fit fit, ExecutorService pool) {
    this.model = model;
    this.fit = fit;
    this.pool = pool;
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
    Effect best = now.get(0);
    Calibration.Range heater =
        range(
            now,
            then,
            Effect::heaterWhDay,
            LEAST_WH + HEATER_SHARE * best.heaterWhDay(),
            -best.heaterWhDay(),
            Double.POSITIVE_INFINITY);
    double band = 100 * best.inBand();
    Calibration.Range warm =
        range(now, then, e -> 100 * e.inBand(), LEAST_POINTS, -band, 100 - band);
    double charge = 100 * best.lowestSoc();
    Calibration.Range lowest =
        range(now, then, e -> 100 * e.lowestSoc(), LEAST_POINTS, -charge, 100 - charge);
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
          Locale.ROOT, "%s as now (%+.0f to %+.0f %s)", what, r.low() + 0.0, r.high() + 0.0, unit);
    }
    return String.format(
        Locale.ROOT,
        "%s %.0f %s %s (%.0f to %.0f)",
        what,
        Math.abs(r.best()),
        unit,
        up ? more : less,
        low + 0.0,
        high + 0.0);
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
        "the best fit over the weather of the log; the brackets span hives that the log allows, and the true one may lie outside",
        none,
        none,
        none);
  }

  private static String lower(String words) {
    return words.substring(0, 1).toLowerCase(Locale.ROOT) + words.substring(1);
  }

  /** Best value with its range: the scatter over the hives, and what one hive's runs scatter. */
  private static Calibration.Range range(
      List<Effect> now,
      List<Effect> then,
      ToDoubleFunction<Effect> of,
      double least,
      double from,
      double to) {
    double[] d = new double[now.size()];
    double mean = 0;
    for (int i = 0; i < d.length; i++) {
      d[i] = of.applyAsDouble(then.get(i)) - of.applyAsDouble(now.get(i));
      mean += d[i] / d.length;
    }
    double square = 0;
    for (double x : d) {
      square += (x - mean) * (x - mean) / (d.length - 1);
    }
    double half = Math.sqrt(T_OF_SEVEN * T_OF_SEVEN * square + least * least);
    return new Calibration.Range(d[0], Math.max(from, d[0] - half), Math.min(to, d[0] + half));
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
    Scenario s = change.apply(FittedRig.at(model.scenario(), z));
    int steps = model.seen().steps();
    double[] heaterJ = new double[1];
    int[] warm = new int[1];
    double[] soc = {1};
    double bandC = s.run().bandLowC();
    new Replay(s, model.forcing(z), Replay.CONTROLLED, Observations.STEP_S)
        .run(
            0,
            1,
            steps,
            (step, plant, on) -> {
              heaterJ[0] += plant.supply().heaterW() * Observations.STEP_S;
              warm[0] += plant.hive().view().nestC(0.5) >= bandC ? 1 : 0;
              soc[0] = Math.min(soc[0], plant.supply().battery().stateOfCharge());
            });
    double days = steps * Observations.STEP_S / 86_400.0;
    return new Effect(heaterJ[0] / 3600 / days, (double) warm[0] / steps, soc[0]);
  }
}
