package org.broodbench.controller;

import java.util.Arrays;
import java.util.List;

/**
 * An immutable set of values for every {@link Setting}, with the chemistry they are meant for.
 *
 * <p>Volt settings are for a 12 V battery until {@link #atNominalVolts} scales them.
 */
public final class Settings {
  private final ProbePlace place;
  private final Chemistry chemistry;
  private final int[] values;

  private Settings(ProbePlace place, Chemistry chemistry, int[] values) {
    this.place = place;
    this.chemistry = chemistry;
    this.values = values;
  }

  /**
   * Defaults for a 12 V battery.
   *
   * @param place where the brood probes hang
   * @param chemistry of the battery
   * @return settings that a controller accepts
   */
  public static Settings defaults(ProbePlace place, Chemistry chemistry) {
    int[] values = new int[Setting.values().length];
    Defaults.put(values, place, chemistry);
    return new Settings(place, chemistry, values);
  }

  /** {@return the place whose defaults these settings started from} */
  public ProbePlace place() {
    return place;
  }

  /** {@return the chemistry of the battery} */
  public Chemistry chemistry() {
    return chemistry;
  }

  /**
   * The value of one setting.
   *
   * @param setting which one
   * @return its value in the unit of its name
   */
  public int get(Setting setting) {
    return values[setting.ordinal()];
  }

  /**
   * Whether a setting that is 0 or 1 is 1.
   *
   * @param setting which one
   * @return true where it is not 0
   */
  public boolean is(Setting setting) {
    return get(setting) != 0;
  }

  /**
   * The same settings but for one value; nothing is checked before a controller is built.
   *
   * @param setting which one changes
   * @param value its new value, in the unit of its name
   * @return new settings; these stay as they are
   */
  public Settings with(Setting setting, int value) {
    int[] changed = values.clone();
    changed[setting.ordinal()] = value;
    return new Settings(place, chemistry, changed);
  }

  /**
   * Shorthand for a setting that is 0 or 1.
   *
   * @param setting which one changes
   * @param value true for 1
   * @return new settings; these stay as they are
   */
  public Settings with(Setting setting, boolean value) {
    return with(setting, value ? 1 : 0);
  }

  /**
   * The same settings for a battery of another nominal voltage: every setting that ends in MILLI_V
   * is multiplied by {@code nominalVolts / 12}.
   *
   * @param nominalVolts 12, 24, 36 or 48
   * @return new settings; these stay as they are
   * @throws IllegalArgumentException for other volts
   */
  public Settings atNominalVolts(int nominalVolts) {
    if (nominalVolts < 12 || nominalVolts > 48 || nominalVolts % 12 != 0) {
      throw new IllegalArgumentException(
          "nominal volts: found " + nominalVolts + ", allowed 12 to 48 in twelves");
    }
    int[] changed = values.clone();
    for (Setting setting : Setting.values()) {
      if (setting.name().endsWith("_MILLI_V")) {
        changed[setting.ordinal()] *= nominalVolts / 12;
      }
    }
    return new Settings(place, chemistry, changed);
  }

  /**
   * {@return every problem that would keep a controller from being built; empty when there is none}
   */
  public List<SettingProblem> problems() {
    return new SettingsCheck(this).problems();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Settings that
        && place == that.place
        && chemistry == that.chemistry
        && Arrays.equals(values, that.values);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(values);
  }

  @Override
  public String toString() {
    StringBuilder text = new StringBuilder(place + " " + chemistry);
    for (Setting setting : Setting.values()) {
      text.append(' ').append(setting.key()).append('=').append(get(setting));
    }
    return text.toString();
  }
}
