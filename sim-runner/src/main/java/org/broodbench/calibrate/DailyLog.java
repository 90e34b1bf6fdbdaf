package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import org.broodbench.loop.Replay;
import org.broodbench.plant.Plant;
import org.broodbench.rig.Scenario;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * A log written by hand, about a row a day, against hives drawn from the priors with their
 * controller in the loop, in the weather of the log. What they read gives the range of what is to
 * be expected; how their readings hang on their knobs gives a first, wide fit (ensemble smoother:
 * G. Evensen and P. J. van Leeuwen, Monthly Weather Review 128 (2000) 1852-1867).
 */
final class DailyLog {
  /** Drawn hives; own choice. */
  private static final int HIVES = 100;

  /**
   * Readings of one hive go wrong together, since the model does: each counts as a third; own
   * choice.
   */
  private static final double TOGETHER = 3;

  /** Minutes around the moment that a keeper writes down. */
  private static final int AROUND_STEPS = 10;

  /** Nests colder and warmer than this are no matter of opinion, °C. */
  private static final double HARM_LOW_C = 30;

  private static final double HARM_HIGH_C = 38;

  private record Place(int row, LogColumn column, int step, double value) {}

  /**
   * What came of it.
   *
   * @param readings each with its range
   * @param free knobs
   * @param z their best values
   * @param covariance in z
   * @param heldOutK error of the last third of the temperatures, predicted from what came before
   */
  record Answer(
      List<Calibration.Reading> readings,
      List<Knob> free,
      double[] z,
      double[][] covariance,
      double heldOutK) {}

  private final Model model;
  private final FieldLog log;
  private final List<Knob> free;
  private final ExecutorService pool;
  private final List<Place> places = new ArrayList<>();

  DailyLog(
      Model model, FieldLog log, List<LogColumn> wanted, List<Knob> free, ExecutorService pool) {
    this.model = model;
    this.log = log;
    this.free = free.stream().filter(k -> !k.isOffset()).toList();
    this.pool = pool;
    for (int row = 0; row < log.rows(); row++) {
      int step = model.seen().step(log.epochS()[row]);
      for (LogColumn c : LogColumn.values()) {
        double v = log.column(c)[row];
        boolean hours = c == LogColumn.HEATER_HOURS && row > 0;
        if (!Double.isNaN(v) && step >= 0 && (hours || wanted.contains(c))) {
          places.add(new Place(row, c, Math.min(step, model.seen().steps() - 1), v));
        }
      }
    }
  }

  /** How well a keeper reads, in the unit of the column; own choice. */
  private static double error(LogColumn c) {
    return switch (c.sort()) {
      case TEMPERATURE -> 0.5;
      case VOLTAGE -> 0.15;
      case CURRENT -> 0.3;
      case PERCENT -> 5;
      default -> 0.25;
    };
  }

  Answer answer() {
    double[][] z = new double[HIVES][Knob.COUNT];
    SplittableRandom random = new SplittableRandom(1);
    for (double[] hive : z) {
      for (Knob k : free) {
        double u = 1 - random.nextDouble();
        hive[k.ordinal()] =
            StrictMath.sqrt(-2 * StrictMath.log(u))
                * StrictMath.cos(2 * StrictMath.PI * random.nextDouble());
      }
    }
    double[][] read = readAll(z);
    int n = places.size();
    double[] best = new double[free.size()];
    double[][] covariance = new double[free.size()][free.size()];
    update(z, read, n, best, covariance, null);
    List<Calibration.Reading> readings = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      readings.add(reading(places.get(i), column(read, i)));
    }
    return new Answer(readings, free, best, covariance, heldOut(z, read));
  }

  private static double[] column(double[][] read, int i) {
    return Arrays.stream(read).mapToDouble(r -> r[i]).toArray();
  }

  private Calibration.Reading reading(Place p, double[] read) {
    double error = error(p.column());
    double low = Robust.quantile(read, 0.05) - error;
    double high = Robust.quantile(read, 0.95) + error;
    double width = high - low;
    boolean brood = p.column() == LogColumn.BROOD_A || p.column() == LogColumn.BROOD_B;
    boolean harm = brood && (p.value() < HARM_LOW_C || p.value() > HARM_HIGH_C);
    boolean outside = p.value() < low || p.value() > high;
    // half the range beyond its end is about four standard deviations from the middle
    boolean far = p.value() < low - width / 2 || p.value() > high + width / 2;
    String mark = far || harm && outside ? "alarming" : outside ? "odd" : "expected";
    return new Calibration.Reading(log.epochS()[p.row()], p.column(), p.value(), low, high, mark);
  }

  /** Simulated readings by hive and place. */
  private double[][] readAll(double[][] z) {
    List<Callable<double[]>> tasks = new ArrayList<>();
    for (double[] hive : z) {
      tasks.add(() -> read(hive));
    }
    try {
      double[][] out = new double[z.length][];
      List<Future<double[]>> done = pool.invokeAll(tasks);
      for (int h = 0; h < out.length; h++) {
        out[h] = done.get(h).get();
      }
      return out;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("the runs were interrupted", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause());
    }
  }

  private double[] read(double[] z) {
    Scenario rig = FittedRig.at(model.scenario(), z);
    double[] sum = new double[places.size()];
    int[] n = new int[sum.length];
    double[] heaterH = new double[1];
    double[] hoursAt = new double[log.rows()];
    int warm = Math.min(Model.DAY_STEPS, model.seen().steps());
    new Replay(rig, model.forcing(z), Replay.CONTROLLED, Observations.STEP_S)
        .run(
            warm,
            warm,
            model.seen().steps(),
            (step, plant, on) -> {
              heaterH[0] += on ? Observations.STEP_S / 3600.0 : 0;
              for (int i = 0; i < sum.length; i++) {
                Place p = places.get(i);
                if (p.step() == step) {
                  hoursAt[p.row()] = heaterH[0];
                }
                if (Math.abs(p.step() - step) <= AROUND_STEPS / 2) {
                  sum[i] += value(rig, plant, p.column());
                  n[i]++;
                }
              }
            });
    for (int i = 0; i < sum.length; i++) {
      Place p = places.get(i);
      sum[i] =
          p.column() == LogColumn.HEATER_HOURS
              ? hoursAt[p.row()] - hoursAt[p.row() - 1]
              : sum[i] / n[i];
    }
    return sum;
  }

  private static double value(Scenario rig, Plant plant, LogColumn c) {
    return c == LogColumn.HEATER_HOURS ? 0 : Model.read(plant, c, Model.probe(rig, c));
  }

  /**
   * Best values and covariance from the first so many readings, in the space of the drawn hives.
   *
   * @param predicted takes what all readings should then be, or null
   */
  private void update(
      double[][] z,
      double[][] read,
      int n,
      double[] best,
      double[][] covariance,
      double[] predicted) {
    int m = z.length;
    double root = Math.sqrt(m - 1.0);
    double[][] s = new double[n][m];
    double[] d = new double[n];
    for (int i = 0; i < n; i++) {
      double sigma = error(places.get(i).column()) * Math.sqrt(TOGETHER);
      double mean = Arrays.stream(column(read, i)).average().orElse(0);
      d[i] = (places.get(i).value() - mean) / sigma;
      // one wild reading does not turn the hive over
      d[i] = Math.max(-10, Math.min(10, d[i]));
      for (int h = 0; h < m; h++) {
        s[i][h] = (read[h][i] - mean) / sigma / root;
      }
    }
    RealMatrix sm = MatrixUtils.createRealMatrix(s);
    RealMatrix t =
        new CholeskyDecomposition(
                MatrixUtils.createRealIdentityMatrix(m).add(sm.transpose().multiply(sm)))
            .getSolver()
            .getInverse();
    RealVector w = t.operate(sm.transpose().operate(new ArrayRealVector(d, false)));
    double[][] a = new double[free.size()][m];
    for (int j = 0; j < a.length; j++) {
      int k = free.get(j).ordinal();
      double mean = Arrays.stream(z).mapToDouble(x -> x[k]).average().orElse(0);
      for (int h = 0; h < m; h++) {
        a[j][h] = (z[h][k] - mean) / root;
      }
    }
    RealMatrix am = MatrixUtils.createRealMatrix(a);
    double[] moved = am.operate(w).toArray();
    double[][] c = am.multiply(t).multiply(am.transpose()).getData();
    for (int j = 0; j < best.length; j++) {
      best[j] = Math.max(-Fit.FARTHEST, Math.min(Fit.FARTHEST, moved[j]));
      covariance[j] = c[j];
    }
    if (predicted != null) {
      for (int i = 0; i < predicted.length; i++) {
        double mean = Arrays.stream(column(read, i)).average().orElse(0);
        predicted[i] = mean;
        for (int h = 0; h < m; h++) {
          predicted[i] += (read[h][i] - mean) / root * w.getEntry(h);
        }
      }
    }
  }

  private double heldOut(double[][] z, double[][] read) {
    int n = 2 * places.size() / 3;
    double[] predicted = new double[places.size()];
    update(z, read, n, new double[free.size()], new double[free.size()][], predicted);
    List<Double> off = new ArrayList<>();
    for (int i = n; i < predicted.length; i++) {
      // a pan swings with its relay by more than a reading a day can tell
      if (places.get(i).column().inside() && places.get(i).column() != LogColumn.PAN) {
        off.add(places.get(i).value() - predicted[i]);
      }
    }
    return Robust.rms(off.stream().mapToDouble(x -> x).toArray());
  }
}
