package org.broodbench.stress;

import java.util.Locale;

/** What can be the first thing to fail. */
public enum Failing {
  /** The brood comb is below its band for half an hour. */
  BROOD_COLD("brood comb below its band"),
  /** The brood comb is above its band for half an hour. */
  BROOD_HOT("brood comb above its band"),
  /** What bees and comb touch above the heater is over its limit. */
  PAN_HOT("surface above the heater too hot"),
  /** The battery is below the charge that the scenario requires, or else below a fifth. */
  BATTERY_LOW("battery low"),
  /** Heat is shed to spare the battery. */
  HEAT_SHED("heat shed"),
  /** The board has no power. */
  BOARD_DEAD("controller without power"),
  /** Carbon dioxide at the brood is above what the scenario requires, or else above 6 %. */
  AIR_BAD("air at the brood too thick"),
  /** The colony is dead. */
  COLONY_DEAD("colony dead");

  private final String words;

  Failing(String words) {
    this.words = words;
  }

  /** Name in results. */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** In words. */
  public String words() {
    return words;
  }
}
