package org.broodbench.loop;

import org.broodbench.controller.Reason;

/** Reason codes of the core in words that a keeper reads. */
public final class ReasonWords {
  private static final String[] WORDS = new String[Reason.LAST + 1];

  static {
    WORDS[Reason.NONE] = "as the thermostat asks";
    WORDS[Reason.ISOLATION] = "the relay is held to be welded, the series switch is open";
    WORDS[Reason.TRIP_LATCHED] = "too many trips in a day; a long press of the button clears it";
    WORDS[Reason.PAN_TRIP] = "the thermal mass was at its trip";
    WORDS[Reason.BROOD_LIMIT] = "the brood was at its limit";
    WORDS[Reason.PAN_LIMIT] = "the thermal mass was at its control limit";
    WORDS[Reason.TRUST] = "no brood probe was trusted";
    WORDS[Reason.SUPPLY] = "there was no supply";
    WORDS[Reason.SHED] = "heat was shed to spare the battery";
    WORDS[Reason.SERVICE] = "service hold";
    WORDS[Reason.COOLING] = "the fan was cooling";
    WORDS[Reason.EFFECT] = "the heater showed no effect, its share of time was used up";
    WORDS[Reason.BLIND] = "the battery could not be measured, the share of time was used up";
    WORDS[Reason.MIN_OFF] = "held off by minimum off";
    WORDS[Reason.STARTS] = "held off by the most starts an hour";
    WORDS[Reason.MIN_ON] = "held on by minimum on";
    WORDS[Reason.TEST] = "commissioning test";
    WORDS[Reason.FALLBACK] = "by the thermal mass alone, no brood probe was trusted";
    WORDS[Reason.WARM_OUTDOORS] = "it was not cool enough outdoors";
    WORDS[Reason.COLD_SHARE] = "cold outdoors, its share of time was used up";
    WORDS[Reason.HEATER_FIRST] = "waiting for the heater to go off";
    WORDS[Reason.PURGE] = "damp air";
    WORDS[Reason.TIMED_PURGE] = "timed change of air";
    WORDS[Reason.PURGE_ENDED] = "what allowed the change of air had ended";
  }

  private ReasonWords() {}

  /** The words of a code. */
  public static String of(int code) {
    return WORDS[code];
  }
}
