package org.broodbench.loop;

import org.broodbench.controller.Readings;
import org.broodbench.controller.Sample;
import org.broodbench.plant.Plant;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.SensorSpec;

/**
 * Turns plant values into readings: offset, noise, resolution, whole numbers. The only border
 * between fractions and integers. Values are rounded half to even, as {@link Math#rint} does.
 */
final class ReadingTaker {
  private static final int HUMIDITY_CHANNEL = 100;

  private final Scenario scenario;
  private final SensorSpec sensors;
  private final ProbeSpec[] probes;
  private final long seed;
  private final Readings readings = new Readings();

  ReadingTaker(Scenario scenario) {
    this.scenario = scenario;
    sensors = scenario.sensors();
    probes = scenario.probes().toArray(ProbeSpec[]::new);
    seed = scenario.run().seed();
  }

  /** Takes all readings at a point of the solved step. */
  Readings take(Plant plant, double theta, long tick, boolean heaterOn) {
    for (int p = 0; p < probes.length; p++) {
      ProbeSpec spec = probes[p];
      double noiseK = spec.noiseK() > 0 ? spec.noiseK() * Noise.normal(seed, p, tick) : 0;
      double readC = plant.probeC(p, theta) + spec.offsetK() + noiseK;
      double steps = Math.rint(readC / spec.resolutionK());
      sampleOf(spec.role()).put((int) Math.rint(steps * spec.resolutionK() * 100));
    }
    if (sensors.humidity()) {
      double percent =
          plant.hive().broodRhPercent(theta)
              + sensors.humidityErrorPercent() * Noise.normal(seed, HUMIDITY_CHANNEL, tick);
      percent = percent < 0 ? 0 : percent > 100 ? 100 : percent;
      readings.humidity.put((int) Math.rint(percent * 10));
    }
    var supply = plant.supply();
    double volts = supply.volts() + sensors.voltsErrorV();
    double stepV = sensors.voltsResolutionV();
    readings.battery.put((int) Math.rint(Math.rint(volts / stepV) * stepV * 1000));
    if (sensors.batteryCurrent()) {
      readings.batteryCurrent.put((int) Math.rint(-supply.batteryA() * 1000));
    }
    if (sensors.stateOfCharge()) {
      double soc = supply.battery().stateOfCharge() + sensors.stateOfChargeError();
      soc = soc < 0 ? 0 : soc > 1 ? 1 : soc;
      readings.stateOfCharge.put((int) Math.rint(soc * 1000));
    }
    if (sensors.heaterCurrent()) {
      double amps =
          supply.volts() > 0 && heaterOn
              ? supply.heaterW()
                  / (scenario.heater().onInverter() ? scenario.heater().ratedV() : supply.volts())
              : 0;
      readings.heaterCurrent.put((int) Math.rint(amps * 1000));
    }
    readings.chargerFull = sensors.chargerFull() && supply.full();
    readings.shorePresent = supply.shorePresent();
    readings.button = false;
    return readings;
  }

  private Sample sampleOf(ProbeSpec.Role role) {
    return switch (role) {
      case BROOD_A -> readings.broodA;
      case BROOD_B -> readings.broodB;
      case PAN -> readings.pan;
      case TOP -> readings.top;
      case OUTDOOR -> readings.outdoor;
    };
  }

  /** Last reading of a brood probe, °C; not a number where none is fitted. */
  double lastC(ProbeSpec.Role role) {
    return scenario.probe(role) == null ? Double.NaN : sampleOf(role).value / 100.0;
  }
}
