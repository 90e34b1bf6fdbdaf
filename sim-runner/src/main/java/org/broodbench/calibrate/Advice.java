package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
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

  static List<Calibration.Finding> of(Model model, Fit fit, ExecutorService pool) {
    return new Advice(model, fit, pool).all();
  }

  private List<Calibration.Finding> all() {
    List<double[]> hives = draws();
    List<Effect> now = effects(hives, s -> s);
    List<Calibration.Finding> out = new ArrayList<>();
    Effect best = now.get(0);
    out.add(
        new Calibration.Finding(
            "as_it_is",
            String.format(
                Locale.ROOT,
                "As it is, with its controller: heater %.0f Wh a day, brood at or above %.0f degC for %.0f %% of the time, charge never below %.0f %%.",
                best.heaterWhDay(),
                model.scenario().run().bandLowC(),
                100 * best.inBand(),
                100 * best.lowestSoc()),
            "best fit over the weather of the log"));
    for (Change c : changes(best)) {
      List<Effect> then = effects(hives, c.apply());
      out.add(
          new Calibration.Finding(
              c.name(),
              String.format(
                  Locale.ROOT,
                  "%s: heater %+.0f Wh a day, time with warm brood %+.1f points, lowest charge %+.0f points.",
                  c.words(),
                  then.get(0).heaterWhDay() - best.heaterWhDay(),
                  100 * (then.get(0).inBand() - best.inBand()),
                  100 * (then.get(0).lowestSoc() - best.lowestSoc())),
              range(now, then)));
    }
    return out;
  }

  private static String range(List<Effect> now, List<Effect> then) {
    double[] heater = new double[now.size()];
    double[] band = new double[now.size()];
    double[] soc = new double[now.size()];
    for (int i = 0; i < heater.length; i++) {
      heater[i] = then.get(i).heaterWhDay() - now.get(i).heaterWhDay();
      band[i] = 100 * (then.get(i).inBand() - now.get(i).inBand());
      soc[i] = 100 * (then.get(i).lowestSoc() - now.get(i).lowestSoc());
    }
    return String.format(
        Locale.ROOT,
        "over hives that the log allows: %+.0f to %+.0f Wh, %+.1f to %+.1f points, %+.0f to %+.0f points",
        Robust.quantile(heater, 0),
        Robust.quantile(heater, 1),
        Robust.quantile(band, 0),
        Robust.quantile(band, 1),
        Robust.quantile(soc, 0),
        Robust.quantile(soc, 1));
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

  private static HiveSpec insulated(HiveSpec h) {
    return h.withLayers(thicker(h.wall()), thicker(h.floor()), thicker(h.lid()));
  }

  private static List<Layer> thicker(List<Layer> layers) {
    List<Layer> out = new ArrayList<>(layers);
    out.add(new Layer(Material.EPS, BOARD_M));
    return out;
  }

  private static Scenario setPoint(Scenario s, int byCentiK) {
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
    SplittableRandom random = new SplittableRandom(1);
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
