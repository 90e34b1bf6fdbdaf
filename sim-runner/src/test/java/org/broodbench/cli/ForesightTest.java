package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Readings;
import org.broodbench.input.ScenarioReader;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.loop.Pace;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.Simulation;
import org.broodbench.loop.SteppedController;
import org.broodbench.plant.Plant;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;
import org.junit.jupiter.api.Test;

class ForesightTest {
  private static final long SEED = 11;
  private static final int RANDOM_CONTROLLERS = 12;

  /** Heats by chance, in blocks of hours, now and then always or never. */
  private record AtRandom(SplittableRandom random, double share, int blockMs)
      implements SteppedController {
    @Override
    public void powerUp() {
      // chance has no memory
    }

    @Override
    public void step(int nowMillis, Readings readings, Commands commands) {
      SplittableRandom block = new SplittableRandom(blockMs + 31L * (nowMillis / blockMs));
      commands.isolation = true;
      commands.fan = block.nextInt(10) == 0;
      commands.heater = random.nextDouble() < share * 2 * block.nextDouble();
    }

    @Override
    public boolean keyInSetPoint(double setPointC) {
      return false;
    }
  }

  private static double hoursBelow(Scenario s, Forcing forcing, SteppedController brain) {
    return new Simulation(s, forcing, brain, Pace.search(s)).run().brood().hoursBelow();
  }

  /** Rigs too weak for their weather, so that there is something to bound. */
  private static Scenario weak(int bees, String watts) throws IOException {
    byte[] demo = Files.readAllBytes(Path.of("..", "scenarios", "late-split.toml"));
    List<String> set =
        List.of(
            "colony.bees=" + bees,
            "colony.heat_loss_factor=2.85",
            "run.days=5",
            "run.from=2027-03-20",
            "heater.power=" + watts);
    return ScenarioReader.read("late-split.toml", demo, set);
  }

  @Test
  void nobodyIsBetterThanTheBound() throws IOException {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int bees : new int[] {0, 2500}) {
      Scenario s = weak(bees, bees == 0 ? "20 W" : "3 W");
      Forcing forcing = ScenarioWeather.of(s, null, List.of()).forcing(Plant.planes(s));
      double bound = Foresight.leastHoursBelow(s, forcing);
      // so that this is no bound of nothing
      assertTrue(bound > 10, "hours that nobody can spare: " + bound + " with bees: " + bees);
      List<SteppedController> others = new ArrayList<>();
      others.add(new ReferenceController(s.controller().settings()));
      for (int i = 0; i < RANDOM_CONTROLLERS; i++) {
        int blockMs = 3_600_000 * (1 + random.nextInt(24));
        others.add(new AtRandom(random.split(), i / (RANDOM_CONTROLLERS - 1.0), blockMs));
      }
      // with mains as well, so that no battery holds them back
      Scenario fed = s.withShore(Foresight.ENDLESS);
      double best = Double.POSITIVE_INFINITY;
      for (SteppedController other : others) {
        best = Math.min(best, hoursBelow(fed, forcing, other));
      }
      for (Foresight f : Foresight.tries(s)) {
        best = Math.min(best, f.run(fed, forcing).brood().hoursBelow());
      }
      assertTrue(best >= bound, best + " h below the band, bound " + bound + ", bees: " + bees);
    }
  }

  @Test
  void seeingTheCombItHoldsItWhereTheReferenceCoreDoesNot() throws IOException {
    byte[] demo = Files.readAllBytes(Path.of("..", "scenarios", "late-split.toml"));
    Scenario s = ScenarioReader.read("late-split.toml", demo, List.of());
    Forcing forcing = ScenarioWeather.of(s, null, List.of()).forcing(Plant.planes(s));
    double core = hoursBelow(s, forcing, new ReferenceController(s.controller().settings()));
    double own = new Foresight(32.3, 32.3, 35.8, 1800).run(s, forcing).brood().hoursBelow();
    assertTrue(core > 10 && own < core / 3, "core " + core + " h, with foresight " + own + " h");
    assertEquals(30, Foresight.tries(s).size());
  }
}
