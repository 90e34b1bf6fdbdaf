package org.broodbench.controller;

import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** One step of the controller on calm readings; rig 0 has the fewest parts, rig 2 the most. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class StepBench {
  /** One of the rigs of the tests. */
  @Param({"0", "2"})
  public int rig;

  private Controller controller;
  private final Readings in = new Readings();
  private final Commands out = new Commands();
  private final int[] dither = new int[1024];
  private int now;

  /** Builds the controller and a little noise. */
  @Setup
  public void setUp() {
    controller = new Controller(Rigs.of(rig));
    Bench.calm(in);
    Random random = new Random(1);
    for (int i = 0; i < dither.length; i++) {
      dither[i] = random.nextInt(12);
    }
  }

  /** One tick of ten seconds. */
  @Benchmark
  public boolean step() {
    now += 10_000;
    int noise = dither[now / 10_000 & 1023];
    in.broodA.put(3200 + noise);
    in.broodB.put(3205 + noise);
    in.pan.put((out.heater ? 3700 : 3300) + noise);
    controller.step(now, in, out);
    return out.heater;
  }
}
