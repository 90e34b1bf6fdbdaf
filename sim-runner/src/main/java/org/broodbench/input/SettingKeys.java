package org.broodbench.input;

import static org.broodbench.controller.Setting.*;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.Setting;

/** Which key of a scenario sets which setting of the controller. */
final class SettingKeys {
  private static final List<SettingKey> ALL = List.copyOf(table());

  private SettingKeys() {}

  /** Every setting that a scenario may set, in the order of the key tables. */
  static List<SettingKey> all() {
    return ALL;
  }

  private static List<SettingKey> table() {
    List<SettingKey> t = new ArrayList<>();
    heat(t);
    fan(t);
    limits(t);
    trust(t);
    battery(t);
    shed(t);
    rest(t);
    return t;
  }

  private static void put(List<SettingKey> t, Setting setting, String path, String help) {
    t.add(new SettingKey(setting, "controller." + path, help));
  }

  private static void heat(List<SettingKey> t) {
    put(t, HEAT_SET_POINT_CENTI_C, "heat.set_point", "Heat stops at this brood reading.");
    put(t, HEAT_DIFFERENTIAL_CENTI_K, "heat.differential", "Heat starts this far below it.");
    put(t, RELAY_MIN_ON_MILLIS, "heat.min_on", "Shortest run of the heater.");
    put(t, RELAY_MIN_OFF_MILLIS, "heat.min_off", "Shortest pause between two runs.");
    put(t, RELAY_STARTS_PER_HOUR, "heat.starts_per_hour", "Most starts in any hour.");
    put(t, HEAT_RAMP_CENTI_K_PER_H, "heat.ramp", "How fast the working set point may rise.");
    put(t, HEAT_RAMP_FLOOR_CENTI_C, "heat.ramp_floor", "Lowest start of that rise.");
    put(t, HEAT_REBASE_MILLIS, "heat.rebase_after", "Pause after which the rise starts anew.");
    put(t, HEAT_SET_BACK_CENTI_K, "heat.set_back", "Set point is lowered so far to save charge.");
    put(t, HEAT_SURVIVAL_CENTI_C, "heat.survival", "Set point at the survival level.");
    put(t, HEAT_SOAK_CENTI_K, "heat.soak", "Set point is raised so far on surplus sun.");
    put(
        t,
        FALLBACK_ALLOWED,
        "fallback.allowed",
        "Heat by the pan probe when no brood probe works.");
    put(t, FALLBACK_PAN_CENTI_C, "fallback.pan", "Pan temperature that is held then.");
    put(t, FALLBACK_DIFFERENTIAL_CENTI_K, "fallback.differential", "Heat starts this far below.");
  }

  private static void fan(List<SettingKey> t) {
    put(t, FAN_ON_CENTI_C, "fan.on_above", "Fan cools at or above this brood reading.");
    put(t, FAN_OFF_CENTI_C, "fan.off_below", "Fan stops at or below this.");
    put(t, FAN_OUTDOOR_CENTI_K, "fan.cooler_outdoors", "Outdoors must be cooler by this.");
    put(t, FAN_COLD_CENTI_C, "fan.cold_below", "Below this outdoors the fan runs by a share only.");
    put(t, FAN_COLD_ON_MILLIS, "fan.cold_on", "Most time of that share.");
    put(t, FAN_COLD_WINDOW_MILLIS, "fan.cold_window", "Time that the share is counted over.");
    put(t, FAN_MIN_ON_MILLIS, "fan.min_on", "Shortest run of the fan.");
    put(t, FAN_MIN_OFF_MILLIS, "fan.min_off", "Shortest pause of the fan.");
    put(t, PURGE_ON_PERMILLE, "purge.on_above", "Humidity at which the fan dries the hive.");
    put(t, PURGE_OFF_PERMILLE, "purge.off_below", "Humidity at which that ends.");
    put(t, PURGE_ON_MILLIS, "purge.longest", "Most drying in the window.");
    put(t, PURGE_WINDOW_MILLIS, "purge.window", "Window of the drying share.");
    put(t, PURGE_OUTDOOR_CENTI_C, "purge.warmer_than", "No drying below this outdoors.");
    put(t, PURGE_WET_PERMILLE, "purge.wet_above", "A humidity probe is wet at or above this ...");
    put(t, PURGE_WET_MILLIS, "purge.wet_after", "... for so long.");
    put(t, PURGE_TIMED_EVERY_MILLIS, "purge.timed_every", "Airing by the clock; 0 for never.");
    put(t, PURGE_TIMED_FOR_MILLIS, "purge.timed_for", "Length of an airing by the clock.");
  }

  private static void limits(List<SettingKey> t) {
    put(t, LIMIT_BROOD_CENTI_C, "limit.brood", "Any brood reading at this takes heat away.");
    put(
        t,
        LIMIT_BROOD_DIFFERENTIAL_CENTI_K,
        "limit.brood_differential",
        "It returns this far below.");
    put(t, LIMIT_BROOD_B_CENTI_C, "limit.brood_b", "The same for a second probe at another place.");
    put(t, LIMIT_PAN_CENTI_C, "limit.pan", "Ordinary upper end of the pan temperature.");
    put(
        t,
        LIMIT_PAN_DIFFERENTIAL_CENTI_K,
        "limit.pan_differential",
        "Heat returns this far below.");
    put(t, LIMIT_PAN_TRIP_CENTI_C, "limit.pan_trip", "A pan this hot is a trip.");
    put(t, LIMIT_TRIPS_TO_LATCH, "limit.trips_to_latch", "Trips in a day that lock the heat.");
    put(
        t,
        WELD_AFTER_MILLIS,
        "weld.after",
        "Heater current so long after off means a welded relay.");
    put(t, WELD_BLANK_MILLIS, "weld.blank", "Wait after off before the pan is judged instead.");
    put(t, WELD_ABOVE_CENTI_K, "weld.above", "Pan still so far above brood means a welded relay.");
    put(t, WELD_LOOK_MILLIS, "weld.look", "Time over which the pan must fall.");
    put(t, EFFECT_JUDGE_MILLIS, "effect.judge", "Time in which a run must show an effect.");
    put(t, EFFECT_RISE_CENTI_K, "effect.rise", "Rise of the pan that proves it.");
    put(t, EFFECT_ABOVE_CENTI_K, "effect.above", "Pan above brood or outdoors that proves it.");
    put(t, EFFECT_SHARE_ON_MILLIS, "effect.share_on", "Heat allowed while unproven.");
    put(t, EFFECT_SHARE_WINDOW_MILLIS, "effect.share_window", "Window of that share.");
  }

  private static void trust(List<SettingKey> t) {
    put(t, TRUST_LOWEST_CENTI_C, "trust.lowest", "Colder readings are not believed.");
    put(t, TRUST_HIGHEST_CENTI_C, "trust.highest", "Hotter readings are not believed.");
    put(t, TRUST_CODE_1_CENTI_C, "trust.code_1", "Reading that a probe gives on power-up.");
    put(t, TRUST_CODE_2_CENTI_C, "trust.code_2", "Reading that a driver gives for a lost probe.");
    put(t, TRUST_OLDEST_MILLIS, "trust.oldest", "Oldest sample that counts.");
    put(t, TRUST_HOLD_MILLIS, "trust.hold", "How long the last good sample stands in.");
    put(t, TRUST_GAIN_MILLIS, "trust.gain", "Good time before a probe is believed again.");
    put(t, TRUST_STEP_CENTI_K, "trust.step", "Largest jump between samples.");
    put(t, TRUST_RATE_CENTI_K_PER_S, "trust.rate", "Fastest change on top of the jump.");
    put(t, TRUST_PAIR_CENTI_K, "trust.pair", "Largest difference of two like probes.");
    put(t, TRUST_STUCK_MILLIS, "trust.stuck_after", "No change for so long is a stuck probe ...");
    put(t, TRUST_STUCK_OTHER_CENTI_K, "trust.stuck_other", "... while another moved so far.");
  }

  private static void battery(List<SettingKey> t) {
    put(t, BATTERY_LOWEST_MILLI_V, "battery.lowest_volts", "Lower readings are not believed.");
    put(t, BATTERY_HIGHEST_MILLI_V, "battery.highest_volts", "Higher readings are not believed.");
    put(t, BATTERY_MILLI_OHM, "battery.resistance", "Resistance used to correct volts for load.");
    put(t, BATTERY_WORST_MILLI_OHM, "battery.worst_resistance", "What it may grow to.");
    put(t, BATTERY_REBOUND_MILLI_V, "battery.rebound", "Slow recovery of volts after a load.");
    put(t, BATTERY_ERROR_MILLI_V, "battery.reading_error", "Error of the volts reading.");
    put(t, BATTERY_BASE_LOAD_MILLI_A, "battery.base_load", "Current of what is always on.");
    put(
        t,
        BATTERY_CHARGING_MILLI_A,
        "battery.charging_current",
        "Current that counts as charging.");
    put(t, BATTERY_CHARGING_MILLI_W, "battery.charging_power", "Panel power that counts so.");
    put(t, HEATER_RATED_MILLI_A, "battery.heater_current", "Battery current of the heater.");
    put(t, FAN_RATED_MILLI_A, "battery.fan_current", "Battery current of the fan.");
  }

  private static void shed(List<SettingKey> t) {
    put(t, SHED_BY_STATE_OF_CHARGE, "shed.by_charge", "Shed by state of charge, not by volts.");
    level(t, SHED_SET_BACK_ENTER_MILLI_V, SHED_SET_BACK_LEAVE_MILLI_V, "set_back", "volts");
    level(t, SHED_SURVIVAL_ENTER_MILLI_V, SHED_SURVIVAL_LEAVE_MILLI_V, "survival", "volts");
    level(t, SHED_HEAT_ENTER_MILLI_V, SHED_HEAT_LEAVE_MILLI_V, "heat", "volts");
    level(t, SHED_FAN_ENTER_MILLI_V, SHED_FAN_LEAVE_MILLI_V, "fan", "volts");
    level(t, SHED_STANDBY_ENTER_MILLI_V, SHED_STANDBY_LEAVE_MILLI_V, "standby", "volts");
    level(t, SHED_SET_BACK_ENTER_PERMILLE, SHED_SET_BACK_LEAVE_PERMILLE, "set_back", "charge");
    level(t, SHED_SURVIVAL_ENTER_PERMILLE, SHED_SURVIVAL_LEAVE_PERMILLE, "survival", "charge");
    level(t, SHED_HEAT_ENTER_PERMILLE, SHED_HEAT_LEAVE_PERMILLE, "heat", "charge");
    level(t, SHED_FAN_ENTER_PERMILLE, SHED_FAN_LEAVE_PERMILLE, "fan", "charge");
    level(t, SHED_STANDBY_ENTER_PERMILLE, SHED_STANDBY_LEAVE_PERMILLE, "standby", "charge");
    put(
        t,
        SHED_EMERGENCY_MILLI_V,
        "shed.emergency_volts",
        "Raw volts at which all is shed at once.");
    put(t, SHED_ENTER_DELAY_MILLIS, "shed.enter_delay", "Time below before a level is entered.");
    put(t, SHED_LEAVE_DELAY_MILLIS, "shed.leave_delay", "Time above before a level is left.");
    put(t, SHED_DOUBLE_FROM, "shed.double_from", "From this shed in a day that delay doubles.");
    put(t, SHED_BLIND_AFTER_MILLIS, "shed.blind_after", "Volts lost for so long is blind.");
    put(t, SHED_BLIND_ON_MILLIS, "shed.blind_on", "Heat allowed while blind.");
    put(t, SHED_BLIND_WINDOW_MILLIS, "shed.blind_window", "Window of that share.");
    put(t, SHED_BLIND_HEAT_SHED_MILLIS, "shed.blind_longest", "Blind for so long sheds heat.");
    put(t, SHED_KEEP_INVERTER, "shed.keep_inverter", "A declared load needs the inverter always.");
  }

  private static void level(
      List<SettingKey> t, Setting enter, Setting leave, String name, String measure) {
    String words = measure.equals("volts") ? "corrected volts" : "state of charge";
    String what = name.replace('_', '-') + " level";
    put(
        t,
        enter,
        "shed." + name + "_enter_" + measure,
        "The " + what + " begins at these " + words + ".");
    put(
        t,
        leave,
        "shed." + name + "_leave_" + measure,
        "The " + what + " ends at these " + words + ".");
  }

  private static void rest(List<SettingKey> t) {
    put(
        t,
        SUPPLY_PREFER_BATTERY,
        "supply.prefer_battery",
        "Battery first where shore power is there.");
    put(t, SUPPLY_DEAD_MILLIS, "supply.dead_time", "Both open for so long at a transfer.");
    put(t, SUPPLY_DWELL_MILLIS, "supply.dwell", "Shortest time on one supply.");
    put(t, BUTTON_LONG_MILLIS, "button.long_press", "A press this long clears latches.");
    put(t, BUTTON_STUCK_MILLIS, "button.stuck_after", "A press this long is a stuck button.");
    put(t, SERVICE_HOLD_MILLIS, "button.service_hold", "Rest after a short press.");
    put(t, TEST_MILLIS, "button.test", "Length of the test of each output.");
    put(t, TEST_WAIT_MILLIS, "button.test_wait", "Most wait for the test to become possible.");
    put(t, ALARM_BROOD_LOW_CENTI_C, "alarm.brood_low", "Colder brood raises an alarm ...");
    put(t, ALARM_BROOD_LOW_MILLIS, "alarm.brood_low_after", "... after so long.");
    put(t, ALARM_BROOD_HIGH_CENTI_C, "alarm.brood_high", "Hotter brood raises an alarm at once.");
  }
}
