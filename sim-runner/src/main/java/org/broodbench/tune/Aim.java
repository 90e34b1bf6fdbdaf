package org.broodbench.tune;

import java.util.Locale;
import org.broodbench.loop.RunResult;

/**
 * What a season is scored by; less is better in every aim.
 *
 * <p>Grain: differences below it count as none, so that the set of best trade-offs does not fill up
 * with points that no keeper could tell apart (the boxes of M. Laumanns and others, "Combining
 * convergence and diversity in evolutionary multiobjective optimization", Evolutionary Computation
 * 10 (2002) 263-282); the sizes are own choices for a season of eight weeks.
 */
public enum Aim {
  /** Hours with the brood comb out of its band. */
  OUT_OF_BAND("h", 2, true),
  /** Energy of heater and fan at their terminals, Wh. */
  ENERGY("wh", 50, false),
  /** Starts of the heater. */
  STARTS("count", 10, false),
  /** Share of the battery's cycle life that the season uses up. */
  BATTERY_WEAR("percent", 0.05, false),
  /** Hours with heat shed or the board dead. */
  LOSS_OF_LOAD("h", 1, true),
  /** Brood cells lost to cold and heat; the size of the doses is unpublished. */
  BROOD_LOST("cells", 5, true);

  /**
   * Full cycles of 100 % depth that a lead-acid battery lives, and the exponent by which more are
   * had from shallow ones: a maker of glass-mat batteries gives 200 at 100 %, 600 at 50 %, 1500 at
   * 30 %, which is 200, 300, 450 full cycles' worth; lithium 1500 at any depth.
   */
  private static final double FULL_DEPTH_CYCLES = 200;

  private static final double DEPTH_EXPONENT = 0.63;
  private static final double LITHIUM_CYCLES = 1500;

  private final String unit;
  private final double grain;
  private final boolean ofBrood;

  Aim(String unit, double grain, boolean ofBrood) {
    this.unit = unit;
    this.grain = grain;
    this.ofBrood = ofBrood;
  }

  /** Name in results: aim and unit. */
  public String key() {
    return name().toLowerCase(Locale.ROOT) + "_" + unit;
  }

  /** In words. */
  public String words() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** Unit. */
  public String unit() {
    return unit;
  }

  /** Differences below this count as none. */
  public double grain() {
    return grain;
  }

  /** Whether brood suffers by it at once, so that its bad seasons count double. */
  boolean ofBrood() {
    return ofBrood;
  }

  /** The score of a season. */
  double of(RunResult r, boolean leadAcid) {
    return switch (this) {
      case OUT_OF_BAND -> r.brood().hoursBelow() + r.brood().hoursAbove();
      case ENERGY -> (r.power().heaterJ + r.power().fanJ) / 3600;
      case STARTS -> r.heaterCommanded().starts();
      case BATTERY_WEAR -> {
        double depth = Math.max(0.05, 1 - r.battery().lowestSoc().value());
        double cycles =
            leadAcid ? FULL_DEPTH_CYCLES * StrictMath.pow(depth, -DEPTH_EXPONENT) : LITHIUM_CYCLES;
        yield 100 * r.battery().fullCycles() / cycles;
      }
      case LOSS_OF_LOAD -> r.hoursShed();
      case BROOD_LOST -> r.colony().lostToCold() + r.colony().lostToHeat();
    };
  }
}
