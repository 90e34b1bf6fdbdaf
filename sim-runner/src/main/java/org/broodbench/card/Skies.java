package org.broodbench.card;

import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.WeatherSeries;

/** Makes what a plant feels from a record, over the window of a scenario. */
@FunctionalInterface
public interface Skies {
  /** The forcing of the scenario's window and place. */
  Forcing over(Scenario scenario, WeatherSeries series);
}
