package org.broodbench.calibrate;

/** What a keeper could log so that a knob is told. */
final class Wants {
  private Wants() {}

  static String of(Knob k) {
    return switch (k) {
      case HIVE_LOSS ->
          "a cold, windless week with the relay logged, or some nights with the hive empty";
      case PAN_HEAT -> "a probe on the pan, every minute, and the relay";
      case STORES -> "the weight of the hive; or a probe under the lid over some nights";
      case HEATER_POWER -> "heater current and battery volts; or a probe on the pan and the relay";
      case AIR_LEAKAGE -> "some days with the vent shut between days with it open; humidity";
      case SOLAR_GAIN -> "sunny days and a probe under the lid, with measured sun";
      case COLONY_BEES ->
          "a count of covered frames; a probe in the air of the box beside the comb";
      case CLUSTER_LOSS -> "a probe between the combs and one in the air of the box, cold nights";
      case BATTERY_CAPACITY -> "battery current, and one night that takes a third of the charge";
      case BATTERY_RESISTANCE -> "volts every minute while the heater switches";
      case PANEL_FACTOR -> "battery current, and days on which the battery does not fill up";
      case START_CHARGE -> "volts of the rested battery before the start";
      case OUTDOOR_OFFSET -> "all probes in one bucket of ice water once";
      default -> "the probe in ice water once";
    };
  }
}
