package org.broodbench.serve;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.broodbench.input.BadInput;
import org.broodbench.input.KeyOffers;
import org.broodbench.input.Problem;
import org.broodbench.input.ScenarioReader;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.loop.Pace;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.Simulation;
import org.broodbench.plant.Plant;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.WeatherChoice;
import org.broodbench.rig.Window;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.Place;
import org.broodbench.sky.Plane;
import org.broodbench.study.Evaluation;
import org.broodbench.study.Outcome;
import org.broodbench.study.Remedies;
import org.broodbench.study.RemedySearch;

/**
 * The rig that the page is about, as the program was started with it: makes variants of it with
 * settings on top and runs them. May be used from several threads.
 */
public final class Bench {
  /** Longest window, days; own choice, for the memory that its trace takes. */
  static final int MOST_DAYS = 70;

  /** Rows of the trace at most; own choice, likewise. */
  private static final int MOST_ROWS = 110_000;

  private static final int KEPT = 6;

  private final Source source;
  private final int threads;
  private final Map<WeatherKey, ScenarioWeather> weathers = lately();
  private final Map<ForcingKey, Forcing> forcings = lately();
  private final Map<List<String>, Outcome> outcomes = lately();

  /**
   * What the program was started with.
   *
   * @param name of the scenario file as it was given
   * @param text its bytes
   * @param folder folder that its weather file is relative to; null where it has none
   * @param weather files that replace its weather
   * @param settings {@code KEY=VALUE} texts of the command line
   */
  public record Source(
      String name, byte[] text, Path folder, List<Path> weather, List<String> settings) {}

  /** What weather depends on. */
  private record WeatherKey(WeatherChoice choice, Place place, Window window) {}

  private record ForcingKey(WeatherKey weather, List<Plane> planes) {}

  /** A rig in its weather. */
  private record Rig(ScenarioWeather weather, Forcing forcing) {
    Scenario scenario() {
      return weather.scenario();
    }
  }

  /**
   * What a run gave.
   *
   * @param outcome the verdict and its runs
   * @param film what the controller thought
   */
  record Ran(Outcome outcome, Film film) {}

  /** Reads nothing yet. */
  public Bench(Source source, int threads) {
    this.source = source;
    this.threads = threads;
  }

  /** A map that forgets what was not asked for lately. */
  static <K, V> Map<K, V> lately() {
    return new LinkedHashMap<>(16, 0.75f, true) {
      private static final long serialVersionUID = 1L;

      @Override
      protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
        return size() > KEPT;
      }
    };
  }

  Source source() {
    return source;
  }

  /**
   * The scenario with settings on top of what the command line set.
   *
   * @throws BadInput where they cannot be used
   */
  Scenario scenario(List<String> settings) {
    Scenario s = ScenarioReader.read(source.name(), source.text(), all(settings));
    int rows = 86_400 / s.run().traceIntervalS() * s.window().days();
    if (s.window().days() > MOST_DAYS || rows > MOST_ROWS) {
      throw refused(
          "run.days",
          s.window().days() + " days, a row every " + s.run().traceIntervalS() + " s",
          "at most " + MOST_DAYS + " days and " + MOST_ROWS + " rows on the page",
          "Longer windows run on the command line.");
    }
    return s;
  }

  /** Every key of the scenario with its value; where the sum of the panels is none, it is told. */
  List<KeyOffers.Offer> offers(List<String> settings) {
    double panelW = scenario(settings).pv().powerW();
    List<KeyOffers.Offer> offers = new ArrayList<>();
    for (KeyOffers.Offer o : KeyOffers.of(source.name(), source.text(), all(settings))) {
      boolean sum = o.path().equals("pv.power") && Double.isNaN(o.number());
      offers.add(
          sum ? new KeyOffers.Offer(o.path(), o.key(), panelW + " W", panelW, o.assumed()) : o);
    }
    return offers;
  }

  /** Rows of events in the file and on the command line: the number of the next one. */
  int eventRows() {
    return KeyOffers.rows(source.name(), source.text(), source.settings(), "event");
  }

  private List<String> all(List<String> settings) {
    for (String setting : settings) {
      if (setting.replace(" ", "").startsWith("weather.file=")) {
        throw refused(
            "weather.file", "a file", "only what the program was started with", "Use --weather.");
      }
    }
    List<String> all = new ArrayList<>(source.settings());
    all.addAll(settings);
    return all;
  }

  private static BadInput refused(String key, String found, String allowed, String hint) {
    return new BadInput(List.of(new Problem("page", 0, 0, key, found, allowed, hint)));
  }

  /**
   * Runs the rig with settings on top.
   *
   * @param quick at the pace of a search, for a first look
   * @param wanted asked now and then whether anybody still waits for it
   * @throws BadInput where they cannot be used
   * @throws Overtaken where nobody waits for it
   */
  Ran run(List<String> settings, boolean quick, BooleanSupplier wanted) {
    Rig rig = rig(scenario(settings));
    Film film = new Film(rig.scenario());
    List<String> assumed = new ArrayList<>(rig.scenario().assumed());
    assumed.addAll(rig.weather().assumed());
    assumed.addAll(rig.forcing().assumed());
    var series = rig.weather().series();
    Outcome.WeatherNote note =
        new Outcome.WeatherNote(
            series.source(), series.formatId(), series.filledHours(), series.warnings());
    Outcome outcome =
        Evaluation.watched(
            rig.scenario(),
            rig.forcing(),
            note,
            assumed,
            threads,
            quick,
            (endS, lengthS, plant, commands) -> {
              if (!wanted.getAsBoolean()) {
                throw new Overtaken();
              }
              film.step(endS, lengthS, plant, commands);
            },
            main -> {});
    if (!quick) {
      keep(settings, outcome);
    }
    return new Ran(outcome, film);
  }

  /**
   * What the controller says tick by tick over some minutes, in the run in full.
   *
   * @param atS when they begin, s since the start; in the window
   */
  String ticks(List<String> settings, long atS) {
    Rig rig = rig(scenario(settings));
    Scenario s = rig.scenario();
    long withinS = Math.max(0, Math.min(atS, 86_400L * s.window().days() - 1));
    int days = (int) ((withinS + TickWatch.STRETCH_MS / 1000) / 86_400) + 1;
    Scenario begun =
        s.withWindow(new Window(s.window().fromEpochS(), Math.min(days, s.window().days())));
    TickWatch watch =
        new TickWatch(new ReferenceController(s.controller().settings()), withinS * 1000);
    new Simulation(begun, rig.forcing(), watch, Pace.exact(begun, Pace.Keep.FIGURES)).run();
    return watch.json();
  }

  private synchronized void keep(List<String> settings, Outcome outcome) {
    outcomes.put(List.copyOf(settings), outcome);
  }

  private synchronized Outcome kept(List<String> settings) {
    return outcomes.get(settings);
  }

  /**
   * Single changes that help, for a rig that was run in full or is now.
   *
   * @throws Overtaken where nobody waits for it
   */
  RemedySearch remedies(List<String> settings, BooleanSupplier wanted) {
    Outcome outcome = kept(settings);
    if (outcome == null) {
      outcome = run(settings, false, wanted).outcome();
    }
    return Remedies.search(outcome, changes -> variant(settings, changes, wanted), threads);
  }

  private Optional<Remedies.Variant> variant(
      List<String> settings, List<String> changes, BooleanSupplier wanted) {
    if (!wanted.getAsBoolean()) {
      throw new Overtaken();
    }
    List<String> both = new ArrayList<>(settings);
    both.addAll(changes);
    try {
      Rig rig = rig(scenario(both));
      return Optional.of(new Remedies.Variant(rig.scenario(), rig.forcing()));
    } catch (BadInput e) {
      return Optional.empty(); // a change that this rig cannot take
    }
  }

  /** Makes weather and forcing, or takes those that were made lately. */
  private synchronized Rig rig(Scenario s) {
    WeatherKey key = new WeatherKey(s.weather(), s.place(), s.window());
    ScenarioWeather found = weathers.get(key);
    if (found == null) {
      found = ScenarioWeather.of(s, source.folder(), source.weather());
      weathers.put(key, found);
    }
    ScenarioWeather own =
        new ScenarioWeather(
            s.withPlace(found.scenario().place()), found.series(), found.file(), found.assumed());
    List<Plane> planes = Plant.planes(own.scenario());
    ForcingKey forcingKey = new ForcingKey(key, planes);
    Forcing forcing = forcings.get(forcingKey);
    if (forcing == null) {
      forcing = own.forcing(planes);
      forcings.put(forcingKey, forcing);
    }
    return new Rig(own, forcing);
  }
}
