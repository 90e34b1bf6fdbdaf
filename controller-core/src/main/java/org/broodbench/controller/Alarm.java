package org.broodbench.controller;

/** The fixed set of alarms, as bit numbers of {@link Commands#alarms}. */
public final class Alarm {
  /** A step said that time ran backwards, or that half the counter went by. */
  public static final int TIME = 0;

  /** A fitted brood probe is not trusted. */
  public static final int BROOD_PROBE = 1;

  /** Two brood probes of like place are further apart than stated. */
  public static final int PROBES_APART = 2;

  /** A probe shows no change while another moved. */
  public static final int PROBE_STUCK = 3;

  /** The pan probe is not trusted. */
  public static final int PAN_PROBE = 4;

  /** No brood probe is trusted: heat by the pan, or none. */
  public static final int FALLBACK = 5;

  /** The pan is at its trip. */
  public static final int PAN_TRIP = 6;

  /** Heat is latched off after too many trips. */
  public static final int TRIP_LATCHED = 7;

  /** A brood probe is at its limit. */
  public static final int BROOD_LIMIT = 8;

  /** The heater relay is held welded. */
  public static final int WELDED = 9;

  /** The heater showed no effect. */
  public static final int EFFECT = 10;

  /** The brood has been cold for the stated time. */
  public static final int BROOD_LOW = 11;

  /** The brood is hot. */
  public static final int BROOD_HIGH = 12;

  /** The battery cannot be measured. */
  public static final int BLIND = 13;

  /** Heat is shed to spare the battery. */
  public static final int HEAT_SHED = 14;

  /** As many sheds in a rolling day as start to double the delay. */
  public static final int MANY_SHEDS = 15;

  /** Nothing feeds the loads. */
  public static final int NO_SUPPLY = 16;

  /** The humidity sensor is wet. */
  public static final int HUMIDITY_WET = 17;

  /** The button is wet or stuck. */
  public static final int BUTTON_STUCK = 18;

  /** The fitted outdoor probe is not trusted. */
  public static final int OUTDOOR_PROBE = 19;

  /** Raw volts at or below the emergency threshold. */
  public static final int EMERGENCY = 20;

  /** How many there are. */
  public static final int COUNT = 21;

  private static final String[] NAMES = {
    "time",
    "brood_probe",
    "probes_apart",
    "probe_stuck",
    "pan_probe",
    "fallback",
    "pan_trip",
    "trip_latched",
    "brood_limit",
    "welded",
    "effect",
    "brood_low",
    "brood_high",
    "blind",
    "heat_shed",
    "many_sheds",
    "no_supply",
    "humidity_wet",
    "button_stuck",
    "outdoor_probe",
    "emergency"
  };

  private Alarm() {}

  /**
   * The name of an alarm as SPEC.md writes it.
   *
   * @param bit number of the bit in {@link Commands#alarms}, from 0
   * @return the name in lower case
   */
  public static String name(int bit) {
    return NAMES[bit];
  }
}
