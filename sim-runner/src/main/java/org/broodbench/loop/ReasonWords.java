package org.broodbench.loop;

import org.broodbench.controller.Reason;

/** Reason codes of the core in words that a keeper reads. */
public final class ReasonWords {
  private static final String[] WORDS = new String[Reason.LAST + 1];

  static {
    WORDS[Reason.NONE] = "as the thermostat asks";
    WORDS[Reason.ISOLATION] = "the relay was held to be welded, the series switch was open";
    WORDS[Reason.TRIP_LATCHED] =
        "there had been too many trips in a day; a long press of the button clears that";
    WORDS[Reason.PAN_TRIP] = "the thermal mass was at its trip";
    WORDS[Reason.BROOD_LIMIT] = "the brood was at its limit";
    WORDS[Reason.PAN_LIMIT] = "the thermal mass was at its control limit";
    WORDS[Reason.TRUST] = "no brood probe was trusted";
    WORDS[Reason.SUPPLY] = "there was no supply";
    WORDS[Reason.SHED] = "heat was shed to spare the battery";
    WORDS[Reason.SERVICE] = "there was a service hold";
    WORDS[Reason.COOLING] = "the fan was cooling";
    WORDS[Reason.EFFECT] = "the heater showed no effect, its share of time was used up";
    WORDS[Reason.BLIND] = "the battery could not be measured, the share of time was used up";
    WORDS[Reason.MIN_OFF] = "the heater was held off by minimum off";
    WORDS[Reason.STARTS] = "the heater was held off by the most starts an hour";
    WORDS[Reason.MIN_ON] = "the heater was held on by minimum on";
    WORDS[Reason.TEST] = "commissioning test";
    WORDS[Reason.FALLBACK] = "by the thermal mass alone, no brood probe was trusted";
    WORDS[Reason.WARM_OUTDOORS] = "it was not cool enough outdoors";
    WORDS[Reason.COLD_SHARE] = "cold outdoors, its share of time was used up";
    WORDS[Reason.HEATER_FIRST] = "waiting for the heater to go off";
    WORDS[Reason.PURGE] = "damp air";
    WORDS[Reason.TIMED_PURGE] = "timed change of air";
    WORDS[Reason.PURGE_ENDED] = "what allowed the change of air had ended";
  }

  private static final String[] LABELS = {
    "nothing",
    "a welded relay",
    "latched trips",
    "the trip of the thermal mass",
    "the brood limit",
    "the control limit of the thermal mass",
    "lost trust in the probes",
    "lack of a supply",
    "shedding",
    "service",
    "cooling",
    "a heater without effect",
    "a battery that could not be measured",
    "minimum off",
    "the most starts an hour"
  };

  private ReasonWords() {}

  /** The words of a code. */
  public static String of(int code) {
    return WORDS[code];
  }

  /**
   * What holds heat off, in few words.
   *
   * @param code up to {@link Reason#STARTS}
   */
  static String label(int code) {
    return LABELS[code];
  }

  /** The words of a code with what is left of its time, where that is known. */
  static String of(int code, double leftS) {
    return leftS > 0 ? of(code) + ", " + Lengths.of(leftS) + " left" : of(code);
  }
}
