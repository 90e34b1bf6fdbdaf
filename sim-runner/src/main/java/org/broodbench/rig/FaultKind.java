package org.broodbench.rig;

import java.util.Locale;

/**
 * Ways in which a rig breaks. What each does to readings, plant or controller is told at its
 * constant; the sizes are own choices.
 */
public enum FaultKind {
  /** The first brood probe gives nothing. */
  PROBE_OPEN,
  /** The first brood probe reads far above its range. */
  PROBE_SHORT,
  /** The first brood probe keeps the value that it had. */
  PROBE_STUCK,
  /** The first brood probe creeps off by an offset, K, at 1 K an hour. */
  PROBE_OFFSET(-3),
  /** First brood probe and pan probe (where none, outdoor probe) are plugged into one another. */
  PROBES_SWAPPED,
  /** Water in the plug of the first brood probe: it reads too warm by an offset, K, and jumps. */
  PROBE_WET(2),
  /** The first brood probe has fallen out of the nest into the air of its box. */
  PROBE_FALLEN,
  /** The pan probe gives nothing. */
  PAN_PROBE_OPEN,
  /** The outdoor probe gives nothing. */
  OUTDOOR_PROBE_OPEN,
  /** The humidity probe is wet: it shows saturation. */
  HUMIDITY_WET,
  /** Battery volts, current and charge give nothing. */
  VOLTS_LOST,
  /** The heater relay is welded closed; only an isolation switch can part it. */
  RELAY_WELDED,
  /** The heater relay does not close. */
  RELAY_OPEN,
  /** The heater's element is burnt but for a share. */
  ELEMENT_BURNT(0),
  /** The fan takes its power and does not turn. */
  FAN_JAMMED,
  /** The fan runs whatever is asked. */
  FAN_STUCK_ON,
  /** Something lies on all modules and leaves a share of the light. */
  PANEL_COVERED(0.05),
  /** The first module group is cut off. */
  STRING_LOST,
  /** The battery has a share of its capacity left, and its resistance has grown as much. */
  BATTERY_AGED(0.6),
  /** One cell of the battery is shorted. */
  CELL_LOST,
  /** The battery is gone. */
  BATTERY_GONE,
  /** The fuse at the battery is blown. */
  BATTERY_FUSE_BLOWN,
  /** The fuse of a heater on the battery side is blown. */
  HEATER_FUSE_BLOWN,
  /** The inverter has tripped and does not return. */
  INVERTER_TRIPPED,
  /** Shore power is gone. */
  SHORE_LOST,
  /** The lid is off. */
  LID_OFF,
  /** The entrance is blocked but for a share. */
  ENTRANCE_BLOCKED(0),
  /** The hive lies on its side: lid off, first brood probe out of the nest, heater cable torn. */
  TOPPLED,
  /** The stores are gone; the bees live on their crops. */
  STORES_GONE,
  /** The controller resets every hour. */
  CONTROLLER_RESETS,
  /** The controller hangs with the heater on, until its power is cut. */
  CONTROLLER_HANGS,
  /** The controller is dead, its outputs open. */
  CONTROLLER_DEAD;

  private final double usualSize;

  FaultKind() {
    this(Double.NaN);
  }

  FaultKind(double usualSize) {
    this.usualSize = usualSize;
  }

  /** Name in files. */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Size where none is given, a share or K; not a number where the kind has none. */
  public double usualSize() {
    return usualSize;
  }

  /** Whether its size is an offset in K. */
  public boolean isOffset() {
    return this == PROBE_OFFSET || this == PROBE_WET;
  }

  /** Whether its size is the share that is left. */
  public boolean isShare() {
    return !Double.isNaN(usualSize) && !isOffset();
  }

  /** Whether it can pass by itself or by a hand; a battery does not grow young again. */
  public boolean canEnd() {
    return this != BATTERY_AGED && this != CELL_LOST;
  }

  /** Whether a rig has what breaks. */
  public boolean appliesTo(Scenario s) {
    return switch (this) {
      case PROBE_OPEN, PROBE_SHORT, PROBE_STUCK, PROBE_OFFSET, PROBE_WET, PROBE_FALLEN ->
          s.probe(ProbeSpec.Role.BROOD_A) != null;
      case PROBES_SWAPPED ->
          s.probe(ProbeSpec.Role.BROOD_A) != null
              && (s.probe(ProbeSpec.Role.PAN) != null || s.probe(ProbeSpec.Role.OUTDOOR) != null);
      case PAN_PROBE_OPEN -> s.probe(ProbeSpec.Role.PAN) != null;
      case OUTDOOR_PROBE_OPEN -> s.probe(ProbeSpec.Role.OUTDOOR) != null;
      case HUMIDITY_WET -> s.sensors().humidity();
      case RELAY_WELDED, RELAY_OPEN, ELEMENT_BURNT, CONTROLLER_HANGS -> s.heater().powerW() > 0;
      case HEATER_FUSE_BLOWN -> s.heater().powerW() > 0 && !s.heater().onInverter();
      case FAN_JAMMED, FAN_STUCK_ON -> s.fan().powerW() > 0;
      case PANEL_COVERED, STRING_LOST -> s.pv().powerW() > 0;
      case INVERTER_TRIPPED -> s.inverter().ratedW() > 0;
      case SHORE_LOST -> s.shore().present() && s.shore().powerW() > 0;
      case STORES_GONE -> s.colony().bees() > 0;
      default -> true;
    };
  }
}
