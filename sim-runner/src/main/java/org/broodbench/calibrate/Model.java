package org.broodbench.calibrate;

import java.util.Arrays;
import java.util.List;
import org.broodbench.loop.Replay;
import org.broodbench.plant.Plant;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;

/** The simulation as a function of the knobs: what the log should read. */
final class Model {
  static final int DAY_STEPS = 86_400 / Observations.STEP_S;

  /** Times that the first day is driven through before anything is compared; own choice. */
  private static final int WARM_DAYS = 1;

  private final Scenario scenario;
  private final Forcing forcing;
  private final Observations seen;
  private final Replay.Drive drive;

  /**
   * A model.
   *
   * @param scenario its window and events begin with the observations
   * @param forcing weather over the observations
   */
  Model(Scenario scenario, Forcing forcing, Observations seen, Replay.Drive drive) {
    this.scenario = scenario;
    this.forcing = forcing;
    this.seen = seen;
    this.drive = drive;
  }

  /** The scenario whose knobs are turned. */
  Scenario scenario() {
    return scenario;
  }

  /** What it is compared with. */
  Observations seen() {
    return seen;
  }

  /** The weather with the outdoor thermometer put right. */
  Forcing forcing(double[] z) {
    double offsetK = Knob.OUTDOOR_OFFSET.value(scenario, z[Knob.OUTDOOR_OFFSET.ordinal()]);
    if (offsetK == 0) {
      return forcing;
    }
    double[] airC = forcing.edgeAirC();
    for (int k = 0; k < airC.length; k++) {
      airC[k] -= offsetK;
    }
    return forcing.withAir(airC);
  }

  /** Simulated means by compared column and bin, without offsets of readings. */
  double[][] simulate(double[] z) {
    Scenario rig = FittedRig.at(scenario, z);
    List<LogColumn> channels = seen.channels();
    int[] probe = new int[channels.size()];
    for (int c = 0; c < probe.length; c++) {
      probe[c] = probe(rig, channels.get(c));
    }
    double[][] sum = new double[channels.size()][seen.bins()];
    int[][] n = new int[channels.size()][seen.bins()];
    int warm = Math.min(DAY_STEPS, seen.steps());
    new Replay(rig, forcing(z), drive, Observations.STEP_S)
        .run(
            warm == DAY_STEPS ? WARM_DAYS * warm : 0,
            warm,
            seen.steps(),
            (step, plant, on) -> {
              int bin = step / seen.binSteps();
              if (bin >= seen.bins()) {
                return;
              }
              for (int c = 0; c < probe.length; c++) {
                int count = seen.counts(c)[step];
                if (count > 0) {
                  sum[c][bin] += count * read(plant, channels.get(c), probe[c]);
                  n[c][bin] += count;
                }
              }
            });
    for (int c = 0; c < sum.length; c++) {
      for (int b = 0; b < sum[c].length; b++) {
        sum[c][b] = n[c][b] == 0 ? Double.NaN : sum[c][b] / n[c][b];
      }
    }
    return sum;
  }

  static double read(Plant plant, LogColumn c, int probe) {
    return switch (c) {
      case BATTERY_V -> plant.supply().volts();
      case BATTERY_A -> -plant.supply().batteryA();
      case HUMIDITY -> plant.hive().view().broodRhPercent(0.5);
      default -> plant.probeC(probe, 0.5);
    };
  }

  /** Number of the probe that a column reads; −1 for other readings, −2 where it is not fitted. */
  static int probe(Scenario s, LogColumn c) {
    if (c.sort() != LogColumn.Sort.TEMPERATURE) {
      return -1;
    }
    for (int p = 0; p < s.probes().size(); p++) {
      if (s.probes().get(p).role() == ProbeSpec.Role.valueOf(c.name())) {
        return p;
      }
    }
    return -2;
  }

  /** The knobs that a log of these columns can be asked for. */
  boolean[] free() {
    boolean[] free = new boolean[Knob.COUNT];
    Arrays.fill(free, true);
    boolean volts =
        seen.channels().contains(LogColumn.BATTERY_V)
            || seen.channels().contains(LogColumn.BATTERY_A);
    boolean temperatures = seen.channels().stream().anyMatch(LogColumn::inside);
    for (Knob k : Knob.values()) {
      boolean there =
          switch (k) {
            case HIVE_LOSS, AIR_LEAKAGE, SOLAR_GAIN, OUTDOOR_OFFSET -> temperatures;
            case STORES -> temperatures && k.middle(scenario) > 0;
            case HEATER_POWER, PAN_HEAT -> k.middle(scenario) > 0;
            case COLONY_BEES, CLUSTER_LOSS -> temperatures && bees();
            case PANEL_FACTOR -> volts && k.middle(scenario) > 0;
            case BATTERY_CAPACITY, BATTERY_RESISTANCE, START_CHARGE -> volts;
            default -> seen.channels().contains(k.reading());
          };
      free[k.ordinal()] = there;
    }
    return free;
  }

  private boolean bees() {
    return scenario.colony().bees() > 0
        || scenario.events().stream()
            .anyMatch(e -> e instanceof org.broodbench.rig.EventSpec.InstallColony);
  }
}
