package org.broodbench.controller;

/**
 * Why an output is not what the thermostat alone would ask, and why the heater last stopped. The
 * order of the first twelve is their rank: the first that applies is given.
 */
public final class Reason {
  /** The output is what the thermostat alone asks. */
  public static final int NONE = 0;

  /** The heater relay is held welded; the isolation switch is open. */
  public static final int ISOLATION = 1;

  /** Too many trips in a rolling day; a long press clears it. */
  public static final int TRIP_LATCHED = 2;

  /** The pan is at its trip. */
  public static final int PAN_TRIP = 3;

  /** A brood probe is at its limit. */
  public static final int BROOD_LIMIT = 4;

  /** The pan is at its control limit: ordinary control. */
  public static final int PAN_LIMIT = 5;

  /** No trusted brood probe and no fallback. */
  public static final int TRUST = 6;

  /** No supply, or a transfer between supplies. */
  public static final int SUPPLY = 7;

  /** Shed to spare the battery. */
  public static final int SHED = 8;

  /** Service hold by the button, or the commissioning test. */
  public static final int SERVICE = 9;

  /** The fan cools, or is about to. */
  public static final int COOLING = 10;

  /** The pan is not believed or the heater not proven: the share of on-time is used up. */
  public static final int EFFECT = 11;

  /** The battery cannot be measured: the share of on-time is used up. */
  public static final int BLIND = 12;

  /** Wanted, held off by minimum off. */
  public static final int MIN_OFF = 13;

  /** Wanted, held off by the most starts an hour. */
  public static final int STARTS = 14;

  /** Not wanted, held on by minimum on. */
  public static final int MIN_ON = 15;

  /** Commissioning test. */
  public static final int TEST = 16;

  /** Heat by the pan alone: no brood probe is trusted. */
  public static final int FALLBACK = 17;

  /** Fan: outdoors is not cool enough to cool with. */
  public static final int WARM_OUTDOORS = 18;

  /** Fan: cold outdoors, and the share of on-time is used up. */
  public static final int COLD_SHARE = 19;

  /** Fan: waits for the heater to go off. */
  public static final int HEATER_FIRST = 20;

  /** Fan: purge of damp air. */
  public static final int PURGE = 21;

  /** Fan: timed purge. */
  public static final int TIMED_PURGE = 22;

  /** Fan: what allowed a purge has ended. */
  public static final int PURGE_ENDED = 23;

  /** The highest code. */
  public static final int LAST = 23;

  private static final String[] NAMES = {
    "none",
    "isolation",
    "trip_latched",
    "pan_trip",
    "brood_limit",
    "pan_limit",
    "trust",
    "supply",
    "shed",
    "service",
    "cooling",
    "effect",
    "blind",
    "min_off",
    "starts",
    "min_on",
    "test",
    "fallback",
    "warm_outdoors",
    "cold_share",
    "heater_first",
    "purge",
    "timed_purge",
    "purge_ended"
  };

  private static final String[] STOPS = {
    "thermostat",
    "isolation",
    "limit",
    "limit",
    "limit",
    "limit",
    "trust",
    "supply",
    "shed",
    "service",
    "cooling",
    "effect",
    "shed"
  };

  private Reason() {}

  /**
   * The name of a code as SPEC.md writes it.
   *
   * @param code one of the numbers of this class
   * @return the name in lower case
   */
  public static String name(int code) {
    return NAMES[code];
  }

  /**
   * The kind of stop that a permit lost for {@code code} is: thermostat (no permit lost),
   * isolation, limit, trust, supply, shed, service, cooling or effect.
   *
   * @param code 0 to 12, as {@link Commands#heaterStopReason} carries it
   * @return the kind in lower case
   */
  public static String stopKind(int code) {
    return STOPS[code];
  }
}
