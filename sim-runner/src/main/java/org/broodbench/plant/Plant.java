package org.broodbench.plant;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.hive.BoxSpec;
import org.broodbench.hive.HiveModel;
import org.broodbench.hive.HiveView;
import org.broodbench.hive.Outside;
import org.broodbench.matter.MoistAir;
import org.broodbench.power.PvGroup;
import org.broodbench.power.PvSpec;
import org.broodbench.power.SupplyChain;
import org.broodbench.power.SupplyInputs;
import org.broodbench.power.SupplySpec;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Cover;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.Horizon;
import org.broodbench.sky.Obstacles;
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
  private final SupplyInputs inputs;
  private HiveModel hive;
  private HiveView view;
  private SupplyChain supply;
  private final ProbeLag[] probes;
  private final ProbeSpec.Place[] places;
  private final Broken broken;
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
    view = hive.view();
    inputs = new SupplyInputs(groups.size());
    supply = new SupplyChain(supply(scenario), batteryPlaceC(0));
    electronicsPerW = scenario.controller().heatInHiveShare() * scenario.controller().powerW();
    broken = new Broken(groups.size());
    probes = new ProbeLag[scenario.probes().size()];
    places = new ProbeSpec.Place[probes.length];
    for (int p = 0; p < probes.length; p++) {
      ProbeSpec spec = scenario.probes().get(p);
      places[p] = spec.place();
      probes[p] = new ProbeLag(spec.lagS());
      fillSource(p, probes[p].source());
      probes[p].begin();
    }
  }

  /** The planes whose irradiance a forcing for this scenario must carry. */
  public static List<Plane> planes(Scenario scenario) {
    Horizon horizon = scenario.weather().horizon();
    Obstacles around = new Obstacles(horizon, List.of());
    List<Plane> planes = new ArrayList<>();
    planes.add(new Plane(0, 180, around, Cover.NONE));
    for (int turnDeg = 0; turnDeg < 360; turnDeg += 90) {
      double azimuthDeg = (scenario.hive().frontDeg() + turnDeg) % 360;
      planes.add(new Plane(90, azimuthDeg, around, Cover.NONE));
    }
    PvSpec pv = scenario.pv();
    Cover glass = new Cover(Cover.Law.GLASS, pv.snowFactor());
    for (PvGroup g : pv.groups()) {
      List<Obstacles.HourShade> shades = new ArrayList<>();
      for (PvGroup.Shade s : g.shades()) {
        shades.add(new Obstacles.HourShade(s.fromHourUtc(), s.toHourUtc(), s.openShare()));
      }
      planes.add(new Plane(g.tiltDeg(), g.azimuthDeg(), new Obstacles(horizon, shades), glass));
    }
    return planes;
  }

  /** The supply chain of a scenario. */
  public static SupplySpec supply(Scenario scenario) {
    return new SupplySpec(
        scenario.pv(),
        scenario.battery(),
        scenario.inverter(),
        new SupplySpec.Heater(
            scenario.heater().powerW(),
            scenario.heater().ratedV(),
            scenario.heater().onInverter(),
            scenario.heater().regulated()),
        scenario.shore(),
        scenario.wiring(),
        new SupplySpec.Board(
            scenario.controller().powerW(),
            scenario.controller().brownOutV(),
            scenario.controller().restartV(),
            scenario.controller().bootS()),
        scenario.fan().powerW(),
        scenario.loads());
  }

  /** Between outdoor air and the air of the brood box, theta of the solved step. */
  private double batteryPlaceC(double theta) {
    double share = scenario.battery().warmedShare();
    return share == 0
        ? outside.airC
        : outside.airC + share * (view.nodeC(view.broodAirNode(), theta) - outside.airC);
  }

  private void sample(double atS) {
    forcing.sample(atS, weather);
    outside.airC = weather.airC;
    outside.humidityRatio = MoistAir.humidityRatio(weather.vapourPa, weather.pressurePa);
    outside.windMS = weather.windMS;
    outside.skyC = weather.skyC;
    System.arraycopy(weather.planeWM2, 0, outside.sunWM2, 0, HIVE_PLANES);
  }

  /** The longest step that does justice to the present moment under these actuators, s. */
  public double longestStepS(Actuators actuators) {
    hive.fan(fanTurns(actuators));
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
    double hour = (dayStartS + middleS) / 3600;
    hour -= 24 * (int) (hour / 24);
    inputs.heater = actuators.heater;
    inputs.fan = actuators.fan;
    inputs.inverter = actuators.inverter;
    System.arraycopy(weather.planeWM2, HIVE_PLANES, inputs.groupWM2, 0, inputs.groupWM2.length);
    for (int g = 0; g < inputs.groupWM2.length; g++) {
      inputs.groupWM2[g] *= broken.lightShare[g];
    }
    inputs.heaterWelded = broken.relayWelded;
    inputs.elementShare = broken.elementShare;
    inputs.airC = outside.airC;
    inputs.windMS = outside.windMS;
    inputs.batteryPlaceC = batteryPlaceC(1);
    inputs.hourOfDay = hour;
    supply.solve(seconds, inputs);
    hive.solve(
        seconds,
        supply.heaterW(),
        fanTurns(actuators),
        supply.dead() ? 0 : electronicsPerW,
        outside);
    for (int p = 0; p < probes.length; p++) {
      fillSource(p, probes[p].source());
      probes[p].solve(seconds);
    }
  }

  /** Start, inner stage and end of the solved step at the place of a probe. */
  private void fillSource(int probe, double[] out) {
    switch (places[probe]) {
      case BROOD_COMB -> view.stages(view.nestNode(), out);
      case NEST_EDGE ->
          mix(view.broodAirNode(), view.nestNode(), scenario.probes().get(probe).nestShare(), out);
      case BOX_AIR -> view.stages(view.broodAirNode(), out);
      case PAN -> of(view.panNode(), out);
      case PAN_FILLING -> of(view.panCoreNode(), out);
      case TOP -> view.stages(view.topAirNode(), out);
      case LID -> mix(view.topAirNode(), view.lidNode(), view.lidFilmShare(), out);
      case OUTDOOR -> of(-1, out);
    }
  }

  /** A node; outdoor air where the hive has no such part. */
  private void of(int node, double[] out) {
    if (node >= 0) {
      view.stages(node, out);
    } else {
      out[0] = outside.airC;
      out[1] = outside.airC;
      out[2] = outside.airC;
    }
  }

  /** A place between two nodes, by its share of the way from the first to the second. */
  private void mix(int from, int to, double share, double[] out) {
    view.stages(to, out);
    double to0 = out[0];
    double to1 = out[1];
    double to2 = out[2];
    view.stages(from, out);
    out[0] += share * (to0 - out[0]);
    out[1] += share * (to1 - out[1]);
    out[2] += share * (to2 - out[2]);
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

  /** Number of probes. */
  public int probes() {
    return probes.length;
  }

  /** Mean temperature at a probe's place over the solved step, °C, before its lag. */
  public double placeC(int probe) {
    return 0.5 * (probes[probe].source()[0] + probes[probe].source()[2]);
  }

  private boolean fanTurns(Actuators actuators) {
    return actuators.fan && !broken.fanJammed && !supply.dead();
  }

  /** Hangs the probe of a role at another place, or back at its own. */
  public void hang(ProbeSpec.Role role, boolean elsewhere, ProbeSpec.Place place) {
    for (int p = 0; p < places.length; p++) {
      ProbeSpec spec = scenario.probes().get(p);
      if (spec.role() == role) {
        places[p] = elsewhere ? place : spec.place();
      }
    }
  }

  /** What is broken between panel, relay, element and fan; may be changed between steps. */
  public Broken broken() {
    return broken;
  }

  /** Puts in a battery and a supply chain as they were at the start. */
  public void renewSupply() {
    supply = new SupplyChain(supply(scenario), batteryPlaceC(0));
  }

  /** Puts a box on top of the hive. */
  public void addBox(BoxSpec box) {
    hive = hive.withBox(box, outside);
    view = hive.view();
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
