package org.broodbench.hive;

/**
 * An outer surface between the last layer of a wall, floor or lid and the weather. It stores
 * nothing: its temperature follows from sun, wind and long-wave exchange.
 *
 * <p>Before it may stand a thin screen with a gap that outdoor air blows through, as a sun or rain
 * shield: the face then gives off heat to still outdoor air (ISO 6946:2017, well ventilated air
 * layer) and to the screen, which stores nothing and takes sun and long wave in its place.
 *
 * <p>Convection 4 + 4 v W/(m²K) and a radiative coefficient of 5 W/(m²K): ISO 6946:2017 annex C at
 * about 10 °C and emissivity 0.9; at 4 m/s their sum is the standard's 25 W/(m²K), that is R_se
 * 0.04.
 */
final class OuterFace {
  private static final double STILL_WM2K = 4;
  private static final double PER_WIND_WM2K = 4;
  private static final double RADIATIVE_WM2K = 5;

  /** Radiation between a face and its screen, both of emissivity 0.9, W/(m²K). */
  private static final double TO_SCREEN_WM2K = RADIATIVE_WM2K / 0.9 / (2 / 0.9 - 1);

  final int layerNode;
  final double areaM2;
  private final double halfWK;
  private final Skin skin;
  private final HeatFlow flow;
  private final double skyShare;
  private final double[] sunShare;

  private double sunW;
  private double perSum;
  private double driveW;

  /** Heat that left through the face so far, net of sun and sky, J; and sunlight taken up. */
  double outJ;

  double sunJ;

  /** Conductance from the layer to the weather, W/K. */
  double conductanceWK;

  /** Heat that air, sky and sun would bring to a layer at 0 °C, W. */
  double broughtW;

  OuterFace(
      int layerNode,
      double areaM2,
      double halfWK,
      Skin skin,
      HeatFlow flow,
      double skyShare,
      double[] sunShare) {
    this.layerNode = layerNode;
    this.areaM2 = areaM2;
    this.halfWK = halfWK;
    this.skin = skin;
    this.flow = flow;
    this.skyShare = skyShare;
    this.sunShare = sunShare;
  }

  void prepare(Outside outside) {
    double convectionWK = areaM2 * (STILL_WM2K + PER_WIND_WM2K * outside.windMS);
    double radiationWK = areaM2 * RADIATIVE_WM2K;
    double radiantC = outside.airC + skyShare * (outside.skyC - outside.airC);
    double sunWM2 = 0;
    for (int i = 0; i < sunShare.length; i++) {
      sunWM2 += sunShare[i] * outside.sunWM2[i];
    }
    sunW = skin.solarAbsorptance() * areaM2 * sunWM2;
    double filmWK = convectionWK + radiationWK;
    driveW = convectionWK * outside.airC + radiationWK * radiantC + sunW;
    if (skin.screened()) {
      double stillWK = areaM2 * flow.convectionWM2K();
      double toScreenWK = areaM2 * TO_SCREEN_WM2K;
      double ofScreen = toScreenWK / (filmWK + stillWK + toScreenWK);
      driveW = stillWK * outside.airC + ofScreen * (driveW + stillWK * outside.airC);
      filmWK = stillWK + toScreenWK * (1 - ofScreen);
    }
    perSum = 1 / (halfWK + filmWK);
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

  /** Heat from the layer to the surface, W. */
  double outW(double layerC) {
    return conductanceWK * layerC - broughtW;
  }

  /** Heat given off to air and surroundings, W: what comes from within and what the sun brought. */
  double lostW(double layerC) {
    return outW(layerC) + sunW;
  }
}
