package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.colony.ColonySpec;
import org.broodbench.hive.BoxSpec;
import org.broodbench.hive.Guesses;
import org.broodbench.hive.HeaterSpec;
import org.broodbench.hive.HiveSpec;
import org.broodbench.hive.Pan;
import org.broodbench.hive.Skin;
import org.broodbench.power.BatterySpec;
import org.broodbench.power.PvGroup;
import org.broodbench.power.PvSpec;
import org.broodbench.power.WiringSpec;
import org.broodbench.rig.ControllerSpec;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Scenario;

/** A scenario with its knobs turned. */
final class FittedRig {
  private FittedRig() {}

  /**
   * The rig at z.
   *
   * @param z by {@link Knob}
   */
  static Scenario at(Scenario s, double[] z) {
    return with(s, s.controller(), z, Knob.START_CHARGE.value(s, z[Knob.START_CHARGE.ordinal()]));
  }

  /** The same, but for the charge at the start, which stays. */
  static Scenario turned(Scenario s, double[] z) {
    return with(s, s.controller(), z, 100 * s.battery().initialSoc());
  }

  /** The rig with another controller. */
  static Scenario withController(Scenario s, ControllerSpec controller) {
    return with(s, controller, new double[Knob.COUNT], 100 * s.battery().initialSoc());
  }

  /** The rig whose probes read as far off as the offsets among some knobs say. */
  static Scenario reading(Scenario s, List<Knob> among, double[] z) {
    List<ProbeSpec> probes = new ArrayList<>();
    for (ProbeSpec p : s.probes()) {
      Knob k = Knob.valueOf(p.role() + "_OFFSET");
      double offsetK = among.contains(k) ? k.value(s, z[k.ordinal()]) : p.offsetK();
      probes.add(
          new ProbeSpec(
              p.role(), p.place(), p.lagS(), p.noiseK(), p.resolutionK(), offsetK, p.nestShare()));
    }
    return s.withProbes(probes);
  }

  private static Scenario with(
      Scenario s, ControllerSpec controller, double[] z, double chargePercent) {
    return new Scenario(
        s.title(),
        s.fileName(),
        s.sha256(),
        s.place(),
        s.weather(),
        s.window(),
        hive(s.hive(), z),
        colony(s.colony(), factor(Knob.COLONY_BEES, z), factor(Knob.CLUSTER_LOSS, z)),
        heater(s.heater(), factor(Knob.HEATER_POWER, z), factor(Knob.PAN_HEAT, z)),
        s.fan(),
        s.probes(),
        s.sensors(),
        controller,
        pv(s.pv(), factor(Knob.PANEL_FACTOR, z)),
        battery(s, z, chargePercent),
        s.inverter(),
        wiring(s.wiring(), factor(Knob.BATTERY_RESISTANCE, z)),
        s.shore(),
        s.loads(),
        s.requirements(),
        s.events().stream().map(e -> event(e, z)).toList(),
        s.run(),
        s.assumed(),
        s.paper());
  }

  private static double factor(Knob knob, double[] z) {
    return knob.factor(z[knob.ordinal()]);
  }

  /** A colony that comes during the log is turned as one that is there. */
  private static EventSpec event(EventSpec e, double[] z) {
    return e instanceof EventSpec.InstallColony c
        ? new EventSpec.InstallColony(
            c.atS(), c.bees() * factor(Knob.COLONY_BEES, z), c.broodCells())
        : e;
  }

  private static HiveSpec hive(HiveSpec h, double[] z) {
    double stores = factor(Knob.STORES, z);
    double sun = factor(Knob.SOLAR_GAIN, z);
    List<BoxSpec> boxes =
        h.boxes().stream()
            .map(
                b ->
                    new BoxSpec(
                        b.heightM(), b.frames(), b.storesKg() * stores, b.dummyBoards(), b.below()))
            .toList();
    Guesses g = h.guesses();
    return new HiveSpec(
        h.lengthM(),
        h.widthM(),
        h.frontDeg(),
        boxes,
        h.broodBox(),
        h.wall(),
        h.floor(),
        h.lid(),
        h.edgeFactor(),
        skin(h.wallSkin(), sun),
        skin(h.lidSkin(), sun),
        h.entranceWidthM(),
        h.entranceHeightM(),
        h.topVentM2(),
        Math.min(1, h.openShare() * factor(Knob.AIR_LEAKAGE, z)),
        h.dischargeCoefficient(),
        h.windEffectiveness(),
        new Guesses(
            g.combFilmM2KW(),
            g.boxMixingM3S(),
            g.clusterExchangeM3S(),
            g.runOffM(),
            g.lossFactor() * factor(Knob.HIVE_LOSS, z)));
  }

  private static Skin skin(Skin s, double factor) {
    return new Skin(Math.min(1, s.solarAbsorptance() * factor), s.screened());
  }

  private static ColonySpec colony(ColonySpec c, double bees, double loss) {
    return new ColonySpec(
        c.bees() * bees,
        c.beeMassG(),
        c.broodCells(),
        c.broodFrames(),
        c.clusterLossFactor() * loss,
        c.shiverCeilingWKg(),
        c.broodHeatMW(),
        c.waterNear(),
        c.life());
  }

  private static HeaterSpec heater(HeaterSpec h, double power, double heat) {
    Pan p = h.pan();
    return new HeaterSpec(
        h.powerW() * power,
        h.ratedV(),
        h.onInverter(),
        h.regulated(),
        h.plateJK(),
        h.plateM2(),
        h.plateFloorWK(),
        new Pan(
            p.heatJK() * heat,
            p.fromPlateWK(),
            p.throughWK(),
            p.toCoverWK(),
            p.coverJK(),
            p.airWK(),
            p.nestWK(),
            p.bulk()),
        h.limits());
  }

  private static PvSpec pv(PvSpec pv, double factor) {
    return pv.withGroups(
        pv.groups().stream()
            .map(
                g ->
                    new PvGroup(
                        g.powerW() * factor,
                        g.tiltDeg(),
                        g.azimuthDeg(),
                        g.coefficientPerK(),
                        g.mounting(),
                        g.shades()))
            .toList());
  }

  private static BatterySpec battery(Scenario s, double[] z, double chargePercent) {
    BatterySpec b = s.battery();
    return new BatterySpec(
        b.chemistry(),
        b.capacityAh() * factor(Knob.BATTERY_CAPACITY, z),
        b.nominalV(),
        b.resistanceOhm() * factor(Knob.BATTERY_RESISTANCE, z),
        chargePercent / 100,
        b.chargeLimitA(),
        b.charge(),
        b.coulombicEfficiency(),
        b.selfDischargePerMonth(),
        b.timeConstantS(),
        b.place(),
        b.warmedShare(),
        b.frostCutOff(),
        b.board());
  }

  private static WiringSpec wiring(WiringSpec w, double factor) {
    return new WiringSpec(
        w.heaterLengthM(),
        w.heaterMm2(),
        w.heaterContactOhm(),
        w.batteryLeadOhm() * factor,
        w.batteryFuseA(),
        w.heaterFuseA(),
        w.regulatorEfficiency());
  }
}
