package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The vector whose square a fit makes small: deviations of the log from the model in units of their
 * scatter, softened where they are wild, and the knobs themselves for their priors. Its last part
 * is z minus the middle of the prior, by free knob.
 */
final class Misfit {
  /** Deviations beyond so many standard deviations count less and less; own choice. */
  private static final double SOFT = 3;

  /**
   * How good derivatives must be; own choices.
   *
   * @param reach those of a point that is no further off in any knob will do, z
   * @param bothSides whether knobs are moved to either side
   */
  record Near(double reach, boolean bothSides) {
    /** For a first look from afar. */
    static final Near LOOK = new Near(1, false);

    /** On the way there. */
    static final Near ROUGH = new Near(0.5, false);

    /** On the way from close by. */
    static final Near WAY = new Near(0.3, true);

    /** At the end. */
    static final Near EXACT = new Near(0.03, true);
  }

  private final Model model;
  private final Noise noise;
  private final List<Knob> free;
  private final double[] base;
  private final int fromBin;
  private final int toBin;
  private final Sensitivity sensitivity;
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
      Sensitivity sensitivity,
      Noise noise,
      List<Knob> free,
      double[] base,
      int fromBin,
      int toBin) {
    this.sensitivity = sensitivity;
    model = sensitivity.model();
    this.noise = noise;
    this.free = free;
    this.base = base.clone();
    this.fromBin = fromBin;
    this.toBin = toBin;
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
    Arrays.fill(out, -1);
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

  /**
   * Square root of the loss of a Student-like, long-tailed scatter, c²·ln(1 + x²/c²) (Cauchy's; P.
   * W. Holland and R. E. Welsch, Commun. Stat. A 6 (1977) 813-827), with the sign of the deviation.
   */
  static double soft(double x) {
    // for tiny deviations the logarithm has few digits left
    double size = Math.abs(x) < 1e-3 ? Math.abs(x) : SOFT * Math.sqrt(softened(x));
    return x < 0 ? -size : size;
  }

  private static double softened(double x) {
    return StrictMath.log1p(x / SOFT * (x / SOFT));
  }

  /** Derivative of {@link #soft}. */
  static double softSlope(double x) {
    return Math.abs(x) < 1e-3 ? 1 : x / (1 + x / SOFT * (x / SOFT)) / soft(x);
  }

  /** Share of its square that a deviation of so many standard deviations counts with. */
  static double weight(double x) {
    return 1 / (1 + x / SOFT * (x / SOFT));
  }

  /** The vector at a point. */
  double[] value(double[] point) {
    return vector(sensitivity.simulated(all(point)), point);
  }

  /** The vectors at some points, worked out side by side. */
  List<double[]> values(List<double[]> points) {
    List<double[][]> simulated = sensitivity.simulated(points.stream().map(this::all).toList());
    List<double[]> out = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      out.add(vector(simulated.get(i), points.get(i)));
    }
    return out;
  }

  /**
   * Derivatives by free knob, one row a knob.
   *
   * @param near how good the derivatives of the model must be
   */
  double[][] slopes(double[] point, Near near) {
    double[] z = all(point);
    double[][] deviations = deviations(model, sensitivity.simulated(z), z);
    double[][][] by = sensitivity.slopes(z, near.reach(), near.bothSides());
    double[][] out = new double[point.length][size];
    int i = 0;
    for (int c = 0; c < deviations.length; c++) {
      double[] mean = model.seen().mean(c);
      double weight = 1 / Math.sqrt(noise.tau()[c]);
      for (int b = fromBin; b < toBin; b++) {
        if (Double.isNaN(mean[b])) {
          continue;
        }
        double slope = -weight * softSlope(deviations[c][b] / noise.sigma()[c]) / noise.sigma()[c];
        for (int j = 0; j < point.length; j++) {
          Knob k = free.get(j);
          if (!k.shiftsReading()) {
            out[j][i] = slope * by[k.ordinal()][c][b];
          } else if (k.reading() == model.seen().channels().get(c)) {
            out[j][i] = slope * k.spread();
          }
        }
        i++;
      }
    }
    for (int j = 0; j < point.length; j++) {
      out[j][i++] = 1;
    }
    return out;
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
