package org.broodbench.loop;

import org.broodbench.controller.Readings;
import org.broodbench.controller.Sample;
import org.broodbench.matter.Portable;
import org.broodbench.plant.Plant;
import org.broodbench.power.SupplyChain;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Scenario;
import org.broodbench.rig.SensorSpec;

/**
 * Turns plant values into readings: offset, noise, resolution, whole numbers. The only border
 * between fractions and integers. Values are rounded half to even ({@link Portable#rint}).
 */
final class ReadingTaker {
  private static final int HUMIDITY_CHANNEL = 100;

  private final Scenario scenario;
  private final SensorSpec sensors;
  private final Readings readings = new Readings();
  private final Sample[] target;
  private final double[] noiseK;
  private final double[] offsetK;
  private final double[] resolutionK;
  private final long[] noiseKey;
  private final long humidityKey;
  private final boolean heaterOnInverter;
  private int seenSolve = -1;

  ReadingTaker(Scenario scenario) {
    this.scenario = scenario;
    sensors = scenario.sensors();
    ProbeSpec[] probes = scenario.probes().toArray(ProbeSpec[]::new);
    long seed = scenario.run().seed();
    target = new Sample[probes.length];
    noiseK = new double[probes.length];
    offsetK = new double[probes.length];
    resolutionK = new double[probes.length];
    noiseKey = new long[probes.length];
    for (int p = 0; p < probes.length; p++) {
      target[p] = sampleOf(probes[p].role());
      noiseK[p] = probes[p].noiseK();
      offsetK[p] = probes[p].offsetK();
      resolutionK[p] = probes[p].resolutionK();
      noiseKey[p] = Noise.key(seed, p);
    }
    humidityKey = Noise.key(seed, HUMIDITY_CHANNEL);
    heaterOnInverter = scenario.heater().onInverter();
  }

  /** Takes all readings at a point of the solved step. */
  Readings take(Plant plant, double theta, long tick, boolean heaterOn) {
    for (int p = 0; p < target.length; p++) {
      double readC = plant.probeC(p, theta) + offsetK[p];
      if (noiseK[p] > 0) {
        readC += noiseK[p] * Noise.normal(noiseKey[p], tick);
      }
      double stepK = resolutionK[p];
      target[p].put((int) Portable.rint(Portable.rint(readC / stepK) * stepK * 100));
    }
    if (sensors.humidity()) {
      double percent =
          plant.hive().view().broodRhPercent(theta)
              + sensors.humidityErrorPercent() * Noise.normal(humidityKey, tick);
      percent = percent < 0 ? 0 : percent > 100 ? 100 : percent;
      readings.humidity.put((int) Portable.rint(percent * 10));
    }
    if (plant.solves() != seenSolve) {
      seenSolve = plant.solves();
      takeSupply(plant.supply(), heaterOn);
    }
    return readings;
  }

  /** What the supply chain shows holds for the whole of a step. */
  private void takeSupply(SupplyChain supply, boolean heaterOn) {
    double volts = supply.volts() + sensors.voltsErrorV();
    double stepV = sensors.voltsResolutionV();
    readings.battery.put((int) Portable.rint(Portable.rint(volts / stepV) * stepV * 1000));
    if (sensors.batteryCurrent()) {
      readings.batteryCurrent.put((int) Portable.rint(-supply.batteryA() * 1000));
    }
    if (sensors.stateOfCharge()) {
      double soc = supply.battery().stateOfCharge() + sensors.stateOfChargeError();
      soc = soc < 0 ? 0 : soc > 1 ? 1 : soc;
      readings.stateOfCharge.put((int) Portable.rint(soc * 1000));
    }
    if (sensors.heaterCurrent()) {
      double amps =
          supply.volts() > 0 && heaterOn
              ? supply.heaterW() / (heaterOnInverter ? scenario.heater().ratedV() : supply.volts())
              : 0;
      readings.heaterCurrent.put((int) Portable.rint(amps * 1000));
    }
    readings.chargerFull = sensors.chargerFull() && supply.full();
    readings.shorePresent = supply.shorePresent();
    readings.button = false;
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
