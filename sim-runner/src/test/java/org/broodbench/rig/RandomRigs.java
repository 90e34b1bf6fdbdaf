package org.broodbench.rig;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.broodbench.colony.ColonySpec;
import org.broodbench.controller.ProbePlace;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.hive.BoxSpec;
import org.broodbench.hive.FanSpec;
import org.broodbench.hive.HeaterSpec;
import org.broodbench.hive.HiveSpec;
import org.broodbench.hive.Layer;
import org.broodbench.hive.Pan;
import org.broodbench.hive.Separator;
import org.broodbench.hive.Skin;
import org.broodbench.matter.Material;
import org.broodbench.plant.Plant;
import org.broodbench.power.BatterySpec;
import org.broodbench.power.Chemistry;
import org.broodbench.power.InverterSpec;
import org.broodbench.power.LoadSpec;
import org.broodbench.power.PvGroup;
import org.broodbench.power.PvSpec;
import org.broodbench.power.ShoreSpec;
import org.broodbench.power.WiringSpec;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.ForcingSettings;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.MonthlyNormals;
import org.broodbench.sky.Place;
import org.broodbench.sky.WeatherGenerator;

/** Rigs and weather that a seed decides: small and big, well and badly matched, all legal. */
public final class RandomRigs {
  private static final long DAY_S = 86_400;

  private final SplittableRandom random;
  private final long seed;

  /** Equal seeds give equal rigs and weather. */
  public RandomRigs(long seed) {
    this.seed = seed;
    random = new SplittableRandom(seed);
  }

  /** A whole number from 0 up to and without a bound. */
  public int below(int bound) {
    return random.nextInt(bound);
  }

  private double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  private boolean chance(double p) {
    return random.nextDouble() < p;
  }

  /** A rig with a window of some days in some season of 2024. */
  public Scenario scenario(int days) {
    Scenario base = TestRigs.small(DAY_S * (19_723 + below(360)), days);
    Chemistry chemistry = Chemistry.values()[below(4)];
    boolean inverter = chance(0.3);
    boolean charge = chemistry == Chemistry.LFP || chance(0.4);
    double capacityAh = between(12, 200);
    double heaterW = between(10, 150);
    double fanW = chance(0.8) ? between(0.5, 4) : 0;
    double batteryOhm = between(0.003, 0.03);
    double leadOhm = between(0.002, 0.03);
    return new Scenario(
        "random rig " + seed,
        base.fileName(),
        base.sha256(),
        base.place(),
        base.weather(),
        base.window(),
        hive(),
        colony(),
        heater(
            new HeaterSpec(
                heaterW,
                inverter ? 230 : 12,
                inverter,
                !inverter && chance(0.3),
                between(200, 1000),
                between(1000, 12_000),
                between(3, 12),
                between(0.5, 3),
                between(0.1, 1),
                between(0.02, 0.5))),
        fanW > 0 ? new FanSpec(fanW, between(0.001, 0.01), between(10, 60)) : new FanSpec(0, 0, 0),
        probes(),
        new SensorSpec(
            chance(0.5),
            2,
            0.005,
            between(-0.05, 0.05),
            chance(0.5),
            charge,
            charge ? between(-0.03, 0.03) : 0,
            chance(0.5),
            chance(0.3)),
        new ControllerSpec(
            settings(chemistry, charge, inverter, heaterW, fanW, batteryOhm + leadOhm),
            1000,
            between(0.2, 2),
            between(0, 1)),
        new PvSpec(
            chance(0.7)
                ? List.of(new PvGroup(between(20, 400), between(0, 90), between(0, 359)))
                : List.of(new PvGroup(between(20, 200), 60, 180), new PvGroup(50, 90, 120)),
            -0.004,
            45,
            between(0.6, 1),
            chance(0.6),
            between(0.9, 0.97),
            18,
            between(0, 0.5)),
        new BatterySpec(
            chemistry,
            capacityAh,
            12,
            batteryOhm,
            chance(0.2) ? between(0.05, 0.2) : between(0.2, 1),
            capacityAh * between(0.1, 0.4),
            14.4,
            between(0.9, 0.99),
            between(0, 0.1),
            between(600, 6 * 3600),
            BatterySpec.Place.values()[below(2)]),
        inverter ? new InverterSpec(400, between(1, 8), 0.03, 1e-4) : new InverterSpec(0, 0, 0, 0),
        new WiringSpec(between(1, 8), 2.5, leadOhm),
        chance(0.3)
            ? new ShoreSpec(chance(0.5), between(20, 200), 0.85)
            : new ShoreSpec(false, 0, 0.85),
        chance(0.3) ? List.of(new LoadSpec("light", between(1, 20), 18, 6)) : List.of(),
        base.requirements(),
        List.of(),
        new RunSpec(seed, 10, 600, 32, 36),
        List.of());
  }

  /** What a careful keeper keys in for these parts; by charge where volts would not do. */
  private Settings settings(
      Chemistry chemistry,
      boolean charge,
      boolean inverter,
      double heaterW,
      double fanW,
      double ohm) {
    Settings settings =
        Settings.defaults(
                ProbePlace.BROOD_COMB,
                switch (chemistry) {
                  case FLOODED -> org.broodbench.controller.Chemistry.FLOODED;
                  case AGM, GEL -> org.broodbench.controller.Chemistry.AGM;
                  case LFP -> org.broodbench.controller.Chemistry.LITHIUM_IRON_PHOSPHATE;
                })
            .with(Setting.FITTED_STATE_OF_CHARGE, charge ? 1 : 0)
            .with(Setting.SHED_BY_STATE_OF_CHARGE, charge ? 1 : 0)
            .with(Setting.SHED_SURVIVAL_LEAVE_PERMILLE, 450)
            .with(Setting.SHED_HEAT_LEAVE_PERMILLE, 350)
            .with(Setting.FITTED_INVERTER, inverter ? 1 : 0)
            .with(Setting.HEATER_RATED_MILLI_A, (int) (heaterW / 12 * 1000))
            .with(Setting.FAN_RATED_MILLI_A, (int) (fanW / 12 * 1000))
            .with(Setting.BATTERY_MILLI_OHM, (int) (ohm * 1000))
            .with(Setting.BATTERY_WORST_MILLI_OHM, (int) (ohm * 1500));
    return settings.problems().isEmpty()
        ? settings
        : settings.with(Setting.BATTERY_MILLI_OHM, 5).with(Setting.BATTERY_WORST_MILLI_OHM, 10);
  }

  /** Every second rig has a pan of three layers instead of a mixed one. */
  private HeaterSpec heater(HeaterSpec h) {
    Pan p = h.pan();
    return seed % 2 == 0
        ? h
        : new HeaterSpec(
            h.powerW(),
            h.ratedV(),
            h.onInverter(),
            h.regulated(),
            h.plateJK(),
            h.plateM2(),
            h.plateFloorWK(),
            Pan.filled(p.heatJK(), p.fromPlateWK(), p.fromPlateWK(), 0.15, p.airWK(), p.nestWK()),
            h.limits());
  }

  /** By turns nothing, a sheet or a board between boxes, dummy boards, a feeder, and screens. */
  private HiveSpec dressed(HiveSpec h) {
    Separator[] kinds = {
      Separator.NONE,
      new Separator(Separator.Kind.SHEET, 0.4, 0.004, 0, 0.001, Material.STEEL),
      new Separator(Separator.Kind.BOARD, 0, 0, 3e-4, 0.01, Material.PLYWOOD),
      new Separator(Separator.Kind.BOARD, 0, 0, 0, 0.04, Material.EPS)
    };
    int turn = (int) (seed % 12);
    List<BoxSpec> boxes = new ArrayList<>();
    for (int i = 0; i < h.boxes().size(); i++) {
      BoxSpec b = h.boxes().get(i);
      int frames = turn == 5 && i > h.broodBox() ? 0 : b.frames();
      boxes.add(
          new BoxSpec(
              b.heightM(), frames, b.storesKg(), turn % 3, kinds[i == 0 ? 0 : (turn + i) % 4]));
    }
    return new HiveSpec(
        h.lengthM(),
        h.widthM(),
        turn * 30,
        boxes,
        h.broodBox(),
        h.wall(),
        h.floor(),
        h.lid(),
        h.edgeFactor(),
        new Skin(h.wallSkin().solarAbsorptance(), turn % 4 == 1),
        new Skin(h.lidSkin().solarAbsorptance(), turn % 4 == 3),
        h.entranceWidthM(),
        h.entranceHeightM(),
        h.topVentM2(),
        h.openShare(),
        h.dischargeCoefficient(),
        h.windEffectiveness(),
        h.guesses());
  }

  private HiveSpec hive() {
    return dressed(plainHive());
  }

  private HiveSpec plainHive() {
    int boxes = 1 + below(4);
    List<Layer> wall = layers();
    List<Layer> lid = chance(0.5) ? wall : layers();
    return new HiveSpec(
        0.467,
        0.375,
        Collections.nCopies(boxes, new BoxSpec(between(0.1, 0.3), 10, between(0, 10))),
        below(boxes),
        wall,
        wall,
        lid,
        between(1, 1.5),
        between(0.1, 0.95),
        between(0.02, 0.3),
        between(0.006, 0.015),
        chance(0.6) ? between(1e-5, 1e-3) : 0,
        between(0.3, 1),
        0.6,
        between(0, 0.5));
  }

  private List<Layer> layers() {
    List<Layer> layers = new ArrayList<>();
    layers.add(new Layer(Material.SOFTWOOD, between(0.01, 0.03)));
    for (int i = below(3); i > 0; i--) {
      layers.add(new Layer(Material.all().get(below(Material.all().size())), between(0.01, 0.06)));
    }
    return layers;
  }

  private ColonySpec colony() {
    return new ColonySpec(
        chance(0.1) ? 0 : between(300, 20_000),
        0.115,
        chance(0.3) ? 0 : between(100, 20_000),
        between(0.5, 6),
        between(1, 2.85),
        between(20, 60),
        0.5,
        chance(0.5));
  }

  private List<ProbeSpec> probes() {
    List<ProbeSpec> probes = new ArrayList<>();
    probes.add(
        new ProbeSpec(
            ProbeSpec.Role.BROOD_A,
            chance(0.5) ? ProbeSpec.Place.BROOD_COMB : ProbeSpec.Place.NEST_EDGE,
            between(10, 120),
            0.03,
            0.0625,
            between(-0.3, 0.3)));
    probes.add(
        new ProbeSpec(ProbeSpec.Role.PAN, ProbeSpec.Place.PAN, between(10, 60), 0.03, 0.0625, 0));
    if (chance(0.5)) {
      probes.add(
          new ProbeSpec(
              ProbeSpec.Role.OUTDOOR, ProbeSpec.Place.OUTDOOR, between(30, 200), 0.03, 0.0625, 0));
    }
    return probes;
  }

  /** Invented weather over the window of a rig. */
  public Forcing forcing(Scenario rig) {
    return forcing(rig, seed, between(0, 15));
  }

  /** Invented weather of a seed, colder than usual by some kelvin. */
  public static Forcing forcing(Scenario rig, long seed, double colderByK) {
    Place place = rig.place();
    long from = rig.window().fromEpochS();
    GeneratorSettings g =
        new GeneratorSettings(
            seed,
            place,
            MonthlyNormals.UPLAND_VALLEY,
            Math.floorDiv(from, DAY_S),
            rig.window().days() + 1,
            List.of(),
            new GeneratorSettings.Stress(colderByK, 0, 0));
    return Forcing.of(
        WeatherGenerator.generate(g),
        place,
        from,
        from + DAY_S * rig.window().days(),
        Plant.planes(rig),
        ForcingSettings.DEFAULT);
  }
}
