package org.broodbench.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.Window;
import org.broodbench.sky.ForcingSettings;
import org.broodbench.sky.WeatherSeries;

/** Fits the knobs of a scenario to a log and says how sure that is. */
public final class Calibrator {
  /** A knob is told where the log leaves less than this of what was unknown; own choice. */
  private static final double TOLD = 0.6;

  private final Settings settings;
  private final boolean fitAlone;
  private final ExecutorService pool;

  /**
   * How to go about it.
   *
   * @param threads on which simulations run side by side; the answer does not depend on it
   * @param progress is told what is being done
   */
  public record Settings(int threads, Consumer<String> progress) {}

  private Calibrator(Settings settings, boolean fitAlone, ExecutorService pool) {
    this.settings = settings;
    this.fitAlone = fitAlone;
    this.pool = pool;
  }

  /**
   * A log, a scenario and the weather.
   *
   * @param log cleaned
   * @param logName for people
   * @param scenario in its own time
   * @param weather a record over the log, or null where the log has air and sun
   * @param weatherMeasured whether that record was measured
   * @param forcing how weather becomes what the hive feels
   */
  public record Question(
      FieldLog log,
      String logName,
      Scenario scenario,
      WeatherSeries weather,
      boolean weatherMeasured,
      ForcingSettings forcing) {}

  /**
   * Fits.
   *
   * @throws LogRefused where the log cannot be used with this scenario
   */
  public static Calibration calibrate(Question question, Settings settings) {
    return calibrate(question, settings, false);
  }

  /** The same; the fit alone leaves out advice and decisions. */
  static Calibration calibrate(Question question, Settings settings, boolean fitAlone) {
    ExecutorService pool = Executors.newFixedThreadPool(settings.threads());
    try {
      return new Calibrator(settings, fitAlone, pool).run(question);
    } finally {
      pool.shutdownNow();
    }
  }

  /** The question with the clock of its log put right, and the log no longer than its weather. */
  private static Question righted(Question q) {
    WeatherSeries measured = q.weatherMeasured() ? q.weather() : null;
    FieldLog log = LogClock.righted(q.log(), q.scenario().place(), measured);
    if (q.weather() != null) {
      log = log.between(q.weather().startEpochS(), q.weather().endEpochS());
    }
    return new Question(
        log, q.logName(), q.scenario(), q.weather(), q.weatherMeasured(), q.forcing());
  }

  private Calibration run(Question asked) {
    Question q = righted(asked);
    List<String> notes = new ArrayList<>(q.log().notes());
    List<LogColumn> wanted = wanted(q, notes);
    Observations seen = new Observations(q.log(), wanted);
    Scenario scenario = inLogTime(q.scenario(), seen);
    LogWeather weather =
        LogWeather.of(
            q.log().byHand() ? q.log().without(LogColumn.OUTDOOR, LogColumn.SUN) : q.log(),
            seen,
            scenario,
            q.weather(),
            q.weatherMeasured(),
            q.forcing());
    notes.addAll(weather.notes());
    RelayGuess relay = RelayGuess.of(q.log(), scenario, seen);
    Model model = new Model(scenario, weather.forcing(), seen, relay);
    boolean[] turned = model.free();
    List<Knob> free = new ArrayList<>();
    for (Knob k : Knob.values()) {
      if (turned[k.ordinal()]) {
        free.add(k);
      }
    }
    if (q.log().byHand()) {
      return byHand(q, model, wanted, free, weather.sunMeasured(), notes);
    }
    FitRun run = new FitRun(model, free, pool, settings.progress());
    run.run();
    settings.progress().accept("intervals");
    Fit fit = run.fit();
    double[][] ends = Profile.of(fit);
    List<Calibration.Parameter> parameters = new ArrayList<>();
    for (int j = 0; j < free.size(); j++) {
      parameters.add(parameter(scenario, fit, ends, j, weather.sunMeasured()));
    }
    List<Calibration.Channel> channels = channels(model, run);
    settings.progress().accept("what was other in the second half, and what changes would do");
    List<Calibration.Trend> trends = Trends.of(run.sensitivity(), free, fit.all(), run.noise());
    List<Calibration.Finding> alarms = Alarms.of(parameters, trends);
    return new Calibration(
        q.log(),
        q.logName(),
        scenario,
        relay.relay(),
        parameters,
        correlation(fit.covariance()),
        channels,
        run.heldOut(),
        run.starts(),
        Misfits.of(parameters, channels, run.heldOut()),
        trends,
        alarms,
        fitAlone ? List.of() : Advice.of(model, fit, pool),
        fitAlone ? null : DecisionCheck.of(q.log(), q.scenario().controller().settings()),
        List.of(),
        notes);
  }

  private Calibration byHand(
      Question q,
      Model model,
      List<LogColumn> wanted,
      List<Knob> free,
      boolean sunMeasured,
      List<String> notes) {
    settings.progress().accept("hives that the daily log might be of");
    DailyLog.Answer a = new DailyLog(model, q.log(), wanted, free, pool).answer();
    List<Calibration.Parameter> parameters = new ArrayList<>();
    for (int j = 0; j < a.free().size(); j++) {
      Knob k = a.free().get(j);
      double sigma = Math.sqrt(a.covariance()[j][j]);
      boolean told = sigma < TOLD && (sunMeasured || !needsSun(k));
      parameters.add(
          new Calibration.Parameter(
              k,
              k.middle(model.scenario()),
              k.value(model.scenario(), a.z()[j]),
              k.value(model.scenario(), a.z()[j] - Profile.Z90 * sigma),
              k.value(model.scenario(), a.z()[j] + Profile.Z90 * sigma),
              a.z()[j],
              sigma,
              told,
              told ? "" : Wants.of(k)));
    }
    List<Calibration.Finding> alarms = new ArrayList<>(Alarms.of(parameters, List.of()));
    long bad = a.readings().stream().filter(r -> r.mark().equals("alarming")).count();
    if (bad > 0) {
      alarms.add(
          new Calibration.Finding(
              "alarming_readings",
              bad + " readings are far from anything that such a hive reads in this weather.",
              "they are marked in the table of readings"));
    }
    Calibration.HeldOut heldOut =
        new Calibration.HeldOut(
            q.log().fromS() + (q.log().toS() - q.log().fromS()) * 2 / 3,
            new double[0],
            a.heldOutK());
    return new Calibration(
        q.log(),
        q.logName(),
        model.scenario(),
        new Calibration.Relay("by the scenario's controller, as simulated", 0.7),
        parameters,
        correlation(a.covariance()),
        List.of(),
        heldOut,
        new double[0],
        Misfits.of(parameters, List.of(), heldOut),
        List.of(),
        alarms,
        List.of(),
        null,
        a.readings(),
        notes);
  }

  private static Calibration.Parameter parameter(
      Scenario s, Fit fit, double[][] ends, int j, boolean sunMeasured) {
    Knob k = fit.misfit().free().get(j);
    boolean told = fit.sigma(j) < TOLD && (sunMeasured || !needsSun(k));
    return new Calibration.Parameter(
        k,
        k.middle(s),
        k.value(s, fit.point()[j]),
        k.value(s, ends[j][0]),
        k.value(s, ends[j][1]),
        fit.point()[j],
        fit.sigma(j),
        told,
        told ? "" : Wants.of(k));
  }

  private static boolean needsSun(Knob k) {
    return k == Knob.SOLAR_GAIN || k == Knob.PANEL_FACTOR;
  }

  private static double[][] correlation(double[][] covariance) {
    double[][] out = new double[covariance.length][covariance.length];
    for (int a = 0; a < out.length; a++) {
      for (int b = 0; b < out.length; b++) {
        out[a][b] = covariance[a][b] / Math.sqrt(covariance[a][a] * covariance[b][b]);
      }
    }
    return out;
  }

  private static List<Calibration.Channel> channels(Model model, FitRun run) {
    double[] z = run.fit().all();
    double[][] simulated = model.simulate(z);
    double[][] deviations = Misfit.deviations(model, simulated, z);
    List<Calibration.Channel> out = new ArrayList<>();
    Observations seen = model.seen();
    long[] at = new long[seen.bins()];
    for (int b = 0; b < at.length; b++) {
      at[b] = seen.binMiddleS(b);
    }
    for (int c = 0; c < simulated.length; c++) {
      double[] measured = new double[at.length];
      for (int b = 0; b < at.length; b++) {
        measured[b] = simulated[c][b] + deviations[c][b];
      }
      double sigma = run.noise().sigma()[c];
      out.add(
          new Calibration.Channel(
              seen.channels().get(c),
              at,
              measured,
              simulated[c],
              Robust.rms(deviations[c]),
              sigma,
              run.noise().tau()[c],
              Noise.correlation(deviations[c], 1, 4 * sigma)));
    }
    return out;
  }

  /** Columns that the scenario can simulate too. */
  private static List<LogColumn> wanted(Question q, List<String> notes) {
    List<LogColumn> wanted = new ArrayList<>();
    for (LogColumn c : Observations.COMPARED) {
      if (q.log().has(c)) {
        if (Model.probe(q.scenario(), c) == -2) {
          notes.add(c.key() + ": the scenario has no such probe, so it is not compared");
        } else {
          wanted.add(c);
        }
      }
    }
    if (wanted.stream().noneMatch(LogColumn::inside)) {
      throw new LogRefused(
          0,
          "",
          "no temperature inside that the scenario has a probe for",
          "a probe of the log fitted in the scenario",
          "Set probe.pan.fitted = true or the like in the scenario.");
    }
    return wanted;
  }

  /** The scenario with its window at the log and its events at their dates. */
  static Scenario inLogTime(Scenario s, Observations seen) {
    double shiftS = s.window().fromEpochS() - seen.startS();
    List<EventSpec> events = new ArrayList<>();
    for (EventSpec e : s.events()) {
      moved(e, e.atS() + shiftS).ifPresent(events::add);
    }
    int days = (int) Math.max(1, ((long) seen.steps() * Observations.STEP_S + 86_399) / 86_400);
    return s.withWindow(new Window(seen.startS(), days)).withEvents(events);
  }

  /** What happened before the log and still holds is there from its start. */
  private static java.util.Optional<EventSpec> moved(EventSpec e, double atS) {
    boolean past = atS < 0;
    double at = Math.max(0, atS);
    if (e instanceof EventSpec.InstallColony c) {
      return java.util.Optional.of(new EventSpec.InstallColony(at, c.bees(), c.broodCells()));
    } else if (e instanceof EventSpec.Feed f) {
      return past
          ? java.util.Optional.empty()
          : java.util.Optional.of(
              new EventSpec.Feed(at, f.massKg(), f.waterShare(), f.temperatureC()));
    } else if (e instanceof EventSpec.OpenLid l) {
      return past
          ? java.util.Optional.empty()
          : java.util.Optional.of(new EventSpec.OpenLid(at, l.durationS()));
    } else if (e instanceof EventSpec.AddBox b) {
      return java.util.Optional.of(new EventSpec.AddBox(at, b.heightM(), b.frames(), b.storesKg()));
    } else if (e instanceof EventSpec.ChangeVent v) {
      return java.util.Optional.of(new EventSpec.ChangeVent(at, v.topVentM2()));
    } else if (e instanceof EventSpec.ShorePower p) {
      return java.util.Optional.of(new EventSpec.ShorePower(at, p.present()));
    } else if (e instanceof EventSpec.SetPoint p) {
      return java.util.Optional.of(new EventSpec.SetPoint(at, p.setPointC()));
    }
    return java.util.Optional.empty();
  }
}
