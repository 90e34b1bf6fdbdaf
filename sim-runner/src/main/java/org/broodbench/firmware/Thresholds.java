package org.broodbench.firmware;

import java.util.Random;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;

/** Values on, just below and just above every threshold of the settings. */
final class Thresholds {
  private static final Setting[] SHED_MILLI_V = {
    Setting.SHED_SET_BACK_ENTER_MILLI_V, Setting.SHED_SET_BACK_LEAVE_MILLI_V,
    Setting.SHED_SURVIVAL_ENTER_MILLI_V, Setting.SHED_SURVIVAL_LEAVE_MILLI_V,
    Setting.SHED_HEAT_ENTER_MILLI_V, Setting.SHED_HEAT_LEAVE_MILLI_V,
    Setting.SHED_FAN_ENTER_MILLI_V, Setting.SHED_FAN_LEAVE_MILLI_V,
    Setting.SHED_STANDBY_ENTER_MILLI_V, Setting.SHED_STANDBY_LEAVE_MILLI_V
  };
  private static final Setting[] SHED_PERMILLE = {
    Setting.SHED_SET_BACK_ENTER_PERMILLE, Setting.SHED_SET_BACK_LEAVE_PERMILLE,
    Setting.SHED_SURVIVAL_ENTER_PERMILLE, Setting.SHED_SURVIVAL_LEAVE_PERMILLE,
    Setting.SHED_HEAT_ENTER_PERMILLE, Setting.SHED_HEAT_LEAVE_PERMILLE,
    Setting.SHED_FAN_ENTER_PERMILLE, Setting.SHED_FAN_LEAVE_PERMILLE,
    Setting.SHED_STANDBY_ENTER_PERMILLE, Setting.SHED_STANDBY_LEAVE_PERMILLE
  };
  private static final Setting[] TIMES = {
    Setting.TRUST_GAIN_MILLIS, Setting.TRUST_HOLD_MILLIS, Setting.RELAY_MIN_ON_MILLIS,
    Setting.RELAY_MIN_OFF_MILLIS, Setting.EFFECT_JUDGE_MILLIS, Setting.EFFECT_SHARE_ON_MILLIS,
    Setting.WELD_AFTER_MILLIS, Setting.WELD_LOOK_MILLIS, Setting.WELD_BLANK_MILLIS,
    Setting.SHED_ENTER_DELAY_MILLIS, Setting.SHED_BLIND_AFTER_MILLIS, Setting.FAN_MIN_ON_MILLIS,
    Setting.FAN_MIN_OFF_MILLIS, Setting.PURGE_ON_MILLIS, Setting.FAN_COLD_ON_MILLIS,
    Setting.SUPPLY_DEAD_MILLIS, Setting.SUPPLY_DWELL_MILLIS, Setting.BUTTON_LONG_MILLIS,
    Setting.BUTTON_STUCK_MILLIS, Setting.TEST_MILLIS, Setting.HEAT_REBASE_MILLIS
  };

  private final Settings s;

  Thresholds(Settings settings) {
    s = settings;
  }

  private int get(Setting setting) {
    return s.get(setting);
  }

  private static int near(Random random, int... values) {
    return values[random.nextInt(values.length)] + random.nextInt(3) - 1;
  }

  /** A stretch of time around one of the settings. */
  int time(Random random) {
    return Math.max(0, near(random, get(TIMES[random.nextInt(TIMES.length)])));
  }

  int fullMilliV() {
    return get(Setting.SHED_SET_BACK_LEAVE_MILLI_V) + 400;
  }

  int weldAbove() {
    return get(Setting.WELD_ABOVE_CENTI_K);
  }

  int brood(Random random) {
    int set = get(Setting.HEAT_SET_POINT_CENTI_C);
    int differential = get(Setting.HEAT_DIFFERENTIAL_CENTI_K);
    int survival = get(Setting.HEAT_SURVIVAL_CENTI_C);
    int limit = get(Setting.LIMIT_BROOD_CENTI_C);
    return near(
        random,
        set,
        set - differential,
        set - get(Setting.HEAT_SET_BACK_CENTI_K),
        set + get(Setting.HEAT_SOAK_CENTI_K),
        survival,
        survival - differential,
        get(Setting.HEAT_RAMP_FLOOR_CENTI_C) - differential,
        limit,
        limit - get(Setting.LIMIT_BROOD_DIFFERENTIAL_CENTI_K),
        get(Setting.LIMIT_BROOD_B_CENTI_C),
        get(Setting.FAN_ON_CENTI_C),
        get(Setting.FAN_OFF_CENTI_C),
        get(Setting.ALARM_BROOD_LOW_CENTI_C),
        get(Setting.ALARM_BROOD_HIGH_CENTI_C));
  }

  int pan(Random random, int stopC, int outdoorC) {
    int fallback = get(Setting.FALLBACK_PAN_CENTI_C);
    int limit = get(Setting.LIMIT_PAN_CENTI_C);
    int effect = get(Setting.EFFECT_ABOVE_CENTI_K);
    return near(
        random,
        fallback,
        fallback - get(Setting.FALLBACK_DIFFERENTIAL_CENTI_K),
        fallback - get(Setting.HEAT_SET_BACK_CENTI_K),
        get(Setting.HEAT_SURVIVAL_CENTI_C),
        limit,
        limit - get(Setting.LIMIT_PAN_DIFFERENTIAL_CENTI_K),
        get(Setting.LIMIT_PAN_TRIP_CENTI_C),
        stopC + effect,
        stopC + effect,
        stopC + effect,
        outdoorC + effect,
        stopC + weldAbove(),
        stopC + weldAbove(),
        outdoorC + weldAbove());
  }

  int outdoor(Random random, int stopC, int panC) {
    return near(
        random,
        -1500,
        get(Setting.FAN_COLD_CENTI_C),
        get(Setting.PURGE_OUTDOOR_CENTI_C),
        get(Setting.PURGE_OUTDOOR_CENTI_C),
        2500,
        stopC,
        stopC - get(Setting.FAN_OUTDOOR_CENTI_K),
        panC - weldAbove(),
        panC - get(Setting.EFFECT_ABOVE_CENTI_K));
  }

  int humidity(Random random) {
    int value =
        near(
            random,
            300,
            get(Setting.PURGE_ON_PERMILLE),
            get(Setting.PURGE_OFF_PERMILLE),
            get(Setting.PURGE_WET_PERMILLE),
            1000);
    return Math.min(1001, value);
  }

  /** How far B stands from A. */
  int apart(Random random) {
    int pair = get(Setting.TRUST_PAIR_CENTI_K);
    return near(random, 50, 0, 0, pair, -pair, -pair - 200);
  }

  /** Volts that come out near a threshold once corrected for some usual current. */
  int volts(Random random) {
    int[] loads = {
      0,
      get(Setting.BATTERY_BASE_LOAD_MILLI_A),
      get(Setting.BATTERY_BASE_LOAD_MILLI_A) + get(Setting.HEATER_RATED_MILLI_A)
    };
    int sag = loads[random.nextInt(loads.length)] * get(Setting.BATTERY_MILLI_OHM) / 1000;
    if (random.nextInt(3) == 0) {
      return fullMilliV();
    }
    if (random.nextInt(6) == 0) {
      return near(
          random,
          get(Setting.SHED_EMERGENCY_MILLI_V),
          get(Setting.BATTERY_LOWEST_MILLI_V),
          get(Setting.BATTERY_LOWEST_MILLI_V) - 1000,
          get(Setting.BATTERY_HIGHEST_MILLI_V));
    }
    return near(random, get(SHED_MILLI_V[random.nextInt(SHED_MILLI_V.length)]) - sag);
  }

  int charge(Random random) {
    if (random.nextInt(3) == 0) {
      return 900;
    }
    return Math.max(0, near(random, get(SHED_PERMILLE[random.nextInt(SHED_PERMILLE.length)])));
  }

  /** Around the way into standby and out of it. */
  int lowVolts(Random random) {
    return near(
        random,
        get(Setting.SHED_STANDBY_ENTER_MILLI_V) - 200,
        get(Setting.SHED_STANDBY_LEAVE_MILLI_V),
        get(Setting.SHED_STANDBY_LEAVE_MILLI_V) + 200);
  }

  /** The same for state of charge. */
  int lowCharge(Random random) {
    return Math.max(
        0,
        near(
            random,
            get(Setting.SHED_STANDBY_ENTER_PERMILLE) - 20,
            get(Setting.SHED_STANDBY_LEAVE_PERMILLE),
            get(Setting.SHED_STANDBY_LEAVE_PERMILLE) + 20));
  }

  int batteryCurrent(Random random) {
    return near(
        random,
        -6000,
        -get(Setting.BATTERY_BASE_LOAD_MILLI_A),
        0,
        get(Setting.BATTERY_CHARGING_MILLI_A),
        3000,
        -60_000,
        -200_000,
        200_000);
  }

  int panelPower(Random random) {
    return Math.max(0, near(random, 0, get(Setting.BATTERY_CHARGING_MILLI_W), 40_000, 10_000_000));
  }

  int heaterCurrent(Random random) {
    int rated = get(Setting.HEATER_RATED_MILLI_A);
    return near(random, rated, rated / 2, (rated + 1) / 2, 0);
  }

  int currentAge(Random random) {
    int after = get(Setting.WELD_AFTER_MILLIS);
    return Math.max(0, near(random, 0, after, after / 2, get(Setting.TRUST_OLDEST_MILLIS)));
  }

  int age(Random random) {
    return random.nextInt(4) == 0
        ? Integer.MIN_VALUE
        : near(random, 0, get(Setting.TRUST_OLDEST_MILLIS));
  }

  int extreme(Random random) {
    return switch (random.nextInt(4)) {
      case 0 -> Integer.MIN_VALUE;
      case 1 -> Integer.MAX_VALUE;
      case 2 -> near(random, get(Setting.TRUST_LOWEST_CENTI_C));
      default -> near(random, get(Setting.TRUST_HIGHEST_CENTI_C));
    };
  }

  /** A change that is just about believed. */
  int jump(Random random, int tickMillis) {
    int allowed =
        get(Setting.TRUST_STEP_CENTI_K)
            + get(Setting.TRUST_RATE_CENTI_K_PER_S) * Math.min(tickMillis, 60_000) / 1000;
    int change = near(random, allowed);
    return random.nextBoolean() ? change : -change;
  }
}
