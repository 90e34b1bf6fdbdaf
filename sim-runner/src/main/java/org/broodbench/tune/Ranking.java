package org.broodbench.tune;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Sorts candidates by layers of non-domination, and within a layer by how lonely they are: the
 * sorting and the crowding distance of Deb and others (2002), see {@link Breeder}.
 */
final class Ranking {
  private Ranking() {}

  /** Indices, best first; of equals the first stays first. */
  static List<Integer> sorted(List<Scores> all) {
    int n = all.size();
    int[] layer = layers(all);
    double[] room = new double[n];
    for (int l = 0; l <= Arrays.stream(layer).max().orElse(0); l++) {
      int at = l;
      crowding(all, IntStream.range(0, n).filter(i -> layer[i] == at).boxed().toList(), room);
    }
    List<Integer> order = new ArrayList<>(IntStream.range(0, n).boxed().toList());
    order.sort(Comparator.comparingInt((Integer i) -> layer[i]).thenComparingDouble(i -> -room[i]));
    return order;
  }

  private static int[] layers(List<Scores> all) {
    int n = all.size();
    int[] layer = new int[n];
    Arrays.fill(layer, -1);
    int done = 0;
    for (int l = 0; done < n; l++) {
      List<Integer> here = new ArrayList<>();
      for (int i = 0; i < n; i++) {
        int c = i;
        boolean beaten =
            IntStream.range(0, n).anyMatch(j -> layer[j] < 0 && all.get(j).beats(all.get(c)));
        if (layer[i] < 0 && !beaten) {
          here.add(i);
        }
      }
      for (int i : here) {
        layer[i] = l;
      }
      done += here.size();
    }
    return layer;
  }

  private static void crowding(List<Scores> all, List<Integer> members, double[] room) {
    for (Aim aim : Aim.values()) {
      List<Integer> line = new ArrayList<>(members);
      line.sort(Comparator.comparingDouble(i -> all.get(i).get(aim)));
      if (line.isEmpty()) {
        return;
      }
      double low = all.get(line.get(0)).get(aim);
      double span = all.get(line.get(line.size() - 1)).get(aim) - low;
      room[line.get(0)] = Double.POSITIVE_INFINITY;
      if (span <= 0) {
        continue;
      }
      room[line.get(line.size() - 1)] = Double.POSITIVE_INFINITY;
      for (int i = 1; i < line.size() - 1; i++) {
        double gap = all.get(line.get(i + 1)).get(aim) - all.get(line.get(i - 1)).get(aim);
        room[line.get(i)] += gap / span;
      }
    }
  }

  /** Those that none beats; of those in the same grains the first alone. */
  static List<Judged> front(List<Judged> all) {
    List<Judged> front = new ArrayList<>();
    for (Judged a : all) {
      boolean beaten = all.stream().anyMatch(b -> b.scores().beats(a.scores()));
      boolean known = front.stream().anyMatch(b -> b.scores().like(a.scores()));
      if (!beaten && !known) {
        front.add(a);
      }
    }
    return front;
  }
}
