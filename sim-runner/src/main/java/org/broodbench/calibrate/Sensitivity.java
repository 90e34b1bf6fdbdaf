package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;

/**
 * What the simulation reads, and how much of it each knob moves. Both are kept: a fit asks again
 * and again at points that are next to each other, and neither depends on scatter or priors.
 *
 * <p>Where wind and buoyancy are against each other, air goes through a hive either way, and the
 * smallest change of a knob may turn it for half a day. Such a turn is no slope. So a knob is moved
 * to either side, and of the two quotients the smaller counts, or none where they disagree.
 */
final class Sensitivity {
  /** Step of the difference quotients in z; small steps make much of turns of the air. */
  private static final double STEP = 0.15;

  private final Model model;
  private final List<Knob> free;
  private final ExecutorService pool;

  private double[] lastZ;
  private double[][] last;
  private double[] slopesZ;
  private double[][][] slopes;

  /**
   * A memory.
   *
   * @param free the knobs that may be asked for
   */
  Sensitivity(Model model, List<Knob> free, ExecutorService pool) {
    this.model = model;
    this.free = List.copyOf(free);
    this.pool = pool;
  }

  /** The model. */
  Model model() {
    return model;
  }

  /** Simulated means by compared column and bin. */
  double[][] simulated(double[] z) {
    if (!Arrays.equals(z, lastZ)) {
      last = model.simulate(z);
      lastZ = z.clone();
    }
    return last;
  }

  /** The same at some points, worked out side by side. */
  List<double[][]> simulated(List<double[]> points) {
    List<Callable<double[][]>> tasks = new ArrayList<>();
    for (double[] z : points) {
      tasks.add(() -> model.simulate(z));
    }
    try {
      List<double[][]> out = new ArrayList<>();
      for (Future<double[][]> f : pool.invokeAll(tasks)) {
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

  /**
   * Derivatives of the simulated means by knob (null for knobs that are not free or that shift a
   * reading alone), compared column and bin.
   *
   * @param reach derivatives of a point that is no further off in any knob will do, z
   * @param bothSides whether knobs are moved to either side, or towards the middle of their prior
   */
  double[][][] slopes(double[] z, double reach, boolean bothSides) {
    if (slopesZ != null && apart(z, slopesZ) <= reach) {
      return slopes;
    }
    List<Knob> moved = free.stream().filter(k -> !k.shiftsReading()).toList();
    List<double[]> points = new ArrayList<>();
    for (Knob k : moved) {
      double step = z[k.ordinal()] > 0 ? -STEP : STEP;
      points.add(moved(z, k, step));
      if (bothSides) {
        points.add(moved(z, k, -step));
      }
    }
    double[][] here = simulated(z);
    List<double[][]> around = simulated(points);
    double[][][] out = new double[Knob.COUNT][][];
    for (int j = 0; j < moved.size(); j++) {
      double step = z[moved.get(j).ordinal()] > 0 ? -STEP : STEP;
      double[][] ahead = bothSides ? around.get(2 * j) : around.get(j);
      double[][] behind = bothSides ? around.get(2 * j + 1) : null;
      out[moved.get(j).ordinal()] = quotients(here, ahead, behind, step);
    }
    slopes = out;
    slopesZ = z.clone();
    return out;
  }

  private static double[] moved(double[] z, Knob k, double step) {
    double[] there = z.clone();
    there[k.ordinal()] += step;
    return there;
  }

  private static double[][] quotients(
      double[][] here, double[][] ahead, double[][] behind, double step) {
    double[][] out = new double[here.length][];
    for (int c = 0; c < here.length; c++) {
      out[c] = new double[here[c].length];
      for (int b = 0; b < out[c].length; b++) {
        double one = (ahead[c][b] - here[c][b]) / step;
        double other = behind == null ? one : (here[c][b] - behind[c][b]) / step;
        double smaller = Math.abs(one) < Math.abs(other) ? one : other;
        out[c][b] = one * other > 0 ? smaller : 0;
      }
    }
    return out;
  }

  private static double apart(double[] a, double[] b) {
    double most = 0;
    for (int i = 0; i < a.length; i++) {
      // an offset of a reading moves nothing in the simulation
      if (!Knob.values()[i].shiftsReading()) {
        most = Math.max(most, Math.abs(a[i] - b[i]));
      }
    }
    return most;
  }
}
