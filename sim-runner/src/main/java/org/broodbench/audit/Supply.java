package org.broodbench.audit;

import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.hive.HeaterSpec;
import org.broodbench.power.Battery;
import org.broodbench.power.BatterySpec;
import org.broodbench.power.Chemistry;
import org.broodbench.power.Copper;
import org.broodbench.power.Inverter;
import org.broodbench.power.InverterSpec;
import org.broodbench.power.LoadSpec;
import org.broodbench.power.OpenCircuit;
import org.broodbench.rig.Scenario;

/** Currents, resistances and charge of a rig by Ohm's law and the tables of the battery. */
final class Supply {
  private final Scenario s;
  private final double coldestC;

  /**
   * The supply of a rig.
   *
   * @param coldestC coldest moment of the weather, °C
   */
  Supply(Scenario s, double coldestC) {
    this.s = s;
    this.coldestC = coldestC;
  }

  double scale() {
    return s.battery().nominalV() / 12;
  }

  /** Volts of the bus in use, V: 12.2 on a 12 V bank of lead-acid, 13 on one of lithium. */
  double workV() {
    return scale() * (s.battery().chemistry().leadAcid() ? 12.2 : 13);
  }

  /** Highest volts with sun, V. */
  double highV() {
    return s.battery().absorptionV();
  }

  boolean onInverter() {
    return s.heater().onInverter();
  }

  /** Wire and contacts of the heater's circuit at 20 °C, Ω. */
  double heaterWireOhm() {
    return s.wiring().heaterContactOhm()
        + Copper.loopOhm(s.wiring().heaterLengthM(), s.wiring().heaterMm2(), 20);
  }

  private double elementOhm() {
    HeaterSpec h = s.heater();
    return h.ratedV() * h.ratedV() / h.powerW();
  }

  /** Heat of the element with the bus at some volts, W. */
  double heaterW(double busV) {
    HeaterSpec h = s.heater();
    if (h.powerW() <= 0 || h.onInverter() || h.regulated()) {
      return h.powerW();
    }
    double a = busV / (elementOhm() + heaterWireOhm());
    return a * a * elementOhm();
  }

  /** What the heater takes from the bus while it heats, W; the idle draw of an inverter not. */
  double heaterInputW(double busV) {
    HeaterSpec h = s.heater();
    if (h.powerW() <= 0) {
      return 0;
    }
    if (h.onInverter()) {
      return Inverter.inputW(s.inverter(), h.powerW()) - s.inverter().idleW();
    }
    if (h.regulated()) {
      return h.powerW() / s.wiring().regulatorEfficiency();
    }
    return busV * busV / (elementOhm() + heaterWireOhm());
  }

  /** Current of the heater's contact, A: on the battery side at some volts, or at mains volts. */
  double contactA(double busV) {
    return onInverter() ? s.heater().powerW() / s.heater().ratedV() : heaterInputW(busV) / busV;
  }

  /** Current that the heater takes from the battery, A. */
  double heaterA(double busV) {
    return heaterInputW(busV) / busV;
  }

  /** Whether an inverter is there and has something to do. */
  boolean inverterUsed() {
    return s.inverter().ratedW() > 0;
  }

  /** Draw of the inverter without load, W; asleep where it searches. */
  double idleW() {
    InverterSpec i = s.inverter();
    return i.ratedW() <= 0 ? 0 : i.search().wakeW() > 0 ? i.search().drawW() : i.idleW();
  }

  /** Hours a day that a clock has a load on. */
  static double hours(LoadSpec l) {
    double span = l.toHourUtc() - l.fromHourUtc();
    return span == 0 ? 24 : span < 0 ? span + 24 : span;
  }

  /** What a further load takes from the bus while it is on, W. */
  double loadInputW(LoadSpec l) {
    InverterSpec i = s.inverter();
    return l.onInverter() ? Inverter.inputW(i, l.powerW()) - i.idleW() : l.powerW();
  }

  /** Mains load of all further loads together, W. */
  double acLoadsW() {
    double w = 0;
    for (LoadSpec l : s.loads()) {
      w += l.onInverter() ? l.powerW() : 0;
    }
    return w;
  }

  /** Current that a fuse at the battery carries at low volts, all loads on, A. */
  double allLoadsA() {
    double w = s.fan().powerW() + s.controller().powerW() + idleW() + heaterInputW(workV());
    for (LoadSpec l : s.loads()) {
      w += loadInputW(l);
    }
    return w / workV();
  }

  Chemistry chemistry() {
    return s.battery().chemistry();
  }

  OpenCircuit rested() {
    return new OpenCircuit(chemistry(), s.battery().nominalV());
  }

  /** Coldest moment of the weather, °C. */
  double coldestC() {
    return coldestC;
  }

  /** Coldest temperature of the battery: its place at the coldest moment, °C. */
  double coldBatteryC() {
    return batteryC(coldestC);
  }

  /** The battery's place, between outdoors and a hive of 25 °C, °C. */
  double batteryC(double airC) {
    double share = s.battery().warmedShare();
    return airC + share * Math.max(0, 25 - airC);
  }

  /** Battery, leads and clips at some temperature of the battery, Ω. */
  double sourceOhm(double batteryC) {
    return s.battery().resistanceOhm() * Battery.coldFactor(batteryC) + s.wiring().batteryLeadOhm();
  }

  /** All charge of a full bank, Ah. */
  double fullAh() {
    return s.battery().capacityAh() * Battery.fullPerRated(chemistry());
  }

  private Settings set() {
    return s.controller().settings();
  }

  boolean byCharge() {
    return set().is(Setting.SHED_BY_STATE_OF_CHARGE);
  }

  /**
   * By how much the corrected volts lie under the rested volts with a current on, V: what the
   * battery drops less what the controller adds back, which knows the current or only its settings.
   */
  double readsLowV(double trueA, double batteryC) {
    boolean measured = s.sensors().batteryCurrent() && set().is(Setting.FITTED_BATTERY_CURRENT);
    double keyedA =
        measured
            ? trueA
            : (set().get(Setting.BATTERY_BASE_LOAD_MILLI_A)
                    + set().get(Setting.HEATER_RATED_MILLI_A))
                * 1e-3;
    return trueA * sourceOhm(batteryC)
        - keyedA * set().get(Setting.BATTERY_MILLI_OHM) * 1e-3
        - s.sensors().voltsErrorV();
  }

  /** Current of everything but the heater, A. */
  double restA() {
    double w = s.controller().powerW() + s.pv().controllerPowerW() + idleW();
    for (LoadSpec l : s.loads()) {
      w += loadInputW(l) * hours(l) / 24;
    }
    return w / workV();
  }

  /** State of charge that a threshold means, as keyed in, 0 to 1. */
  double meant(Setting milliV, Setting perMille) {
    return byCharge() ? set().get(perMille) / 1000.0 : rested().charge(set().get(milliV) / 1000.0);
  }

  /** State of charge at which the heater is shed with the heater on, 0 to 1. */
  double heatShedCharge(double batteryC) {
    return byCharge()
        ? set().get(Setting.SHED_HEAT_ENTER_PERMILLE) / 1000.0 - s.sensors().stateOfChargeError()
        : rested().charge(heatShedRestedV(batteryC));
  }

  /** Rested volts at which the heater is shed with the heater on, V. */
  double heatShedRestedV(double batteryC) {
    return byCharge()
        ? rested().volts(heatShedCharge(batteryC))
        : set().get(Setting.SHED_HEAT_ENTER_MILLI_V) / 1000.0
            + readsLowV(restA() + heaterA(workV()), batteryC);
  }

  /** Rested volts of standby, V. */
  double standbyV() {
    return byCharge()
        ? rested().volts(set().get(Setting.SHED_STANDBY_ENTER_PERMILLE) / 1000.0)
        : set().get(Setting.SHED_STANDBY_ENTER_MILLI_V) / 1000.0;
  }

  /** Energy between two states of charge, Wh. */
  double energyWh(double from, double to) {
    BatterySpec b = s.battery();
    return to <= from ? 0 : fullAh() * (rested().integralV(to) - rested().integralV(from));
  }
}
