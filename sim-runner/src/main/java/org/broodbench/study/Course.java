package org.broodbench.study;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.broodbench.loop.ColonyDay;

/**
 * A colony over the weeks of an outlook under one treatment, day by day, at the three published
 * heat losses of small clusters.
 *
 * @param key short name
 * @param what the treatment in words
 * @param lowLoss days at the lowest published heat loss
 * @param own days at the scenario's own
 * @param highLoss days at the highest
 */
public record Course(
    String key,
    String what,
    List<ColonyDay> lowLoss,
    List<ColonyDay> own,
    List<ColonyDay> highLoss) {
  /** Bees that brood of all ages gives in good conditions: 85.1 of 100 eggs. */
  private static final double BEE_OF_CELL = 0.851;

  /** The three, from the lowest loss to the highest. */
  public List<List<ColonyDay>> three() {
    return List.of(lowLoss, own, highLoss);
  }

  /** The last day of one of the three, 0 to 2. */
  public ColonyDay last(int loss) {
    List<ColonyDay> days = three().get(loss);
    return days.get(days.size() - 1);
  }

  /** Lowest value of the three on a day, 0 the first. */
  public double low(int day, ToDoubleFunction<ColonyDay> value) {
    return three().stream().mapToDouble(d -> value.applyAsDouble(d.get(day))).min().orElseThrow();
  }

  /** Highest value of the three on a day, 0 the first. */
  public double high(int day, ToDoubleFunction<ColonyDay> value) {
    return three().stream().mapToDouble(d -> value.applyAsDouble(d.get(day))).max().orElseThrow();
  }

  /** Bees, and those that the brood promises. */
  public static double strength(ColonyDay d) {
    return d.bees() + BEE_OF_CELL * d.brood();
  }
}
