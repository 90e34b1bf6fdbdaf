package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.MatrixUtils;

/**
 * Which one cause, other in the second half of a log than in the first, explains best what the fit
 * leaves over. All knobs may follow. One cause is looked for, since one that is there shows through
 * many knobs when they are freed together. Causes are weighed whether or not the log tells their
 * knob: a change that the fit had no room for makes all of it look unsure.
 *
 * <p>First what each moves is taken from the derivatives at the fit; then those that explain much
 * are simulated, since a fit that was bent by a change is a poor place for derivatives.
 */
final class Trends {
  /** What ages, gets wet, dwindles or grows; and what only looks so. */
  private static final List<List<Knob>> CAUSES =
      List.of(
          List.of(Knob.HIVE_LOSS),
          List.of(Knob.HEATER_POWER),
          List.of(Knob.COLONY_BEES),
          List.of(Knob.BATTERY_CAPACITY, Knob.BATTERY_RESISTANCE),
          List.of(Knob.AIR_LEAKAGE),
          List.of(Knob.OUTDOOR_OFFSET),
          List.of(Knob.BROOD_A_OFFSET),
          List.of(Knob.BROOD_B_OFFSET),
          List.of(Knob.PAN_OFFSET),
          List.of(Knob.TOP_OFFSET));

  /** Halves shorter than this tell the weather, not the hive, bins of ten minutes; own choice. */
  private static final int LEAST_BINS = 3 * 144;

  /** After the middle a hive is between the two states: not compared, s; own choice. */
  private static final int BETWEEN_S = 12 * 3600;

  /** Believed of a change before: this spread of its logarithm, or in its unit; own choice. */
  private static final double SPREAD = 0.5;

  /** Times that scatter is taken anew from what the best change leaves over. */
  private static final int ROUNDS = 3;

  /** By derivatives a cause must explain this share of the best to be simulated; own choices. */
  private static final double WORTH_A_RUN = 0.3;

  private static final int MOST_RUN = 4;

  /** What explains less is not worth a run: 2.7 is the bound of a change of 90 %. */
  private static final double LEAST_EXPLAINED = 10;

  private static final int TURNS = 4;
  private static final int STEPS = 3;
  private static final double LEAST_STEP = 0.03;

  /** A turn that takes less than this share off the misfit is the last; own choice. */
  private static final double ENOUGH = 0.01;

  /**
   * A change.
   *
   * @param others how far the free knobs follow, z
   * @param by how far the knobs of the cause change, z
   * @param sigma standard deviations of these
   * @param explained what it takes off the sum of squares
   * @param open whether it stays in question however little the simulation makes of it
   */
  private record Change(
      List<Knob> knobs,
      double[] others,
      double[] by,
      double[] sigma,
      double explained,
      boolean open) {}

  private final Observations seen;
  private final Sensitivity sensitivity;
  private final List<Knob> free;
  private final double[] z;
  private final double[][] deviations;
  private final double[][][] slopes;
  private final int middle;
  private final int settled;

  private Trends(Sensitivity sensitivity, List<Knob> free, double[] z) {
    this.sensitivity = sensitivity;
    this.free = free;
    this.z = z;
    seen = sensitivity.model().seen();
    middle = seen.bins() / 2;
    settled = middle + BETWEEN_S / (seen.binSteps() * Observations.STEP_S);
    deviations = deviations(z, z);
    slopes = sensitivity.slopes(z, Misfit.Near.EXACT.reach(), true);
  }

  /** Changes by causes, the one that explains most first. */
  static List<Calibration.Trend> of(
      Sensitivity sensitivity, List<Knob> free, double[] z, Noise noise) {
    Observations seen = sensitivity.model().seen();
    long half = (long) seen.bins() / 2 * seen.binSteps() / 10;
    if (half < LEAST_BINS) {
      return List.of();
    }
    List<Calibration.Trend> out = new ArrayList<>();
    Trends trends = new Trends(sensitivity, free, z);
    List<Change> changes = trends.changes(noise);
    for (Change c : changes) {
      double share = c.explained() / Math.max(1e-9, changes.get(0).explained());
      for (int i = 0; i < c.knobs().size(); i++) {
        out.add(trends.trend(c, i, Math.max(0, share)));
      }
    }
    return out;
  }

  private Calibration.Trend trend(Change c, int i, double share) {
    Knob k = c.knobs().get(i);
    double first = z[k.ordinal()] + c.others()[free.indexOf(k)];
    double by = c.by()[i];
    double off = Profile.Z90 * c.sigma()[i];
    return new Calibration.Trend(
        k,
        k.value(sensitivity.model().scenario(), first),
        k.value(sensitivity.model().scenario(), first + by),
        change(k, by),
        change(k, by - off),
        change(k, by + off),
        share,
        c.open());
  }

  /** Factor, or of a shift the difference in its unit. */
  private static double change(Knob k, double by) {
    return k.isOffset() ? k.spread() * by : k.factor(by);
  }

  private List<Change> changes(Noise before) {
    Noise noise = before;
    double[][] left = deviations;
    List<Change> found = List.of();
    for (int round = 0; round < ROUNDS; round++) {
      List<Change> now = new ArrayList<>();
      for (List<Knob> cause : CAUSES) {
        List<Knob> knobs = cause.stream().filter(free::contains).toList();
        if (!knobs.isEmpty()) {
          Change none = none(knobs);
          now.add(step(none, deviations, noise, left, new double[][][][] {slopes, slopes}));
        }
      }
      now.sort(Comparator.comparingDouble(Change::explained).reversed());
      found = now;
      left = left(found.get(0));
      noise = Noise.of(seen, left);
    }
    return simulated(found, noise);
  }

  private Change none(List<Knob> knobs) {
    int m = knobs.size();
    return new Change(knobs, new double[free.size()], new double[m], new double[m], 0, false);
  }

  /** Those that are worth it, by what the simulation makes of them; the others behind them. */
  private List<Change> simulated(List<Change> found, Noise noise) {
    double most = found.get(0).explained();
    if (most < LEAST_EXPLAINED) {
      return found;
    }
    double before = cost(deviations, noise, none(List.of()));
    List<Change> out = new ArrayList<>();
    for (Change c : found) {
      if (out.size() < MOST_RUN && c.explained() >= WORTH_A_RUN * most) {
        out.add(simulated(c, noise, before));
      }
    }
    int run = out.size();
    out.sort(Comparator.comparingDouble(Change::explained).reversed());
    double best = out.get(0).explained();
    if (best < WORTH_A_RUN * most) {
      // the simulation does not follow the derivatives anywhere: they are all there is
      return found;
    }
    double scale = best / most;
    double last = out.get(run - 1).explained();
    // steps may end in a hollow short of the best: what derivatives put first stays in question
    out.replaceAll(c -> c.knobs().equals(found.get(0).knobs()) ? open(c) : c);
    for (Change c : found.subList(run, found.size())) {
      out.add(explaining(c, Math.min(last, scale * c.explained())));
    }
    return out;
  }

  private static Change explaining(Change c, double explained) {
    return new Change(c.knobs(), c.others(), c.by(), c.sigma(), explained, c.open());
  }

  private static Change open(Change c) {
    return new Change(c.knobs(), c.others(), c.by(), c.sigma(), c.explained(), true);
  }

  /** Steps of Gauss and Newton, each simulated; derivatives are taken anew between some. */
  private Change simulated(Change by, Noise noise, double before) {
    Change here = none(by.knobs());
    double[][] left = deviations;
    double cost = before;
    Change next = by;
    double[][][][] halves = {slopes, slopes};
    for (int turn = 0; turn < TURNS; turn++) {
      double had = cost;
      for (int i = 0; i < STEPS; i++) {
        boolean better = false;
        for (double share = 1; share > LEAST_STEP && !better; share /= 2) {
          Change there = between(here, next, share);
          double[][] tried = deviations(first(there), second(there));
          double c = cost(tried, noise, there);
          if (c < cost) {
            better = true;
            here = there;
            left = tried;
            cost = c;
          }
        }
        if (!better) {
          break;
        }
        next = step(here, left, noise, left, halves);
      }
      if (turn > 0 && had - cost < ENOUGH * had) {
        break;
      }
      halves =
          new double[][][][] {
            sensitivity.slopes(first(here), Misfit.Near.WAY.reach(), true),
            sensitivity.slopes(second(here), Misfit.Near.WAY.reach(), true)
          };
      next = step(here, left, noise, left, halves);
    }
    return new Change(here.knobs(), here.others(), here.by(), next.sigma(), before - cost, false);
  }

  private static Change between(Change a, Change b, double share) {
    double[] others = a.others().clone();
    Arrays.setAll(others, j -> others[j] + share * (b.others()[j] - others[j]));
    double[] by = a.by().clone();
    Arrays.setAll(by, i -> by[i] + share * (b.by()[i] - by[i]));
    return new Change(a.knobs(), others, by, b.sigma(), 0, false);
  }

  private double[] first(Change c) {
    double[] all = z.clone();
    for (int j = 0; j < free.size(); j++) {
      all[free.get(j).ordinal()] = held(all[free.get(j).ordinal()] + c.others()[j]);
    }
    return all;
  }

  private double[] second(Change c) {
    double[] all = first(c);
    for (int i = 0; i < c.knobs().size(); i++) {
      int k = c.knobs().get(i).ordinal();
      all[k] = held(all[k] + c.by()[i]);
    }
    return all;
  }

  private static double held(double z) {
    return Math.max(-Fit.FARTHEST, Math.min(Fit.FARTHEST, z));
  }

  /** Log minus model: one hive up to the middle, another from there on. */
  private double[][] deviations(double[] first, double[] second) {
    Model model = sensitivity.model();
    double[][] early;
    double[][] late;
    if (Arrays.equals(first, second)) {
      early = Misfit.deviations(model, sensitivity.simulated(first), first);
      late = early;
    } else {
      List<double[][]> both = sensitivity.simulated(List.of(first, second));
      early = Misfit.deviations(model, both.get(0), first);
      late = Misfit.deviations(model, both.get(1), second);
    }
    double[][] out = new double[early.length][];
    for (int c = 0; c < out.length; c++) {
      out[c] = early[c].clone();
      for (int b = middle; b < out[c].length; b++) {
        out[c][b] = b < settled ? Double.NaN : late[c][b];
      }
    }
    return out;
  }

  /** Softened squares, with what is believed of knobs and change. */
  private double cost(double[][] left, Noise noise, Change c) {
    double sum = 0;
    for (int i = 0; i < left.length; i++) {
      for (double d : left[i]) {
        if (!Double.isNaN(d)) {
          double soft = Misfit.soft(d / noise.sigma()[i]);
          sum += soft * soft / noise.tau()[i];
        }
      }
    }
    for (int j = 0; j < free.size(); j++) {
      double x = z[free.get(j).ordinal()] + c.others()[j];
      sum += x * x;
    }
    for (int i = 0; i < c.knobs().size(); i++) {
      double x = c.by()[i] * c.knobs().get(i).spread() / SPREAD;
      sum += x * x;
    }
    return sum;
  }

  /**
   * Where derivatives say that the best is, from a change on.
   *
   * @param here what has been changed already
   * @param left what that leaves over
   * @param wild by which deviations count less where they are wild
   * @param halves derivatives in the first half and in the second
   */
  private Change step(
      Change here, double[][] left, Noise noise, double[][] wild, double[][][][] halves) {
    List<Knob> knobs = here.knobs();
    int n = free.size();
    int all = n + knobs.size();
    double[][] normal = new double[all][all];
    double[] right = new double[all];
    double[] row = new double[all];
    for (int c = 0; c < left.length; c++) {
      for (int b = 0; b < left[c].length; b++) {
        if (Double.isNaN(left[c][b])) {
          continue;
        }
        double x = wild[c][b] / noise.sigma()[c];
        double weight = Misfit.weight(x) / (noise.tau()[c] * noise.sigma()[c] * noise.sigma()[c]);
        double[][][] by = halves[b < middle ? 0 : 1];
        for (int j = 0; j < n; j++) {
          row[j] = slope(by, free.get(j), c, b);
        }
        for (int i = n; i < all; i++) {
          row[i] = b < middle ? 0 : slope(by, knobs.get(i - n), c, b);
        }
        for (int i = 0; i < all; i++) {
          right[i] += weight * row[i] * left[c][b];
          for (int j = 0; j <= i; j++) {
            normal[i][j] += weight * row[i] * row[j];
          }
        }
      }
    }
    for (int j = 0; j < n; j++) {
      normal[j][j] += 1;
      right[j] -= z[free.get(j).ordinal()] + here.others()[j];
    }
    for (int i = n; i < all; i++) {
      double spread = SPREAD / knobs.get(i - n).spread();
      normal[i][i] += 1 / (spread * spread);
      right[i] -= here.by()[i - n] / (spread * spread);
    }
    for (int i = 0; i < all; i++) {
      for (int j = 0; j < i; j++) {
        normal[j][i] = normal[i][j];
      }
    }
    return moved(here, normal, right);
  }

  private Change moved(Change here, double[][] normal, double[] right) {
    DecompositionSolver solver =
        new CholeskyDecomposition(MatrixUtils.createRealMatrix(normal)).getSolver();
    double[] best = solver.solve(MatrixUtils.createRealVector(right)).toArray();
    double[][] inverse = solver.getInverse().getData();
    int n = free.size();
    int m = here.knobs().size();
    double[] others = here.others().clone();
    Arrays.setAll(others, j -> others[j] + best[j]);
    double[] by = here.by().clone();
    Arrays.setAll(by, i -> by[i] + best[n + i]);
    double[] sigma = new double[m];
    double[][] own = new double[m][];
    for (int i = 0; i < m; i++) {
      sigma[i] = Math.sqrt(inverse[n + i][n + i]);
      own[i] = Arrays.copyOfRange(inverse[n + i], n, n + m);
    }
    double[] scaled =
        new CholeskyDecomposition(MatrixUtils.createRealMatrix(own))
            .getSolver()
            .solve(MatrixUtils.createRealVector(by))
            .toArray();
    double explained = 0;
    for (int i = 0; i < m; i++) {
      explained += by[i] * scaled[i];
    }
    return new Change(here.knobs(), others, by, sigma, explained, false);
  }

  private double[][] left(Change change) {
    double[][] out = new double[deviations.length][];
    for (int c = 0; c < out.length; c++) {
      out[c] = deviations[c].clone();
      for (int b = 0; b < out[c].length; b++) {
        for (int j = 0; j < free.size(); j++) {
          out[c][b] -= change.others()[j] * slope(slopes, free.get(j), c, b);
        }
        for (int i = 0; i < change.knobs().size() && b >= middle; i++) {
          out[c][b] -= change.by()[i] * slope(slopes, change.knobs().get(i), c, b);
        }
      }
    }
    return out;
  }

  private double slope(double[][][] by, Knob k, int c, int b) {
    if (k.shiftsReading()) {
      return k.reading() == seen.channels().get(c) ? k.spread() : 0;
    }
    return by[k.ordinal()][c][b];
  }
}
