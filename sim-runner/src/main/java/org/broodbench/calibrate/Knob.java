package org.broodbench.calibrate;

import org.broodbench.rig.Scenario;

/**
 * What a fit may turn. Each has a prior: the scenario's own value in the middle, and a spread whose
 * 5 to 95 % range is what is published or usual. Inside the fit a knob is a number z with a
 * standard normal prior; its value is the middle times e^(spread z) unless said otherwise.
 */
public enum Knob {
  /**
   * Factor on the conductance of walls, floor and lid. Measured polystyrene boxes lose 1.4 to 2
   * times the sum of their layers, wooden ones as much as it: 0.66 to 1.5 of what is entered.
   */
  HIVE_LOSS("hive_loss", "hive.loss_factor", "", 0.25),
  /**
   * Heat capacity of the pan's filling: sand 0.7 to 0.95 kJ/(kg K) by grain and damp, handbooks.
   */
  PAN_HEAT("pan_heat", "heater.pan_specific_heat", "J/K", 0.12),
  /** Stores, which are most of a hive's thermal mass; guessed by keepers to a half, own choice. */
  STORES("stores", "hive.box.*.stores", "kg", 0.35),
  /** Power of the element at its rated volts: makers give ±10 %, ageing takes some; own choice. */
  HEATER_POWER("heater_power", "heater.power", "W", 0.1),
  /** Share of the openings that is free: 0.3 to 0.7, low confidence. */
  AIR_LEAKAGE("air_leakage", "hive.open_share", "", 0.3),
  /** Share of sunlight taken up outside: white 0.3 to dark 0.9, handbooks. */
  SOLAR_GAIN("solar_gain", "hive.solar_absorptance", "", 0.3),
  /** Adult bees: a count of covered frames is good to a third, own choice. */
  COLONY_BEES("colony_bees", "colony.bees", "bees", 0.25),
  /** Heat loss of the cluster against laboratory clusters: published from 1.0 to 2.85. */
  CLUSTER_LOSS("cluster_loss", "colony.heat_loss_factor", "", 0.32),
  /** Capacity of the battery: new to well used, 0.7 to 1.4 of what is entered; own choice. */
  BATTERY_CAPACITY("battery_capacity", "battery.capacity", "Ah", 0.2),
  /** Resistance of battery, leads and clips: hand-built supplies spread by a factor of two. */
  BATTERY_RESISTANCE("battery_resistance", "battery.resistance", "mOhm", 0.4),
  /** Panel output: dirt, tilt, tolerance; own choice. */
  PANEL_FACTOR("panel_factor", "pv.power", "W", 0.15),
  /** State of charge where the log begins: hardly known before; its odds spread. Own choice. */
  START_CHARGE("start_charge", "battery.initial_charge", "%", 2.0),
  /** Outdoor thermometer, or the weather station's distance; a shift in K. */
  OUTDOOR_OFFSET("outdoor_offset", "probe.outdoor.offset", "K", 0.3),
  /** First brood probe; digital probes are sold as ±0.5 K. */
  BROOD_A_OFFSET("brood_a_offset", "probe.brood_a.offset", "K", 0.3),
  /** Second brood probe. */
  BROOD_B_OFFSET("brood_b_offset", "probe.brood_b.offset", "K", 0.3),
  /** Probe of the pan. */
  PAN_OFFSET("pan_offset", "probe.pan.offset", "K", 0.3),
  /** Probe under the lid. */
  TOP_OFFSET("top_offset", "probe.top.offset", "K", 0.3),
  /** Volts reading; dividers of 1 % parts come to 0.03 V. */
  VOLTS_OFFSET("volts_offset", "sensor.volts_error", "V", 0.03),
  /** Battery current reading; Hall and shunt amplifiers drift by some hundredths. */
  CURRENT_OFFSET("current_offset", "", "A", 0.03),
  /** Humidity reading; makers' sheets say 2 to 5 points. */
  HUMIDITY_OFFSET("humidity_offset", "", "percent", 3);

  /** Number of knobs. */
  public static final int COUNT = values().length;

  private final String key;
  private final String scenarioKey;
  private final String unit;
  private final double spread;

  Knob(String key, String scenarioKey, String unit, double spread) {
    this.key = key;
    this.scenarioKey = scenarioKey;
    this.unit = unit;
    this.spread = spread;
  }

  /** Name in results. */
  public String key() {
    return key;
  }

  /** The key of the scenario that it belongs to; empty for none. */
  public String scenarioKey() {
    return scenarioKey;
  }

  /** Unit of its value. */
  public String unit() {
    return unit;
  }

  /** Whether it only shifts a reading: what is simulated does not depend on it. */
  public boolean shiftsReading() {
    return ordinal() >= BROOD_A_OFFSET.ordinal();
  }

  /** Whether its value is a shift with zero in the middle of the prior. */
  public boolean isOffset() {
    return ordinal() >= OUTDOOR_OFFSET.ordinal();
  }

  /** Spread of the prior: of the logarithm, of the log odds, or in its unit. */
  public double spread() {
    return spread;
  }

  /** The reading that an offset shifts; null for other knobs. */
  LogColumn reading() {
    return switch (this) {
      case BROOD_A_OFFSET -> LogColumn.BROOD_A;
      case BROOD_B_OFFSET -> LogColumn.BROOD_B;
      case PAN_OFFSET -> LogColumn.PAN;
      case TOP_OFFSET -> LogColumn.TOP;
      case VOLTS_OFFSET -> LogColumn.BATTERY_V;
      case CURRENT_OFFSET -> LogColumn.BATTERY_A;
      case HUMIDITY_OFFSET -> LogColumn.HUMIDITY;
      default -> null;
    };
  }

  /** Value in the middle of the prior: the scenario's own, in the unit of the knob. */
  public double middle(Scenario s) {
    return switch (this) {
      case HIVE_LOSS -> s.hive().guesses().lossFactor();
      // the pan's own heat; the scenario's key is per kilogram
      case PAN_HEAT -> s.heater().pan().heatJK();
      case STORES -> s.hive().boxes().stream().mapToDouble(b -> b.storesKg()).sum();
      case HEATER_POWER -> s.heater().powerW();
      case AIR_LEAKAGE -> s.hive().openShare();
      case SOLAR_GAIN -> s.hive().wallSkin().solarAbsorptance();
      case COLONY_BEES -> s.colony().bees();
      case CLUSTER_LOSS -> s.colony().clusterLossFactor();
      case BATTERY_CAPACITY -> s.battery().capacityAh();
      case BATTERY_RESISTANCE -> 1000 * (s.battery().resistanceOhm() + s.wiring().batteryLeadOhm());
      case PANEL_FACTOR -> s.pv().powerW();
      case START_CHARGE -> 100 * s.battery().initialSoc();
      default -> 0;
    };
  }

  /** Value at z. */
  public double value(Scenario s, double z) {
    double middle = middle(s);
    if (isOffset()) {
      return middle + spread * z;
    }
    if (this == START_CHARGE) {
      double share = Math.max(0.05, Math.min(0.95, middle / 100));
      double odds = share / (1 - share) * StrictMath.exp(spread * z);
      return 100 * odds / (1 + odds);
    }
    return middle * StrictMath.exp(spread * z);
  }

  /** Factor on the scenario's own value at z. */
  double factor(double z) {
    return StrictMath.exp(spread * z);
  }
}
