package org.broodbench.audit;

import org.broodbench.colony.ColonyHeat;
import org.broodbench.colony.ColonySpec;
import org.broodbench.hive.AirFlow;
import org.broodbench.hive.BoxSpec;
import org.broodbench.hive.HeaterSpec;
import org.broodbench.hive.HiveSpec;
import org.broodbench.hive.Iso6946;
import org.broodbench.hive.Pan;
import org.broodbench.rig.ProbeSpec;

/**
 * A hive in steady weather: three temperatures (nest, air of the hive, top of the pan) and the heat
 * that flows between them and outdoors. Solved by halving intervals; nothing is stepped in time.
 *
 * <pre>  nest:  colony + g_n (pan − nest) = G (nest − air)
 *   air:   g_a (pan − air) + G (nest − air) = (UA + air exchange) (air − outdoor)
 *   pan:   heater − floor = g_n (pan − nest) + g_a (pan − air)</pre>
 *
 * <p>Sources: walls by ISO 6946:2017 ({@link Iso6946#hiveWK}); air by {@link AirFlow}; colony by
 * {@link ColonyHeat}. Leaves out: differences between boxes, moisture, sun and sky on the walls.
 */
final class SteadyHive {
  /** Heat of a cubic metre of air, J/(m³K): 1.2 kg/m³ at sea level and 1006 J/(kg K). */
  private static final double AIR_JM3K = 1207;

  private static final double HOT_C = 60;

  private final HiveSpec hive;
  private final HeaterSpec heater;
  private final ColonyHeat colony;
  private final boolean bees;
  private final double solidWK;
  private final double windMS;
  private final double heightM;
  private final double plateKPerW;

  private double nestC;
  private double airC;
  private double panC;

  SteadyHive(HiveSpec hive, ColonySpec colony, HeaterSpec heater, double windMS) {
    this.hive = hive;
    this.heater = heater;
    this.colony = new ColonyHeat(colony);
    bees = colony.massKg() > 0;
    solidWK = Iso6946.hiveWK(hive);
    this.windMS = windMS;
    double h = 0;
    for (BoxSpec b : hive.boxes()) {
      h += b.heightM();
    }
    heightM = h;
    plateKPerW = plateKPerW(heater.pan());
  }

  /** How much warmer the plate is than the top of the pan, K for each watt that goes up. */
  static double plateKPerW(Pan pan) {
    double k = 1 / pan.fromPlateWK();
    return Double.isInfinite(pan.throughWK()) ? k : k + 1 / pan.throughWK() + 1 / pan.toCoverWK();
  }

  /** Conductance of walls, lid and floor, W/K. */
  double solidWK() {
    return solidWK;
  }

  /** What the air that goes through and in and out carries off, W/K. */
  double exchangeWK(double insideC, double outsideC) {
    double entranceM2 = hive.entranceWidthM() * hive.entranceHeightM() * hive.openShare();
    double ventM2 = hive.topVentM2() * hive.openShare();
    double cd = hive.dischargeCoefficient();
    double through = 0;
    if (ventM2 > 0 && entranceM2 > 0) {
      double stack = AirFlow.twoOpeningsM3S(cd, entranceM2, ventM2, heightM, insideC, outsideC);
      double wind =
          AirFlow.windM3S(
              hive.windEffectiveness(), AirFlow.seriesAreaM2(entranceM2, ventM2), windMS);
      through = AirFlow.inQuadratureM3S(stack, wind);
    }
    double twoWay = AirFlow.exchangeM3S(cd, entranceM2, hive.entranceHeightM(), insideC, outsideC);
    return AIR_JM3K * (through + AirFlow.counterM3S(twoWay, through));
  }

  /** Settles at a heater power in still weather. */
  void settle(double heaterW, double outsideC) {
    double low = outsideC - 1;
    double high = HOT_C + 20;
    for (int i = 0; i < 40; i++) {
      double middle = 0.5 * (low + high);
      if (surplusW(middle, heaterW, outsideC) > 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    airC = 0.5 * (low + high);
    surplusW(airC, heaterW, outsideC);
  }

  /** Heat that the air gains at some temperature, W; leaves nest and pan as they are there. */
  private double surplusW(double atC, double heaterW, double outsideC) {
    airC = atC;
    nestC = nest(atC, heaterW, outsideC);
    panC = pan(nestC, atC, heaterW, outsideC);
    return heater.pan().airWK() * (panC - atC)
        + lossWK(nestC, atC) * (nestC - atC)
        - (solidWK + exchangeWK(atC, outsideC)) * (atC - outsideC);
  }

  private double pan(double nest, double air, double heaterW, double outsideC) {
    double gn = heater.pan().nestWK();
    double ga = heater.pan().airWK();
    double gf = heater.plateFloorWK();
    double floorC = 0.5 * (air + outsideC);
    double upW = heaterW * Math.max(0, 1 - gf * plateKPerW);
    return (upW + gn * nest + ga * air + gf * floorC) / (gn + ga + gf);
  }

  private double lossWK(double nest, double air) {
    if (!bees) {
      return 0;
    }
    colony.evaluate(nest, air);
    return colony.lossWK();
  }

  private double nestSurplusW(double nest, double air, double heaterW, double outsideC) {
    double lossW = lossWK(nest, air) * (nest - air);
    double madeW = bees ? colony.heatW() : 0;
    double fromPanW = heater.pan().nestWK() * (pan(nest, air, heaterW, outsideC) - nest);
    return madeW + fromPanW - lossW;
  }

  /** The warmest nest that keeps itself: a chilled colony has a second, cold one. */
  private double nest(double air, double heaterW, double outsideC) {
    double above = HOT_C;
    double below = above;
    while (below > -60) {
      below -= 1;
      if (nestSurplusW(below, air, heaterW, outsideC) >= 0) {
        break;
      }
      above = below;
    }
    for (int i = 0; i < 24; i++) {
      double middle = 0.5 * (below + above);
      if (nestSurplusW(middle, air, heaterW, outsideC) >= 0) {
        below = middle;
      } else {
        above = middle;
      }
    }
    return below;
  }

  /** What a brood probe reads in the settled hive, °C. */
  double readingC(ProbeSpec probe) {
    return switch (probe.place()) {
      case BROOD_COMB -> nestC;
      case NEST_EDGE -> airC + probe.nestShare() * (nestC - airC);
      default -> airC;
    };
  }

  /** Heater power that holds a probe at a temperature, W; leaves the hive settled there. */
  double holdW(ProbeSpec probe, double targetC, double outsideC) {
    settle(0, outsideC);
    if (readingC(probe) >= targetC) {
      return 0;
    }
    double low = 0;
    double high = 1000;
    for (int i = 0; i < 24; i++) {
      double middle = 0.5 * (low + high);
      settle(middle, outsideC);
      if (readingC(probe) < targetC) {
        low = middle;
      } else {
        high = middle;
      }
    }
    settle(high, outsideC);
    return high;
  }

  /** Brood nest of the settled hive, °C. */
  double nestC() {
    return nestC;
  }

  /** Air of the settled hive, °C. */
  double airC() {
    return airC;
  }

  /** Top of the pan of the settled hive, °C. */
  double panC() {
    return panC;
  }

  /** Heat of the colony in the settled hive, W. */
  double colonyW() {
    if (!bees) {
      return 0;
    }
    colony.evaluate(nestC, airC);
    return colony.heatW();
  }
}
