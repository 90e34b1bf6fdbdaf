package org.broodbench.loop;

import org.broodbench.colony.AdultDose;
import org.broodbench.controller.Commands;
import org.broodbench.plant.Actuators;
import org.broodbench.plant.Plant;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;

/**
 * The plant driven by what a log says of the relays instead of by a controller: heater and fan are
 * held over each step as they were at its middle. Where the log says nothing, the scenario's own
 * controller, stepped once a step on the simulated readings, decides. The numbers of the colony
 * stay as they are.
 */
public final class Replay {
  /** Of {@link Drive}: the log does not tell. */
  public static final int UNKNOWN = -1;

  /** What the log says of the relays: 1 on, 0 off, {@link #UNKNOWN}. */
  public interface Drive {
    /** Heater in a step; the one after the last may be asked for too. */
    int heater(int step);

    /** Fan in a step. */
    int fan(int step);
  }

  /** Nothing is known: the controller decides throughout. */
  public static final Drive CONTROLLED =
      new Drive() {
        @Override
        public int heater(int step) {
          return UNKNOWN;
        }

        @Override
        public int fan(int step) {
          return UNKNOWN;
        }
      };

  /** Looks at every step once it is solved, before the plant moves on. */
  public interface Watcher {
    /**
     * A step is solved.
     *
     * @param step its number from 0
     * @param plant the plant; readings of the step's middle at theta 0.5
     * @param heaterOn whether the heater was driven
     */
    void solved(int step, Plant plant, boolean heaterOn);
  }

  private final Plant plant;
  private final ReadingTaker taker;
  private final SteppedController controller;
  private final ScenarioEvents events;
  private final Drive drive;
  private final int stepS;
  private final boolean wantsInverter;
  private final Actuators held = new Actuators();
  private final Commands commands = new Commands();
  private final AdultDose adults = new AdultDose();
  private boolean deadBefore;

  /**
   * A replay that is ready to begin.
   *
   * @param scenario its window begins with the forcing
   * @param stepS length of a step, s
   */
  public Replay(Scenario scenario, Forcing forcing, Drive drive, int stepS) {
    this.drive = drive;
    this.stepS = stepS;
    plant = new Plant(scenario, forcing);
    taker = new ReadingTaker(scenario);
    controller = new ReferenceController(scenario.controller().settings());
    wantsInverter = scenario.heater().onInverter();
    events =
        new ScenarioEvents(
            scenario,
            plant,
            controller,
            new Recorder(scenario, plant, taker, Pace.Keep.FIGURES),
            new Faults(scenario, plant),
            controller::powerUp);
  }

  /**
   * Runs from the start of the window.
   *
   * @param warmSteps steps before it, unwatched, that go over its first steps again and again, so
   *     that the walls are no longer as the simulation found them; the battery is new after them
   * @param lap number of first steps that they go over
   * @param steps steps that are watched
   */
  public void run(int warmSteps, int lap, int steps, Watcher watcher) {
    events.at(0);
    for (long t = -Simulation.SWITCHED_ON_BEFORE_MS; t < 0; t += 1000) {
      controller.step((int) t, taker.take(plant, 0, t / 1000, false), commands);
    }
    for (int k = 0; k < warmSteps; k++) {
      step(k % lap, k, (step, where, on) -> {});
    }
    if (warmSteps > 0) {
      plant.renewSupply();
    }
    for (int k = 0; k < steps; k++) {
      step(k, warmSteps + k, watcher);
      events.at((k + 1) * 1000L * stepS);
    }
  }

  private void step(int k, int done, Watcher watcher) {
    hold(k);
    advance(k, watcher);
    boolean dead = plant.supply().dead();
    if (!dead && deadBefore) {
      controller.powerUp();
    }
    deadBefore = dead;
    boolean asked = drive.heater(k) == UNKNOWN || drive.heater(k + 1) == UNKNOWN;
    if (!dead && asked) {
      // the counter of the controller wraps round after 24.8 days, as on a board
      int nowMs = (int) ((done + 1) * 1000L * stepS);
      controller.step(nowMs, taker.take(plant, 0, done, held.heater), commands);
    }
  }

  private void hold(int step) {
    int heater = drive.heater(step);
    int fan = drive.fan(step);
    boolean dead = plant.supply().dead();
    held.heater =
        !dead && (heater == UNKNOWN ? commands.heater && commands.isolation : heater == 1);
    held.fan = !dead && (fan == UNKNOWN ? commands.fan : fan == 1);
    held.inverter = !dead && (commands.inverter || wantsInverter && held.heater);
  }

  /** One step, in shorter ones where the air asks for it. */
  private void advance(int step, Watcher watcher) {
    double doneS = 0;
    boolean seen = false;
    while (doneS < stepS) {
      double lengthS = Math.min(stepS - doneS, Math.max(1, plant.longestStepS(held)));
      plant.solve((double) step * stepS + doneS, lengthS, held);
      doneS += lengthS;
      if (!seen && doneS >= 0.5 * stepS) {
        seen = true;
        watcher.solved(step, plant, held.heater);
      }
      adults.add(plant.hive().view().nestC(1), lengthS);
      plant.accept();
      boolean chilled = adults.frozen() || adults.comaHours() >= AdultDose.COMA_HALF_H;
      if (chilled && plant.hive().alive()) {
        plant.hive().die();
      }
    }
  }
}
