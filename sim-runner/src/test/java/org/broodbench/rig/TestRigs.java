package org.broodbench.rig;

import java.util.List;
import org.broodbench.colony.ColonySpec;
import org.broodbench.controller.ProbePlace;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.hive.BoxSpec;
import org.broodbench.hive.FanSpec;
import org.broodbench.hive.HeaterSpec;
import org.broodbench.hive.HiveSpec;
import org.broodbench.hive.Layer;
import org.broodbench.matter.Material;
import org.broodbench.power.BatterySpec;
import org.broodbench.power.Chemistry;
import org.broodbench.power.InverterSpec;
import org.broodbench.power.PvGroup;
import org.broodbench.power.PvSpec;
import org.broodbench.power.ShoreSpec;
import org.broodbench.power.WiringSpec;
import org.broodbench.sky.Place;

/** Rigs for tests, built without a file. */
public final class TestRigs {
  private TestRigs() {}

  /** One insulated box with a small colony, a 40 W heater, 100 Ah of AGM and 200 W of panel. */
  public static Scenario small(long fromEpochS, int days) {
    Settings settings =
        Settings.defaults(ProbePlace.BROOD_COMB, org.broodbench.controller.Chemistry.AGM)
            .with(Setting.FITTED_OUTDOOR, 1)
            .with(Setting.HEATER_RATED_MILLI_A, 3333);
    return new Scenario(
        "small test rig",
        "small.toml",
        "",
        new Place(47, 10, 900),
        new WeatherChoice("", 1, 3, 0.2),
        new Window(fromEpochS, days),
        insulated(0.05, 1),
        new ColonySpec(2500, 0.115, 2000, 2, 2.0, 40, 0.5, true),
        new HeaterSpec(40, 12, false, false, 400, 4000, 8, 1.5, 0.3, 0.05),
        new FanSpec(1.5, 0.004, 25),
        List.of(
            new ProbeSpec(ProbeSpec.Role.BROOD_A, ProbeSpec.Place.BROOD_COMB, 60, 0.03, 0.0625, 0),
            new ProbeSpec(ProbeSpec.Role.PAN, ProbeSpec.Place.PAN, 20, 0.03, 0.0625, 0),
            new ProbeSpec(ProbeSpec.Role.OUTDOOR, ProbeSpec.Place.OUTDOOR, 120, 0.03, 0.0625, 0)),
        new SensorSpec(false, 2, 0.005, 0, false, false, 0, false, false),
        new ControllerSpec(settings, 1000, 0.6, 0),
        new PvSpec(List.of(new PvGroup(200, 60, 180)), -0.004, 45, 0.95, true, 0.94, 18, 0.2),
        new BatterySpec(
            Chemistry.AGM,
            100,
            12,
            0.006,
            0.9,
            25,
            14.4,
            0.97,
            0.03,
            4 * 3600,
            BatterySpec.Place.OUTDOORS),
        new InverterSpec(0, 0, 0, 0),
        new WiringSpec(3, 2.5, 0.015),
        new ShoreSpec(false, 0, 0.85),
        List.of(),
        List.of(new Requirement(Requirement.Kind.BROOD_IN_BAND, 95)),
        List.of(),
        new RunSpec(1, 10, 60, 32, 36),
        List.of());
  }

  /** The same with other probes. */
  public static Scenario withProbes(Scenario s, List<ProbeSpec> probes) {
    return new Scenario(
        s.title(),
        s.fileName(),
        s.sha256(),
        s.place(),
        s.weather(),
        s.window(),
        s.hive(),
        s.colony(),
        s.heater(),
        s.fan(),
        probes,
        s.sensors(),
        s.controller(),
        s.pv(),
        s.battery(),
        s.inverter(),
        s.wiring(),
        s.shore(),
        s.loads(),
        s.requirements(),
        s.events(),
        s.run(),
        s.assumed());
  }

  /** A stack of deep boxes of 19 mm softwood with some insulation around. */
  public static HiveSpec insulated(double insulationM, int boxes) {
    List<Layer> layers =
        insulationM > 0
            ? List.of(new Layer(Material.SOFTWOOD, 0.019), new Layer(Material.EPS, insulationM))
            : List.of(new Layer(Material.SOFTWOOD, 0.019));
    return new HiveSpec(
        0.467,
        0.375,
        java.util.Collections.nCopies(boxes, new BoxSpec(0.244, 10, 4)),
        0,
        layers,
        layers,
        layers,
        insulationM > 0 ? 1.3 : 1,
        0.6,
        0.075,
        0.01,
        2e-4,
        0.5,
        0.6,
        0.3);
  }
}
