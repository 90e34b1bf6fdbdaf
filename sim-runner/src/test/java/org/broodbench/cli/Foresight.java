package org.broodbench.cli;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Readings;
import org.broodbench.hive.HeaterSpec;
import org.broodbench.loop.Onlooker;
import org.broodbench.loop.Pace;
import org.broodbench.loop.RunResult;
import org.broodbench.loop.Simulation;
import org.broodbench.loop.SteppedController;
import org.broodbench.plant.Plant;
import org.broodbench.power.ShoreSpec;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;

/**
 * A controller that no rig can have: it sees the true comb, where the comb is heading and the true
 * charge, without noise or delay; may switch at every tick, and so give any mean power; heeds no
 * pause, limit or count; and uses the battery to the supply's own cut-out. {@link #tries} are the
 * ways to use that among which one is chosen for each season after the season is known.
 *
 * @param holdC comb that it holds, °C
 * @param warmC comb that it holds while the battery is full and more sun would be lost, °C
 * @param coolC comb above which the fan runs, °C
 * @param aheadS how far it looks ahead along the trend of the comb, s
 */
record Foresight(double holdC, double warmC, double coolC, double aheadS) {
  /** About as long as the pan's heat takes to the comb, s. */
  private static final double PAN_S = 1800;

  /** Charge from which the panel is throttled or soon will be. */
  private static final double FULL_SOC = 0.97;

  /** Highest volts of the bus over those of absorption at 25 °C: a lead-acid battery in frost. */
  private static final double HIGHEST_VOLTS = 1.1;

  /** How far over its band the relaxed comb is kept, K: short of what kills bees. */
  private static final double STORED_K = 2;

  /** Mains that carry every load of such rigs. */
  static final ShoreSpec ENDLESS = new ShoreSpec(true, 1000, 1);

  /** All ways that are tried in a season. */
  static List<Foresight> tries(Scenario s) {
    List<Foresight> tries = new ArrayList<>();
    double low = s.run().bandLowC();
    double high = s.run().bandHighC();
    for (double above : new double[] {0.02, 0.1, 0.3, 0.6, 1}) {
      for (double warm : new double[] {0, 2, 3.5}) {
        for (double under : new double[] {0.2, 1.5}) {
          tries.add(new Foresight(low + above, low + Math.max(above, warm), high - under, PAN_S));
        }
      }
    }
    return tries;
  }

  /** Runs a season under it, on the rig as it is. */
  RunResult run(Scenario s, Forcing forcing) {
    Sees sees = new Sees();
    return new Simulation(s, forcing, sees, Pace.search(s), sees).run();
  }

  /**
   * Hours that no controller of this rig can keep the comb from being below its band in a season:
   * those that remain though the supply never ends, the element has at any time what it takes at
   * the highest volts that the bus ever has, nothing limits its starts and pauses, and it heats
   * whenever the true comb is not 2 K above its band already. Hours above the band are not counted.
   *
   * <p>Why nobody has fewer: more heat now does not make the hive colder later. So the hive that
   * always got all the heat there is, up to 2 K above the band, is at every moment at least as warm
   * as under any controller that does not go further than that; and one that does pays with hours
   * far above the band before it saves any below. Batteries, pauses, noise and lags of probes only
   * take from that. It is an argument, not a proof: warmer air loosens the cluster of bees, so that
   * the rule may be broken in small. It is held against every row, and against controllers at
   * random in rigs so weak that the bound is many hours.
   */
  static double leastHoursBelow(Scenario s, Forcing forcing) {
    HeaterSpec h = s.heater();
    double volts = Math.max(1, HIGHEST_VOLTS * s.battery().absorptionV() / h.ratedV());
    HeaterSpec strongest =
        new HeaterSpec(
            h.powerW() * volts * volts,
            h.ratedV(),
            h.onInverter(),
            true,
            h.plateJK(),
            h.plateM2(),
            h.plateFloorWK(),
            h.pan(),
            h.limits());
    Scenario fed = s.withHeater(strongest).withShore(ENDLESS);
    double warmC = s.run().bandHighC() + STORED_K;
    return new Foresight(warmC, warmC, Double.POSITIVE_INFINITY, 0)
        .run(fed, forcing)
        .brood()
        .hoursBelow();
  }

  /** One run of it. */
  private final class Sees implements SteppedController, Onlooker {
    private double nestC = Double.NEGATIVE_INFINITY;
    private double risesKS;
    private boolean full;

    @Override
    public void powerUp() {
      // it sees everything anew at every step
    }

    @Override
    public void step(int nowMillis, Readings readings, Commands commands) {
      commands.isolation = true;
      commands.fan = nestC > coolC;
      commands.heater = nestC + aheadS * risesKS < (full ? warmC : holdC);
    }

    @Override
    public boolean keyInSetPoint(double setPointC) {
      return false;
    }

    @Override
    public void step(double endS, double lengthS, Plant plant, Commands commands) {
      nestC = plant.hive().view().nestC(1);
      risesKS = (nestC - plant.hive().view().nestC(0)) / lengthS;
      full = plant.supply().battery().stateOfCharge() >= FULL_SOC;
    }
  }
}
