package org.broodbench.study;

import java.util.List;
import org.broodbench.rig.Requirement;

/**
 * How sure a verdict is: an ensemble over weather and uncertain numbers.
 *
 * @param members runs
 * @param seasons different weathers among them
 * @param everything how often every requirement was met
 * @param requirements each requirement
 * @param ranges what was varied
 */
public record Sure(
    int members,
    int seasons,
    Chance everything,
    List<OfRequirement> requirements,
    List<Unsure> ranges) {
  /** Copies the lists. */
  public Sure {
    requirements = List.copyOf(requirements);
    ranges = List.copyOf(ranges);
  }

  /** The score interval for a share of 90 % confidence; the quantile of the normal distribution. */
  private static final double Z = 1.6449;

  /**
   * A share with its 90 % interval: the score interval of Wilson 1927 (Journal of the American
   * Statistical Association 22).
   *
   * @param share what was seen, 0 to 1
   * @param low lower end
   * @param high upper end
   */
  public record Chance(double share, double low, double high) {
    /** Of some number of members. */
    static Chance of(int met, int of) {
      double p = (double) met / of;
      double z2 = Z * Z / of;
      double centre = (p + z2 / 2) / (1 + z2);
      double half = Z * StrictMath.sqrt(p * (1 - p) / of + z2 / (4 * of)) / (1 + z2);
      return new Chance(p, Math.max(0, centre - half), Math.min(1, centre + half));
    }
  }

  /**
   * One requirement.
   *
   * @param requirement what is asked
   * @param met how often it was met
   * @param lowTenth value that one member in ten is below
   * @param middle median
   * @param highTenth value that one member in ten is above
   * @param weights what its value depends on, most first
   */
  public record OfRequirement(
      Requirement requirement,
      Chance met,
      double lowTenth,
      double middle,
      double highTenth,
      List<Weight> weights) {
    /** Copies the list. */
    public OfRequirement {
      weights = List.copyOf(weights);
    }
  }

  /**
   * How much of the variance of a value one number explains by itself.
   *
   * @param what key, or {@code weather}
   * @param share first-order share of the variance, 0 to 1, less what chance alone would give
   * @param settledBy which measurement would tell it
   */
  public record Weight(String what, double share, String settledBy) {}
}
