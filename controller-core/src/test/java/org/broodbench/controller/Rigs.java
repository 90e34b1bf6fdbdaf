package org.broodbench.controller;

/** A handful of rigs that together fit every optional part. */
final class Rigs {
  static final int COUNT = 6;

  private Rigs() {}

  static Settings of(int rig) {
    Settings full = Bench.combFull().with(Setting.PURGE_TIMED_EVERY_MILLIS, 3_600_000);
    return switch (rig) {
      case 0 -> Bench.comb();
      case 1 -> full;
      case 2 ->
          full.with(Setting.FITTED_SUPPLY_SELECT, true)
              .with(Setting.SUPPLY_PREFER_BATTERY, true)
              .with(Setting.FITTED_BATTERY_CURRENT, false)
              .with(Setting.FITTED_PANEL_POWER, true)
              .with(Setting.HEAT_SOAK_CENTI_K, 100);
      case 3 ->
          Settings.defaults(ProbePlace.BROOD_COMB, Chemistry.LITHIUM_IRON_PHOSPHATE)
              .with(Setting.FITTED_HEATER_CURRENT, true)
              .with(Setting.FITTED_OUTDOOR, true)
              .with(Setting.FITTED_HUMIDITY, true)
              .with(Setting.FALLBACK_ALLOWED, false);
      case 4 ->
          full.with(Setting.BROOD_B_LIKE_PLACE, false)
              .with(Setting.LIMIT_BROOD_B_CENTI_C, 3000)
              .with(Setting.RELAY_STARTS_PER_HOUR, 2)
              .with(Setting.RELAY_MIN_OFF_MILLIS, 60_000)
              .with(Setting.RELAY_MIN_ON_MILLIS, 30_000)
              .with(Setting.SHED_KEEP_INVERTER, true);
      default ->
          Settings.defaults(ProbePlace.NEST_EDGE, Chemistry.FLOODED)
              .with(Setting.FITTED_BATTERY, false)
              .with(Setting.FITTED_SUPPLY_SELECT, true)
              .with(Setting.FITTED_FAN, false);
    };
  }
}
