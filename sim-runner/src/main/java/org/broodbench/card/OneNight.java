package org.broodbench.card;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.ShedLevel;
import org.broodbench.loop.Pace;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.Simulation;
import org.broodbench.loop.Trace;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.FaultKind;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.Window;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.Nights;
import org.broodbench.sky.RepeatedDay;
import org.broodbench.sky.WeatherSeries;

/**
 * One night of a record, made warmer or colder, over and over: the stage on which a battery is
 * asked how long it lasts. A run begins some hours before dusk, so that hive and battery have
 * settled.
 */
final class OneNight {
  /** A run begins so long before dusk, s; own choice. */
  static final int LEAD_S = 6 * 3600;

  private static final int TICK_MS = 10_000;
  private static final int STEP_MS = 60_000;
  private static final int DAY_S = 86_400;

  private final Scenario scenario;
  private final Skies skies;
  private final WeatherSeries series;
  private final Nights.Night night;

  /**
   * A night of the series.
   *
   * @param scenario the rig; its window does not matter
   * @param series a record that holds twelve hours on both sides of the dusk
   */
  OneNight(Scenario scenario, Skies skies, WeatherSeries series, Nights.Night night) {
    this.scenario = scenario;
    this.skies = skies;
    this.series = series;
    this.night = night;
  }

  /** Seconds from the start of a run to dawn. */
  double dawnS() {
    return LEAD_S + (double) (night.dawnEpochS() - night.duskEpochS());
  }

  /** The forcing of some days of such nights, warmer by so much; read by any number of runs. */
  Forcing forcing(int days, double warmerByK) {
    WeatherSeries day =
        RepeatedDay.of(series, night.duskEpochS() - DAY_S / 2, 1, days + 1, warmerByK);
    return skies.over(scenario.withWindow(window(days)), day);
  }

  private Window window(int days) {
    return new Window(night.duskEpochS() - LEAD_S, days);
  }

  /**
   * Runs it.
   *
   * @param forcing of the same number of days
   * @param harvest whether panel and shore power go on beyond dusk
   */
  Trace run(Forcing forcing, int days, double initialSoc, double lossFactor, boolean harvest) {
    List<EventSpec> events = new ArrayList<>();
    if (!harvest) {
      if (FaultKind.PANEL_COVERED.appliesTo(scenario)) {
        events.add(
            new EventSpec.Fault(LEAD_S, FaultKind.PANEL_COVERED, Double.POSITIVE_INFINITY, 0));
      }
      if (FaultKind.SHORE_LOST.appliesTo(scenario)) {
        events.add(new EventSpec.Fault(LEAD_S, FaultKind.SHORE_LOST));
      }
    }
    Scenario s =
        scenario
            .withWindow(window(days))
            .withEvents(events)
            .withBattery(scenario.battery().withInitialSoc(initialSoc))
            .withColony(scenario.colony().withClusterLossFactor(lossFactor));
    Pace pace = new Pace(TICK_MS, STEP_MS, Pace.Keep.TRACE);
    return new Simulation(s, forcing, new ReferenceController(s.controller().settings()), pace)
        .run()
        .trace();
  }

  /**
   * The first time after dusk at which the heat is shed or the bus is dead, s since dusk; not a
   * number where that does not come.
   */
  double heatEndsS(Trace t, double untilS) {
    return levelComesS(t, ShedLevel.HEAT_SHED, untilS);
  }

  /** The same for the set point being lowered, the first thing that is done for the battery. */
  double fullEndsS(Trace t) {
    return levelComesS(t, ShedLevel.SET_BACK, Double.POSITIVE_INFINITY);
  }

  private double levelComesS(Trace t, int atLeast, double untilS) {
    double[] level = t.column("shed_level");
    double[] volts = t.column("battery_v");
    for (int i = LEAD_S / t.intervalS(); i < t.rows(); i++) {
      double at = (double) i * t.intervalS();
      if (at > untilS) {
        break;
      }
      if (level[i] >= atLeast || dead(volts[i])) {
        return at - LEAD_S;
      }
    }
    return Double.NaN;
  }

  /** The first time after dusk at which the controller's board has no power, s since dusk. */
  double boardEndsS(Trace t) {
    double[] volts = t.column("battery_v");
    for (int i = LEAD_S / t.intervalS(); i < t.rows(); i++) {
      if (dead(volts[i])) {
        return (double) i * t.intervalS() - LEAD_S;
      }
    }
    return Double.NaN;
  }

  private boolean dead(double volts) {
    return !(volts >= scenario.controller().brownOutV());
  }
}
