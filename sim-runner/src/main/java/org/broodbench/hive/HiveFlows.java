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
  private double ventM2;
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
    setTopVent(spec.topVentM2());
  }

  FanSpec fan() {
    return fan;
  }

  /** Takes over a vent that was changed during the run. */
  void takeTopVentFrom(HiveFlows other) {
    ventM2 = other.ventM2;
    fanM3S = other.fanM3S;
  }

  void setTopVent(double areaM2) {
    ventM2 = areaM2 * spec.openShare();
    fanM3S =
        fan.freeFlowM3S() > 0 && entranceM2 > 0
            ? Fan.operatingM3S(
                fan.shutOffPa(),
                fan.freeFlowM3S(),
                Fan.orificeResistance(airKgM3, spec.dischargeCoefficient(), entranceM2))
            : 0;
  }

  /** Sets the streams for a step. */
  void evaluate(
      Network heat, int[] air, double stepS, Outside outside, boolean fanOn, double openLidM3S) {
    double insideC = 0;
    for (int i = 0; i < boxes; i++) {
      insideC += heat.ahead(air[i], stepS) * spec.boxes().get(i).heightM();
    }
    insideC /= heightM;
    double throughM3S = 0;
    double exchangeM3S = 0;
    if (ventM2 > 0 && entranceM2 > 0) {
      double stackM3S =
          AirFlow.twoOpeningsM3S(
              spec.dischargeCoefficient(), entranceM2, ventM2, heightM, insideC, outside.airC);
      double windM3S =
          AirFlow.windM3S(
              spec.windEffectiveness(), AirFlow.seriesAreaM2(entranceM2, ventM2), outside.windMS);
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
      double lowerC = heat.ahead(air[i - 1], stepS);
      double upperC = heat.ahead(air[i], stepS);
      double excessK = Portable.positivePart(lowerC - upperC, AirFlow.ROUNDING_K);
      double buoyantM3S =
          AirFlow.exchangeM3S(
              spec.dischargeCoefficient(),
              gapM2,
              spec.boxes().get(i - 1).heightM() / 2,
              upperC + excessK,
              upperC);
      boxExchangeKgS[i] = airKgM3 * (buoyantM3S + MIXING_M3S);
    }
  }

  /** Puts the streams into a gas network whose first zones are the boxes. */
  void fill(Network gas, double outsideValue) {
    put(gas, null, 1, outsideValue);
  }

  /** Puts the streams into the heat network. */
  void fillHeat(Network heat, int[] air, double outsideC) {
    put(heat, air, MoistAir.HEAT_DRY_AIR, outsideC);
  }

  private void put(Network net, int[] nodeOfBox, double factor, double outsideValue) {
    int top = boxes - 1;
    int low = nodeOfBox == null ? 0 : nodeOfBox[0];
    int high = nodeOfBox == null ? top : nodeOfBox[top];
    net.reach(low, factor * (upKgS + entranceKgS), outsideValue);
    net.reach(high, factor * (downKgS + lidKgS), outsideValue);
    for (int i = 1; i < boxes; i++) {
      int lower = nodeOfBox == null ? i - 1 : nodeOfBox[i - 1];
      int upper = nodeOfBox == null ? i : nodeOfBox[i];
      net.carry(lower, upper, factor * upKgS);
      net.carry(upper, lower, factor * downKgS);
      net.conduct(lower, upper, factor * boxExchangeKgS[i]);
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
