package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutorService;
import java.util.function.Consumer;

/** One calibration from the first start to the intervals. */
final class FitRun {
  /** Share of the log that the fit sees before it predicts the rest. */
  private static final double SEEN_SHARE = 2 / 3.0;

  /** Where else than at the scenario's own values fits begin, in z; own choice. */
  private static final double[] STARTS = {0, 0.7, -0.7};

  /** Shares of the misfit that are worth an iteration: on the way, and in the end; own choice. */
  private static final double ROUGH = 3e-4;

  private static final double FINE = 2e-5;

  private static final int FIRST_ITERATIONS = 3;

  /** Openings that a fit is begun anew at, z; not where it is that near already; own choices. */
  private static final double[] AIR = {-1.6, -0.8, 0, 0.8, 1.6};

  private static final double LEAST_AIR = 0.4;
  private static final double FARTHEST_START = 2.5;
  private static final int AIR_ITERATIONS = 4;
  private static final int ITERATIONS = 15;

  /** The scatter is narrowed by no more than this from one round to the next; own choice. */
  private static final double NARROWER = 4;

  /** While it narrows, long deviations may be those of a fit that is not there yet, bins. */
  private static final double LASTING = 100;

  private final Model model;
  private final List<Knob> free;
  private final Sensitivity sensitivity;
  private final Consumer<String> progress;
  private final double[] zero = new double[Knob.COUNT];
  private Noise noise;
  private double[] starts = new double[0];
  private Calibration.HeldOut heldOut;
  private Fit fit;

  FitRun(Model model, List<Knob> free, ExecutorService pool, Consumer<String> progress) {
    this.model = model;
    this.free = free;
    sensitivity = new Sensitivity(model, free, pool);
    this.progress = progress;
    noise = Noise.before(model.seen());
  }

  /** Fits two thirds, predicts the last, then fits all. */
  void run() {
    int bins = model.seen().bins();
    int split = (int) (SEEN_SHARE * bins);
    double[] point = bestStart(split);
    for (int round = 1; round <= 3; round++) {
      progress.accept("fit to the first two thirds, round " + round);
      fit =
          fit(point, 0, split, ITERATIONS, ROUGH, round < 2 ? Misfit.Near.ROUGH : Misfit.Near.WAY);
      point = fit.point();
      Noise found = noise(fit, 0, split);
      noise = found.lastingAtMost(LASTING).tightenedAtMost(noise, NARROWER);
    }
    progress.accept("prediction of the last third");
    heldOut = predict(fit, split);
    progress.accept("fit to the whole log");
    fit = fit(point, 0, bins, ITERATIONS, ROUGH, Misfit.Near.WAY);
    noise = noise(fit, 0, bins);
    progress.accept("the same with more and less air");
    point = otherAir(bins);
    progress.accept("fit to the whole log, again");
    fit = fit(point, 0, bins, ITERATIONS, FINE, Misfit.Near.EXACT);
    noise = noise(fit, 0, bins);
  }

  /**
   * The best point from other openings. The misfit has many hollows along them, since the air goes
   * through a hive either way; what lies far from a hollow's middle does not lead out of it.
   */
  private double[] otherAir(int bins) {
    int air = free.indexOf(Knob.AIR_LEAKAGE);
    double[] best = fit.point();
    if (air < 0) {
      return best;
    }
    double least = Misfit.cost(misfit(0, bins).value(best));
    for (double z : AIR) {
      double by = z - fit.point()[air];
      if (Math.abs(by) < LEAST_AIR) {
        continue;
      }
      double[] start = fit.point().clone();
      for (int j = 0; j < start.length; j++) {
        start[j] += by * fit.follows(j, air);
        start[j] = Math.max(-FARTHEST_START, Math.min(FARTHEST_START, start[j]));
      }
      Fit f = fit(start, 0, bins, AIR_ITERATIONS, ROUGH, Misfit.Near.LOOK);
      if (f.cost() < least) {
        least = f.cost();
        best = f.point();
      }
    }
    return best;
  }

  private Misfit misfit(int from, int to) {
    return new Misfit(sensitivity, noise, free, zero, from, to);
  }

  private Fit fit(
      double[] start, int from, int to, int iterations, double enough, Misfit.Near near) {
    return Fit.of(misfit(from, to), start, iterations, enough, near);
  }

  private double[] bestStart(int split) {
    starts = new double[STARTS.length];
    double[] best = null;
    double least = Double.MAX_VALUE;
    for (int s = 0; s < STARTS.length; s++) {
      progress.accept(String.format(Locale.ROOT, "start %d of %d", s + 1, STARTS.length));
      double[] start = new double[free.size()];
      for (int j = 0; j < start.length; j++) {
        // neighbours go to opposite sides, so that no start is the mirror of a scaling
        start[j] = free.get(j).isOffset() ? 0 : STARTS[s] * (j % 2 == 0 ? 1 : -1);
      }
      Fit f = fit(start, 0, split, FIRST_ITERATIONS, ROUGH, Misfit.Near.LOOK);
      starts[s] = f.cost();
      if (f.cost() < least) {
        least = f.cost();
        best = f.point();
      }
    }
    return best;
  }

  private Noise noise(Fit f, int from, int to) {
    double[] z = f.all();
    double[][] deviations = Misfit.deviations(model, sensitivity.simulated(z), z);
    for (double[] d : deviations) {
      for (int b = 0; b < d.length; b++) {
        d[b] = b < from || b >= to ? Double.NaN : d[b];
      }
    }
    return Noise.of(model.seen(), deviations);
  }

  private Calibration.HeldOut predict(Fit f, int split) {
    double[] z = f.all();
    double[][] deviations = Misfit.deviations(model, sensitivity.simulated(z), z);
    double[] rmse = new double[deviations.length];
    List<Double> inside = new ArrayList<>();
    for (int c = 0; c < rmse.length; c++) {
      double[] late = java.util.Arrays.copyOfRange(deviations[c], split, deviations[c].length);
      rmse[c] = Robust.rms(late);
      if (model.seen().channels().get(c).inside()) {
        for (double d : late) {
          inside.add(d);
        }
      }
    }
    double rmseK = Robust.rms(inside.stream().mapToDouble(x -> x).toArray());
    return new Calibration.HeldOut(model.seen().binMiddleS(split), rmse, rmseK);
  }

  Sensitivity sensitivity() {
    return sensitivity;
  }

  Fit fit() {
    return fit;
  }

  Noise noise() {
    return noise;
  }

  double[] starts() {
    return starts;
  }

  Calibration.HeldOut heldOut() {
    return heldOut;
  }
}
