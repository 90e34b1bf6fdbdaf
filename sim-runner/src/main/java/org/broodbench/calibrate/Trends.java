package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;

/** The knobs that change with time, fitted to the halves of a log with all others held. */
final class Trends {
  /** What ages, gets wet, dwindles or grows. */
  private static final List<Knob> CHANGING =
      List.of(
          Knob.HIVE_LOSS,
          Knob.HEATER_POWER,
          Knob.COLONY_BEES,
          Knob.BATTERY_CAPACITY,
          Knob.BATTERY_RESISTANCE);

  /** Halves shorter than this tell the weather, not the hive, bins of ten minutes; own choice. */
  private static final int LEAST_BINS = 3 * 144;

  private static final int ITERATIONS = 6;
  private static final double ENOUGH = 3e-4;

  private Trends() {}

  static List<Calibration.Trend> of(
      Model model, FitRun run, List<Calibration.Parameter> parameters, ExecutorService pool) {
    int bins = model.seen().bins();
    List<Knob> free = new ArrayList<>();
    for (Calibration.Parameter p : parameters) {
      if (p.told() && CHANGING.contains(p.knob())) {
        free.add(p.knob());
      }
    }
    long half = (long) bins / 2 * model.seen().binSteps() / 10;
    if (free.isEmpty() || half < LEAST_BINS) {
      return List.of();
    }
    Fit first = half(model, run, free, 0, bins / 2, pool);
    Fit second = half(model, run, free, bins / 2, bins, pool);
    List<Calibration.Trend> out = new ArrayList<>();
    for (int j = 0; j < free.size(); j++) {
      Knob k = free.get(j);
      double z = second.point()[j] - first.point()[j];
      double sigma = Math.sqrt(first.sigma(j) * first.sigma(j) + second.sigma(j) * second.sigma(j));
      out.add(
          new Calibration.Trend(
              k,
              k.value(model.scenario(), first.point()[j]),
              k.value(model.scenario(), second.point()[j]),
              k.factor(z),
              k.factor(z - Profile.Z90 * sigma),
              k.factor(z + Profile.Z90 * sigma)));
    }
    return out;
  }

  private static Fit half(
      Model model, FitRun run, List<Knob> free, int from, int to, ExecutorService pool) {
    double[] base = run.fit().all();
    double[] start = free.stream().mapToDouble(k -> base[k.ordinal()]).toArray();
    Misfit misfit =
        new Misfit(new Sensitivity(model, free, pool), run.noise(), free, base, from, to);
    return Fit.of(misfit, start, ITERATIONS, ENOUGH, Misfit.Near.EXACT);
  }
}
