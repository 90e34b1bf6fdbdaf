package org.broodbench.loop;

import java.util.List;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Readings;
import org.broodbench.controller.ShedLevel;
import org.broodbench.plant.Actuators;
import org.broodbench.plant.Plant;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;

/**
 * One run: a controller stepped at its tick against the plant.
 *
 * <p>The plant takes steps of up to 10 s; the controller's ticks inside a step read the plant's own
 * state at the tick. When an output changes at a tick, the step is worked out again up to that tick
 * and the change holds from there. Events of the scenario are step borders as well.
 */
public final class Simulation {
  /**
   * The board is switched on so long before the window, ms, with everything at its start; own
   * choice.
   */
  static final long SWITCHED_ON_BEFORE_MS = 180_000;

  private final Scenario scenario;
  private final Pace pace;
  private final Plant plant;
  private final SteppedController controller;
  private final ReadingTaker taker;
  private final Commands commands = new Commands();
  private final Actuators held = new Actuators();
  private final Actuators wanted = new Actuators();
  private final Metrics metrics;
  private final Recorder recorder;
  private final ScenarioEvents events;
  private final Faults faults;
  private final Onlooker onlooker;
  private final ColonyLife life;

  private long nowMs;
  private long nextTickMs;
  private long tick;
  private final int ticksAtOnce;
  private boolean deadBefore;
  private boolean queenTold;
  private int shedLevel;

  /** A run at the scenario's own pace that is ready to begin. */
  public Simulation(
      Scenario scenario, Forcing forcing, SteppedController controller, boolean withTrace) {
    this(
        scenario,
        forcing,
        controller,
        Pace.exact(scenario, withTrace ? Pace.Keep.TRACE : Pace.Keep.EVENTS));
  }

  /**
   * A run that is ready to begin. The forcing is only read, so any number of runs of the same
   * window, site and planes may share one, on any number of threads.
   */
  public Simulation(Scenario scenario, Forcing forcing, SteppedController controller, Pace pace) {
    this(scenario, forcing, controller, pace, Onlooker.NOBODY);
  }

  /** A run that somebody looks at step by step. */
  public Simulation(
      Scenario scenario,
      Forcing forcing,
      SteppedController controller,
      Pace pace,
      Onlooker onlooker) {
    this.scenario = scenario;
    this.pace = pace;
    // noise at an instant is the same at every pace
    ticksAtOnce = Math.max(1, pace.tickMillis() / scenario.controller().tickMillis());
    this.controller = controller;
    this.onlooker = onlooker;
    plant = new Plant(scenario, forcing);
    faults = new Faults(scenario, plant);
    taker = new ReadingTaker(scenario);
    metrics = new Metrics(scenario.run(), scenario.heater(), plant, colonyFromS(scenario));
    recorder = new Recorder(scenario, plant, taker, pace.keep());
    events = new ScenarioEvents(scenario, plant, controller, recorder, faults, this::reset);
    life = scenario.colony().life().moves() ? new ColonyLife(scenario, plant) : null;
  }

  /** When the first colony moves in; 0 where one is there from the start, or never comes. */
  private static double colonyFromS(Scenario s) {
    if (s.colony().bees() > 0) {
      return 0;
    }
    return s.events().stream()
        .filter(e -> e instanceof EventSpec.InstallColony)
        .mapToDouble(EventSpec::atS)
        .findFirst()
        .orElse(0);
  }

  /** Runs to the end of the window. */
  public RunResult run() {
    long endMs = 1000L * 86_400 * scenario.window().days();
    int gridMs = pace.stepMillis();
    int tickMs = pace.tickMillis();
    events.at(0);
    switchOnBefore(tickMs);
    stepController(0);
    nextTickMs = tickMs;
    recorder.row(0, commands, held);
    while (nowMs < endMs) {
      held.copy(wanted);
      long stepEndMs = Math.min(Math.min((nowMs / gridMs + 1) * gridMs, endMs), events.nextMs());
      double longestS = plant.longestStepS(held);
      if (longestS * 1000 < gridMs) {
        stepEndMs = Math.min(stepEndMs, nowMs + (long) (longestS * 1000));
      }
      plant.solve(nowMs * 1e-3, (stepEndMs - nowMs) * 1e-3, held);
      long reachedMs = stepEndMs;
      boolean dead = plant.supply().dead(); // a solved step is fed or not as a whole
      while (nextTickMs <= stepEndMs) {
        long tickAtMs = nextTickMs;
        nextTickMs += tickMs;
        if (dead) {
          continue;
        }
        stepController((double) (tickAtMs - nowMs) / (stepEndMs - nowMs), tickAtMs);
        if (differs()) {
          reachedMs = tickAtMs;
          break;
        }
      }
      if (reachedMs < stepEndMs) {
        plant.solve(nowMs * 1e-3, (reachedMs - nowMs) * 1e-3, held);
      }
      finishStep(reachedMs);
    }
    return recorder.result(metrics, controllerEnd(), life == null ? List.of() : life.days());
  }

  /**
   * Lets the board settle: its probes are trusted and its level of shedding is known when the
   * window begins.
   */
  private void switchOnBefore(int tickMs) {
    long ticks = SWITCHED_ON_BEFORE_MS / tickMs;
    tick = -ticks * ticksAtOnce;
    for (long t = -ticks * tickMs; t < 0; t += tickMs) {
      controller.step((int) t, taker.take(plant, 0, tick, false), commands);
      tick += ticksAtOnce;
    }
  }

  private double controllerEnd() {
    return nowMs * 1e-3;
  }

  private void finishStep(long reachedMs) {
    double fromS = nowMs * 1e-3;
    double lengthS = (reachedMs - nowMs) * 1e-3;
    boolean shed = shedLevel >= ShedLevel.HEAT_SHED || plant.supply().dead();
    metrics.book(plant, fromS, lengthS, held.heater, held.fan, shed);
    recorder.book(fromS, lengthS, commands, held, metrics);
    if (life != null) {
      life.book(lengthS);
    }
    onlooker.step(fromS + lengthS, lengthS, plant, commands);
    boolean fed = !plant.hive().starved();
    plant.accept();
    nowMs = reachedMs;
    if (fed && plant.hive().starved()) {
      recorder.event(nowMs * 1e-3, "colony", "alive", "dead", "starved");
    }
    recorder.cutOuts(nowMs * 1e-3);
    metrics.bookState(plant, nowMs * 1e-3);
    live();
    boolean dead = plant.supply().dead();
    if (dead != deadBefore) {
      if (dead) {
        wanted.heater = false;
        wanted.fan = false;
        wanted.inverter = false;
        recorder.busDied(nowMs * 1e-3, commands);
        clearCommands();
        faults.drive(commands, wanted);
      } else {
        faults.poweredUp();
        controller.powerUp();
        recorder.event(
            nowMs * 1e-3, "bus", "dead", "alive", "volts came back; the controller powered up");
      }
      deadBefore = dead;
    }
    events.at(nowMs);
    recorder.rowIfDue(nowMs, commands, held);
  }

  /** The board resets: its relays fall open, and it begins with the state that it had saved. */
  private void reset() {
    controller.powerUp();
    clearCommands();
    wanted.heater = false;
    wanted.fan = false;
    wanted.inverter = false;
    faults.drive(commands, wanted);
  }

  /** Dies what must; numbers that move are stepped once an hour. */
  private void live() {
    if (plant.hive().alive()) {
      String why = metrics.deathBy();
      if (!why.isEmpty()) {
        plant.hive().die();
        recorder.event(nowMs * 1e-3, "colony", "alive", "dead", why);
        if (life != null) {
          life.died();
        }
      }
    }
    if (!queenTold && metrics.adults.queenAtRisk()) {
      queenTold = true;
      recorder.event(nowMs * 1e-3, "queen", "safe", "at risk", "as hot as two hours at 40 °C are");
    }
    if (life != null && !life.hourIfDue()) {
      plant.hive().die();
      recorder.event(nowMs * 1e-3, "colony", "alive", "dead", "too few bees are left");
    }
  }

  private void clearCommands() {
    commands.heater = false;
    commands.fan = false;
    commands.inverter = false;
  }

  private void stepController(long atMs) {
    stepController(0, atMs);
  }

  private void stepController(double theta, long atMs) {
    Readings readings = taker.take(plant, theta, tick, held.heater);
    faults.spoil(readings, tick, atMs * 1e-3);
    tick += ticksAtOnce;
    if (!faults.halted()) {
      controller.step((int) atMs, readings, commands);
      wanted.heater = commands.heater && commands.isolation;
      wanted.fan = commands.fan;
      wanted.inverter = commands.inverter;
    }
    faults.drive(commands, wanted);
    shedLevel = commands.shedLevel;
    recorder.observe(atMs * 1e-3, commands);
  }

  private boolean differs() {
    return wanted.heater != held.heater
        || wanted.fan != held.fan
        || wanted.inverter != held.inverter;
  }

  /** The plant, for tests that look at the truth beside the readings. */
  Plant plant() {
    return plant;
  }
}
