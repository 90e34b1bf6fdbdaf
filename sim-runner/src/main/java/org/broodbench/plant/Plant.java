package org.broodbench.plant;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.hive.BoxSpec;
import org.broodbench.hive.HiveModel;
import org.broodbench.hive.Outside;
import org.broodbench.matter.MoistAir;
import org.broodbench.power.BatterySpec;
import org.broodbench.power.Copper;
import org.broodbench.power.PvGroup;
import org.broodbench.power.SupplyChain;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.Plane;
import org.broodbench.sky.Sample;

/**
 * Weather, supply chain, hive and probes wired together. Order inside a step: weather at the step's
 * middle, supply chain (which gives the heater's power), hive, probes. Nothing moves until {@link
 * #accept}, so a step can be worked out again with another length.
 */
public final class Plant {
  /** Planes of the hive's faces, before those of the module groups. */
  private static final int HIVE_PLANES = 5;

  private final Scenario scenario;
  private final Forcing forcing;
  private final Sample weather;
  private final Outside outside = new Outside();
  private final double[] groupWM2;
  private HiveModel hive;
  private final SupplyChain supply;
  private final ProbeLag[] probes;
  private final long dayStartS;
  private final double electronicsPerW;
  private double stepS;
  private int solves;

  /** A plant at the start of its window. */
  public Plant(Scenario scenario, Forcing forcing) {
    this.scenario = scenario;
    this.forcing = forcing;
    List<PvGroup> groups = scenario.pv().groups();
    weather = new Sample(HIVE_PLANES + groups.size());
    groupWM2 = new double[groups.size()];
    dayStartS = Math.floorMod(scenario.window().fromEpochS(), 86_400L);
    sample(0);
    hive =
        new HiveModel(
            scenario.hive(),
            scenario.colony(),
            scenario.heater(),
            scenario.fan(),
            weather.pressurePa,
            outside);
    double placeC =
        scenario.battery().place() == BatterySpec.Place.HIVE
            ? hive.nodeC(hive.broodAirNode(), 0)
            : outside.airC;
    supply =
        new SupplyChain(
            scenario.pv(),
            scenario.battery(),
            scenario.inverter(),
            new SupplyChain.HeaterLine(
                scenario.heater().powerW(),
                scenario.heater().ratedV(),
                scenario.heater().onInverter(),
                scenario.heater().regulated(),
                Copper.loopOhm(
                    scenario.wiring().heaterLengthM(), scenario.wiring().heaterMm2(), 20)),
            scenario.shore(),
            scenario.wiring().batteryLeadOhm(),
            scenario.fan().powerW(),
            scenario.controller().powerW(),
            scenario.loads(),
            placeC);
    electronicsPerW = scenario.controller().heatInHiveShare() * scenario.controller().powerW();
    probes = new ProbeLag[scenario.probes().size()];
    for (int p = 0; p < probes.length; p++) {
      ProbeSpec spec = scenario.probes().get(p);
      probes[p] = new ProbeLag(spec.lagS(), startC(spec.place()));
    }
  }

  /** The planes whose irradiance a forcing for this scenario must carry. */
  public static List<Plane> planes(Scenario scenario) {
    List<Plane> planes = new ArrayList<>();
    planes.add(new Plane(0, 180));
    for (int turnDeg = 0; turnDeg < 360; turnDeg += 90) {
      planes.add(new Plane(90, (scenario.hive().frontDeg() + turnDeg) % 360));
    }
    for (PvGroup g : scenario.pv().groups()) {
      planes.add(new Plane(g.tiltDeg(), g.azimuthDeg()));
    }
    return planes;
  }

  private double startC(ProbeSpec.Place place) {
    int node = node(place);
    return node >= 0 ? hive.nodeC(node, 0) : outside.airC;
  }

  private int node(ProbeSpec.Place place) {
    return switch (place) {
      case BROOD_COMB, NEST_EDGE -> hive.nestNode();
      case BOX_AIR -> hive.broodAirNode();
      case PAN -> hive.panNode();
      case TOP -> hive.topAirNode();
      case OUTDOOR -> -1;
    };
  }

  private void sample(double atS) {
    forcing.sample(atS, weather);
    outside.airC = weather.airC;
    outside.humidityRatio = MoistAir.humidityRatio(weather.vapourPa, weather.pressurePa);
    outside.windMS = weather.windMS;
    outside.skyC = weather.skyC;
    System.arraycopy(weather.planeWM2, 0, outside.sunWM2, 0, HIVE_PLANES);
    System.arraycopy(weather.planeWM2, HIVE_PLANES, groupWM2, 0, groupWM2.length);
  }

  /** The longest step that does justice to the present moment under these actuators, s. */
  public double longestStepS(Actuators actuators) {
    hive.fan(actuators.fan && !supply.dead());
    return hive.longestStepS();
  }

  /**
   * Works out one step from the present state.
   *
   * @param startS start of the step, s since the start of the window
   * @param seconds its length, s
   * @param actuators what is held over it
   */
  public void solve(double startS, double seconds, Actuators actuators) {
    stepS = seconds;
    solves++;
    double middleS = startS + 0.5 * seconds;
    sample(middleS);
    double batteryPlaceC =
        scenario.battery().place() == BatterySpec.Place.HIVE
            ? hive.nodeC(hive.broodAirNode(), 1)
            : outside.airC;
    double hour = (dayStartS + middleS) / 3600;
    hour -= 24 * (int) (hour / 24);
    supply.solve(
        seconds,
        actuators.heater,
        actuators.fan,
        actuators.inverter,
        groupWM2,
        outside.airC,
        batteryPlaceC,
        hour);
    boolean fanTurns = actuators.fan && !supply.dead();
    hive.solve(seconds, supply.heaterW(), fanTurns, supply.dead() ? 0 : electronicsPerW, outside);
    for (int p = 0; p < probes.length; p++) {
      fillSource(scenario.probes().get(p).place(), probes[p].source());
      probes[p].solve(seconds);
    }
  }

  private void fillSource(ProbeSpec.Place place, double[] out) {
    int node = node(place);
    if (node < 0) {
      out[0] = outside.airC;
      out[1] = outside.airC;
      out[2] = outside.airC;
      return;
    }
    hive.stages(node, out);
    if (place == ProbeSpec.Place.NEST_EDGE) {
      double nest0 = out[0];
      double nest1 = out[1];
      double nest2 = out[2];
      hive.stages(hive.broodAirNode(), out);
      // the mantle lies a quarter of the way from the air of the box to the nest
      out[0] += 0.25 * (nest0 - out[0]);
      out[1] += 0.25 * (nest1 - out[1]);
      out[2] += 0.25 * (nest2 - out[2]);
    }
  }

  /** How many steps were worked out so far, also those that were worked out again. */
  public int solves() {
    return solves;
  }

  /** Moves to the end of the solved step. */
  public void accept() {
    supply.accept();
    hive.accept();
    for (ProbeLag p : probes) {
      p.accept();
    }
  }

  /** Temperature of a probe inside the solved step, °C, before noise; theta from 0 to 1. */
  public double probeC(int probe, double theta) {
    return probes[probe].at(theta);
  }

  /** Puts a box on top of the hive. */
  public void addBox(BoxSpec box) {
    hive = hive.withBox(box, outside);
  }

  /** The hive. */
  public HiveModel hive() {
    return hive;
  }

  /** The supply chain. */
  public SupplyChain supply() {
    return supply;
  }

  /** The weather at the solved step's middle. */
  public Sample weather() {
    return weather;
  }

  /** Length of the solved step, s. */
  public double stepS() {
    return stepS;
  }
}
