package org.broodbench.hive;

/**
 * An outer surface between the last layer of a wall, floor or lid and the weather. It stores
 * nothing: its temperature follows from sun, wind and long-wave exchange.
 *
 * <p>Convection 4 + 4 v W/(m²K) and a radiative coefficient of 5 W/(m²K): ISO 6946:2017 annex C at
 * about 10 °C and emissivity 0.9; at 4 m/s their sum is the standard's 25 W/(m²K), that is R_se
 * 0.04.
 */
final class OuterFace {
  private static final double STILL_WM2K = 4;
  private static final double PER_WIND_WM2K = 4;
  private static final double RADIATIVE_WM2K = 5;

  final int layerNode;
  private final double areaM2;
  private final double halfWK;
  private final double absorptance;
  private final double skyShare;
  private final double[] sunShare;

  private double convectionWK;
  private double radiationWK;
  private double radiantC;
  private double outsideC;
  private double sunW;
  private double perSum;
  private double driveW;

  /** Conductance from the layer to the weather, W/K. */
  double conductanceWK;

  /** Heat that air, sky and sun would bring to a layer at 0 °C, W. */
  double broughtW;

  OuterFace(
      int layerNode,
      double areaM2,
      double halfWK,
      double absorptance,
      double skyShare,
      double[] sunShare) {
    this.layerNode = layerNode;
    this.areaM2 = areaM2;
    this.halfWK = halfWK;
    this.absorptance = absorptance;
    this.skyShare = skyShare;
    this.sunShare = sunShare;
  }

  void prepare(Outside outside) {
    convectionWK = areaM2 * (STILL_WM2K + PER_WIND_WM2K * outside.windMS);
    radiationWK = areaM2 * RADIATIVE_WM2K;
    outsideC = outside.airC;
    radiantC = outside.airC + skyShare * (outside.skyC - outside.airC);
    double sunWM2 = 0;
    for (int i = 0; i < sunShare.length; i++) {
      sunWM2 += sunShare[i] * outside.sunWM2[i];
    }
    sunW = absorptance * areaM2 * sunWM2;
    double filmWK = convectionWK + radiationWK;
    perSum = 1 / (halfWK + filmWK);
    driveW = convectionWK * outsideC + radiationWK * radiantC + sunW;
    conductanceWK = halfWK * filmWK * perSum;
    broughtW = halfWK * driveW * perSum;
  }

  /** Sunlight absorbed, W. */
  double sunW() {
    return sunW;
  }

  /** Temperature of the outer surface, °C. */
  double surfaceC(double layerC) {
    return (halfWK * layerC + driveW) * perSum;
  }

  /** Heat given off to air and surroundings, W. */
  double lostW(double layerC) {
    double surfaceC = surfaceC(layerC);
    return convectionWK * (surfaceC - outsideC) + radiationWK * (surfaceC - radiantC);
  }
}
