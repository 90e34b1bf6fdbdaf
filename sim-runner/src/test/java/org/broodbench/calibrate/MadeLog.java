package org.broodbench.calibrate;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import org.broodbench.colony.ColonySpec;
import org.broodbench.controller.Settings;
import org.broodbench.hive.BoxSpec;
import org.broodbench.hive.HiveSpec;
import org.broodbench.loop.Pace;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.Simulation;
import org.broodbench.loop.Trace;
import org.broodbench.plant.Plant;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.TestRigs;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.ForcingSettings;
import org.broodbench.sky.GeneratorSettings;
import org.broodbench.sky.MonthlyNormals;
import org.broodbench.sky.WeatherGenerator;
import org.broodbench.sky.WeatherSeries;

/**
 * A log that is made by the simulation at its usual pace, the reference controller in the loop, of
 * a hive whose knobs a seed draws from their priors; with noise, offsets, roundings and a hole.
 */
final class MadeLog {
  private static final long DAY_S = 86_400;

  /** A logger is hung into a hive that has stood there: so many days are not logged. */
  private static final int BEFORE_DAYS = 2;

  /** What the keeper believes the hive to be. */
  final Scenario believed;

  /** Its weather. */
  final WeatherSeries weather;

  /** The real hive, with the windows and probes of the log. */
  Scenario real;

  /** How it is, by {@link Knob}. */
  final double[] truth;

  /** What was logged. */
  final RawLog raw = new RawLog();

  MadeLog(long seed, int days) {
    this(seed, days, 1);
  }

  /**
   * @param spread of the truth, in units of the priors
   */
  MadeLog(long seed, int days, double spread) {
    this(seed, days, spread, s -> s);
  }

  /**
   * @param spread of the truth, in units of the priors
   * @param secretly what else is otherwise in the real hive, unknown to its keeper
   */
  MadeLog(long seed, int days, double spread, UnaryOperator<Scenario> secretly) {
    this(seed, days, spread, secretly, null);
  }

  /**
   * @param later what the hive is from the middle of the log on, or null for no change; the battery
   *     is not logged then, since its charge would jump
   */
  MadeLog(
      long seed,
      int days,
      double spread,
      UnaryOperator<Scenario> secretly,
      UnaryOperator<Scenario> later) {
    SplittableRandom random = new SplittableRandom(seed);
    believed = believed(random, days + BEFORE_DAYS);
    truth = new double[Knob.COUNT];
    for (Knob k : Knob.values()) {
      truth[k.ordinal()] = spread * Math.max(-2.5, Math.min(2.5, normal(random)));
    }
    weather =
        WeatherGenerator.generate(
            new GeneratorSettings(
                seed,
                believed.place(),
                MonthlyNormals.UPLAND_VALLEY,
                believed.window().fromEpochS() / DAY_S,
                days + BEFORE_DAYS + 1,
                List.of(),
                new GeneratorSettings.Stress(5 * random.nextDouble(), 0, 0)));
    log(random, days + BEFORE_DAYS, secretly, later);
  }

  private static Scenario believed(SplittableRandom random, int days) {
    long from = DAY_S * (19_723 + 50 + random.nextInt(80));
    Scenario s = TestRigs.small(from, days);
    HiveSpec h = TestRigs.insulated(random.nextInt(3) * 0.02, 1);
    BoxSpec b = h.boxes().get(0);
    h = h.withBoxes(List.of(new BoxSpec(b.heightM(), b.frames(), 2 + 6 * random.nextDouble())));
    ColonySpec c = s.colony();
    c =
        new ColonySpec(
            1500 + 4000 * random.nextDouble(),
            c.beeMassG(),
            c.broodCells(),
            c.broodFrames(),
            1.7,
            c.shiverCeilingWKg(),
            c.broodHeatMW(),
            c.waterNear(),
            c.life());
    return TestRigs.withProbes(
        s.withHive(h).withColony(c),
        List.of(
            probe(ProbeSpec.Role.BROOD_A, ProbeSpec.Place.BROOD_COMB, 0),
            probe(ProbeSpec.Role.PAN, ProbeSpec.Place.PAN, 0),
            probe(ProbeSpec.Role.TOP, ProbeSpec.Place.TOP, 0),
            probe(ProbeSpec.Role.OUTDOOR, ProbeSpec.Place.OUTDOOR, 0)));
  }

  private static ProbeSpec probe(ProbeSpec.Role role, ProbeSpec.Place place, double offsetK) {
    // the trace has the pan and the top themselves
    double lagS = role == ProbeSpec.Role.BROOD_A ? 60 : 0;
    return new ProbeSpec(role, place, lagS, 0.05, 0.0625, offsetK);
  }

  private static double normal(SplittableRandom random) {
    double u = 1 - random.nextDouble();
    return StrictMath.sqrt(-2 * StrictMath.log(u))
        * StrictMath.cos(2 * StrictMath.PI * random.nextDouble());
  }

  private double offset(Knob k) {
    return k.spread() * truth[k.ordinal()];
  }

  /** The rig under other settings. */
  static Scenario withSettings(Scenario s, UnaryOperator<Settings> other) {
    return s.withController(s.controller().withSettings(other.apply(s.controller().settings())));
  }

  private void log(
      SplittableRandom random,
      int days,
      UnaryOperator<Scenario> secretly,
      UnaryOperator<Scenario> later) {
    real = FittedRig.at(believed, truth);
    real =
        TestRigs.withProbes(
            real,
            List.of(
                probe(
                    ProbeSpec.Role.BROOD_A,
                    ProbeSpec.Place.BROOD_COMB,
                    offset(Knob.BROOD_A_OFFSET)),
                probe(ProbeSpec.Role.PAN, ProbeSpec.Place.PAN, offset(Knob.PAN_OFFSET)),
                probe(ProbeSpec.Role.TOP, ProbeSpec.Place.TOP, offset(Knob.TOP_OFFSET)),
                probe(
                    ProbeSpec.Role.OUTDOOR, ProbeSpec.Place.OUTDOOR, offset(Knob.OUTDOOR_OFFSET))));
    real = secretly.apply(real);
    long from = real.window().fromEpochS();
    Trace t = run(real);
    Trace after = later == null ? t : run(later.apply(real));
    double[] brood = halves(t, after, "probe_a_c");
    double[] pan = halves(t, after, "pan_c");
    double[] top = halves(t, after, "top_c");
    double[] outdoor = halves(t, after, "outdoor_c");
    double[] volts = t.column("battery_v");
    double[] heater = halves(t, after, "heater_on");
    double[] fan = halves(t, after, "fan_on");
    int first = BEFORE_DAYS * 1440;
    int hole = first + random.nextInt(t.rows() - first);
    for (int i = first; i < t.rows(); i++) {
      boolean lost = i >= hole && i < hole + 200 || random.nextInt(100) == 0;
      if (lost) {
        continue;
      }
      double[] row = new double[LogColumn.COUNT];
      Arrays.fill(row, Double.NaN);
      row[LogColumn.BROOD_A.ordinal()] = brood[i];
      row[LogColumn.PAN.ordinal()] = read(random, pan[i] + offset(Knob.PAN_OFFSET));
      row[LogColumn.TOP.ordinal()] = read(random, top[i] + offset(Knob.TOP_OFFSET));
      row[LogColumn.OUTDOOR.ordinal()] = read(random, outdoor[i] + offset(Knob.OUTDOOR_OFFSET));
      double v = volts[i] + offset(Knob.VOLTS_OFFSET) + 0.005 * normal(random);
      row[LogColumn.BATTERY_V.ordinal()] = later == null ? Math.rint(v * 100) / 100 : Double.NaN;
      row[LogColumn.HEATER.ordinal()] = heater[i];
      row[LogColumn.FAN.ordinal()] = fan[i];
      raw.add(i + 2, from + 60L * i, row);
    }
  }

  /** When a change in the middle of the log comes, s after the start of the run. */
  static double middleS(int days) {
    return (BEFORE_DAYS + days / 2.0) * DAY_S;
  }

  /** First row of the trace that is logged. */
  static int firstRow() {
    return BEFORE_DAYS * 1440;
  }

  /** A run of a rig through the weather of the log, from two days before it. */
  Trace run(Scenario s) {
    long from = s.window().fromEpochS();
    Forcing forcing =
        Forcing.of(
            weather,
            s.place(),
            from,
            from + s.window().days() * DAY_S,
            Plant.planes(s),
            ForcingSettings.DEFAULT);
    // with the logger comes a battery as charged as the keeper believes it to be
    boolean[] renewed = new boolean[1];
    return new Simulation(
            s,
            forcing,
            new ReferenceController(s.controller().settings()),
            Pace.exact(s, Pace.Keep.TRACE),
            (endS, lengthS, plant, commands) -> {
              if (!renewed[0] && endS > BEFORE_DAYS * DAY_S - 60) {
                plant.renewSupply();
                renewed[0] = true;
              }
            })
        .run()
        .trace();
  }

  private static double[] halves(Trace before, Trace after, String column) {
    double[] out = before.column(column).clone();
    if (after != before) {
      int middle = firstRow() + (out.length - firstRow()) / 2;
      System.arraycopy(after.column(column), middle, out, middle, out.length - middle);
    }
    return out;
  }

  private static double read(SplittableRandom random, double celsius) {
    return Math.rint((celsius + 0.05 * normal(random)) / 0.0625) * 0.0625;
  }

  /** The fit to it. */
  Calibration calibrate(int threads) {
    return calibrate(believed, threads);
  }

  /** The fit of another scenario to it. */
  Calibration calibrate(Scenario scenario, int threads) {
    return Calibrator.calibrate(
        new Calibrator.Question(
            LogCleaner.clean(raw), "made", scenario, weather, true, ForcingSettings.DEFAULT),
        new Calibrator.Settings(threads, stage -> {}));
  }

  /** The fit alone, on one thread. */
  Calibration fitAlone() {
    return Calibrator.calibrate(
        new Calibrator.Question(
            LogCleaner.clean(raw), "made", believed, weather, true, ForcingSettings.DEFAULT),
        new Calibrator.Settings(1, stage -> {}),
        true);
  }
}
