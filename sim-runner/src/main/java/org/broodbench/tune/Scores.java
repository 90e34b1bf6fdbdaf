package org.broodbench.tune;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.broodbench.loop.RunResult;

/**
 * A score in every aim, in the order of {@link Aim}.
 *
 * @param values less is better
 */
public record Scores(List<Double> values) {
  /** Copies the list. */
  public Scores {
    values = List.copyOf(values);
  }

  /** The scores of a season. */
  public static Scores of(RunResult r, boolean leadAcid) {
    return new Scores(Arrays.stream(Aim.values()).map(aim -> aim.of(r, leadAcid)).toList());
  }

  /** The score in one aim. */
  public double get(Aim aim) {
    return values.get(aim.ordinal());
  }

  /**
   * Over seasons: the mean; of what hurts brood half of it and half the mean of the worst third, so
   * that a candidate that fails in hard seasons does not win by easy ones (own choice).
   */
  public static Scores over(List<Scores> seasons) {
    List<Double> all = new ArrayList<>();
    for (Aim aim : Aim.values()) {
      double[] sorted = seasons.stream().mapToDouble(s -> s.get(aim)).sorted().toArray();
      double mean = Arrays.stream(sorted).average().orElseThrow();
      int worst = (sorted.length + 2) / 3;
      double bad =
          Arrays.stream(sorted, sorted.length - worst, sorted.length).average().orElseThrow();
      all.add(aim.ofBrood() ? 0.5 * (mean + bad) : mean);
    }
    return new Scores(all);
  }

  /** Whether it is as good in every aim by whole grains, and better in one. */
  boolean beats(Scores other) {
    boolean better = false;
    for (Aim aim : Aim.values()) {
      double mine = box(aim);
      double its = other.box(aim);
      if (mine > its) {
        return false;
      }
      better |= mine < its;
    }
    return better;
  }

  private double box(Aim aim) {
    return Math.rint(get(aim) / aim.grain());
  }

  /** Whether both lie in the same grains. */
  boolean like(Scores other) {
    return Arrays.stream(Aim.values()).allMatch(aim -> box(aim) == other.box(aim));
  }

  String line() {
    return values.stream().map(v -> Double.toString(v)).collect(Collectors.joining(" "));
  }

  static Scores of(String line) {
    return new Scores(Arrays.stream(line.split(" ")).map(Double::valueOf).toList());
  }
}
