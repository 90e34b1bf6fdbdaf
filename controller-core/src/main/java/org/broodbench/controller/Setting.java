package org.broodbench.controller;

import java.util.Locale;

/**
 * Every setting of the controller: a whole number with its unit in the name, bounds and a default.
 * The defaults that depend on the place of the probe or on the chemistry stand in {@link Defaults};
 * SPEC.md lists all of them, and a test holds the two equal.
 */
public enum Setting {
  /** Brood probe A is fitted. */
  FITTED_BROOD_A(0, 1, 1),
  /** Brood probe B is fitted. */
  FITTED_BROOD_B(0, 1, 0),
  /** Pan probe. */
  FITTED_PAN(0, 1, 1),
  /** Probe under the lid (used by P7 alone). */
  FITTED_TOP(0, 1, 0),
  /** Outdoor probe. */
  FITTED_OUTDOOR(0, 1, 0),
  /** Humidity sensor. */
  FITTED_HUMIDITY(0, 1, 0),
  /** There is a battery, its volts are read. */
  FITTED_BATTERY(0, 1, 1),
  /** Battery current is read. */
  FITTED_BATTERY_CURRENT(0, 1, 0),
  /** State of charge is read. */
  FITTED_STATE_OF_CHARGE(0, 1, 0),
  /** Heater current is read. */
  FITTED_HEATER_CURRENT(0, 1, 0),
  /** Panel power is read. */
  FITTED_PANEL_POWER(0, 1, 0),
  /** Exhaust fan. */
  FITTED_FAN(0, 1, 1),
  /** Inverter. */
  FITTED_INVERTER(0, 1, 0),
  /** Series switch in the heater circuit; the command is given either way. */
  FITTED_ISOLATION(0, 1, 0),
  /** The controller selects between battery and shore. */
  FITTED_SUPPLY_SELECT(0, 1, 0),
  /** B sits at a place like that of A. */
  BROOD_B_LIKE_PLACE(0, 1, 1),

  /** Lowest temperature in range. */
  TRUST_LOWEST_CENTI_C(-5500, 0, -5500),
  /** Highest temperature in range. */
  TRUST_HIGHEST_CENTI_C(6000, 15000, 12500),
  /** Power-up code of the probe type. */
  TRUST_CODE_1_CENTI_C(-30000, 30000, 8500),
  /** Bus-loss code of the probe type. */
  TRUST_CODE_2_CENTI_C(-30000, 30000, -12700),
  /** Oldest sample used. */
  TRUST_OLDEST_MILLIS(1000, 600000, 60000),
  /** How long a last good value is held. */
  TRUST_HOLD_MILLIS(0, 30000, 30000),
  /** How long good before trusted. */
  TRUST_GAIN_MILLIS(1000, 3600000, 60000),
  /** Change always believed. */
  TRUST_STEP_CENTI_K(1, 5000, 200),
  /** Further change believed a second. */
  TRUST_RATE_CENTI_K_PER_S(1, 1000, 50),
  /** Two probes of like place agree up to here. */
  TRUST_PAIR_CENTI_K(50, 2000, 300),
  /** No change for so long. */
  TRUST_STUCK_MILLIS(60000, 172800000, 21600000),
  /** While another probe moved so much. */
  TRUST_STUCK_OTHER_CENTI_K(100, 3000, 500),

  /** Set point. */
  HEAT_SET_POINT_CENTI_C(500, 3600, 3300),
  /** Heat is called at set point minus this. */
  HEAT_DIFFERENTIAL_CENTI_K(10, 1000, 100),
  /** Upward ramp of the working set point. */
  HEAT_RAMP_CENTI_K_PER_H(1, 6000, 200),
  /** Where the ramp starts at the lowest. */
  HEAT_RAMP_FLOOR_CENTI_C(0, 3000, 1800),
  /** Longer without heat starts the ramp anew. */
  HEAT_REBASE_MILLIS(60000, 86400000, 3600000),
  /** Set-back lowers the set point by this. */
  HEAT_SET_BACK_CENTI_K(0, 2000, 300),
  /** Target at survival. */
  HEAT_SURVIVAL_CENTI_C(500, 3000, 1800),
  /** Charger full raises the set point by this; 0 is off. */
  HEAT_SOAK_CENTI_K(0, 300, 0),
  /** Hold the pan when no brood probe is trusted. */
  FALLBACK_ALLOWED(0, 1, 1),
  /** Pan target of the fallback. */
  FALLBACK_PAN_CENTI_C(1000, 3400, 3000),
  /** Its differential. */
  FALLBACK_DIFFERENTIAL_CENTI_K(10, 1000, 100),

  /** Pan control limit. */
  LIMIT_PAN_CENTI_C(2500, 5000, 3800),
  /** Heat again at limit minus this. */
  LIMIT_PAN_DIFFERENTIAL_CENTI_K(10, 1000, 200),
  /** Pan trip. */
  LIMIT_PAN_TRIP_CENTI_C(2600, 6000, 4300),
  /** Trips in a rolling day that latch. */
  LIMIT_TRIPS_TO_LATCH(1, 8, 3),
  /** Brood limit of A, and of B at a like place. */
  LIMIT_BROOD_CENTI_C(1000, 3800, 3650),
  /** Heat again at limit minus this. */
  LIMIT_BROOD_DIFFERENTIAL_CENTI_K(0, 500, 50),
  /** Limit of B at another place. */
  LIMIT_BROOD_B_CENTI_C(1000, 3800, 3650),
  /** Current so long after off is no longer the relay opening. */
  WELD_AFTER_MILLIS(500, 60000, 2000),
  /** Three time constants of the pan. */
  WELD_BLANK_MILLIS(60000, 86400000, 3600000),
  /** Pan above brood and outdoors. */
  WELD_ABOVE_CENTI_K(100, 3000, 500),
  /** Over which the pan does not fall. */
  WELD_LOOK_MILLIS(60000, 7200000, 600000),

  /** A run this long without proof is unproven. */
  EFFECT_JUDGE_MILLIS(60000, 7200000, 1200000),
  /** Rise of the pan that proves. */
  EFFECT_RISE_CENTI_K(20, 2000, 100),
  /** Pan above brood and outdoors that proves. */
  EFFECT_ABOVE_CENTI_K(100, 3000, 800),
  /** On-time allowed while not believed. */
  EFFECT_SHARE_ON_MILLIS(1000, 3600000, 300000),
  /** In any time so long. */
  EFFECT_SHARE_WINDOW_MILLIS(2000, 86400000, 1200000),

  /** Minimum on. */
  RELAY_MIN_ON_MILLIS(0, 3600000, 180000),
  /** Minimum off. */
  RELAY_MIN_OFF_MILLIS(0, 3600000, 300000),
  /** Most starts in a rolling hour. */
  RELAY_STARTS_PER_HOUR(1, 12, 6),

  /** Below: the battery reads as absent. */
  BATTERY_LOWEST_MILLI_V(0, 100000, 6000),
  /** Above: not believed. */
  BATTERY_HIGHEST_MILLI_V(0, 100000, 17000),
  /** Battery, leads and fuse, as set (R_set). */
  BATTERY_MILLI_OHM(0, 1000, 30),
  /** The same at its worst (R_worst). */
  BATTERY_WORST_MILLI_OHM(0, 2000, 60),
  /** Slow rebound after a load goes. */
  BATTERY_REBOUND_MILLI_V(0, 5000, 50),
  /** Reading error. */
  BATTERY_ERROR_MILLI_V(0, 2000, 20),
  /** Steady load, used without a current reading. */
  BATTERY_BASE_LOAD_MILLI_A(0, 100000, 100),
  /** Current that counts as charging. */
  BATTERY_CHARGING_MILLI_A(1, 100000, 200),
  /** Panel power that counts as charging. */
  BATTERY_CHARGING_MILLI_W(1, 1000000, 3000),
  /** Heater current at the battery. */
  HEATER_RATED_MILLI_A(10, 100000, 5000),
  /** Fan current at the battery. */
  FAN_RATED_MILLI_A(0, 20000, 200),

  /** Thresholds in per mille instead of millivolts. */
  SHED_BY_STATE_OF_CHARGE(0, 1, 0),
  /** Enter set-back at or below. */
  SHED_SET_BACK_ENTER_MILLI_V(0, 100000, 12250),
  /** Leave set-back at or above. */
  SHED_SET_BACK_LEAVE_MILLI_V(0, 100000, 12550),
  /** Enter survival at or below. */
  SHED_SURVIVAL_ENTER_MILLI_V(0, 100000, 12150),
  /** Leave survival at or above. */
  SHED_SURVIVAL_LEAVE_MILLI_V(0, 100000, 12500),
  /** Enter heat shed at or below. */
  SHED_HEAT_ENTER_MILLI_V(0, 100000, 12050),
  /** Leave heat shed at or above. */
  SHED_HEAT_LEAVE_MILLI_V(0, 100000, 12450),
  /** Enter fan shed at or below. */
  SHED_FAN_ENTER_MILLI_V(0, 100000, 11800),
  /** Leave fan shed at or above. */
  SHED_FAN_LEAVE_MILLI_V(0, 100000, 12300),
  /** Enter standby at or below. */
  SHED_STANDBY_ENTER_MILLI_V(0, 100000, 11600),
  /** Leave standby at or above. */
  SHED_STANDBY_LEAVE_MILLI_V(0, 100000, 12200),
  /** Enter set-back at or below. */
  SHED_SET_BACK_ENTER_PERMILLE(0, 1000, 400),
  /** Leave set-back at or above. */
  SHED_SET_BACK_LEAVE_PERMILLE(0, 1000, 500),
  /** Enter survival at or below. */
  SHED_SURVIVAL_ENTER_PERMILLE(0, 1000, 300),
  /** Leave survival at or above. */
  SHED_SURVIVAL_LEAVE_PERMILLE(0, 1000, 400),
  /** Enter heat shed at or below. */
  SHED_HEAT_ENTER_PERMILLE(0, 1000, 200),
  /** Leave heat shed at or above. */
  SHED_HEAT_LEAVE_PERMILLE(0, 1000, 300),
  /** Enter fan shed at or below. */
  SHED_FAN_ENTER_PERMILLE(0, 1000, 150),
  /** Leave fan shed at or above. */
  SHED_FAN_LEAVE_PERMILLE(0, 1000, 250),
  /** Enter standby at or below. */
  SHED_STANDBY_ENTER_PERMILLE(0, 1000, 100),
  /** Leave standby at or above. */
  SHED_STANDBY_LEAVE_PERMILLE(0, 1000, 200),
  /** Raw volts: standby at once. */
  SHED_EMERGENCY_MILLI_V(0, 100000, 10800),
  /** Enter delay. */
  SHED_ENTER_DELAY_MILLIS(0, 3600000, 60000),
  /** Leave delay. */
  SHED_LEAVE_DELAY_MILLIS(60000, 14400000, 1800000),
  /** From this shed in a rolling day the leave delay doubles. */
  SHED_DOUBLE_FROM(2, 8, 4),
  /** Measure untrusted for so long is blind. */
  SHED_BLIND_AFTER_MILLIS(1000, 3600000, 60000),
  /** On-time allowed while blind. */
  SHED_BLIND_ON_MILLIS(1000, 3600000, 900000),
  /** In any time so long. */
  SHED_BLIND_WINDOW_MILLIS(2000, 86400000, 3600000),
  /** Blind for so long sheds heat. */
  SHED_BLIND_HEAT_SHED_MILLIS(60000, 604800000, 43200000),
  /** A declared load needs the inverter at every level. */
  SHED_KEEP_INVERTER(0, 1, 0),

  /** Cooling on at or above. */
  FAN_ON_CENTI_C(1000, 4500, 3700),
  /** Cooling off at or below. */
  FAN_OFF_CENTI_C(1000, 4500, 3600),
  /** Outdoors has to be so much cooler. */
  FAN_OUTDOOR_CENTI_K(0, 1000, 100),
  /** Below: cold outdoors. */
  FAN_COLD_CENTI_C(-2000, 2000, 500),
  /** Fan on-time allowed while cold outdoors. */
  FAN_COLD_ON_MILLIS(1000, 3600000, 300000),
  /** In any time so long. */
  FAN_COLD_WINDOW_MILLIS(2000, 86400000, 1800000),
  /** Minimum on. */
  FAN_MIN_ON_MILLIS(0, 3600000, 60000),
  /** Minimum off. */
  FAN_MIN_OFF_MILLIS(0, 3600000, 120000),
  /** Humidity purge on at or above. */
  PURGE_ON_PERMILLE(0, 1000, 850),
  /** Off at or below. */
  PURGE_OFF_PERMILLE(0, 1000, 750),
  /** Purge on-time allowed. */
  PURGE_ON_MILLIS(1000, 3600000, 180000),
  /** In any time so long. */
  PURGE_WINDOW_MILLIS(2000, 86400000, 3600000),
  /** No purge below this outdoors. */
  PURGE_OUTDOOR_CENTI_C(-2000, 3000, 1000),
  /** So damp for so long is a wet sensor. */
  PURGE_WET_PERMILLE(800, 1000, 990),
  /** For so long. */
  PURGE_WET_MILLIS(60000, 172800000, 21600000),
  /** Timed purge every; 0 is off. */
  PURGE_TIMED_EVERY_MILLIS(0, 86400000, 0),
  /** Timed purge for. */
  PURGE_TIMED_FOR_MILLIS(1000, 3600000, 60000),

  /** Battery before shore while it is above heat shed. */
  SUPPLY_PREFER_BATTERY(0, 1, 0),
  /** Dead time between break and make. */
  SUPPLY_DEAD_MILLIS(100, 60000, 1000),
  /** Shortest stay on a source by choice. */
  SUPPLY_DWELL_MILLIS(0, 3600000, 60000),

  /** From here a press is long. */
  BUTTON_LONG_MILLIS(1000, 30000, 5000),
  /** From here it is wet or stuck. */
  BUTTON_STUCK_MILLIS(31000, 600000, 60000),
  /** Service hold. */
  SERVICE_HOLD_MILLIS(60000, 14400000, 1800000),
  /** Test of each output. */
  TEST_MILLIS(10000, 300000, 60000),
  /** Longest wait for a start. */
  TEST_WAIT_MILLIS(60000, 7200000, 900000),

  /** Brood low below. */
  ALARM_BROOD_LOW_CENTI_C(0, 3600, 3200),
  /** For so long. */
  ALARM_BROOD_LOW_MILLIS(0, 172800000, 21600000),
  /** Brood hot above. */
  ALARM_BROOD_HIGH_CENTI_C(1000, 4500, 3800);

  private final int low;
  private final int high;
  private final int base;

  Setting(int low, int high, int base) {
    this.low = low;
    this.high = high;
    this.base = base;
  }

  /** {@return the lowest value allowed} */
  public int low() {
    return low;
  }

  /** {@return the highest value allowed} */
  public int high() {
    return high;
  }

  /** Default for a brood-comb probe and a lead-acid battery. */
  int base() {
    return base;
  }

  /** {@return the name in lower case, as SPEC.md and messages write it} */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }
}
