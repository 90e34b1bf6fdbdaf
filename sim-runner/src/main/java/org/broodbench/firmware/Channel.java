package org.broodbench.firmware;

import java.util.function.Function;
import org.broodbench.controller.Readings;
import org.broodbench.controller.Sample;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;

/** The analogue readings in the order of the line protocol; the unit ends the key. */
public enum Channel {
  BROOD_A("brood_a_centi_c", Setting.FITTED_BROOD_A, r -> r.broodA),
  BROOD_B("brood_b_centi_c", Setting.FITTED_BROOD_B, r -> r.broodB),
  PAN("pan_centi_c", Setting.FITTED_PAN, r -> r.pan),
  TOP("top_centi_c", Setting.FITTED_TOP, r -> r.top),
  OUTDOOR("outdoor_centi_c", Setting.FITTED_OUTDOOR, r -> r.outdoor),
  HUMIDITY("humidity_permille", Setting.FITTED_HUMIDITY, r -> r.humidity),
  BATTERY("battery_milli_v", Setting.FITTED_BATTERY, r -> r.battery),
  BATTERY_CURRENT("battery_current_milli_a", Setting.FITTED_BATTERY_CURRENT, r -> r.batteryCurrent),
  STATE_OF_CHARGE("state_of_charge_permille", Setting.FITTED_STATE_OF_CHARGE, r -> r.stateOfCharge),
  BATTERY_TEMPERATURE("battery_temperature_centi_c", null, r -> r.batteryTemperature),
  HEATER_CURRENT("heater_current_milli_a", Setting.FITTED_HEATER_CURRENT, r -> r.heaterCurrent),
  PANEL_POWER("panel_power_milli_w", Setting.FITTED_PANEL_POWER, r -> r.panelPower);

  /** How many there are. */
  public static final int COUNT = 12;

  private final String key;
  private final Setting fitted;
  private final Function<Readings, Sample> sample;

  Channel(String key, Setting fitted, Function<Readings, Sample> sample) {
    this.key = key;
    this.fitted = fitted;
    this.sample = sample;
  }

  /** Column name, with the unit. */
  public String key() {
    return key;
  }

  /** The sample of this channel. */
  public Sample of(Readings readings) {
    return sample.apply(readings);
  }

  /** The setting that says whether it is fitted; null for those that need none. */
  public Setting fitting() {
    return fitted;
  }

  /** Whether the controller with these settings looks at it. */
  public boolean fitted(Settings settings) {
    return fitted != null && settings.is(fitted);
  }
}
