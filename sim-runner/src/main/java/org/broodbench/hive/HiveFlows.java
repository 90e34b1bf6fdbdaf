package org.broodbench.hive;

import org.broodbench.matter.MoistAir;
import org.broodbench.matter.Portable;

/**
 * Streams of air of a stack of boxes at the present state: through the entrance and the upper vent
 * by buoyancy, wind and fan; both ways through the entrance where there is no upper vent; both ways
 * between boxes where the lower one is warmer. A stream goes up or down by the sign of the
 * temperature difference, gradually within half a kelvin.
 */
final class HiveFlows {
  /** Width of the turn of a stream from upwards to downwards, K; own choice. */
  private static final double TURN_K = 0.5;

  /**
   * Gusts through a single opening against wind through two: about 0.025 A U against 0.3 A U. P. R.
   * Warren, "Ventilation through openings on one wall only" (1977), from memory, medium confidence.
   */
  private static final double SINGLE_SIDED = 0.08;

  /** Mixing between boxes that movement of bees keeps up, m³/s; own choice. */
  private static final double MIXING_M3S = 5e-5;

  /**
   * Share of the plan of a box that the gaps between frames leave open: bee space over comb pitch,
   * 10/35.
   */
  private static final double FRAME_GAP_SHARE = 10.0 / 35;

  private final HiveSpec spec;
  private final FanSpec fan;
  private final double heightM;
  private final double airKgM3;
  private final double entranceM2;
  private final double gapM2;
  private final int boxes;
  private final double[] boxExchangeKgS;
  private final double[] boxHeightM;
  private double ventM2;
  private double windAreaM2;
  private double fanM3S;

  private double upKgS;
  private double downKgS;
  private double entranceKgS;
  private double lidKgS;

  HiveFlows(HiveSpec spec, FanSpec fan, double planM2, double heightM, double airKgM3) {
    this.spec = spec;
    this.fan = fan;
    this.heightM = heightM;
    this.airKgM3 = airKgM3;
    entranceM2 = spec.entranceWidthM() * spec.entranceHeightM() * spec.openShare();
    gapM2 = planM2 * FRAME_GAP_SHARE * spec.openShare();
    boxes = spec.boxes().size();
    boxExchangeKgS = new double[boxes];
    boxHeightM = spec.boxes().stream().mapToDouble(BoxSpec::heightM).toArray();
    setTopVent(spec.topVentM2());
  }

  FanSpec fan() {
    return fan;
  }

  /** Takes over a vent that was changed during the run. */
  void takeTopVentFrom(HiveFlows other) {
    ventM2 = other.ventM2;
    windAreaM2 = other.windAreaM2;
    fanM3S = other.fanM3S;
  }

  void setTopVent(double areaM2) {
    ventM2 = areaM2 * spec.openShare();
    windAreaM2 = ventM2 > 0 && entranceM2 > 0 ? AirFlow.seriesAreaM2(entranceM2, ventM2) : 0;
    fanM3S =
        fan.freeFlowM3S() > 0 && entranceM2 > 0
            ? Fan.operatingM3S(
                fan.shutOffPa(),
                fan.freeFlowM3S(),
                Fan.orificeResistance(airKgM3, spec.dischargeCoefficient(), entranceM2))
            : 0;
  }

  /** Sets the streams at given temperatures of the heat nodes. */
  void evaluate(double[] heatC, int[] air, Outside outside, boolean fanOn, double openLidM3S) {
    double insideC = 0;
    for (int i = 0; i < boxes; i++) {
      insideC += heatC[air[i]] * boxHeightM[i];
    }
    insideC /= heightM;
    double throughM3S = 0;
    double exchangeM3S = 0;
    if (ventM2 > 0 && entranceM2 > 0) {
      double stackM3S =
          AirFlow.twoOpeningsM3S(
              spec.dischargeCoefficient(), entranceM2, ventM2, heightM, insideC, outside.airC);
      double windM3S = AirFlow.windM3S(spec.windEffectiveness(), windAreaM2, outside.windMS);
      throughM3S = AirFlow.inQuadratureM3S(stackM3S, windM3S);
    } else if (entranceM2 > 0) {
      double twoWayM3S =
          AirFlow.exchangeM3S(
              spec.dischargeCoefficient(),
              entranceM2,
              spec.entranceHeightM(),
              insideC,
              outside.airC);
      double windM3S =
          AirFlow.windM3S(SINGLE_SIDED * spec.windEffectiveness(), entranceM2, outside.windMS);
      exchangeM3S = AirFlow.inQuadratureM3S(twoWayM3S, windM3S);
    }
    double upShare = 1;
    if (fanOn) {
      throughM3S = AirFlow.inQuadratureM3S(throughM3S, fanM3S);
    } else {
      double differenceK = insideC - outside.airC;
      upShare = 0.5 * (1 + differenceK / Math.sqrt(differenceK * differenceK + TURN_K * TURN_K));
    }
    upKgS = airKgM3 * throughM3S * upShare;
    downKgS = airKgM3 * throughM3S * (1 - upShare);
    entranceKgS = airKgM3 * exchangeM3S;
    lidKgS = airKgM3 * openLidM3S;
    for (int i = 1; i < boxes; i++) {
      double lowerC = heatC[air[i - 1]];
      double upperC = heatC[air[i]];
      double excessK = Portable.positivePart(lowerC - upperC, AirFlow.ROUNDING_K);
      double buoyantM3S =
          AirFlow.exchangeM3S(
              spec.dischargeCoefficient(), gapM2, boxHeightM[i - 1] / 2, upperC + excessK, upperC);
      boxExchangeKgS[i] = airKgM3 * (buoyantM3S + MIXING_M3S);
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
