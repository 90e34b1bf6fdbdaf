package org.broodbench.loop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.broodbench.colony.ColonySpec;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Readings;
import org.broodbench.controller.Reason;
import org.broodbench.plant.Plant;
import org.broodbench.rig.Requirement;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.ForcingSettings;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.WeatherGenerator;
import org.junit.jupiter.api.Test;

class HeldHeatTest {
  private static final long FROM_EPOCH_S = 20_564L * 86_400;
  private static final int HOUR_MILLIS = 3_600_000;
  private static final int LEFT_MILLIS = 130_000;

  /** Ten hours held by minimum off, an hour of heat, and from then on held by a shed. */
  private static final class Holding implements SteppedController {
    @Override
    public void step(int nowMillis, Readings readings, Commands c) {
      boolean early = nowMillis < 10 * HOUR_MILLIS;
      c.isolation = true;
      c.heater = !early && nowMillis < 11 * HOUR_MILLIS;
      c.minOffRemainingMillis = early ? LEFT_MILLIS : 0;
      c.heaterReason = early ? Reason.MIN_OFF : c.heater ? Reason.NONE : Reason.SHED;
    }

    @Override
    public void powerUp() {}

    @Override
    public boolean keyInSetPoint(double setPointC) {
      return false;
    }
  }

  private static RunResult run(Scenario s) {
    Forcing forcing =
        Forcing.of(
            WeatherGenerator.generate(
                GeneratorSettings.uplandSpring(3, FROM_EPOCH_S / 86_400, s.window().days())),
            s.place(),
            s.window().fromEpochS(),
            s.window().toEpochS(),
            Plant.planes(s),
            ForcingSettings.DEFAULT);
    return new Simulation(s, forcing, new Holding(), false).run();
  }

  @Test
  void whatHoldsHeatOffIsToldWithTheTimeThatTheControllerShows() {
    Scenario s =
        TestRigs.small(FROM_EPOCH_S, 1)
            .withColony(new ColonySpec(0, 0.115, 0, 2, 2.0, 40, 0.5, true));
    RunResult r = run(s);

    List<EventRow> rows = r.events().stream().filter(e -> e.what().equals(HeldHeat.WHAT)).toList();
    String words = "the heater was held off by minimum off, 2 min 10 s left";
    assertEquals(
        List.of(
            new EventRow(0, HeldHeat.WHAT, "none", "min_off", words),
            new EventRow(10 * 3600, HeldHeat.WHAT, "min_off", "none", "the heater came on"),
            new EventRow(
                11 * 3600, HeldHeat.WHAT, "none", "shed", "heat was shed to spare the battery")),
        rows);

    List<HeldHeat> held = HeldHeat.of(r);
    assertEquals(
        List.of("shedding once, 13 h", "minimum off once, 10 h"),
        held.stream().map(HeldHeat::words).toList());

    Requirement inBand = new Requirement(Requirement.Kind.BROOD_IN_BAND, 95);
    String why = Explain.why(inBand, r, s);
    assertTrue(why.contains("because " + words), why);
  }
}
