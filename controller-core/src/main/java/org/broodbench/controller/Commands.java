package org.broodbench.controller;

/**
 * What one {@link Controller#step} asks of the outputs, and what it shows: a reusable, mutable set.
 */
public final class Commands {
  /** No brood temperature is known. */
  public static final int NO_TEMPERATURE = Integer.MIN_VALUE;

  /** {@link #supply}: nothing feeds the loads. */
  public static final int SUPPLY_NONE = SupplySelect.NONE;

  /** {@link #supply}: the battery. */
  public static final int SUPPLY_BATTERY = SupplySelect.BATTERY;

  /** {@link #supply}: shore power. */
  public static final int SUPPLY_SHORE = SupplySelect.SHORE;

  /** Heater relay closed. */
  public boolean heater;

  /** Series switch of the heater closed; open only while the relay is held welded. */
  public boolean isolation;

  /** Exhaust fan on. */
  public boolean fan;

  /** Inverter enabled. */
  public boolean inverter;

  /** One of the SUPPLY constants. */
  public int supply;

  /** One of {@link ShedLevel}'s; restricts nothing while shore power feeds the loads. */
  public int shedLevel;

  /** Why the heater is not what the thermostat alone would ask; one of {@link Reason}'s. */
  public int heaterReason;

  /** Why the heater last stopped: {@link Reason#NONE} for the thermostat, else the permit lost. */
  public int heaterStopReason;

  /** Why the fan runs, or why not though it is wanted; one of {@link Reason}'s. */
  public int fanReason;

  /** Active alarms; bit numbers are {@link Alarm}'s. */
  public int alarms;

  /** Alarms that were active since they were last cleared. */
  public int latchedAlarms;

  /** Brood temperature that calls for heat, centi-degrees Celsius, or {@link #NO_TEMPERATURE}. */
  public int governingCentiC;

  /** Brood temperature that stops heat and drives the fan, or {@link #NO_TEMPERATURE}. */
  public int governingHighCentiC;

  /** Working set point, centi-degrees Celsius, or {@link #NO_TEMPERATURE}. */
  public int workingSetPointCentiC;

  /** What is left of the heater's minimum off, milliseconds. */
  public int minOffRemainingMillis;

  /** What is left of the heater's minimum on, milliseconds. */
  public int minOnRemainingMillis;

  /** What is left of a service hold, milliseconds; 0 when there is none. */
  public int serviceRemainingMillis;

  /** Commissioning test: 0 none, 1 heater, 2 fan. */
  public int testPhase;

  /** Battery volts corrected for load, millivolts; 0 while volts are not trusted. */
  public int correctedMilliV;

  /** Leave delay in force, milliseconds. */
  public int leaveDelayMillis;

  /** Sheds in the last rolling 24 h. */
  public int shedsInDay;

  /** Lowest brood temperature since the last short press, or {@link #NO_TEMPERATURE}. */
  public int lowestBroodCentiC;

  /** Highest brood temperature since the last short press, or {@link #NO_TEMPERATURE}. */
  public int highestBroodCentiC;

  /** Seconds of heat since the last short press. */
  public int heaterSeconds;

  /** Heater starts since the last short press. */
  public int heaterStarts;

  /** Sheds since the last short press. */
  public int sheds;

  /** Nothing commanded yet: everything off and zero. */
  public Commands() {}
}
