package org.broodbench.hive;

import org.broodbench.matter.MoistAir;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;
import org.broodbench.sky.Sample;

/**
 * The equations of a scenario's hive in its weather as one vector, for integrators that are not the
 * run's own: temperatures of the heat nodes, then vapour, carbon dioxide and films.
 */
public final class HiveEquations {
  private final Forcing forcing;
  private final Sample sample;
  private final Outside outside = new Outside();
  private final HiveModel model;
  private double holdUntilS = Double.MAX_VALUE;

  public HiveEquations(Scenario s, Forcing forcing) {
    this.forcing = forcing;
    sample = new Sample(5 + s.pv().groups().size());
    weather(0);
    model = new HiveModel(s.hive(), s.colony(), s.heater(), s.fan(), sample.pressurePa, outside);
  }

  /** The hive that the equations are of; its first state is theirs. */
  public HiveModel model() {
    return model;
  }

  /** The state that the model stands at. */
  public double[] state() {
    return HiveRates.state(model);
  }

  /** Number of temperatures at the front of the state. */
  public int temperatures() {
    return model.view().heatNodes();
  }

  /** The weather of a moment, as the plant hands it to the hive. */
  public Outside weather(double atS) {
    forcing.sample(atS, sample);
    outside.airC = sample.airC;
    outside.humidityRatio = MoistAir.humidityRatio(sample.vapourPa, sample.pressurePa);
    outside.windMS = sample.windMS;
    outside.skyC = sample.skyC;
    System.arraycopy(sample.planeWM2, 0, outside.sunWM2, 0, 5);
    return outside;
  }

  /** The whole sample behind {@link #weather}. */
  public Sample sample() {
    return sample;
  }

  /** Integration goes on to this time; what jumps there (sunlight) jumps only afterwards. */
  public void holdUntil(double endS) {
    holdUntilS = endS;
  }

  /** Rates of change. */
  public double[] rates(double atS, double[] y, double heaterW, boolean fan, double electronicsW) {
    double t = atS < holdUntilS - 1e-6 ? atS : holdUntilS - 1e-6;
    return HiveRates.rates(model, y, heaterW, fan, electronicsW, weather(t));
  }
}
