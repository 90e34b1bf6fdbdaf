package org.broodbench.hive;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/**
 * A square system whose pattern of non-zeros is symmetric and known beforehand, solved by
 * elimination without pivoting in an order of least degree. Matrices of heat and gas networks are
 * diagonally dominant, so no pivoting is needed. For the trees and chains that hives make, both the
 * pattern and the work grow linearly with the number of nodes.
 *
 * <p>Unknowns whose row never changes from step to step come first in the order, so that their part
 * of the elimination is done once. Values live in a flat array that the caller fills: entry (i,j)
 * of the pattern stands at {@link #position}, the diagonal first.
 */
final class SparseSystem {
  private final int n;
  private final int[][] positionOf;
  private final int entries;
  private final int steady;
  private final int[] order;

  /** For each pivot in turn, its later neighbours; all pivots' lists follow one another. */
  private final int[] neighbourStart;

  private final int[] pivotOf;
  private final int[] neighbourNode;
  private final int[] lowerAt;
  private final int[] upperAt;
  private final int[] updateStart;
  private final int[] updateTarget;

  private final double[] inverse;
  private final double[] lower;
  private final double[] upper;

  /**
   * Builds pattern and order.
   *
   * @param n number of unknowns
   * @param pairs coupled unknowns, each {i, j} once
   * @param varies whether an entry of an unknown's row or column may change between two steps
   */
  SparseSystem(int n, List<int[]> pairs, boolean[] varies) {
    this.n = n;
    List<TreeSet<Integer>> graph = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      graph.add(new TreeSet<>());
    }
    for (int[] p : pairs) {
      graph.get(p[0]).add(p[1]);
      graph.get(p[1]).add(p[0]);
    }
    positionOf = new int[n][n];
    for (int[] row : positionOf) {
      Arrays.fill(row, -1);
    }
    int next = 0;
    for (int i = 0; i < n; i++) {
      positionOf[i][i] = next++;
    }
    for (int[] p : pairs) {
      if (positionOf[p[0]][p[1]] < 0) {
        positionOf[p[0]][p[1]] = next++;
        positionOf[p[1]][p[0]] = next++;
      }
    }
    order = new int[n];
    List<int[]> neighbours = new ArrayList<>();
    boolean[] done = new boolean[n];
    int constant = 0;
    for (int k = 0; k < n; k++) {
      int pivot = next(graph, done, varies);
      constant += varies[pivot] ? 0 : 1;
      order[k] = pivot;
      done[pivot] = true;
      int[] later = graph.get(pivot).stream().mapToInt(Integer::intValue).toArray();
      neighbours.add(later);
      for (int a : later) {
        graph.get(a).remove(pivot);
        for (int b : later) {
          if (a != b) {
            graph.get(a).add(b);
            if (positionOf[a][b] < 0) {
              positionOf[a][b] = next++;
            }
          }
        }
      }
    }
    entries = next;
    steady = constant;
    neighbourStart = new int[n + 1];
    updateStart = new int[n + 1];
    int neighbourCount = neighbours.stream().mapToInt(a -> a.length).sum();
    int updateCount = neighbours.stream().mapToInt(a -> a.length * a.length).sum();
    pivotOf = new int[neighbourCount];
    neighbourNode = new int[neighbourCount];
    lowerAt = new int[neighbourCount];
    upperAt = new int[neighbourCount];
    updateTarget = new int[updateCount];
    inverse = new double[n];
    lower = new double[neighbourCount];
    upper = new double[neighbourCount];
    int at = 0;
    int update = 0;
    for (int k = 0; k < n; k++) {
      int pivot = order[k];
      neighbourStart[k] = at;
      updateStart[k] = update;
      for (int a : neighbours.get(k)) {
        pivotOf[at] = pivot;
        neighbourNode[at] = a;
        lowerAt[at] = positionOf[a][pivot];
        upperAt[at] = positionOf[pivot][a];
        at++;
        for (int b : neighbours.get(k)) {
          updateTarget[update++] = positionOf[a][b];
        }
      }
    }
    neighbourStart[n] = at;
    updateStart[n] = update;
  }

  /** The next unknown to eliminate: steady before varying, then of least degree. */
  private static int next(List<TreeSet<Integer>> graph, boolean[] done, boolean[] varies) {
    int pivot = -1;
    for (int i = 0; i < done.length; i++) {
      if (!done[i]
          && (pivot < 0
              || (varies[pivot] && !varies[i])
              || (varies[pivot] == varies[i] && graph.get(i).size() < graph.get(pivot).size()))) {
        pivot = i;
      }
    }
    return pivot;
  }

  /** Number of values that a matrix of this pattern has, fill included. */
  int entries() {
    return entries;
  }

  /** Where entry (i,j) stands; -1 where the pattern has none. */
  int position(int i, int j) {
    return positionOf[i][j];
  }

  /** Eliminates the steady unknowns: what it leaves in the array is the start of every step. */
  void eliminateSteady(double[] a) {
    eliminate(a, 0, steady);
  }

  /** Eliminates the rest. */
  void eliminateVarying(double[] a) {
    eliminate(a, steady, n);
  }

  private void eliminate(double[] a, int from, int to) {
    for (int k = from; k < to; k++) {
      int pivot = order[k];
      double inv = 1 / a[pivot];
      inverse[pivot] = inv;
      int first = neighbourStart[k];
      int last = neighbourStart[k + 1];
      int u = updateStart[k];
      for (int r = first; r < last; r++) {
        double l = a[lowerAt[r]] * inv;
        lower[r] = l;
        upper[r] = a[upperAt[r]] * inv;
        for (int c = first; c < last; c++) {
          int t = updateTarget[u++];
          a[t] -= l * a[upperAt[c]];
        }
      }
    }
  }

  /** Solves in place with what the elimination left. */
  void solve(double[] x) {
    for (int r = 0; r < lower.length; r++) {
      x[neighbourNode[r]] -= lower[r] * x[pivotOf[r]];
    }
    for (int i = 0; i < inverse.length; i++) {
      x[i] *= inverse[i];
    }
    for (int r = upper.length - 1; r >= 0; r--) {
      x[pivotOf[r]] -= upper[r] * x[neighbourNode[r]];
    }
  }
}
