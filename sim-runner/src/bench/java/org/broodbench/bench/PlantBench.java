package org.broodbench.bench;

import java.util.concurrent.TimeUnit;
import org.broodbench.hive.HiveEquations;
import org.broodbench.hive.HiveModel;
import org.broodbench.hive.NetworkStep;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.RunResult;
import org.broodbench.loop.Simulation;
import org.broodbench.plant.Actuators;
import org.broodbench.plant.Plant;
import org.broodbench.rig.RandomRigs;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.broodbench.sky.Forcing;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Time of one step of 10 s of the parts and of the whole plant, and of a simulated week. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class PlantBench {
  private static final int STEPS = 8640;

  private final Scenario rig = TestRigs.small(1_706_745_600L, 7);
  private final Forcing forcing = RandomRigs.forcing(rig, 3, 4);
  private final NetworkStep network = new NetworkStep();
  private final HiveEquations weather = new HiveEquations(rig, forcing);
  private final Plant plant = new Plant(rig, forcing);
  private final Actuators held = new Actuators();

  /** The heat network alone. */
  @Benchmark
  @OperationsPerInvocation(STEPS)
  public double networkStep() {
    network.run(STEPS);
    return network.state()[0];
  }

  /** The hive with air, gases and colony. */
  @Benchmark
  @OperationsPerInvocation(STEPS)
  public double hiveStep() {
    HiveModel hive = weather.model();
    for (int i = 0; i < STEPS; i++) {
      hive.solve(10, i / 120 % 2 * 40, false, 0.6, weather.weather(10.0 * i + 5));
      hive.accept();
    }
    return hive.view().nestC(1);
  }

  /** Weather, supply chain, hive and probes. */
  @Benchmark
  @OperationsPerInvocation(STEPS)
  public double plantStep() {
    for (int i = 0; i < STEPS; i++) {
      held.heater = i / 120 % 2 == 0;
      plant.solve(10.0 * i, 10, held);
      plant.accept();
    }
    return plant.probeC(0, 0);
  }

  /** A week of the whole run under the reference core at a tick of a second. */
  @Benchmark
  @OutputTimeUnit(TimeUnit.MILLISECONDS)
  public RunResult simulatedWeek() {
    return new Simulation(
            rig, forcing, new ReferenceController(rig.controller().settings()), false)
        .run();
  }
}
