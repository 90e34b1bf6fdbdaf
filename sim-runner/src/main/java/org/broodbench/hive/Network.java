package org.broodbench.hive;

import java.util.Arrays;
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

  private static final double PER_GAMMA = 1 / GAMMA;
  private static final double PER_REST = 1 / (1 - GAMMA);

  private final int n;
  private final double[] capacity;
  private final SparseSystem system;
  private final int[] links; // for each link handed out: both nodes, both off-diagonal places
  private int linkCount;

  private final double[] fixed;
  private final double[] base;
  private final double[] a;
  private final double[] b;
  private final double[] work;
  private double d;
  private double baseD = Double.NaN;

  private final double[] start;
  private final double[] inner;
  private final double[] end;
  private final double[] mean;
  private final double[] slope;
  private final double[] drawn;
  private int stepsSinceForget;

  /** A network any of whose nodes may get links that change. */
  Network(double[] capacity, List<int[]> pairs) {
    this(capacity, pairs, allTrue(capacity.length));
  }

  private static boolean[] allTrue(int n) {
    boolean[] all = new boolean[n];
    Arrays.fill(all, true);
    return all;
  }

  /**
   * Builds the network.
   *
   * @param capacity storage of each node, all above 0
   * @param pairs linked nodes {i, j}
   * @param varies nodes that get links which change from step to step; the others have only those
   *     of {@link #fix}
   */
  Network(double[] capacity, List<int[]> pairs, boolean[] varies) {
    this.n = capacity.length;
    this.capacity = capacity.clone();
    this.system = new SparseSystem(n, pairs, varies);
    fixed = new double[system.entries()];
    base = new double[system.entries()];
    a = new double[system.entries()];
    b = new double[n];
    work = new double[n];
    start = new double[n];
    inner = new double[n];
    end = new double[n];
    mean = new double[n];
    slope = new double[n];
    drawn = new double[n];
    links = new int[4 * pairs.size()];
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
    baseD = Double.NaN;
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
    baseD = Double.NaN;
  }

  /**
   * Drops all sources and changing links, ready to be filled for a step of some length. What does
   * not change between steps of equal length is kept in its eliminated form.
   */
  void clear(double stepS) {
    d = HALF_GAMMA * stepS;
    if (d != baseD) {
      baseD = d;
      for (int p = 0; p < base.length; p++) {
        base[p] = p < n ? capacity[p] + d * fixed[p] : d * fixed[p];
      }
      system.eliminateSteady(base);
    }
    System.arraycopy(base, 0, a, 0, a.length);
    Arrays.fill(b, 0);
  }

  /** Drops the same, ready to be filled for {@link #rates}. */
  void clearForRates() {
    d = 1;
    System.arraycopy(fixed, 0, a, 0, a.length);
    Arrays.fill(b, 0);
  }

  /** A number for a linked pair of nodes, for {@link #conduct} and {@link #carry} in the step. */
  int link(int i, int j) {
    int l = 4 * linkCount++;
    links[l] = i;
    links[l + 1] = j;
    links[l + 2] = system.position(i, j);
    links[l + 3] = system.position(j, i);
    return l;
  }

  /** Adds a conductance along a link for this step. */
  void conduct(int link, double g) {
    double dg = d * g;
    a[links[link]] += dg;
    a[links[link + 1]] += dg;
    a[links[link + 2]] -= dg;
    a[links[link + 3]] -= dg;
  }

  /**
   * Adds streams along a link: one that arrives at its second node with the value of the first, and
   * one back.
   */
  void carry(int link, double forth, double back) {
    a[links[link + 1]] += d * forth;
    a[links[link + 3]] -= d * forth;
    a[links[link]] += d * back;
    a[links[link + 2]] -= d * back;
  }

  /** Adds a conductance to (or a stream from) something of a given value outside the network. */
  void reach(int node, double g, double value) {
    a[node] += d * g;
    b[node] += g * value;
  }

  /** Adds a conductance to something outside that would bring a rate to a node of value 0. */
  void bring(int node, double g, double rate) {
    a[node] += d * g;
    b[node] += rate;
  }

  /** Adds a source. */
  void supply(int node, double rate) {
    b[node] += rate;
  }

  /** Values at the coming step's middle, drawn out from the last steps. */
  void ahead(double stepS, double[] out) {
    double half = 0.5 * stepS;
    for (int i = 0; i < n; i++) {
      out[i] = start[i] + half * drawn[i];
    }
  }

  /** Means over the last solved step. */
  void means(double[] out) {
    System.arraycopy(mean, 0, out, 0, n);
  }

  /** Accepted steps since the beginning or the last {@link #forget}. */
  int stepsSinceForget() {
    return stepsSinceForget;
  }

  /** Makes {@link #ahead} start anew from the present state, after a sudden change of the links. */
  void forget() {
    stepsSinceForget = 0;
    for (int i = 0; i < n; i++) {
      drawn[i] = 0;
    }
  }

  /**
   * Integrates over the step that was filled for; the state stays at the start until {@link
   * #accept}. With A = C + dK and d half of γ of the step, the first stage is A (y + y₀) = 2 (C y₀
   * + d b) and the second A y = C v + d b, so that no product with K is needed.
   */
  void solve() {
    for (int i = 0; i < n; i++) {
      b[i] *= d;
      work[i] = 2 * (capacity[i] * start[i] + b[i]);
    }
    system.eliminateVarying(a);
    system.solve(work);
    for (int i = 0; i < n; i++) {
      double y = work[i] - start[i];
      inner[i] = y;
      end[i] = capacity[i] * (FROM_GAMMA * y - FROM_START * start[i]) + b[i];
    }
    system.solve(end);
    for (int i = 0; i < n; i++) {
      mean[i] = WEIGHT_OUTER * (start[i] + inner[i]) + HALF_GAMMA * end[i];
    }
  }

  /** Rates of change at given values with the links and sources as filled; for tests. */
  void rates(double[] y, double[] out) {
    for (int i = 0; i < n; i++) {
      double sum = b[i];
      for (int j = 0; j < n; j++) {
        int p = system.position(i, j);
        if (p >= 0) {
          sum -= a[p] * y[j];
        }
      }
      out[i] = sum / capacity[i];
    }
  }

  /** Makes the end of the last solved step the present state. */
  void accept(double stepS) {
    double perS = 1 / stepS;
    for (int i = 0; i < n; i++) {
      double now = (end[i] - start[i]) * perS;
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
    double slope = (inner[node] - start[node]) * PER_GAMMA;
    double bend = (end[node] - start[node] - slope) * PER_REST;
    return start[node] + theta * (slope - GAMMA * bend + theta * bend);
  }

  /** Slope and bend at the start of the parabola through values at 0, γ and 1. */
  static void parabola(double atStart, double atInner, double atEnd, double[] slopeAndBend) {
    double slope = (atInner - atStart) * PER_GAMMA;
    double bend = (atEnd - atStart - slope) * PER_REST;
    slopeAndBend[0] = slope - GAMMA * bend;
    slopeAndBend[1] = bend;
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
