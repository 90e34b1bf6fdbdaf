package org.broodbench.loop;

import java.util.EnumMap;
import java.util.Map;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Readings;
import org.broodbench.controller.Sample;
import org.broodbench.controller.Setting;
import org.broodbench.plant.Actuators;
import org.broodbench.plant.Plant;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.FaultKind;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Scenario;

/**
 * What is broken at present: spoils readings, overrides what the controller asks, and breaks parts
 * of the plant. Without a fault it does nothing.
 */
final class Faults {
  /** Far above the range of every probe, centi-degrees. */
  private static final int SHORTED_CENTI_C = 30_000;

  /** Standard deviation of the jumps of a wet plug, centi-kelvin; own choice. */
  private static final double WET_JUMPS_CENTI_K = 70;

  /** An offset creeps in at 1 K an hour, so that no jump betrays it; own choice. */
  private static final double CREEPS_K_PER_S = 1 / 3600.0;

  private static final int WET_CHANNEL = 200;

  private final Map<FaultKind, EventSpec.Fault> present = new EnumMap<>(FaultKind.class);
  private final Scenario scenario;
  private final Plant plant;
  private final boolean swapsWithPan;
  private final boolean isolated;
  private final long wetKey;
  private int stuckCentiC;
  private boolean stuckKnown;

  Faults(Scenario scenario, Plant plant) {
    this.scenario = scenario;
    this.plant = plant;
    swapsWithPan = scenario.probe(ProbeSpec.Role.PAN) != null;
    isolated = scenario.controller().settings().is(Setting.FITTED_ISOLATION);
    wetKey = Noise.key(scenario.run().seed(), WET_CHANNEL);
  }

  /** Something breaks. */
  void begin(EventSpec.Fault fault) {
    present.put(fault.kind(), fault);
    stuckKnown &= fault.kind() != FaultKind.PROBE_STUCK;
    toPlant(fault, true);
  }

  /** It is whole again. */
  void end(EventSpec.Fault fault) {
    if (present.remove(fault.kind()) != null) {
      toPlant(fault, false);
    }
  }

  private void toPlant(EventSpec.Fault fault, boolean breaks) {
    var broken = plant.broken();
    switch (fault.kind()) {
      case PROBE_FALLEN -> plant.hang(ProbeSpec.Role.BROOD_A, breaks, ProbeSpec.Place.BOX_AIR);
      case RELAY_WELDED -> broken.relayWelded = breaks;
      case ELEMENT_BURNT -> broken.elementShare = breaks ? fault.size() : 1;
      case FAN_JAMMED -> broken.fanJammed = breaks;
      case PANEL_COVERED -> java.util.Arrays.fill(broken.lightShare, breaks ? fault.size() : 1);
      case STRING_LOST -> {
        if (broken.lightShare.length > 0) {
          broken.lightShare[0] = breaks ? 0 : 1;
        }
      }
      case BATTERY_AGED -> plant.supply().ageBattery(fault.size());
      case CELL_LOST -> plant.supply().loseCell();
      case BATTERY_GONE -> plant.supply().takeBattery(breaks);
      case BATTERY_FUSE_BLOWN -> plant.supply().batteryFuse(breaks);
      case HEATER_FUSE_BLOWN -> plant.supply().heaterFuse(breaks);
      case INVERTER_TRIPPED -> plant.supply().tripInverter(breaks);
      case SHORE_LOST -> plant.supply().setShore(!breaks);
      case LID_OFF -> plant.hive().setLidOpen(breaks);
      case ENTRANCE_BLOCKED -> plant.hive().setEntrance(breaks ? fault.size() : 1);
      case TOPPLED -> {
        plant.hive().setLidOpen(breaks);
        plant.hang(ProbeSpec.Role.BROOD_A, breaks, ProbeSpec.Place.BOX_AIR);
      }
      case STORES_GONE -> plant.hive().setStoresGone(breaks);
      default -> {
        // of the readings or of the controller: spoil and drive look them up
      }
    }
  }

  /** Whether the controller's program stands still. */
  boolean halted() {
    return !present.isEmpty()
        && (has(FaultKind.CONTROLLER_HANGS) || has(FaultKind.CONTROLLER_DEAD));
  }

  /** The board's power was cut and came back: a program that hung runs again. */
  void poweredUp() {
    present.remove(FaultKind.CONTROLLER_HANGS);
  }

  private boolean has(FaultKind kind) {
    return present.containsKey(kind);
  }

  /** Spoils the readings of a tick. */
  void spoil(Readings r, long tick, double atS) {
    if (present.isEmpty()) {
      return;
    }
    Sample brood = r.broodA;
    if (has(FaultKind.PROBES_SWAPPED)) {
      Sample other = swapsWithPan ? r.pan : r.outdoor;
      int value = brood.value;
      brood.put(other.value);
      other.put(value);
    }
    if (has(FaultKind.PROBE_OFFSET)) {
      EventSpec.Fault fault = present.get(FaultKind.PROBE_OFFSET);
      double creptK = CREEPS_K_PER_S * (atS - fault.atS());
      double sizeK = fault.size();
      double offK = sizeK < 0 ? Math.max(sizeK, -creptK) : Math.min(sizeK, creptK);
      brood.put(brood.value + (int) Math.rint(100 * offK));
    }
    if (has(FaultKind.PROBE_WET)) {
      double offCentiK =
          100 * present.get(FaultKind.PROBE_WET).size()
              + WET_JUMPS_CENTI_K * Noise.normal(wetKey, tick);
      brood.put(brood.value + (int) Math.rint(offCentiK));
    }
    if (has(FaultKind.PROBE_STUCK)) {
      if (!stuckKnown) {
        stuckCentiC = brood.value;
        stuckKnown = true;
      }
      brood.put(stuckCentiC);
    }
    if (has(FaultKind.PROBE_SHORT)) {
      brood.put(SHORTED_CENTI_C);
    }
    if (has(FaultKind.PROBE_OPEN)) {
      brood.clear();
    }
    if (has(FaultKind.PAN_PROBE_OPEN)) {
      r.pan.clear();
    }
    if (has(FaultKind.OUTDOOR_PROBE_OPEN)) {
      r.outdoor.clear();
    }
    if (has(FaultKind.HUMIDITY_WET)) {
      r.humidity.put(1000);
    }
    if (has(FaultKind.VOLTS_LOST)) {
      r.battery.clear();
      r.batteryCurrent.clear();
      r.stateOfCharge.clear();
    }
  }

  /** Overrides what the controller asks of its outputs. */
  void drive(Commands asked, Actuators wanted) {
    if (present.isEmpty()) {
      return;
    }
    if (has(FaultKind.CONTROLLER_HANGS)) {
      wanted.heater = true;
      wanted.inverter |= scenario.heater().onInverter();
    }
    if (has(FaultKind.CONTROLLER_DEAD)) {
      wanted.heater = false;
      wanted.fan = false;
      wanted.inverter = false;
    }
    wanted.fan |= has(FaultKind.FAN_STUCK_ON);
    if (has(FaultKind.RELAY_WELDED)) {
      wanted.heater = asked.isolation || !isolated;
    }
    if (has(FaultKind.RELAY_OPEN) || has(FaultKind.TOPPLED)) {
      wanted.heater = false;
    }
  }
}
