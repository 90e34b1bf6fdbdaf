package org.broodbench.controller;

/**
 * What the drivers hand to one {@link Controller#step}: a reusable, mutable set of samples and
 * switches.
 */
public final class Readings {
  /** First brood probe, centi-degrees Celsius. */
  public final Sample broodA = new Sample();

  /** Second brood probe, centi-degrees Celsius. */
  public final Sample broodB = new Sample();

  /** Thermal mass over the heater, centi-degrees Celsius. */
  public final Sample pan = new Sample();

  /** Air under the lid, centi-degrees Celsius. */
  public final Sample top = new Sample();

  /** Outdoor air, centi-degrees Celsius. */
  public final Sample outdoor = new Sample();

  /** Relative humidity between the combs, per mille. */
  public final Sample humidity = new Sample();

  /** Battery volts at the controller, millivolts. */
  public final Sample battery = new Sample();

  /** Battery current, milliamperes, positive into the battery (charging). */
  public final Sample batteryCurrent = new Sample();

  /** State of charge, per mille. */
  public final Sample stateOfCharge = new Sample();

  /** Battery temperature, centi-degrees Celsius. */
  public final Sample batteryTemperature = new Sample();

  /** Heater current, milliamperes. */
  public final Sample heaterCurrent = new Sample();

  /** Power from the panel, milliwatts. */
  public final Sample panelPower = new Sample();

  /** Whether the charger reports a full battery. */
  public boolean chargerFull;

  /** Whether shore power is present. */
  public boolean shorePresent;

  /** Whether the button is down. */
  public boolean button;

  /** Asks for the commissioning test; acts by its rising edge. */
  public boolean testRequest;

  /** No sample delivered, no switch on. */
  public Readings() {}
}
