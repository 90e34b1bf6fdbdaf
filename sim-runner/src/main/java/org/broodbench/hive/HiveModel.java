package org.broodbench.hive;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.colony.ColonyHeat;
import org.broodbench.colony.ColonySpec;
import org.broodbench.matter.MoistAir;
import org.broodbench.matter.SmoothTable;

/**
 * Heat, air, water vapour and carbon dioxide of a hive with its colony, advanced in steps.
 *
 * <p>Everything that is not linear (flows, colony, saturation, film state) is taken once a step at
 * the state drawn out to the step's middle; the linear networks that remain are solved by {@link
 * Network}. Water is solved before heat, so that the latent heat in the heat balance is that of the
 * very water in the water balance. Dry air is taken as constant in each zone at the density of the
 * outside air. Left out: sorption of water by wood, combs and honey; ice; sensible heat of vapour;
 * heat of the fan.
 */
public final class HiveModel {
  /** Carbon dioxide outdoors, mole fraction: 421 ppm, NOAA global mean of 2023. */
  static final double CO2_OUTSIDE = 421e-6;

  /** Molar mass of carbon dioxide over that of dry air, 44.01/28.966. */
  static final double CO2_MASS_RATIO = 44.01 / 28.966;

  private static final double WATER_KG_PER_J = ColonyHeat.WATER_G_G * 1e-3 / ColonyHeat.HONEY_J_G;
  private static final double CO2_KG_PER_J = ColonyHeat.CO2_G_G * 1e-3 / ColonyHeat.HONEY_J_G;

  private static final double LEAST_EXCHANGE_KG_S = 2e-6;

  /**
   * Steps after a sudden change of the streams, and their length, s: the air of a box follows
   * within seconds, and a long step would miss the course of that.
   */
  private static final int SHORT_STEPS = 5;

  private static final double SHORT_S = 2;

  /** An open lid exchanges this much with the outside, m³/s; own choice, about 24 W/K. */
  private static final double OPEN_LID_M3S = 0.02;

  private static final double CROP_G = 0.020;

  private final HiveSpec spec;
  private final HiveLayout layout;
  final Network heat;
  final Network vapour;
  final Network co2;
  private final HiveFlows flows;
  private final ColonyHeat colony;
  final InnerFace[] inner;
  private final OuterFace[] outer;
  private final HiveReport report;
  private final HiveView view;
  private final SmoothTable saturatedRatio;
  private final int[] zoneOfBox;
  private final int[] heatLinks;
  private final int[] zoneLinks;
  private final int nestHeatLink;
  private final int nestZoneLink;
  final double[] heatC;
  final double[] ratio;
  private final double pressurePa;
  private final double airKgM3;
  private final double totalHeightM;
  private final int nestZone;
  private final int brood;
  private final HeaterSpec heaterSpec;
  private HiveLedger ledger = new HiveLedger();

  private double massLaw;
  private double bees;
  private double broodCells;
  private double storesKg;
  private double heaterW;
  private double electronicsW;
  private double madeKgS;
  private double co2KgS;
  private double colonyW;
  private double latentTakenW;
  private double latentReleasedW;
  private double coolingKgS;
  private double outsideC;
  private double outsideRatio;
  private double outsideCo2;
  private double exchangeKgS;
  private double stepS;
  private double ranS;
  private boolean alive = true;
  private boolean lidOpen;
  private double cropJ = Double.POSITIVE_INFINITY;
  private boolean fanBefore;

  /**
   * A hive at rest: nest at its start temperature, everything else at a steady guess between nest
   * and outside.
   *
   * @param spec the hive
   * @param colonySpec its colony
   * @param heater plate and pan
   * @param fan the fan
   * @param pressurePa air pressure, Pa
   * @param outside weather at the start
   */
  public HiveModel(
      HiveSpec spec,
      ColonySpec colonySpec,
      HeaterSpec heater,
      FanSpec fan,
      double pressurePa,
      Outside outside) {
    this.spec = spec;
    this.pressurePa = pressurePa;
    airKgM3 = pressurePa / (MoistAir.GAS_CONSTANT_DRY_AIR * (outside.airC + MoistAir.ZERO_C_IN_K));
    layout = new HiveLayout(spec, colonySpec, heater, airKgM3 * MoistAir.HEAT_DRY_AIR);
    heat = layout.network();
    brood = spec.broodBox();
    nestZone = layout.boxes;
    double[] airKg = new double[layout.boxes + 1];
    List<int[]> zonePairs = new ArrayList<>();
    double heightM = 0;
    for (int i = 0; i < layout.boxes; i++) {
      airKg[i] = layout.volumeM3[i] * airKgM3;
      heightM += spec.boxes().get(i).heightM();
      if (i > 0) {
        zonePairs.add(new int[] {i - 1, i});
      }
    }
    totalHeightM = heightM;
    airKg[nestZone] = layout.nestVolumeM3 * airKgM3;
    zonePairs.add(new int[] {brood, nestZone});
    vapour = new Network(airKg, zonePairs);
    co2 = new Network(airKg, zonePairs);
    inner = layout.inner.toArray(InnerFace[]::new);
    outer = layout.outer.toArray(OuterFace[]::new);
    report = new HiveReport(spec, layout, pressurePa);
    saturatedRatio =
        new SmoothTable(
            -60, 80, 2, c -> MoistAir.humidityRatio(MoistAir.saturationWaterPa(c), pressurePa));
    heatC = new double[heat.size()];
    ratio = new double[vapour.size()];
    zoneOfBox = new int[layout.boxes];
    heatLinks = new int[layout.boxes];
    zoneLinks = new int[layout.boxes];
    for (int i = 0; i < layout.boxes; i++) {
      zoneOfBox[i] = i;
      if (i > 0) {
        heatLinks[i] = heat.link(layout.air[i - 1], layout.air[i]);
        zoneLinks[i] = vapour.link(i - 1, i);
        co2.link(i - 1, i); // made alike, so the same number
      }
    }
    nestHeatLink = heat.link(layout.nest, layout.air[brood]);
    nestZoneLink = vapour.link(brood, nestZone);
    co2.link(brood, nestZone);
    flows = new HiveFlows(spec, fan, layout.planM2, airKgM3);
    view = new HiveView(layout, heat, vapour, co2, flows, pressurePa, airKgM3, brood);
    colony = new ColonyHeat(colonySpec);
    heaterSpec = heater;
    populate(colonySpec.bees(), colonySpec.broodCells());
    alive = colony.massKg() > 0;
    new HiveStart(layout, pressurePa).set(heat, vapour, co2, alive, outside);
  }

  /**
   * Works out one step; the state moves only with {@link #accept}.
   *
   * @param seconds length of the step, s
   * @param heaterWatts heat of the element, W
   * @param fanOn whether the fan runs
   * @param electronicsWatts heat of electronics inside the hive, W
   * @param outside weather during the step
   */
  public void solve(
      double seconds, double heaterWatts, boolean fanOn, double electronicsWatts, Outside outside) {
    fan(fanOn);
    stepS = seconds;
    heat.ahead(seconds, heatC);
    vapour.ahead(seconds, ratio);
    evaluate(heaterWatts, fanOn, electronicsWatts, outside, 0.5 * stepS);
    co2.clear(stepS);
    vapour.clear(stepS);
    fillGases();
    co2.solve();
    vapour.solve();
    vapour.means(ratio);
    heat.clear(stepS);
    fillHeat();
    heat.solve();
  }

  /** Everything that is not linear, at the state in {@link #heatC} and {@link #ratio}. */
  void evaluate(
      double heaterWatts, boolean fanOn, double electronicsWatts, Outside outside, double aheadS) {
    heaterW = heaterWatts;
    electronicsW = electronicsWatts;
    outsideC = outside.airC;
    outsideRatio = outside.humidityRatio;
    outsideCo2 = CO2_OUTSIDE * CO2_MASS_RATIO;
    double fannedM3S = 0;
    exchangeKgS = LEAST_EXCHANGE_KG_S;
    colonyW = 0;
    coolingKgS = 0;
    if (alive) {
      colony.evaluate(heatC[layout.nest], heatC[layout.air[brood]]);
      colonyW = colony.heatW();
      coolingKgS = colony.coolingKgS();
      fannedM3S = colony.fannedM3S();
      exchangeKgS += spec.guesses().clusterExchangeM3S() * airKgM3 * massLaw * colony.loosening();
    }
    flows.evaluate(heatC, layout.air, outside, fanOn, lidOpen ? OPEN_LID_M3S : 0, fannedM3S);
    madeKgS = colonyW * WATER_KG_PER_J;
    co2KgS = colonyW * CO2_KG_PER_J;
    for (InnerFace f : inner) {
      double surfaceC = f.surfaceC(heatC[f.airNode], heatC[f.solidNode]);
      f.prepare(ratio[f.zone], saturatedRatio.at(surfaceC), aheadS);
    }
    for (OuterFace f : outer) {
      f.prepare(outside);
    }
  }

  void fillGases() {
    flows.fill(co2, zoneOfBox, zoneLinks, 1, outsideCo2);
    flows.fill(vapour, zoneOfBox, zoneLinks, 1, outsideRatio);
    co2.conduct(nestZoneLink, exchangeKgS);
    vapour.conduct(nestZoneLink, exchangeKgS);
    co2.supply(nestZone, co2KgS);
    vapour.supply(nestZone, madeKgS + coolingKgS);
    for (InnerFace f : inner) {
      vapour.reach(f.zone, f.rateKgS, f.saturated);
    }
  }

  /** Fills the heat network; {@link #ratio} holds the vapour that goes with the films. */
  void fillHeat() {
    flows.fill(heat, layout.air, heatLinks, MoistAir.HEAT_DRY_AIR, outsideC);
    heat.conduct(nestHeatLink, alive ? colony.lossWK() : emptyNestWK());
    latentTakenW = MoistAir.latentHeatJPerKg(heatC[layout.nest]) * (madeKgS + coolingKgS);
    heat.supply(layout.nest, colonyW - latentTakenW);
    latentReleasedW = 0;
    for (InnerFace f : inner) {
      double kgS = f.rateKgS * (ratio[f.zone] - f.saturated);
      double latentW = MoistAir.latentHeatJPerKg(heatC[f.solidNode]) * kgS;
      heat.supply(f.solidNode, latentW);
      if (latentW > 0) {
        latentReleasedW += latentW;
      } else {
        latentTakenW -= latentW;
      }
    }
    for (OuterFace f : outer) {
      heat.bring(f.layerNode, f.conductanceWK, f.broughtW);
    }
    heat.supply(layout.plate >= 0 ? layout.plate : layout.air[0], heaterW);
    heat.supply(layout.air[layout.boxes - 1], electronicsW);
  }

  /** Comb without bees: films on both sides of the nest's combs, W/K. */
  private double emptyNestWK() {
    return layout.nestVolumeM3 / 0.010 / spec.guesses().combFilmM2KW();
  }

  /** Moves the state to the end of the solved step and books its flows. */
  public void accept() {
    double h = stepS;
    ranS += h;
    ledger.heaterJ += h * heaterW;
    ledger.colonyJ += h * colonyW;
    cropJ -= h * colonyW;
    alive &= cropJ > 0;
    ledger.electronicsJ += h * electronicsW;
    ledger.latentTakenJ += h * latentTakenW;
    ledger.latentReleasedJ += h * latentReleasedW;
    for (OuterFace f : outer) {
      double outJ = h * f.outW(heat.mean(f.layerNode));
      double sunJ = h * f.sunW();
      f.outJ += outJ;
      f.sunJ += sunJ;
      ledger.sunJ += sunJ;
      ledger.lostWallsJ += outJ + sunJ;
    }
    ledger.lostAirJ += h * flows.lostHeatW(heat, layout.air, outsideC);
    for (int i = 0; i < heat.size(); i++) {
      ledger.storedJ += heat.capacity(i) * (heat.end(i) - heat.start(i));
    }
    ledger.waterMadeKg += h * madeKgS;
    ledger.waterFetchedKg += h * coolingKgS;
    ledger.waterInKg += h * flows.inKgS() * outsideRatio;
    ledger.waterOutKg += h * flows.outKgS(vapour);
    ledger.co2MadeKg += h * co2KgS;
    ledger.co2InKg += h * flows.inKgS() * outsideCo2;
    ledger.co2OutKg += h * flows.outKgS(co2);
    for (InnerFace f : inner) {
      double kgS = f.rateKgS * (vapour.mean(f.zone) - f.saturated);
      double before = f.filmKg();
      double drained = f.grow(kgS, h);
      ledger.waterDrainedKg += drained;
      f.book.book(h * kgS, drained, f.filmKg(), h, ranS);
      ledger.waterStoredKg += f.filmKg() - before;
      if (kgS > 0) {
        ledger.waterCondensedKg += h * kgS;
      }
    }
    for (int z = 0; z < vapour.size(); z++) {
      ledger.waterStoredKg += vapour.capacity(z) * (vapour.end(z) - vapour.start(z));
      ledger.co2StoredKg += co2.capacity(z) * (co2.end(z) - co2.start(z));
    }
    heat.accept(h);
    vapour.accept(h);
    co2.accept(h);
  }

  /** Whether the colony lives. */
  public boolean alive() {
    return alive;
  }

  /** The colony dies: no heat, no gases from now on. */
  public void die() {
    alive = false;
  }

  /** Adults of the colony, alive or dead. */
  public double bees() {
    return bees;
  }

  /** Cells with brood. */
  public double broodCells() {
    return broodCells;
  }

  /** Sets the colony's numbers of adults and of brood cells. */
  public void populate(double newBees, double newBroodCells) {
    bees = newBees;
    broodCells = newBroodCells;
    colony.populate(newBees, newBroodCells);
    massLaw = colony.massKg() > 0 ? StrictMath.pow(colony.massKg(), 0.52) : 0;
  }

  /**
   * The same hive and colony with a box put on top: every part that was there keeps its state, its
   * film of water and its balances; the new box comes in at the temperature and with the air of
   * outdoors.
   */
  public HiveModel withBox(BoxSpec box, Outside outside) {
    List<BoxSpec> boxes = new ArrayList<>(spec.boxes());
    boxes.add(box);
    HiveModel grown =
        new HiveModel(
            spec.withBoxes(boxes), colony.spec(), heaterSpec, flows.fan(), pressurePa, outside);
    for (int i = 0; i < grown.heat.size(); i++) {
      int before = layout.names.indexOf(grown.layout.names.get(i));
      if (before >= 0) {
        grown.heat.set(i, heat.start(before));
        grown.heat.setCapacity(i, heat.capacity(before));
      } else {
        grown.heat.set(i, outside.airC);
      }
    }
    int oldTop = layout.boxes;
    for (int z = 0; z < grown.vapour.size(); z++) {
      boolean isNew = z == oldTop;
      int before = z < oldTop ? z : oldTop;
      grown.vapour.set(z, isNew ? outside.humidityRatio : vapour.start(before));
      grown.co2.set(z, isNew ? CO2_OUTSIDE * CO2_MASS_RATIO : co2.start(before));
    }
    for (InnerFace f : grown.layout.inner) {
      for (InnerFace old : layout.inner) {
        if (layout.names.get(old.solidNode).equals(grown.layout.names.get(f.solidNode))) {
          f.addKg(old.filmKg());
          f.book.goOnFrom(old.book);
        }
      }
    }
    for (OuterFace f : grown.outer) {
      int before = layout.names.indexOf(grown.layout.names.get(f.layerNode));
      for (OuterFace old : outer) {
        if (old.layerNode == before) {
          f.outJ = old.outJ;
          f.sunJ = old.sunJ;
        }
      }
    }
    grown.ranS = ranS;
    grown.colony.populate(bees, broodCells);
    grown.bees = bees;
    grown.broodCells = broodCells;
    grown.alive = alive;
    grown.massLaw = massLaw;
    grown.lidOpen = lidOpen;
    grown.fanBefore = fanBefore;
    grown.flows.takeOpeningsFrom(flows);
    grown.cropJ = cropJ;
    grown.ledger = ledger;
    return grown;
  }

  /**
   * A colony moves in at the temperature of a cluster; the combs it settles on warm by what it
   * brings.
   */
  public void install(double newBees, double newBroodCells) {
    double bodyJK = newBees * colony.spec().beeMassG() * 1e-3 * HiveLayout.BEES_J_KG_K;
    double combJK = heat.capacity(layout.nest);
    double mixedC =
        (combJK * heat.start(layout.nest) + bodyJK * HiveStart.CLUSTER_C) / (combJK + bodyJK);
    heat.setCapacity(layout.nest, combJK + bodyJK);
    heat.set(layout.nest, mixedC);
    populate(bees + newBees, broodCells + newBroodCells);
    alive = alive || newBees > 0;
  }

  /** Feed of some mass and temperature is put on the combs of the brood box. */
  public void feed(double massKg, double waterShare, double temperatureC) {
    // water and sugar by mass; sugar 1250 J/(kg K), handbook value
    double feedJK = massKg * (waterShare * 4182 + (1 - waterShare) * 1250);
    int node = layout.comb[brood];
    double combJK = heat.capacity(node);
    double mixedC = (combJK * heat.start(node) + feedJK * temperatureC) / (combJK + feedJK);
    heat.setCapacity(node, combJK + feedJK);
    heat.set(node, mixedC);
    storesKg += massKg * (1 - waterShare);
  }

  /** Sugar equivalent of all feed given during the run, kg. */
  public double fedKg() {
    return storesKg;
  }

  /** Says that the fan runs or not from now on; {@link #solve} takes note by itself. */
  public void fan(boolean on) {
    if (on != fanBefore) {
      suddenChange();
      fanBefore = on;
    }
  }

  private void suddenChange() {
    heat.forget();
    vapour.forget();
    co2.forget();
  }

  /** The longest step that does justice to the present moment, s. */
  public double longestStepS() {
    return heat.stepsSinceForget() < SHORT_STEPS ? SHORT_S : Double.MAX_VALUE;
  }

  /** Opens or closes the lid from the next step on. */
  public void setLidOpen(boolean open) {
    if (open != lidOpen) {
      suddenChange();
      lidOpen = open;
    }
  }

  /** Leaves a share of the entrance open from the next step on, 0 to 1. */
  public void setEntrance(double share) {
    flows.setEntrance(share);
    suddenChange();
  }

  /**
   * All stores are gone, or there again. Without them the bees live on what is in their crops, and
   * then die: 20 mg of honey a bee, from memory, low confidence (half of what a full crop holds).
   */
  public void setStoresGone(boolean gone) {
    cropJ = gone ? bees * CROP_G * ColonyHeat.HONEY_J_G : Double.POSITIVE_INFINITY;
  }

  /** Whether the bees have starved. */
  public boolean starved() {
    return cropJ <= 0;
  }

  /** Sets the free area of the upper vent from the next step on, m². */
  public void setTopVent(double areaM2) {
    flows.setTopVent(areaM2);
    suddenChange();
  }

  /** The description it was made from. */
  public HiveSpec spec() {
    return spec;
  }

  /** The balances so far. */
  public HiveLedger ledger() {
    return ledger;
  }

  /** Heat of the colony in the solved step, W. */
  public double colonyW() {
    return colonyW;
  }

  /** Temperature of the mantle at the solved step, °C. */
  public double mantleC() {
    return alive ? colony.mantleC() : heat.end(layout.air[brood]);
  }

  /** What can be read off the solved step. */
  public HiveView view() {
    return view;
  }

  /** Nodes and faces, for tests. */
  HiveLayout layout() {
    return layout;
  }

  /**
   * Stage values of a first-order follower of a source, such as a probe.
   *
   * @param stages start in place 0; inner stage and end are put into 1 and 2
   * @param source the source's start, inner stage and end
   */
  public static void follow(double[] stages, double[] source, double tauS, double stepS) {
    Network.follow(stages, source[0], source[1], source[2], tauS, stepS);
  }

  /** Slope and bend of the parabola through stage values: y = start + θ (slope + θ bend). */
  public static void parabola(double[] stages, double[] slopeAndBend) {
    Network.parabola(stages[0], stages[1], stages[2], slopeAndBend);
  }

  /** The hive cut open at the end of the solved step. */
  public HiveSection section() {
    return report.section(heat, vapour, flows, outsideC, mantleC());
  }

  /** What water did on every inner surface so far. */
  public List<HiveSection.Film> films() {
    return report.films();
  }

  /** Ways of heat out of the hive so far: every face, and the air. */
  public List<HiveSection.Way> ways() {
    return report.ways(ledger.lostAirJ);
  }
}
