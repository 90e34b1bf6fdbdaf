package org.broodbench.hive;

/**
 * An inner surface between the air of a zone and a solid (the first layer of a wall, floor or lid,
 * or comb), with the film of water on it.
 *
 * <p>Surface resistances and convective coefficients by direction of heat flow: ISO 6946:2017,
 * table 7 and annex C. Mass transfer by the Lewis relation, convective coefficient divided by the
 * heat capacity of air, as in the ASHRAE Handbook of Fundamentals, chapter on mass transfer. A film
 * thinner than a micrometre counts as patches; own choice.
 */
final class InnerFace {
  /** Film at which half the surface is wet, kg/m². */
  private static final double PATCHY_KG_M2 = 1e-3;

  /** A film of less than a nanogram is gone, kg; without this it would dwindle for ever. */
  private static final double LEAST_KG = 1e-12;

  /** Density of water, kg/m³. */
  private static final double WATER_KG_M3 = 1000;

  final int zone;
  final int airNode;
  final int solidNode;
  final double conductanceWK;
  private final double areaM2;
  private final double filmShare;
  private final double transferKgS;
  private final double mostKg;
  private double filmKg;
  private double growthKgS;

  /** What water did on it. */
  final WaterBook book;

  /** Net rate from air to film at the present step per unit of humidity ratio, kg/s. */
  double rateKgS;

  /** Humidity ratio of saturated air at the surface, kg/kg. */
  double saturated;

  InnerFace(
      int zone,
      int airNode,
      int solidNode,
      double areaM2,
      double halfLayerM2KW,
      HeatFlow flow,
      double runOffM) {
    mostKg = runOffM * WATER_KG_M3 * areaM2;
    this.zone = zone;
    this.airNode = airNode;
    this.solidNode = solidNode;
    this.areaM2 = areaM2;
    book = new WaterBook(areaM2);
    double wholeM2KW = flow.surfaceM2KW() + halfLayerM2KW;
    this.conductanceWK = areaM2 / wholeM2KW;
    this.filmShare = flow.surfaceM2KW() / wholeM2KW;
    this.transferKgS = areaM2 * flow.convectionWM2K() / org.broodbench.matter.MoistAir.HEAT_DRY_AIR;
  }

  /** Share of the way from air to solid node at which the surface lies. */
  double filmShare() {
    return filmShare;
  }

  /** Temperature of the surface, °C. */
  double surfaceC(double airC, double solidC) {
    return airC - filmShare * (airC - solidC);
  }

  /**
   * Sets rate and saturation for a step.
   *
   * @param aheadS time from now at which the film counts, s
   */
  void prepare(double airHumidityRatio, double saturatedHumidityRatio, double aheadS) {
    saturated = saturatedHumidityRatio;
    rateKgS = transferKgS;
    if (airHumidityRatio <= saturatedHumidityRatio) {
      double film = filmKg + aheadS * growthKgS;
      film = film > 0 ? film : 0;
      rateKgS *= film / (film + PATCHY_KG_M2 * areaM2);
    }
  }

  double filmKg() {
    return filmKg;
  }

  /** Condenses (or evaporates) at a rate for a time and returns what runs off, kg. */
  double grow(double kgS, double seconds) {
    growthKgS = kgS;
    return addKg(kgS * seconds);
  }

  /** Adds water (or takes it) and returns what runs off, kg. */
  double addKg(double kg) {
    filmKg += kg;
    if (filmKg > mostKg) {
      double runOff = filmKg - mostKg;
      filmKg = mostKg;
      return runOff;
    }
    if (filmKg < LEAST_KG) {
      double rest = filmKg;
      filmKg = 0;
      return rest;
    }
    return 0;
  }
}
