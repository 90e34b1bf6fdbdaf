package org.broodbench.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.loop.Pace;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.RunResult;
import org.broodbench.loop.Simulation;
import org.broodbench.loop.Trace;
import org.broodbench.power.SupplyUse;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.Nights;
import org.broodbench.sky.WeatherSeries;
import org.broodbench.study.Evaluation;

/** Makes a field card out of a season of simulated nights. */
public final class CardMaker {
  private static final int TICK_MS = 10_000;
  private static final int STEP_MS = 10_000;

  /** Columns of tonight's table, steps of 0.1 V (lithium 0.05 V) above the shedding of heat. */
  private static final int[] STEPS = {0, 1, 2, 3, 4, 6, 9};

  /** How long a hive without harvest is looked at, days; own choice. */
  private static final int HARVEST_DAYS = 6;

  private final Scenario scenario;
  private final WeatherSeries series;
  private final Skies skies;
  private final double[] losses;
  private final List<Nights.Night> nights;
  private final List<List<NightLog>> logs = new ArrayList<>();
  private final List<RunResult> runs;

  /**
   * Runs the season at the three heat losses of small clusters.
   *
   * @param scenario rig, with the window of the season: at least two days
   * @param series the record; it must reach half a day beyond both ends of the window
   * @throws IllegalArgumentException where the window holds no whole night
   */
  public CardMaker(Scenario scenario, WeatherSeries series, Skies skies) {
    this.scenario = scenario;
    this.series = series;
    this.skies = skies;
    losses =
        new double[] {
          scenario.colony().clusterLossFactor(), Evaluation.LOW_LOSS, Evaluation.HIGH_LOSS
        };
    long half = 43_200;
    long from = scenario.window().fromEpochS();
    long to = scenario.window().toEpochS();
    nights =
        Nights.between(scenario.place(), from, to).stream()
            .filter(n -> n.duskEpochS() - half >= series.startEpochS())
            .filter(n -> n.duskEpochS() + half <= series.endEpochS())
            .toList();
    if (nights.isEmpty()) {
      throw new IllegalArgumentException("the window holds no whole night");
    }
    Forcing forcing = skies.over(scenario, series);
    Pace pace = new Pace(TICK_MS, STEP_MS, Pace.Keep.TRACE);
    runs =
        IntStream.range(0, losses.length)
            .parallel()
            .mapToObj(
                k -> {
                  Scenario s =
                      scenario.withColony(scenario.colony().withClusterLossFactor(losses[k]));
                  var core = new ReferenceController(s.controller().settings());
                  return new Simulation(s, forcing, core, pace).run();
                })
            .toList();
    for (RunResult r : runs) {
      logs.add(NightLog.of(scenario, r.trace(), nights));
    }
  }

  /** The whole card. */
  public FieldCard card(String weather) {
    List<Expectation> expected = Expectation.of(logs);
    return new FieldCard(
        scenario,
        weather,
        scenario.window().days(),
        settings(scenario.controller().settings()),
        expected,
        table(expected),
        afterHarvest(expected),
        Signs.of(scenario, expected),
        notBack(),
        Optional.empty());
  }

  /**
   * What tonight brings.
   *
   * @param volts battery volts at dusk, heater off
   * @param lowC lowest temperature to come, °C
   */
  public Tonight.Answer tonight(double volts, double lowC) {
    return from(usual()).at(lowC, volts).get(0);
  }

  /** One night for every question, so that answers differ by volts and low alone. */
  private NightLog usual() {
    List<Expectation> sorts = Expectation.of(logs);
    return sorts.get(sorts.size() == 3 ? 1 : 0).typical();
  }

  private OneNight stage(NightLog log) {
    return new OneNight(scenario, skies, series, nights.get(logs.get(0).indexOf(log)));
  }

  private Tonight from(NightLog log) {
    return new Tonight(stage(log), log.lowC(), losses, scenario.battery().nominalV());
  }

  /** Lows in steps of five kelvins around those of the season; volts from where heat is shed. */
  private List<List<Tonight.Answer>> table(List<Expectation> expected) {
    Range low = Range.NONE;
    Range dusk = Range.NONE;
    for (Expectation e : expected) {
      low = low.with(e.lowC());
      dusk = dusk.with(e.duskV());
    }
    double scale = scenario.battery().nominalV() / 12;
    Settings set = scenario.controller().settings();
    double lowest =
        set.is(Setting.SHED_BY_STATE_OF_CHARGE)
            ? dusk.low() - 0.3 * scale
            : set.get(Setting.SHED_HEAT_ENTER_MILLI_V) / 1000.0;
    double step = (scenario.battery().chemistry().leadAcid() ? 0.1 : 0.05) * scale;
    double[] volts = new double[STEPS.length];
    for (int i = 0; i < volts.length; i++) {
      volts[i] = Math.rint((lowest + STEPS[i] * step) * 100) / 100;
    }
    Tonight nights = from(usual());
    List<List<Tonight.Answer>> rows = new ArrayList<>();
    double coldest = 5 * Math.floor(low.low() / 5) - 5;
    for (double c = coldest; c <= low.high() + 2.5; c += 5) {
      rows.add(nights.at(c, volts));
    }
    return rows;
  }

  private List<FieldCard.AfterHarvest> afterHarvest(List<Expectation> expected) {
    List<FieldCard.AfterHarvest> out = new ArrayList<>();
    for (Expectation e : expected) {
      NightLog night = e.typical();
      OneNight stage = stage(night);
      Forcing forcing = stage.forcing(HARVEST_DAYS, 0);
      double looked = HARVEST_DAYS * 24 - OneNight.LEAD_S / 3600.0;
      double before = socBefore(night);
      Range heat = Range.NONE;
      Range full = Range.NONE;
      Range board = Range.NONE;
      List<Trace> traces =
          IntStream.range(0, losses.length)
              .parallel()
              .mapToObj(k -> stage.run(forcing, HARVEST_DAYS, before, losses[k], false))
              .toList();
      for (Trace t : traces) {
        heat = heat.with(hours(stage.heatEndsS(t, 1e9), looked));
        full = full.with(hours(stage.fullEndsS(t), looked));
        board = board.with(hours(stage.boardEndsS(t), looked));
      }
      out.add(new FieldCard.AfterHarvest(e.sort(), night.dusk().soc(), heat, full, board, looked));
    }
    return out;
  }

  private static double hours(double seconds, double looked) {
    return Double.isNaN(seconds) ? looked : seconds / 3600;
  }

  private double socBefore(NightLog night) {
    double[] soc = runs.get(0).trace().column("soc");
    int row = (int) ((night.duskS() - OneNight.LEAD_S) / runs.get(0).trace().intervalS());
    return soc[Math.max(0, row)];
  }

  private List<String> notBack() {
    List<String> out = new ArrayList<>();
    for (SupplyUse.Opened o : runs.get(0).supply().cutOuts()) {
      if (!o.returnsByItself()) {
        out.add(o.name().replace('_', ' '));
      }
    }
    out.add("the independent thermal cut-out of the heater");
    return out;
  }

  private static List<FieldCard.KeyedIn> settings(Settings s) {
    List<FieldCard.KeyedIn> out = new ArrayList<>();
    temperature(out, s, "Set point", Setting.HEAT_SET_POINT_CENTI_C);
    difference(out, s, "Differential", Setting.HEAT_DIFFERENTIAL_CENTI_K);
    time(out, s, "Minimum on", Setting.RELAY_MIN_ON_MILLIS);
    time(out, s, "Minimum off", Setting.RELAY_MIN_OFF_MILLIS);
    plain(out, "Most starts an hour", String.valueOf(s.get(Setting.RELAY_STARTS_PER_HOUR)));
    temperature(out, s, "Pan limit", Setting.LIMIT_PAN_CENTI_C);
    temperature(out, s, "Pan trip", Setting.LIMIT_PAN_TRIP_CENTI_C);
    temperature(out, s, "Brood limit", Setting.LIMIT_BROOD_CENTI_C);
    difference(out, s, "Set-back", Setting.HEAT_SET_BACK_CENTI_K);
    temperature(out, s, "Survival set point", Setting.HEAT_SURVIVAL_CENTI_C);
    if (s.is(Setting.FITTED_FAN)) {
      temperature(out, s, "Fan on at", Setting.FAN_ON_CENTI_C);
      temperature(out, s, "Fan off at", Setting.FAN_OFF_CENTI_C);
    }
    if (s.is(Setting.FITTED_BATTERY)) {
      boolean soc = s.is(Setting.SHED_BY_STATE_OF_CHARGE);
      shed(out, s, soc, "Set-back enter, leave", "SET_BACK");
      shed(out, s, soc, "Survival enter, leave", "SURVIVAL");
      shed(out, s, soc, "Heat shed enter, leave", "HEAT");
      shed(out, s, soc, "Fan shed enter, leave", "FAN");
      shed(out, s, soc, "Standby enter, leave", "STANDBY");
      time(out, s, "Shed after", Setting.SHED_ENTER_DELAY_MILLIS);
      time(out, s, "Back after", Setting.SHED_LEAVE_DELAY_MILLIS);
    }
    temperature(out, s, "Alarm brood low", Setting.ALARM_BROOD_LOW_CENTI_C);
    temperature(out, s, "Alarm brood high", Setting.ALARM_BROOD_HIGH_CENTI_C);
    return out;
  }

  private static void shed(
      List<FieldCard.KeyedIn> out, Settings s, boolean soc, String label, String level) {
    String unit = soc ? "_PERMILLE" : "_MILLI_V";
    int enter = s.get(Setting.valueOf("SHED_" + level + "_ENTER" + unit));
    int leave = s.get(Setting.valueOf("SHED_" + level + "_LEAVE" + unit));
    plain(
        out,
        label,
        soc
            ? format("%.0f %%, %.0f %%", enter / 10.0, leave / 10.0)
            : format("%.2f V, %.2f V", enter / 1000.0, leave / 1000.0));
  }

  private static void temperature(
      List<FieldCard.KeyedIn> out, Settings s, String label, Setting setting) {
    double c = s.get(setting) / 100.0;
    out.add(new FieldCard.KeyedIn(label, format("%.1f °C", c), format("%.1f °F", c * 1.8 + 32)));
  }

  private static void difference(
      List<FieldCard.KeyedIn> out, Settings s, String label, Setting setting) {
    double k = s.get(setting) / 100.0;
    out.add(new FieldCard.KeyedIn(label, format("%.1f K", k), format("%.1f °F", k * 1.8)));
  }

  private static void time(List<FieldCard.KeyedIn> out, Settings s, String label, Setting setting) {
    long sec = s.get(setting) / 1000;
    plain(
        out,
        label,
        sec % 60 == 0 && sec > 0 ? sec / 60 + " min" : format("%d min %d s", sec / 60, sec % 60));
  }

  private static void plain(List<FieldCard.KeyedIn> out, String label, String value) {
    out.add(new FieldCard.KeyedIn(label, value, value));
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
