package org.broodbench.firmware;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Readings;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.loop.Judge;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.RunResult;
import org.broodbench.loop.Simulation;
import org.broodbench.loop.SteppedController;
import org.broodbench.rig.Requirement;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;

/** The firmware drives the simulated hive instead of the reference; both runs are judged. */
public final class ClosedLoop {
  /**
   * One requirement in both runs.
   *
   * @param requirement what is asked
   * @param reference measured with the reference; not a number where nothing of the kind happened
   * @param referenceMet whether that meets it
   * @param firmware measured with the firmware
   * @param firmwareMet whether that meets it
   */
  public record Row(
      Requirement requirement,
      double reference,
      boolean referenceMet,
      double firmware,
      boolean firmwareMet) {}

  /**
   * Both runs.
   *
   * @param entries steps and restarts that the firmware answered
   * @param rows requirement by requirement
   * @param reference the run with the reference
   * @param firmware the run with the firmware
   * @param fault what ended the firmware's part, or null
   * @param heaterFailedOff after a fault
   * @param difference the first difference on equal readings, or null
   * @param vector what led to the difference, or null
   */
  public record Result(
      long entries,
      List<Row> rows,
      RunResult reference,
      RunResult firmware,
      FirmwareFault fault,
      Boolean heaterFailedOff,
      Difference difference,
      Script.Fixed vector) {}

  private ClosedLoop() {}

  /**
   * Runs a scenario twice.
   *
   * @param settings of both controllers
   * @throws FirmwareFault where the firmware refuses to begin
   */
  public static Result of(Session session, Scenario scenario, Forcing forcing, Settings settings)
      throws FirmwareFault {
    RunResult reference =
        new Simulation(scenario, forcing, new ReferenceController(settings), false).run();
    DrivenByFirmware driven = new DrivenByFirmware(session, settings);
    RunResult firmware = new Simulation(scenario, forcing, driven, false).run();
    List<Row> rows = new ArrayList<>();
    for (Requirement r : scenario.requirements()) {
      Judge.Measured one = Judge.measure(r.kind(), reference, scenario);
      Judge.Measured two = Judge.measure(r.kind(), firmware, scenario);
      rows.add(new Row(r, one.value(), one.meets(r), two.value(), two.meets(r)));
    }
    Difference difference = driven.difference();
    Script.Fixed vector =
        difference == null ? null : record(scenario, forcing, settings, difference.entry() + 1);
    return new Result(
        driven.entries(),
        rows,
        reference,
        firmware,
        driven.fault(),
        driven.failedOff(),
        difference,
        vector);
  }

  /** Ends a run whose first entries are all that is wanted. */
  private static final class Enough extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Enough() {
      super("enough was recorded", null, false, false);
    }
  }

  /** The reference, with every entry noted. */
  private static final class Noted implements SteppedController {
    private final ReferenceController reference;
    private final long most;
    private final List<Tick> ticks = new ArrayList<>();

    Noted(Settings settings, long most) {
      this.reference = new ReferenceController(settings);
      this.most = most;
    }

    private void note(Tick tick) {
      ticks.add(tick);
      if (ticks.size() >= most) {
        throw new Enough();
      }
    }

    @Override
    public void powerUp() {
      note(Tick.restart(true));
      reference.powerUp();
    }

    @Override
    public void step(int nowMillis, Readings readings, Commands commands) {
      note(Tick.step(nowMillis, readings));
      reference.step(nowMillis, readings, commands);
    }

    @Override
    public boolean keyInSetPoint(double setPointC) {
      int centiC = (int) StrictMath.round(setPointC * 100);
      note(Tick.setting(Setting.HEAT_SET_POINT_CENTI_C, centiC));
      return reference.keyInSetPoint(setPointC);
    }
  }

  /** The first so many entries of a run with the reference, as a vector. */
  public static Script.Fixed record(
      Scenario scenario, Forcing forcing, Settings settings, long entries) {
    Noted noted = new Noted(settings, entries);
    try {
      new Simulation(scenario, forcing, noted, false).run();
    } catch (Enough enough) {
      return new Script.Fixed(scenario.title(), settings, noted.ticks);
    }
    return new Script.Fixed(scenario.title(), settings, noted.ticks);
  }
}
