package org.broodbench.output;

import java.time.LocalDate;
import java.util.List;
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
import org.broodbench.study.Evaluation;
import org.broodbench.study.Outcome;

/** Outcomes to render in tests: really simulated, in generated weather. */
final class TestOutcomes {
  static final long FIRST_DAY = LocalDate.of(2026, 4, 22).toEpochDay();

  private TestOutcomes() {}

  /** A rig with too little panel and battery for a cold spell; misses several requirements. */
  static Outcome poor(int days, String title) {
    Scenario s = TestRigs.small(FIRST_DAY * 86_400, days);
    BatterySpec b = s.battery();
    BatterySpec smaller =
        new BatterySpec(
            b.chemistry(),
            40,
            b.nominalV(),
            0.012,
            b.initialSoc(),
            10,
            b.absorptionV(),
            b.coulombicEfficiency(),
            b.selfDischargePerMonth(),
            b.timeConstantS(),
            b.place());
    PvSpec p = s.pv();
    PvSpec less =
        new PvSpec(
            List.of(new PvGroup(60, 60, 180)),
            p.temperatureCoefficientPerK(),
            p.noctC(),
            p.soilingFactor(),
            p.tracking(),
            p.trackingEfficiency(),
            p.modulePeakV(),
            p.controllerPowerW());
    return evaluate(
        new Scenario(
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
            less,
            smaller,
            s.inverter(),
            s.wiring(),
            s.shore(),
            s.loads(),
            List.of(
                new Requirement(Requirement.Kind.BROOD_IN_BAND, 95),
                new Requirement(Requirement.Kind.LOWEST_SOC, 40),
                new Requirement(Requirement.Kind.HOURS_SHED, 2),
                new Requirement(Requirement.Kind.SHORTEST_OFF, 120),
                new Requirement(Requirement.Kind.HIGHEST_PAN, 45),
                new Requirement(Requirement.Kind.HIGHEST_CO2, 2)),
            List.of(new EventSpec.OpenLid(36 * 3600, 600), new EventSpec.SetPoint(60 * 3600, 33)),
            s.run(),
            List.of("controller.heat.differential = 0.5 K", "hive.insulation = 50 mm")));
  }

  static Outcome evaluate(Scenario s) {
    WeatherSeries w =
        WeatherGenerator.generate(
            GeneratorSettings.uplandSpring(3, FIRST_DAY - 1, s.window().days() + 2));
    Forcing forcing =
        Forcing.of(
            w,
            s.place(),
            s.window().fromEpochS(),
            s.window().toEpochS(),
            Plant.planes(s),
            ForcingSettings.DEFAULT);
    return Evaluation.of(
        s,
        forcing,
        new Outcome.WeatherNote(w.source(), w.formatId(), 0, List.of()),
        s.assumed(),
        2);
  }
}
