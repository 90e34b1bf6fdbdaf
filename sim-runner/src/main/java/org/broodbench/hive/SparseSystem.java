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
 * <p>Values live in flat arrays that the caller fills: entry (i,j) of the pattern stands at {@link
 * #position}, the diagonal first.
 */
final class SparseSystem {
  private final int n;
  private final int[][] positionOf;
  private final int entries;
  private final int[] order;

  /** Elimination as flat lists: for each pivot, its later neighbours and the entries to update. */
  private final int[] neighbourStart;

  private final int[] neighbourNode;
  private final int[] lower;
  private final int[] upper;
  private final int[] updateTarget;

  /**
   * Builds pattern and order.
   *
   * @param n number of unknowns
   * @param pairs coupled unknowns, each {i, j} once
   */
  SparseSystem(int n, List<int[]> pairs) {
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
    order = new int[n];
    List<int[]> neighbours = new ArrayList<>();
    boolean[] done = new boolean[n];
    for (int k = 0; k < n; k++) {
      int pivot = -1;
      for (int i = 0; i < n; i++) {
        if (!done[i] && (pivot < 0 || graph.get(i).size() < graph.get(pivot).size())) {
          pivot = i;
        }
      }
      order[k] = pivot;
      done[pivot] = true;
      int[] later = graph.get(pivot).stream().mapToInt(Integer::intValue).toArray();
      neighbours.add(later);
      for (int a : later) {
        graph.get(a).remove(pivot);
        if (positionOf[a][pivot] < 0) {
          positionOf[a][pivot] = next++;
          positionOf[pivot][a] = next++;
        }
        for (int b : later) {
          if (a != b) {
            graph.get(a).add(b);
          }
        }
      }
    }
    entries = next;
    neighbourStart = new int[n + 1];
    int neighbourCount = neighbours.stream().mapToInt(a -> a.length).sum();
    int updateCount = neighbours.stream().mapToInt(a -> a.length * a.length).sum();
    neighbourNode = new int[neighbourCount];
    lower = new int[neighbourCount];
    upper = new int[neighbourCount];
    updateTarget = new int[updateCount];
    int at = 0;
    int update = 0;
    for (int k = 0; k < n; k++) {
      int pivot = order[k];
      neighbourStart[k] = at;
      for (int a : neighbours.get(k)) {
        neighbourNode[at] = a;
        lower[at] = positionOf[a][pivot];
        upper[at] = positionOf[pivot][a];
        at++;
        for (int b : neighbours.get(k)) {
          updateTarget[update++] = positionOf[a][b];
        }
      }
    }
    neighbourStart[n] = at;
  }

  /** Number of values that a matrix of this pattern has, fill included. */
  int entries() {
    return entries;
  }

  /** Where entry (i,j) stands; -1 where the pattern has none. */
  int position(int i, int j) {
    return positionOf[i][j];
  }

  /** Replaces the values by their triangular factors. */
  void factor(double[] a) {
    int r = 0;
    int u = 0;
    for (int k = 0; k < n; k++) {
      int pivot = order[k];
      double inverse = 1 / a[pivot];
      a[pivot] = inverse;
      int from = r;
      int to = neighbourStart[k + 1];
      for (; r < to; r++) {
        double l = a[lower[r]] * inverse;
        a[lower[r]] = l;
        for (int c = from; c < to; c++) {
          int t = updateTarget[u++];
          a[t] -= l * a[upper[c]];
        }
      }
    }
  }

  /** Solves in place with factors of {@link #factor}. */
  void solve(double[] factors, double[] x) {
    int r = 0;
    for (int k = 0; k < n; k++) {
      double xk = x[order[k]];
      for (int to = neighbourStart[k + 1]; r < to; r++) {
        x[neighbourNode[r]] -= factors[lower[r]] * xk;
      }
    }
    for (int k = n - 1; k >= 0; k--) {
      int pivot = order[k];
      double sum = x[pivot];
      for (int from = neighbourStart[k]; r > from; ) {
        r--;
        sum -= factors[upper[r]] * x[neighbourNode[r]];
      }
      x[pivot] = sum * factors[pivot];
    }
  }
}
