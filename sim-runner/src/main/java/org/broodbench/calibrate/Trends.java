package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.MatrixUtils;

/**
 * Which one knob, other in the second half of a log than in the first, explains best what the fit
 * leaves over. All knobs may follow; what they move is taken from the derivatives at the fit. One
 * cause is looked for, since one that is there shows through many knobs when they are freed
 * together.
 */
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

  /** After the middle a hive is between the two states: not compared, s; own choice. */
  private static final int BETWEEN_S = 12 * 3600;

  /** What is believed of the logarithm of a change before: this spread; own choice. */
  private static final double SPREAD = 0.5;

  /** Times that scatter is taken anew from what the best change leaves over. */
  private static final int ROUNDS = 3;

  /** A change that explains, what it leaves over, and how much it takes off the squares. */
  private record Change(Knob knob, double z, double sigma, double[] others, double explained) {}

  private final Observations seen;
  private final List<Knob> free;
  private final double[] z;
  private final double[][] deviations;
  private final double[][][] slopes;
  private final int middle;

  private Trends(FitRun run) {
    Misfit misfit = run.fit().misfit();
    Sensitivity sensitivity = run.sensitivity();
    seen = sensitivity.model().seen();
    free = misfit.free();
    z = run.fit().all();
    deviations = Misfit.deviations(sensitivity.model(), sensitivity.simulated(z), z);
    slopes = sensitivity.slopes(z, Misfit.Near.EXACT.reach(), true);
    middle = seen.bins() / 2;
    int end = middle + BETWEEN_S / (seen.binSteps() * Observations.STEP_S);
    for (double[] d : deviations) {
      Arrays.fill(d, middle, Math.min(d.length, end), Double.NaN);
    }
  }

  /** Changes of the knobs that the log tells, the one that explains most first. */
  static List<Calibration.Trend> of(
      Model model, FitRun run, List<Calibration.Parameter> parameters) {
    List<Knob> changing = new ArrayList<>();
    for (Calibration.Parameter p : parameters) {
      if (p.told() && CHANGING.contains(p.knob())) {
        changing.add(p.knob());
      }
    }
    long half = (long) model.seen().bins() / 2 * model.seen().binSteps() / 10;
    if (changing.isEmpty() || half < LEAST_BINS) {
      return List.of();
    }
    List<Calibration.Trend> out = new ArrayList<>();
    for (Change c : new Trends(run).changes(changing, run.noise())) {
      Knob k = c.knob();
      double first =
          run.fit().all()[k.ordinal()] + c.others()[run.fit().misfit().free().indexOf(k)];
      out.add(
          new Calibration.Trend(
              k,
              k.value(model.scenario(), first),
              k.value(model.scenario(), first + c.z()),
              k.factor(c.z()),
              k.factor(c.z() - Profile.Z90 * c.sigma()),
              k.factor(c.z() + Profile.Z90 * c.sigma())));
    }
    return out;
  }

  private List<Change> changes(List<Knob> changing, Noise before) {
    Noise noise = before;
    double[][] left = deviations;
    List<Change> found = List.of();
    for (int round = 0; round < ROUNDS; round++) {
      List<Change> now = new ArrayList<>();
      for (Knob k : changing) {
        now.add(change(k, noise, left));
      }
      now.sort(Comparator.comparingDouble(Change::explained).reversed());
      found = now;
      left = left(found.get(0));
      noise = Noise.of(seen, left);
    }
    return found;
  }

  /** By how much a knob must be other after the middle, all knobs free. */
  private Change change(Knob k, Noise noise, double[][] left) {
    int n = free.size();
    double[][] normal = new double[n + 1][n + 1];
    double[] right = new double[n + 1];
    double[] row = new double[n + 1];
    for (int c = 0; c < deviations.length; c++) {
      for (int b = 0; b < deviations[c].length; b++) {
        if (Double.isNaN(deviations[c][b])) {
          continue;
        }
        double x = left[c][b] / noise.sigma()[c];
        double weight = Misfit.weight(x) / (noise.tau()[c] * noise.sigma()[c] * noise.sigma()[c]);
        for (int j = 0; j < n; j++) {
          row[j] = slope(free.get(j), c, b);
        }
        row[n] = b < middle ? 0 : slope(k, c, b);
        for (int i = 0; i <= n; i++) {
          right[i] += weight * row[i] * deviations[c][b];
          for (int j = 0; j <= i; j++) {
            normal[i][j] += weight * row[i] * row[j];
          }
        }
      }
    }
    for (int j = 0; j < n; j++) {
      normal[j][j] += 1;
      right[j] -= z[free.get(j).ordinal()];
    }
    double spread = SPREAD / k.spread();
    normal[n][n] += 1 / (spread * spread);
    for (int i = 0; i <= n; i++) {
      for (int j = 0; j < i; j++) {
        normal[j][i] = normal[i][j];
      }
    }
    DecompositionSolver solver =
        new CholeskyDecomposition(MatrixUtils.createRealMatrix(normal)).getSolver();
    double[] best = solver.solve(MatrixUtils.createRealVector(right)).toArray();
    double variance = solver.getInverse().getEntry(n, n);
    return new Change(
        k, best[n], Math.sqrt(variance), Arrays.copyOf(best, n), best[n] * best[n] / variance);
  }

  private double[][] left(Change change) {
    double[][] out = new double[deviations.length][];
    for (int c = 0; c < out.length; c++) {
      out[c] = deviations[c].clone();
      for (int b = 0; b < out[c].length; b++) {
        for (int j = 0; j < free.size(); j++) {
          out[c][b] -= change.others()[j] * slope(free.get(j), c, b);
        }
        out[c][b] -= b < middle ? 0 : change.z() * slope(change.knob(), c, b);
      }
    }
    return out;
  }

  private double slope(Knob k, int c, int b) {
    if (k.shiftsReading()) {
      return k.reading() == seen.channels().get(c) ? k.spread() : 0;
    }
    return slopes[k.ordinal()][c][b];
  }
}
