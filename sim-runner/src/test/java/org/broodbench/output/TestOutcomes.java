package org.broodbench.output;

import java.time.LocalDate;
import java.util.List;
import org.broodbench.loop.Explain;
import org.broodbench.loop.Judge;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.RunResult;
import org.broodbench.loop.Simulation;
import org.broodbench.plant.Plant;
import org.broodbench.power.BatterySpec;
import org.broodbench.power.PvGroup;
import org.broodbench.power.PvSpec;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.Requirement;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.ForcingSettings;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.WeatherGenerator;
import org.broodbench.sky.WeatherSeries;
import org.broodbench.study.Change;
import org.broodbench.study.Evaluation;
import org.broodbench.study.JudgedRequirement;
import org.broodbench.study.Outcome;
import org.broodbench.study.Outlook;
import org.broodbench.study.Outlooks;
import org.broodbench.study.Remedy;
import org.broodbench.study.RemedySearch;

/** Outcomes to render in tests: really simulated, in generated weather. */
final class TestOutcomes {
  static final long FIRST_DAY = LocalDate.of(2026, 4, 22).toEpochDay();

  /** Words that would break out of a careless page. */
  static final String HOSTILE = "<img src=x onerror=alert(1)></script><script>\"'& late split";

  private TestOutcomes() {}

  /** The poor rig over six days with a cold spell, simulated once. */
  static Outcome sixDays() {
    return SixDays.OUTCOME;
  }

  private static final class SixDays {
    static final Outcome OUTCOME = poor(6, HOSTILE);
  }

  /** The same six days with remedies to show, one of them in hostile words. */
  static Outcome withRemedies() {
    Outcome o = sixDays();
    List<Remedy.Effect> effects =
        o.requirements().stream()
            .map(
                q ->
                    new Remedy.Effect(
                        q.requirement(), q.value(), q.requirement().limit(), q.met(), true))
            .toList();
    List<Remedy> helpful = new java.util.ArrayList<>();
    for (String what :
        List.of(
            "Set the heat to 33 °C instead of 32 °C",
            "Insulate with 50 mm all round instead of none",
            "Fit a heater of 30 W " + HOSTILE,
            "Widen the entrance to 80 mm instead of 60 mm")) {
      helpful.add(
          new Remedy(
              new Change(what, List.of("heater.power=30")), effects, 0.5, Remedy.Reach.NONE));
    }
    return o.withRemedies(new RemedySearch(7, 1.5, "own", 10_000, helpful)).withOutlook(outlook());
  }

  /** A week's outlook of the poor rig, really simulated. */
  private static Outlook outlook() {
    Scenario season = Outlooks.season(poorRig(6, HOSTILE), 1);
    return Outlooks.of(season, forcing(season), 2, (done, most) -> {});
  }

  /** A battery far too small in an uninsulated hive, nothing required: the bus dies. */
  static Outcome ruin() {
    return evaluate(rig(3, "ruin", 5, 1.5, List.of()));
  }

  /**
   * Eight weeks at one-minute rows. One run stands for all five: the page's size hangs on the trace
   * of the main run alone.
   */
  static Outcome eightWeeks() {
    return EightWeeks.OUTCOME;
  }

  private static final class EightWeeks {
    static final Outcome OUTCOME = simulateEightWeeks();
  }

  private static Outcome simulateEightWeeks() {
    Scenario s = poorRig(56, "eight weeks");
    RunResult r =
        new Simulation(s, forcing(s), new ReferenceController(s.controller().settings()), true)
            .run();
    List<JudgedRequirement> judged =
        s.requirements().stream()
            .map(
                q -> {
                  Judge.Measured m = Judge.measure(q.kind(), r, s);
                  return new JudgedRequirement(
                      q, m.meets(q), false, m.value(), m.atS(), Explain.why(q, r, s));
                })
            .toList();
    return new Outcome(
        s,
        weather(s),
        r,
        r,
        r,
        r,
        r,
        judged,
        s.assumed(),
        List.of("one run stands for five"),
        RemedySearch.NONE);
  }

  /** A rig with too little panel and battery for a cold spell; misses several requirements. */
  static Outcome poor(int days, String title) {
    return evaluate(poorRig(days, title));
  }

  private static Scenario poorRig(int days, String title) {
    return rig(
        days,
        title,
        60,
        40,
        List.of(
            new Requirement(Requirement.Kind.BROOD_IN_BAND, 95),
            new Requirement(Requirement.Kind.LOWEST_SOC, 40),
            new Requirement(Requirement.Kind.HOURS_SHED, 2),
            new Requirement(Requirement.Kind.SHORTEST_OFF, 120),
            new Requirement(Requirement.Kind.HIGHEST_PAN, 45),
            new Requirement(Requirement.Kind.HIGHEST_CO2, 2)));
  }

  private static Scenario rig(
      int days, String title, double panelW, double batteryAh, List<Requirement> required) {
    Scenario s = TestRigs.small(FIRST_DAY * 86_400, days);
    BatterySpec b = s.battery();
    BatterySpec battery =
        new BatterySpec(
            b.chemistry(),
            batteryAh,
            b.nominalV(),
            0.5 / batteryAh,
            b.initialSoc(),
            batteryAh / 4,
            b.absorptionV(),
            b.coulombicEfficiency(),
            b.selfDischargePerMonth(),
            b.timeConstantS(),
            b.place());
    PvSpec p = s.pv();
    PvSpec panel = p.withGroups(List.of(new PvGroup(panelW, 60, 180)));
    return new Scenario(
        title,
        s.fileName(),
        s.sha256(),
        s.place(),
        s.weather(),
        s.window(),
        TestRigs.insulated(0, 1),
        s.colony(),
        s.heater(),
        s.fan(),
        s.probes(),
        s.sensors(),
        s.controller(),
        panel,
        battery,
        s.inverter(),
        s.wiring(),
        s.shore(),
        s.loads(),
        required,
        List.of(new EventSpec.OpenLid(36 * 3600, 600), new EventSpec.SetPoint(60 * 3600, 33)),
        s.run(),
        List.of("controller.heat.differential = 0.5 K", "hive.insulation = 0 mm"));
  }

  private static Outcome evaluate(Scenario s) {
    return Evaluation.of(s, forcing(s), weather(s), s.assumed(), 2);
  }

  private static Forcing forcing(Scenario s) {
    return Forcing.of(
        series(s),
        s.place(),
        s.window().fromEpochS(),
        s.window().toEpochS(),
        Plant.planes(s),
        ForcingSettings.DEFAULT);
  }

  private static Outcome.WeatherNote weather(Scenario s) {
    WeatherSeries w = series(s);
    return new Outcome.WeatherNote(w.source(), w.formatId(), 3, List.of("wind taken at 10 m"));
  }

  private static WeatherSeries series(Scenario s) {
    return WeatherGenerator.generate(
        GeneratorSettings.uplandSpring(3, FIRST_DAY - 3, s.window().days() + 4));
  }
}
