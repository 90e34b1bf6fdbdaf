package org.broodbench.recipe;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.input.ScenarioReader;
import org.broodbench.input.ScenarioWeather;
import org.broodbench.rig.Scenario;
import org.broodbench.stress.StressPlan;

/**
 * All that a study is made of, as data: equal recipes give equal studies on every machine.
 *
 * @param kind what study
 * @param text bytes of the scenario's file
 * @param settings {@code KEY=VALUE} texts on top of it
 * @param weather the scenario over its place and window, with its weather
 * @param count hard weeks, seasons or members of the ensemble, whichever the study counts
 * @param inSeason whether hard weeks are of the scenario's time of the year
 * @param plan what is tried beside single faults; of no meaning to other studies
 */
public record Recipe(
    Kind kind,
    byte[] text,
    List<String> settings,
    ScenarioWeather weather,
    int count,
    boolean inSeason,
    StressPlan plan) {
  /** What study. */
  public enum Kind {
    /** Faults in hard weeks. */
    STRESS,
    /** Settings over seasons. */
    TUNE,
    /** Parts over seasons. */
    SIZE,
    /** An ensemble over weather and uncertain numbers. */
    SURE
  }

  /** Refuses a scenario that is not that of text and settings: elsewhere it would be another. */
  public Recipe {
    settings = List.copyOf(settings);
    if (!weather.scenario().equals(rebuilt(text, settings, weather.scenario()))) {
      throw new IllegalArgumentException("the scenario is not that of its text and settings");
    }
  }

  /** One that counts nothing but seasons or members. */
  public Recipe(Kind kind, byte[] text, List<String> settings, ScenarioWeather weather, int count) {
    this(kind, text, settings, weather, count, false, StressPlan.SINGLES);
  }

  /** The scenario of a rig with further settings, at the same place and over the same window. */
  public Scenario rebuilt(List<String> further) {
    List<String> all = new ArrayList<>(settings);
    all.addAll(further);
    return rebuilt(text, all, weather.scenario());
  }

  private static Scenario rebuilt(byte[] text, List<String> settings, Scenario placed) {
    return ScenarioReader.read(placed.fileName(), text, settings)
        .withPlace(placed.place())
        .withWindow(placed.window());
  }
}
