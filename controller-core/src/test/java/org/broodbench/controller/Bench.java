package org.broodbench.controller;

import java.util.function.Consumer;

/** A controller with readings that can be turned by hand, for tests of rules. */
final class Bench {
  final Readings in = new Readings();
  final Commands out = new Commands();
  Controller controller;
  int nowMillis;

  Bench(Settings settings) {
    controller = new Controller(settings);
    calm(in);
  }

  /** Brood at 30 degrees, mild pan, full lead-acid battery, cool outdoors, dry air. */
  static void calm(Readings in) {
    in.broodA.put(3000);
    in.broodB.put(3000);
    in.pan.put(2500);
    in.top.put(2600);
    in.outdoor.put(500);
    in.humidity.put(600);
    in.battery.put(12800);
    in.batteryCurrent.put(-100);
    in.stateOfCharge.put(900);
    in.batteryTemperature.put(1000);
    in.heaterCurrent.put(0);
    in.panelPower.put(0);
  }

  static Settings comb() {
    return Settings.defaults(ProbePlace.BROOD_COMB, Chemistry.AGM);
  }

  /** Probes, currents and humidity fitted: everything but supply selection. */
  static Settings combFull() {
    return comb()
        .with(Setting.FITTED_BROOD_B, true)
        .with(Setting.FITTED_TOP, true)
        .with(Setting.FITTED_OUTDOOR, true)
        .with(Setting.FITTED_HUMIDITY, true)
        .with(Setting.FITTED_BATTERY_CURRENT, true)
        .with(Setting.FITTED_INVERTER, true)
        .with(Setting.FITTED_ISOLATION, true);
  }

  Bench step(int dtMillis) {
    nowMillis += dtMillis;
    controller.step(nowMillis, in, out);
    return this;
  }

  /** Steps of {@code dtMillis} over {@code forMillis}. */
  Bench run(long forMillis, int dtMillis) {
    for (long at = 0; at < forMillis; at += dtMillis) {
      step(dtMillis);
    }
    return this;
  }

  Bench set(Consumer<Readings> change) {
    change.accept(in);
    return this;
  }

  /** Runs at one-second ticks until the heater is on; the brood has to be cold. */
  Bench untilHeaterOn() {
    for (int i = 0; i < 3600 && !out.heater; i++) {
      step(1000);
    }
    if (!out.heater) {
      throw new AssertionError("heater did not start: " + Reason.name(out.heaterReason));
    }
    return this;
  }

  boolean alarm(int bit) {
    return (out.alarms & 1 << bit) != 0;
  }

  boolean latchedAlarm(int bit) {
    return (out.latchedAlarms & 1 << bit) != 0;
  }

  /** A press of the button of {@code millis}. */
  Bench press(int millis) {
    in.button = true;
    step(100);
    run(millis, 100);
    in.button = false;
    return step(100);
  }
}
