package org.broodbench.controller;

import static org.broodbench.controller.Setting.*;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Checks every setting alone and against the others (rules X1 to X9 and B9); each message shows its
 * arithmetic.
 */
final class SettingsCheck {
  private static final Setting[] ENTER_MILLI_V = {
    SHED_SET_BACK_ENTER_MILLI_V,
    SHED_SURVIVAL_ENTER_MILLI_V,
    SHED_HEAT_ENTER_MILLI_V,
    SHED_FAN_ENTER_MILLI_V,
    SHED_STANDBY_ENTER_MILLI_V
  };
  private static final Setting[] LEAVE_MILLI_V = {
    SHED_SET_BACK_LEAVE_MILLI_V,
    SHED_SURVIVAL_LEAVE_MILLI_V,
    SHED_HEAT_LEAVE_MILLI_V,
    SHED_FAN_LEAVE_MILLI_V,
    SHED_STANDBY_LEAVE_MILLI_V
  };
  private static final Setting[] ENTER_PERMILLE = {
    SHED_SET_BACK_ENTER_PERMILLE,
    SHED_SURVIVAL_ENTER_PERMILLE,
    SHED_HEAT_ENTER_PERMILLE,
    SHED_FAN_ENTER_PERMILLE,
    SHED_STANDBY_ENTER_PERMILLE
  };
  private static final Setting[] LEAVE_PERMILLE = {
    SHED_SET_BACK_LEAVE_PERMILLE,
    SHED_SURVIVAL_LEAVE_PERMILLE,
    SHED_HEAT_LEAVE_PERMILLE,
    SHED_FAN_LEAVE_PERMILLE,
    SHED_STANDBY_LEAVE_PERMILLE
  };

  /** Below this a lithium iron phosphate battery of 12 V is nearly empty; own choice. */
  private static final int LITHIUM_HEAT_SHED_LOWEST_MILLI_V = 12800;

  private final Settings settings;
  private final List<SettingProblem> problems = new ArrayList<>();

  SettingsCheck(Settings settings) {
    this.settings = settings;
  }

  static Setting enter(int level, boolean byStateOfCharge) {
    return (byStateOfCharge ? ENTER_PERMILLE : ENTER_MILLI_V)[level - 1];
  }

  static Setting leave(int level, boolean byStateOfCharge) {
    return (byStateOfCharge ? LEAVE_PERMILLE : LEAVE_MILLI_V)[level - 1];
  }

  List<SettingProblem> problems() {
    for (Setting setting : Setting.values()) {
      int value = settings.get(setting);
      if (value < setting.low() || value > setting.high()) {
        add(
            setting.key(),
            show(setting, value),
            show(setting, setting.low()) + " to " + show(setting, setting.high()),
            "bounds of this setting");
      }
    }
    if (problems.isEmpty()) {
      // Sums below stay inside 32 bits because every single value is inside its bounds.
      fitted();
      temperatures();
      shares();
      battery();
      shedding(false);
      shedding(true);
      others();
    }
    return List.copyOf(problems);
  }

  private void fitted() {
    if (!settings.is(FITTED_BROOD_A) && !settings.is(FITTED_BROOD_B)) {
      add("fitted_brood_a", "0", "1", "at least one brood probe has to be fitted");
    }
    if (settings.is(FITTED_BROOD_B) && !settings.is(FITTED_BROOD_A)) {
      add("fitted_brood_b", "1", "0", "a single brood probe is probe A");
    }
    if (settings.is(SHED_BY_STATE_OF_CHARGE)
        && settings.is(FITTED_BATTERY)
        && !settings.is(FITTED_STATE_OF_CHARGE)) {
      add(
          "shed_by_state_of_charge",
          "1",
          "0 without a state-of-charge reading",
          "set fitted_state_of_charge, or shed by volts");
    }
  }

  private void temperatures() {
    int warmest = settings.get(HEAT_SET_POINT_CENTI_C) + settings.get(HEAT_SOAK_CENTI_K);
    atLeast(
        LIMIT_BROOD_CENTI_C,
        warmest + 100,
        "set point "
            + celsius(settings.get(HEAT_SET_POINT_CENTI_C))
            + " + soak "
            + kelvin(settings.get(HEAT_SOAK_CENTI_K))
            + " + 1.00 K: the limit would act in ordinary control");
    atLeast(
        FAN_ON_CENTI_C,
        settings.get(LIMIT_BROOD_CENTI_C),
        "brood limit: the fan would blow out the heat that the heater makes");
    atLeast(
        FAN_OFF_CENTI_C,
        warmest + 1,
        "above set point and soak: the fan would cool what the heater is to warm");
    atLeast(
        FAN_ON_CENTI_C,
        settings.get(FAN_OFF_CENTI_C) + 10,
        "fan off + 0.10 K: without a differential the fan chatters");
    atMost(HEAT_SURVIVAL_CENTI_C, settings.get(HEAT_SET_POINT_CENTI_C), "set point");
    atMost(HEAT_RAMP_FLOOR_CENTI_C, settings.get(HEAT_SET_POINT_CENTI_C), "set point");
    atLeast(
        LIMIT_PAN_TRIP_CENTI_C,
        settings.get(LIMIT_PAN_CENTI_C) + 100,
        "pan limit + 1.00 K: ordinary control would count as trips");
    atMost(FALLBACK_PAN_CENTI_C, settings.get(LIMIT_PAN_CENTI_C), "pan limit");
    atMost(ALARM_BROOD_LOW_CENTI_C, settings.get(HEAT_SET_POINT_CENTI_C), "set point");
    atLeast(ALARM_BROOD_HIGH_CENTI_C, settings.get(LIMIT_BROOD_CENTI_C), "brood limit");
  }

  private void shares() {
    share(EFFECT_SHARE_ON_MILLIS, EFFECT_SHARE_WINDOW_MILLIS, RELAY_MIN_ON_MILLIS);
    share(SHED_BLIND_ON_MILLIS, SHED_BLIND_WINDOW_MILLIS, RELAY_MIN_ON_MILLIS);
    share(FAN_COLD_ON_MILLIS, FAN_COLD_WINDOW_MILLIS, FAN_MIN_ON_MILLIS);
    share(PURGE_ON_MILLIS, PURGE_WINDOW_MILLIS, FAN_MIN_ON_MILLIS);
  }

  private void share(Setting on, Setting window, Setting minOn) {
    atLeast(window, settings.get(on) + 1000, on.key() + " + 1 s: a share is less than the whole");
    atLeast(on, settings.get(minOn), minOn.key() + ": a run would never reach its minimum on");
  }

  private void battery() {
    atLeast(
        BATTERY_WORST_MILLI_OHM,
        settings.get(BATTERY_MILLI_OHM),
        "battery_milli_ohm: the worst resistance cannot be the smaller one");
    atLeast(
        BATTERY_HIGHEST_MILLI_V,
        settings.get(BATTERY_LOWEST_MILLI_V) + 1,
        "battery_lowest_milli_v");
    atMost(BATTERY_LOWEST_MILLI_V, settings.get(SHED_EMERGENCY_MILLI_V), "emergency volts");
    boolean lithiumByVolts =
        settings.chemistry() == Chemistry.LITHIUM_IRON_PHOSPHATE
            && !settings.is(SHED_BY_STATE_OF_CHARGE)
            && settings.is(FITTED_BATTERY);
    if (lithiumByVolts) {
      atLeast(
          SHED_HEAT_ENTER_MILLI_V,
          LITHIUM_HEAT_SHED_LOWEST_MILLI_V,
          "lead-acid volts are no use for lithium iron phosphate: shed by state of charge, or give"
              + " volts of its own");
    }
  }

  private void shedding(boolean byStateOfCharge) {
    if (!settings.is(FITTED_BATTERY) || settings.is(SHED_BY_STATE_OF_CHARGE) != byStateOfCharge) {
      return;
    }
    for (int level = ShedLevel.SET_BACK; level <= ShedLevel.STANDBY; level++) {
      Setting enter = enter(level, byStateOfCharge);
      Setting leave = leave(level, byStateOfCharge);
      if (byStateOfCharge) {
        atLeast(leave, settings.get(enter) + 10, enter.key() + " + 1.0 %");
      } else {
        sag(enter, leave);
      }
      if (level > ShedLevel.SET_BACK) {
        Setting above = enter(level - 1, byStateOfCharge);
        atMost(enter, settings.get(above) - 1, "below " + above.key());
        atMost(leave, settings.get(leave(level - 1, byStateOfCharge)), "leave of the level above");
      }
    }
    if (!byStateOfCharge) {
      atMost(
          SHED_EMERGENCY_MILLI_V,
          settings.get(SHED_STANDBY_ENTER_MILLI_V) - 1,
          "below shed_standby_enter_milli_v");
    }
  }

  /** Rule B9: what a shed load gives back in volts must not look like recovery. */
  private void sag(Setting enter, Setting leave) {
    int milliA = settings.get(HEATER_RATED_MILLI_A) + settings.get(FAN_RATED_MILLI_A);
    int milliOhm = settings.get(BATTERY_WORST_MILLI_OHM) - settings.get(BATTERY_MILLI_OHM);
    // At most 120 000 mA by 2 000 mOhm: 2.4e8, inside 32 bits.
    int sagMilliV = milliA * milliOhm / 1000;
    int need =
        sagMilliV + settings.get(BATTERY_REBOUND_MILLI_V) + settings.get(BATTERY_ERROR_MILLI_V);
    int have = settings.get(leave) - settings.get(enter);
    if (have <= need) {
      add(
          leave.key(),
          volts(settings.get(leave)),
          "above " + volts(settings.get(enter) + need),
          "leave "
              + volts(settings.get(leave))
              + " minus enter "
              + volts(settings.get(enter))
              + " is "
              + volts(have)
              + "; "
              + scaled(milliA, 1000, "A")
              + " x "
              + milliOhm
              + " mOhm + rebound "
              + volts(settings.get(BATTERY_REBOUND_MILLI_V))
              + " + reading error "
              + volts(settings.get(BATTERY_ERROR_MILLI_V))
              + " need "
              + volts(need));
    }
  }

  private void others() {
    atMost(PURGE_OFF_PERMILLE, settings.get(PURGE_ON_PERMILLE) - 10, "purge on - 1.0 %");
    if (settings.is(PURGE_TIMED_EVERY_MILLIS)) {
      atLeast(
          PURGE_TIMED_EVERY_MILLIS,
          settings.get(PURGE_TIMED_FOR_MILLIS) + 60000,
          "purge_timed_for_millis + 60 s");
    }
  }

  private void atLeast(Setting setting, int bound, String because) {
    int value = settings.get(setting);
    if (value < bound) {
      add(setting.key(), show(setting, value), "at least " + show(setting, bound), because);
    }
  }

  private void atMost(Setting setting, int bound, String because) {
    int value = settings.get(setting);
    if (value > bound) {
      add(setting.key(), show(setting, value), "at most " + show(setting, bound), because);
    }
  }

  private void add(String setting, String found, String allowed, String hint) {
    problems.add(new SettingProblem(setting, found, allowed, hint));
  }

  private static String show(Setting setting, int value) {
    String name = setting.name();
    if (name.endsWith("_CENTI_C")) {
      return celsius(value);
    }
    if (name.endsWith("_CENTI_K")) {
      return kelvin(value);
    }
    if (name.endsWith("_MILLI_V")) {
      return volts(value);
    }
    if (name.endsWith("_MILLI_A")) {
      return scaled(value, 1000, "A");
    }
    if (name.endsWith("_MILLIS")) {
      return scaled(value, 1000, "s");
    }
    if (name.endsWith("_PERMILLE")) {
      return scaled(value, 10, "%");
    }
    return Integer.toString(value);
  }

  private static String celsius(int centiC) {
    return scaled(centiC, 100, "degC");
  }

  private static String kelvin(int centiK) {
    return scaled(centiK, 100, "K");
  }

  private static String volts(int milliV) {
    return scaled(milliV, 1000, "V");
  }

  /** Decimal text of {@code value / scale}, without a trailing zero where three decimals stand. */
  private static String scaled(int value, int scale, String unit) {
    long magnitude = Math.abs((long) value);
    long rest = magnitude % scale;
    String decimals =
        scale == 10
            ? Long.toString(rest)
            : String.format(Locale.ROOT, scale == 100 ? "%02d" : "%03d", rest);
    if (scale == 1000 && decimals.endsWith("0")) {
      decimals = decimals.substring(0, 2);
    }
    return (value < 0 ? "-" : "") + magnitude / scale + "." + decimals + " " + unit;
  }
}
