package org.broodbench.rig;

/**
 * Where the weather of a run comes from.
 *
 * @param file weather file relative to the scenario; empty means the generator of the demo world
 * @param generatorSeed seed of the generated weather
 * @param longestGapHours longest gap that is filled, hours
 * @param groundAlbedo share of sunlight that the ground sends back, 0 to 1
 */
public record WeatherChoice(
    String file, long generatorSeed, double longestGapHours, double groundAlbedo) {
  /** Whether the generator makes the weather. */
  public boolean generated() {
    return file.isEmpty();
  }
}
