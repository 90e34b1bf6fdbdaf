package org.broodbench.hive;

import org.broodbench.matter.MoistAir;
import org.broodbench.matter.Portable;

/**
 * Streams of air of a stack of boxes at the present state: along the way from the entrance to the
 * upper vent ({@link AirPath}); both ways through the entrance, as far as the way leaves room for
 * it; both ways between boxes where the lower one is warmer.
 */
final class HiveFlows {
  /**
   * Gusts through a single opening against wind through two: about 0.025 A U against 0.3 A U. P. R.
   * Warren, "Ventilation through openings on one wall only" (1977), from memory, medium confidence.
   */
  private static final double SINGLE_SIDED = 0.08;

  /**
   * Share of the plan of a box that the gaps between frames leave open: bee space over comb pitch,
   * 10/35.
   */
  private static final double FRAME_GAP_SHARE = 10.0 / 35;

  /** Speed of fanned air in the entrance, m/s: jets of up to 4 were seen behind fanners. */
  private static final double FANNED_MS = 2;

  private final HiveSpec spec;
  private final FanSpec fan;
  private final AirPath path;
  private final double airKgM3;
  private double entranceM2;
  private final int boxes;
  private final double[] boxExchangeKgS;
  private final double[] boxHeightM;
  private final double[] betweenM2;
  private final double[] mixingM3S;

  private double upKgS;
  private double downKgS;
  private double entranceKgS;
  private double lidKgS;

  HiveFlows(HiveSpec spec, FanSpec fan, double planM2, double airKgM3) {
    this.spec = spec;
    this.fan = fan;
    this.airKgM3 = airKgM3;
    entranceM2 = spec.entranceWidthM() * spec.entranceHeightM() * spec.openShare();
    boxes = spec.boxes().size();
    boxExchangeKgS = new double[boxes];
    boxHeightM = spec.boxes().stream().mapToDouble(BoxSpec::heightM).toArray();
    double cd = spec.dischargeCoefficient();
    double[] drag = new double[boxes];
    betweenM2 = new double[boxes];
    mixingM3S = new double[boxes];
    for (int i = 1; i < boxes; i++) {
      boolean frames = spec.boxes().get(i).frames() + spec.boxes().get(i - 1).frames() > 0;
      double gapM2 = cd * planM2 * spec.openShare() * (frames ? FRAME_GAP_SHARE : 1);
      drag[i] =
          1 / (gapM2 * gapM2) + spec.boxes().get(i).below().drag(planM2, spec.openShare(), cd);
      betweenM2[i] = 1 / Math.sqrt(drag[i]);
      mixingM3S[i] = spec.guesses().boxMixingM3S() * betweenM2[i] / gapM2;
    }
    double pressureShare = spec.windEffectiveness() / cd;
    path = new AirPath(boxHeightM, drag, cd * entranceM2, pressureShare * pressureShare, fan);
    setTopVent(spec.topVentM2());
  }

  FanSpec fan() {
    return fan;
  }

  /** Takes over openings that were changed during the run. */
  void takeOpeningsFrom(HiveFlows other) {
    path.takeOpeningsFrom(other.path);
    entranceM2 = other.entranceM2;
  }

  /** Leaves a share of the entrance open, 0 to 1. */
  void setEntrance(double share) {
    entranceM2 = share * spec.entranceWidthM() * spec.entranceHeightM() * spec.openShare();
    path.setEntrance(spec.dischargeCoefficient() * entranceM2);
  }

  void setTopVent(double areaM2) {
    path.setVent(spec.dischargeCoefficient() * areaM2 * spec.openShare());
  }

  /**
   * Sets the streams at given temperatures of the heat nodes.
   *
   * @param openLidM3S air that an open lid exchanges, m³/s
   * @param fannedM3S air that bees exchange through the entrance, m³/s; at most what 2 m/s through
   *     half of it are, own choice
   */
  void evaluate(
      double[] heatC,
      int[] air,
      Outside outside,
      boolean fanOn,
      double openLidM3S,
      double fannedM3S) {
    path.evaluate(heatC, air, outside.airC, outside.windMS, fanOn);
    double throughM3S = path.throughM3S();
    double twoWayM3S =
        AirFlow.exchangeM3S(
            spec.dischargeCoefficient(),
            entranceM2,
            spec.entranceHeightM(),
            heatC[air[0]],
            outside.airC);
    double gustM3S =
        AirFlow.windM3S(SINGLE_SIDED * spec.windEffectiveness(), entranceM2, outside.windMS);
    double exchangeM3S =
        AirFlow.counterM3S(AirFlow.inQuadratureM3S(twoWayM3S, gustM3S), throughM3S);
    upKgS = airKgM3 * (throughM3S > 0 ? throughM3S : 0);
    downKgS = airKgM3 * (throughM3S > 0 ? 0 : -throughM3S);
    double mostM3S = FANNED_MS * entranceM2 / 2;
    entranceKgS = airKgM3 * (exchangeM3S + (fannedM3S < mostM3S ? fannedM3S : mostM3S));
    lidKgS = airKgM3 * openLidM3S;
    for (int i = 1; i < boxes; i++) {
      double lowerC = heatC[air[i - 1]];
      double upperC = heatC[air[i]];
      double excessK = Portable.positivePart(lowerC - upperC, AirFlow.ROUNDING_K);
      double buoyantM3S =
          AirFlow.exchangeM3S(1, betweenM2[i], boxHeightM[i - 1] / 2, upperC + excessK, upperC);
      boxExchangeKgS[i] = airKgM3 * (AirFlow.counterM3S(buoyantM3S, throughM3S) + mixingM3S[i]);
    }
  }

  /**
   * Puts the streams into a network of heat or of a gas.
   *
   * @param nodeOfBox its nodes of air from the lowest box up
   * @param links its links between neighbouring boxes, the first unused
   * @param factor what a kilogram of air carries per unit of the network's value
   */
  void fill(Network net, int[] nodeOfBox, int[] links, double factor, double outsideValue) {
    net.reach(nodeOfBox[0], factor * (upKgS + entranceKgS), outsideValue);
    net.reach(nodeOfBox[boxes - 1], factor * (downKgS + lidKgS), outsideValue);
    for (int i = 1; i < boxes; i++) {
      double exchangeKgS = boxExchangeKgS[i];
      net.carry(links[i], factor * (upKgS + exchangeKgS), factor * (downKgS + exchangeKgS));
    }
  }

  /** Air that goes through, m³/s of outside air, negative downwards. */
  double throughM3S() {
    return path.throughM3S();
  }

  /** Air that goes both ways through the entrance, m³/s of outside air. */
  double twoWayM3S() {
    return entranceKgS / airKgM3;
  }

  /** All air that enters, kg/s. */
  double inKgS() {
    return upKgS + downKgS + entranceKgS + lidKgS;
  }

  /** What leaves with the air at the step's mean, kg/s. */
  double outKgS(Network gas) {
    return (upKgS + lidKgS) * gas.mean(boxes - 1) + (downKgS + entranceKgS) * gas.mean(0);
  }

  /** Sensible heat lost with the air at the step's mean, W. */
  double lostHeatW(Network heat, int[] air, double outsideC) {
    return MoistAir.HEAT_DRY_AIR
        * ((upKgS + lidKgS) * (heat.mean(air[boxes - 1]) - outsideC)
            + (downKgS + entranceKgS) * (heat.mean(air[0]) - outsideC));
  }
}
