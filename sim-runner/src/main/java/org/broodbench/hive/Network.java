package org.broodbench.hive;

import java.util.ArrayList;
import java.util.List;

/**
 * Nodes that store and links that carry: C dy/dt = b − K y, with K and b held over one step and
 * integrated by TR-BDF2. y is a temperature (C in J/K, K in W/K, b in W) or the content of dry air
 * (C in kg, K in kg/s, b in kg/s).
 *
 * <p>TR-BDF2 with γ = 2 − √2 is of second order and L-stable, with one matrix for both stages: R.
 * E. Bank and others, "Transient simulation of silicon devices and circuits", IEEE Trans. CAD 4
 * (1985) 436-451; M. E. Hosea and L. F. Shampine, "Analysis and implementation of TR-BDF2", Appl.
 * Numer. Math. 20 (1996) 21-37, whose stage weights make {@link #mean}: the integral over the step
 * of any flow that is linear in y is the step times the flow at the mean, to round-off. Between the
 * ends, the parabola through start, inner stage and end is used.
 */
final class Network {
  private static final double GAMMA = 2 - StrictMath.sqrt(2);

  /** Share γ/2 of the step in both stage matrices. */
  private static final double HALF_GAMMA = GAMMA / 2;

  private static final double FROM_GAMMA = 1 / (GAMMA * (2 - GAMMA));
  private static final double FROM_START = (1 - GAMMA) * (1 - GAMMA) / (GAMMA * (2 - GAMMA));
  private static final double WEIGHT_OUTER = StrictMath.sqrt(2) / 4;

  private final int n;
  private final double[] capacity;
  private final SparseSystem system;
  private final int[] rowStart;
  private final int[] rowColumn;
  private final int[] rowPosition;

  private final double[] fixed;
  private final double[] k;
  private final double[] factors;
  private final double[] b;
  private final double[] work;

  private final double[] start;
  private final double[] inner;
  private final double[] end;
  private final double[] mean;
  private final double[] slope;
  private final double[] drawn;
  private int stepsSinceForget;

  /**
   * Builds the network.
   *
   * @param capacity storage of each node, all above 0
   * @param pairs linked nodes {i, j}
   */
  Network(double[] capacity, List<int[]> pairs) {
    this.n = capacity.length;
    this.capacity = capacity.clone();
    this.system = new SparseSystem(n, pairs);
    fixed = new double[system.entries()];
    k = new double[system.entries()];
    factors = new double[system.entries()];
    b = new double[n];
    work = new double[n];
    start = new double[n];
    inner = new double[n];
    end = new double[n];
    mean = new double[n];
    slope = new double[n];
    drawn = new double[n];
    boolean[][] linked = new boolean[n][n];
    for (int[] p : pairs) {
      linked[p[0]][p[1]] = true;
      linked[p[1]][p[0]] = true;
    }
    rowStart = new int[n + 1];
    List<int[]> offDiagonal = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      rowStart[i] = offDiagonal.size();
      for (int j = 0; j < n; j++) {
        if (linked[i][j]) {
          offDiagonal.add(new int[] {j, system.position(i, j)});
        }
      }
    }
    rowStart[n] = offDiagonal.size();
    rowColumn = offDiagonal.stream().mapToInt(e -> e[0]).toArray();
    rowPosition = offDiagonal.stream().mapToInt(e -> e[1]).toArray();
  }

  /** Number of nodes. */
  int size() {
    return n;
  }

  /** Sets a node's value and forgets its past. */
  void set(int node, double value) {
    start[node] = value;
    end[node] = value;
    inner[node] = value;
    mean[node] = value;
    slope[node] = 0;
    drawn[node] = 0;
  }

  /** Changes a node's storage; the caller accounts for what that does to its balance. */
  void setCapacity(int node, double value) {
    capacity[node] = value;
  }

  double capacity(int node) {
    return capacity[node];
  }

  /** Adds a conductance that never changes. */
  void fix(int i, int j, double g) {
    fixed[system.position(i, i)] += g;
    fixed[system.position(j, j)] += g;
    fixed[system.position(i, j)] -= g;
    fixed[system.position(j, i)] -= g;
  }

  /** Drops all sources and changing links, ready to be filled for the next step. */
  void clear() {
    System.arraycopy(fixed, 0, k, 0, k.length);
    for (int i = 0; i < n; i++) {
      b[i] = 0;
    }
  }

  /** Adds a conductance between two nodes for this step. */
  void conduct(int i, int j, double g) {
    k[system.position(i, i)] += g;
    k[system.position(j, j)] += g;
    k[system.position(i, j)] -= g;
    k[system.position(j, i)] -= g;
  }

  /** Adds a stream that arrives at node {@code to} with the value of node {@code from}. */
  void carry(int from, int to, double g) {
    k[system.position(to, to)] += g;
    k[system.position(to, from)] -= g;
  }

  /** Adds a conductance to (or a stream from) something of a given value outside the network. */
  void reach(int node, double g, double value) {
    k[system.position(node, node)] += g;
    b[node] += g * value;
  }

  /** Adds a source. */
  void supply(int node, double rate) {
    b[node] += rate;
  }

  /** Value at the coming step's middle, drawn out from the last steps. */
  double ahead(int node, double stepS) {
    return start[node] + 0.5 * stepS * drawn[node];
  }

  /** Makes {@link #ahead} start anew from the present state, after a sudden change of the links. */
  void forget() {
    stepsSinceForget = 0;
    for (int i = 0; i < n; i++) {
      drawn[i] = 0;
    }
  }

  /** Integrates over one step; the state stays at the start until {@link #accept}. */
  void solve(double stepS) {
    double d = HALF_GAMMA * stepS;
    for (int p = 0; p < factors.length; p++) {
      factors[p] = d * k[p];
    }
    for (int i = 0; i < n; i++) {
      factors[i] += capacity[i]; // the diagonal stands first
    }
    system.factor(factors);
    residual(start);
    for (int i = 0; i < n; i++) {
      work[i] *= 2 * d;
    }
    system.solve(factors, work);
    for (int i = 0; i < n; i++) {
      inner[i] = start[i] + work[i];
      end[i] = FROM_GAMMA * inner[i] - FROM_START * start[i];
    }
    residual(end);
    for (int i = 0; i < n; i++) {
      work[i] *= d;
    }
    system.solve(factors, work);
    for (int i = 0; i < n; i++) {
      end[i] += work[i];
      mean[i] = WEIGHT_OUTER * (start[i] + inner[i]) + HALF_GAMMA * end[i];
    }
  }

  private void residual(double[] y) {
    for (int i = 0; i < n; i++) {
      double sum = b[i] - k[i] * y[i];
      for (int e = rowStart[i]; e < rowStart[i + 1]; e++) {
        sum -= k[rowPosition[e]] * y[rowColumn[e]];
      }
      work[i] = sum;
    }
  }

  /** Makes the end of the last solved step the present state. */
  void accept(double stepS) {
    for (int i = 0; i < n; i++) {
      double now = (end[i] - start[i]) / stepS;
      drawn[i] = stepsSinceForget > 0 ? limited(now, slope[i]) : now;
      slope[i] = now;
      start[i] = end[i];
    }
    stepsSinceForget++;
  }

  /**
   * The slope to draw out with: the last one, at most twice the one before, and backwards to the
   * mean of the last two states where it turned. A smooth course is hardly touched (at a turn its
   * slope is next to nothing); what bursts is held back and what swings is damped.
   */
  private static double limited(double now, double before) {
    if (now * before <= 0) {
      return before == 0 ? 0 : -now;
    }
    double most = 2 * before;
    return now > 0 ? (now < most ? now : most) : (now > most ? now : most);
  }

  double start(int node) {
    return start[node];
  }

  double inner(int node) {
    return inner[node];
  }

  double end(int node) {
    return end[node];
  }

  /** The value at which a linear flow, times the step, is its integral over the step. */
  double mean(int node) {
    return mean[node];
  }

  /** Value inside the last solved step; {@code theta} runs from 0 at the start to 1 at the end. */
  double at(int node, double theta) {
    return parabola(start[node], inner[node], end[node], theta);
  }

  /** The parabola through values at 0, γ and 1. */
  static double parabola(double atStart, double atInner, double atEnd, double theta) {
    double slope = (atInner - atStart) / GAMMA;
    double bend = (atEnd - atStart - slope) / (1 - GAMMA);
    return atStart + theta * (slope + (theta - GAMMA) * bend);
  }

  /**
   * Stage values of a first-order follower s' = (y − s)/τ of a source with the given stage values.
   */
  static void follow(
      double[] stages,
      double sourceStart,
      double sourceInner,
      double sourceEnd,
      double tauS,
      double stepS) {
    double d = HALF_GAMMA * stepS / tauS;
    double s0 = stages[0];
    double sInner = (s0 + d * (sourceStart - s0) + d * sourceInner) / (1 + d);
    stages[1] = sInner;
    stages[2] = (FROM_GAMMA * sInner - FROM_START * s0 + d * sourceEnd) / (1 + d);
  }
}
