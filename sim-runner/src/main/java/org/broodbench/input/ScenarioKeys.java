package org.broodbench.input;

/** The registry of every key of a scenario. */
public final class ScenarioKeys {
  /** Made once: studies read their scenario thousands of times. */
  private static final Keys ALL = declared();

  private ScenarioKeys() {}

  /** A registry with all keys, in the order of the key tables. */
  public static Keys all() {
    return ALL;
  }

  private static Keys declared() {
    Keys.Builder keys = Keys.builder();
    SiteKeys.declare(keys);
    WeatherFileKeys.declare(keys);
    HorizonKeys.declare(keys);
    HiveKeys.declare(keys);
    ColonyKeys.declare(keys);
    HeaterKeys.declare(keys);
    ProbeKeys.declare(keys);
    PowerKeys.declare(keys);
    ControllerKeys.declare(keys);
    PaperKeys.declare(keys);
    RequirementKeys.declare(keys);
    EventKeys.declare(keys);
    SizeKeys.declare(keys);
    LogKeys.declare(keys);
    TuneKeys.declare(keys);
    return keys.build();
  }

  /** Runs every check that needs more than one key. */
  static void check(Values values, Checks checks) {
    SiteKeys.check(values, checks);
    WeatherFileKeys.check(values, checks);
    HorizonKeys.check(values, checks);
    HiveKeys.check(values, checks);
    ColonyKeys.check(values, checks);
    HeaterKeys.check(values, checks);
    PowerKeys.check(values, checks);
    ControllerKeys.check(values, checks);
    EventKeys.check(values, checks);
    SizeKeys.check(values, checks);
    LogKeys.check(values, checks);
    TuneKeys.check(values, checks);
  }
}
