package org.broodbench.firmware;

import org.broodbench.controller.Readings;
import org.broodbench.controller.Sample;
import org.broodbench.controller.Setting;

/**
 * One entry of a vector: a step with its readings, or a restart between two steps, maybe with a new
 * setting. A sample that is not valid carries no value. Immutable.
 */
public final class Tick {
  /** What happens. */
  public enum Kind {
    /** A step. */
    STEP,
    /** State written out and read back; outputs stayed as they were (rule N3). */
    RESTART,
    /** The same after a loss of power (rule R7). */
    POWER_LOSS,
    /** Another value for one setting, and a restart (rule N4). */
    SETTING
  }

  private static final Channel[] CHANNELS = Channel.values();

  private final Kind kind;
  private final int nowMillis;
  private final int[] values;
  private final int[] agesMillis;
  private final int valid;
  private final int switches;

  private Tick(Kind kind, int nowMillis, int[] values, int[] agesMillis, int valid, int switches) {
    this.kind = kind;
    this.nowMillis = nowMillis;
    this.values = values;
    this.agesMillis = agesMillis;
    this.valid = valid;
    this.switches = switches;
  }

  /** A restart, with or without a loss of power. */
  public static Tick restart(boolean powerLoss) {
    return new Tick(powerLoss ? Kind.POWER_LOSS : Kind.RESTART, 0, new int[0], new int[0], 0, 0);
  }

  /** Another value for a setting. */
  public static Tick setting(Setting setting, int value) {
    return new Tick(Kind.SETTING, 0, new int[] {setting.ordinal(), value}, new int[0], 0, 0);
  }

  /** The setting that changes. */
  public Setting setting() {
    return Setting.values()[values[0]];
  }

  /** The new value of the setting that changes. */
  public int settingValue() {
    return values[1];
  }

  /** A step with a copy of the readings. */
  public static Tick step(int nowMillis, Readings readings) {
    int[] values = new int[Channel.COUNT];
    int[] ages = new int[Channel.COUNT];
    int valid = 0;
    for (int i = 0; i < Channel.COUNT; i++) {
      Sample sample = CHANNELS[i].of(readings);
      if (sample.valid) {
        valid |= 1 << i;
        values[i] = sample.value;
        ages[i] = sample.ageMillis;
      }
    }
    int switches =
        (readings.chargerFull ? 1 : 0)
            | (readings.shorePresent ? 2 : 0)
            | (readings.button ? 4 : 0)
            | (readings.testRequest ? 8 : 0);
    return new Tick(Kind.STEP, nowMillis, values, ages, valid, switches);
  }

  /** Puts the readings of this step. */
  public void put(Readings readings) {
    for (int i = 0; i < Channel.COUNT; i++) {
      Sample sample = CHANNELS[i].of(readings);
      sample.value = values[i];
      sample.ageMillis = agesMillis[i];
      sample.valid = valid(i);
    }
    readings.chargerFull = (switches & 1) != 0;
    readings.shorePresent = (switches & 2) != 0;
    readings.button = (switches & 4) != 0;
    readings.testRequest = (switches & 8) != 0;
  }

  /** The same at another time. */
  public Tick at(int newNowMillis) {
    return new Tick(kind, newNowMillis, values, agesMillis, valid, switches);
  }

  /** The same with one channel taken from another step. */
  Tick with(Channel channel, Tick other) {
    int i = channel.ordinal();
    int[] newValues = values.clone();
    int[] newAges = agesMillis.clone();
    newValues[i] = other.values[i];
    newAges[i] = other.agesMillis[i];
    int newValid = valid & ~(1 << i) | (other.valid & 1 << i);
    return new Tick(kind, nowMillis, newValues, newAges, newValid, switches);
  }

  /** The same with the sample of one channel moved, where it is valid. */
  Tick shifted(Channel channel, int by) {
    int[] newValues = values.clone();
    newValues[channel.ordinal()] += valid(channel.ordinal()) ? by : 0;
    return new Tick(kind, nowMillis, newValues, agesMillis, valid, switches);
  }

  /** The same with other switches: 1 charger full, 2 shore, 4 button, 8 test request. */
  Tick withSwitches(int newSwitches) {
    return new Tick(kind, nowMillis, values, agesMillis, valid, newSwitches);
  }

  /** What happens. */
  public Kind kind() {
    return kind;
  }

  /** A step, not a restart. */
  public boolean isStep() {
    return kind == Kind.STEP;
  }

  /** The counter of the step. */
  public int nowMillis() {
    return nowMillis;
  }

  /** Whether the sample was delivered. */
  public boolean valid(int channel) {
    return (valid & 1 << channel) != 0;
  }

  /** Its raw value. */
  public int value(int channel) {
    return values[channel];
  }

  /** Its age. */
  public int ageMillis(int channel) {
    return agesMillis[channel];
  }

  /** 1 charger full, 2 shore, 4 button, 8 test request. */
  public int switches() {
    return switches;
  }
}
