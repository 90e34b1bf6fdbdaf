package org.broodbench.hive;

import org.broodbench.matter.MoistAir;

/**
 * What can be read off a hive in the step that it solved last: nodes by place, temperatures,
 * humidity, carbon dioxide, water on inner faces, air that passes. It goes on showing its hive as
 * that steps; a hive that grew by a box is another one, with a view of its own.
 */
public final class HiveView {
  private final HiveLayout layout;
  private final Network heat;
  private final Network vapour;
  private final Network co2;
  private final HiveFlows flows;
  private final double pressurePa;
  private final double airKgM3;
  private final int brood;
  private final int nestZone;
  private final InnerFace[] inner;

  HiveView(
      HiveLayout layout,
      Network heat,
      Network vapour,
      Network co2,
      HiveFlows flows,
      double pressurePa,
      double airKgM3,
      int brood) {
    this.layout = layout;
    this.heat = heat;
    this.vapour = vapour;
    this.co2 = co2;
    this.flows = flows;
    this.pressurePa = pressurePa;
    this.airKgM3 = airKgM3;
    this.brood = brood;
    nestZone = layout.boxes;
    inner = layout.inner.toArray(InnerFace[]::new);
  }

  /** Number of heat nodes. */
  public int heatNodes() {
    return heat.size();
  }

  /** Name of a heat node. */
  public String heatNodeName(int node) {
    return layout.names.get(node);
  }

  /** Temperature of any heat node inside the solved step, °C; theta from 0 to 1. */
  public double nodeC(int node, double theta) {
    return heat.at(node, theta);
  }

  /** Temperature of the brood comb inside the solved step, °C. */
  public double nestC(double theta) {
    return heat.at(layout.nest, theta);
  }

  /** Mean temperature of a node over the solved step, °C. */
  public double meanC(int node) {
    return heat.mean(node);
  }

  /** Heat node of the brood comb. */
  public int nestNode() {
    return layout.nest;
  }

  /** Heat node of the top of the pan, which bees can touch; -1 without a pan. */
  public int panNode() {
    return layout.panTop;
  }

  /** Heat node of the filling of the pan, its upper half; -1 without a pan. */
  public int panCoreNode() {
    return layout.panCore;
  }

  /** Heat node of the plate; -1 without one. */
  public int plateNode() {
    return layout.plate;
  }

  /** Heat node of the air of the brood box. */
  public int broodAirNode() {
    return layout.air[brood];
  }

  /** Heat node of the air under the lid. */
  public int topAirNode() {
    return layout.air[layout.boxes - 1];
  }

  /** Heat node of the innermost layer of the lid. */
  public int lidNode() {
    return layout.lidFace.solidNode;
  }

  /** How far from the air to the lid's innermost layer its surface lies, 0 to 1. */
  public double lidFilmShare() {
    return layout.lidFace.filmShare();
  }

  /** Stage values of a node in the solved step: start, inner stage, end. */
  public void stages(int node, double[] out) {
    out[0] = heat.start(node);
    out[1] = heat.inner(node);
    out[2] = heat.end(node);
  }

  /** Relative humidity between the brood combs, percent. */
  public double broodRhPercent(double theta) {
    double pa = MoistAir.vapourPa(vapour.at(nestZone, theta), pressurePa);
    return 100 * pa / MoistAir.fastSaturationWaterPa(heat.at(layout.nest, theta));
  }

  /** Carbon dioxide between the brood combs, percent by volume of dry air. */
  public double broodCo2Percent(double theta) {
    return 100 * co2.at(nestZone, theta) / HiveModel.CO2_MASS_RATIO;
  }

  /** Whether water condenses on any inner face in the solved step. */
  public boolean condensing() {
    for (InnerFace f : inner) {
      if (vapour.mean(f.zone) > f.saturated) {
        return true;
      }
    }
    return false;
  }

  /** Water standing as films, kg. */
  public double filmKg() {
    double sumKg = 0;
    for (InnerFace f : inner) {
      sumKg += f.filmKg();
    }
    return sumKg;
  }

  /** Inner surface of the lid inside the solved step, °C. */
  public double lidInsideC(double theta) {
    return insideC(layout.lidFace, theta);
  }

  /** Inner surface of the walls of the brood box inside the solved step, °C. */
  public double wallInsideC(double theta) {
    return insideC(layout.broodWallFace, theta);
  }

  private double insideC(InnerFace face, double theta) {
    return face.surfaceC(heat.at(face.airNode, theta), heat.at(face.solidNode, theta));
  }

  /** Water that condenses on all inner surfaces together in the solved step, g/h. */
  public double condensingGH() {
    double kgS = 0;
    for (InnerFace f : inner) {
      double now = f.rateKgS * (vapour.mean(f.zone) - f.saturated);
      kgS += now > 0 ? now : 0;
    }
    return kgS * 3.6e6;
  }

  /** Air that enters, m³/s of outside air. */
  public double throughFlowM3S() {
    return flows.inKgS() / airKgM3;
  }
}
