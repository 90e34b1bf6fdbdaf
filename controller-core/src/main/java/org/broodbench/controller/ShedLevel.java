package org.broodbench.controller;

/** How much is shed to spare the battery; a higher number sheds more. */
public final class ShedLevel {
  /** Nothing is shed. */
  public static final int FULL = 0;

  /** The set point is lowered. */
  public static final int SET_BACK = 1;

  /** Heat to an absolute low target only. */
  public static final int SURVIVAL = 2;

  /** No heat; the inverter is off unless it is declared as needed. */
  public static final int HEAT_SHED = 3;

  /** No heat, no fan. */
  public static final int FAN_SHED = 4;

  /** Nothing but the controller; left only while charge flows in. */
  public static final int STANDBY = 5;

  private static final String[] NAMES = {
    "full", "set_back", "survival", "heat_shed", "fan_shed", "standby"
  };

  private ShedLevel() {}

  /**
   * The name of a level as SPEC.md writes it.
   *
   * @param level one of the numbers of this class
   * @return the name in lower case
   */
  public static String name(int level) {
    return NAMES[level];
  }
}
