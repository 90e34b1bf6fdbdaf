package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;

/**
 * The vector whose square a fit makes small: deviations of the log from the model in units of their
 * scatter, softened where they are wild, and the knobs themselves for their priors. Its last part
 * is z minus the middle of the prior, by free knob.
 */
final class Misfit {
  /** Deviations beyond so many standard deviations count less and less; own choice. */
  private static final double SOFT = 3;

  /** Step of the difference quotients in z. */
  private static final double STEP = 0.05;

  private final Model model;
  private final Noise noise;
  private final List<Knob> free;
  private final double[] base;
  private final int fromBin;
  private final int toBin;
  private final ExecutorService pool;
  private final int size;

  /**
   * A misfit.
   *
   * @param free the knobs that are turned
   * @param base values z of all knobs, and middle of the priors of those that are turned
   * @param fromBin first bin that is compared
   * @param toBin end of the bins that are compared
   */
  Misfit(
      Model model,
      Noise noise,
      List<Knob> free,
      double[] base,
      int fromBin,
      int toBin,
      ExecutorService pool) {
    this.model = model;
    this.noise = noise;
    this.free = free;
    this.base = base.clone();
    this.fromBin = fromBin;
    this.toBin = toBin;
    this.pool = pool;
    int n = free.size();
    for (int c = 0; c < model.seen().channels().size(); c++) {
      double[] mean = model.seen().mean(c);
      for (int b = fromBin; b < toBin; b++) {
        n += Double.isNaN(mean[b]) ? 0 : 1;
      }
    }
    size = n;
  }

  /** The knobs that are turned. */
  List<Knob> free() {
    return free;
  }

  /** Length of the vector. */
  int size() {
    return size;
  }

  /** All knobs at a point of the free ones. */
  double[] all(double[] point) {
    double[] z = base.clone();
    for (int j = 0; j < point.length; j++) {
      z[free.get(j).ordinal()] = point[j];
    }
    return z;
  }

  /** Log minus model with its offsets, by compared column and bin. */
  static double[][] deviations(Model model, double[][] simulated, double[] z) {
    double[][] out = new double[simulated.length][];
    for (int c = 0; c < simulated.length; c++) {
      LogColumn column = model.seen().channels().get(c);
      double offset = 0;
      for (Knob k : Knob.values()) {
        if (k.reading() == column) {
          offset = k.spread() * z[k.ordinal()];
        }
      }
      double[] mean = model.seen().mean(c);
      out[c] = new double[mean.length];
      for (int b = 0; b < mean.length; b++) {
        out[c][b] = mean[b] - simulated[c][b] - offset;
      }
    }
    return out;
  }

  /** Bin of each entry of the vector; −1 for the priors. */
  int[] bins() {
    int[] out = new int[size];
    java.util.Arrays.fill(out, -1);
    int i = 0;
    for (int c = 0; c < model.seen().channels().size(); c++) {
      double[] mean = model.seen().mean(c);
      for (int b = fromBin; b < toBin; b++) {
        if (!Double.isNaN(mean[b])) {
          out[i++] = b;
        }
      }
    }
    return out;
  }

  private double[] vector(double[][] simulated, double[] point) {
    double[] z = all(point);
    double[][] deviations = deviations(model, simulated, z);
    double[] out = new double[size];
    int i = 0;
    for (int c = 0; c < deviations.length; c++) {
      double[] mean = model.seen().mean(c);
      double weight = 1 / Math.sqrt(noise.tau()[c]);
      for (int b = fromBin; b < toBin; b++) {
        if (!Double.isNaN(mean[b])) {
          out[i++] = weight * soft(deviations[c][b] / noise.sigma()[c]);
        }
      }
    }
    for (int j = 0; j < point.length; j++) {
      out[i++] = point[j] - base[free.get(j).ordinal()];
    }
    return out;
  }

  /** Square root of the pseudo-Huber loss, with the sign of the deviation. */
  static double soft(double x) {
    double loss = 2 * SOFT * SOFT * (Math.sqrt(1 + x / SOFT * (x / SOFT)) - 1);
    // for tiny deviations the difference above has few digits left
    return Math.abs(x) < 1e-3 ? x : x < 0 ? -Math.sqrt(loss) : Math.sqrt(loss);
  }

  /** The vector at a point. */
  double[] value(double[] point) {
    return vector(model.simulate(all(point)), point);
  }

  /** The vectors at some points, worked out side by side. */
  List<double[]> values(List<double[]> points) {
    List<Callable<double[]>> tasks = new ArrayList<>();
    for (double[] p : points) {
      tasks.add(() -> value(p));
    }
    return side(tasks);
  }

  /** Derivatives by free knob, one row a knob. */
  double[][] slopes(double[] point) {
    double[][] here = model.simulate(all(point));
    double[] at = vector(here, point);
    List<Callable<double[]>> tasks = new ArrayList<>();
    for (int j = 0; j < point.length; j++) {
      double[] moved = point.clone();
      // towards the middle of the prior, where the model is surely at home
      double step = point[j] > base[free.get(j).ordinal()] ? -STEP : STEP;
      moved[j] += step;
      boolean shift = free.get(j).shiftsReading();
      tasks.add(
          () -> {
            double[] v = shift ? vector(here, moved) : value(moved);
            for (int i = 0; i < v.length; i++) {
              v[i] = (v[i] - at[i]) / step;
            }
            return v;
          });
    }
    return side(tasks).toArray(double[][]::new);
  }

  private List<double[]> side(List<Callable<double[]>> tasks) {
    try {
      List<double[]> out = new ArrayList<>();
      for (Future<double[]> f : pool.invokeAll(tasks)) {
        out.add(f.get());
      }
      return out;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("the fit was interrupted", e);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException cause) {
        throw cause;
      }
      throw new IllegalStateException(e.getCause());
    }
  }

  /** Sum of squares. */
  static double cost(double[] v) {
    double sum = 0;
    for (double x : v) {
      sum += x * x;
    }
    return sum;
  }
}
