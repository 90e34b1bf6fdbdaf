package org.broodbench.power;

/**
 * All module groups in the light of one step: the most power they could give, and what their charge
 * controller can draw from them at some bus volts.
 *
 * <p>A group is the module of {@link DiodeCurve} with its volts and currents scaled so that rated
 * power and peak volts come out. Its temperature coefficient is met by counting the cells' distance
 * from 25 °C larger or smaller. A tracking controller steps down only: while the peak volts lie
 * below those of the bus, the group gives what it gives at the bus's own volts.
 */
final class PvArray {
  private static final PeakTable PEAKS = PeakTable.CRYSTALLINE;

  private final PvSpec spec;
  private final PvGroup[] groups;
  private final DiodeCurve curve = new DiodeCurve();
  private final double[] wm2;
  private final double[] curveC;
  private final double[] mostW;
  private final double[] ampereScale;
  private final double voltScale;

  private double peakW;
  private double trackedW;
  private double currentA;
  private double slopePerOhm;

  PvArray(PvSpec spec) {
    this.spec = spec;
    groups = spec.groups().toArray(PvGroup[]::new);
    wm2 = new double[groups.length];
    curveC = new double[groups.length];
    mostW = new double[groups.length];
    ampereScale = new double[groups.length];
    voltScale = spec.modulePeakV() / PEAKS.standardV();
    for (int g = 0; g < groups.length; g++) {
      ampereScale[g] = groups[g].powerW() / PEAKS.standardW() / voltScale;
    }
  }

  /** Takes the light of a step, W/m² on each group; air, °C, and wind, m/s. */
  void light(double[] groupWM2, double airC, double windMS) {
    peakW = 0;
    for (int g = 0; g < groups.length; g++) {
      PvGroup group = groups[g];
      double light = groupWM2[g] * spec.soilingFactor();
      double cellC =
          spec.cells() == PvSpec.Cells.NOCT
              ? PvModule.cellC(airC, spec.noctC(), light)
              : PvModule.cellC(
                  airC, windMS, light, group.mounting().stillWM2K(), group.mounting().windWSM3K());
      wm2[g] = light;
      if (spec.curve() == PvSpec.Curve.DIODE) {
        curveC[g] = 25 + group.coefficientPerK() / PEAKS.coefficientPerK() * (cellC - 25);
        mostW[g] = group.powerW() * PEAKS.power(light, curveC[g]);
      } else {
        mostW[g] = PvModule.powerW(group.powerW(), group.coefficientPerK(), light, cellC);
      }
      peakW += mostW[g];
    }
  }

  /** Works out what a tracking controller gets from the modules with the bus at some volts. */
  void track(double busV) {
    trackedW = 0;
    for (int g = 0; g < groups.length; g++) {
      boolean low =
          spec.curve() == PvSpec.Curve.DIODE
              && mostW[g] > 0
              && voltScale * PEAKS.standardV() * PEAKS.volts(wm2[g], curveC[g]) < busV;
      if (low) {
        curve.set(wm2[g], curveC[g]);
        curve.at(busV / voltScale);
        double w = busV * ampereScale[g] * curve.currentA();
        trackedW += w < mostW[g] ? (w > 0 ? w : 0) : mostW[g];
      } else {
        trackedW += mostW[g];
      }
    }
  }

  /**
   * Works out the current that all groups give straight into a bus at some volts; negative where
   * these lie above the open-circuit volts.
   */
  void connect(double busV) {
    currentA = 0;
    slopePerOhm = 0;
    for (int g = 0; g < groups.length; g++) {
      if (spec.curve() == PvSpec.Curve.DIODE) {
        curve.set(wm2[g], curveC[g]);
        curve.at(busV / voltScale);
        currentA += ampereScale[g] * curve.currentA();
        slopePerOhm += ampereScale[g] / voltScale * curve.slopePerOhm();
      } else {
        currentA += groups[g].powerW() / spec.modulePeakV() * wm2[g] / 1000;
      }
    }
  }

  /** Number of groups. */
  int count() {
    return groups.length;
  }

  /** The most that a group could give, W. */
  double mostW(int group) {
    return mostW[group];
  }

  /** The most that all could give, W. */
  double peakW() {
    return peakW;
  }

  /** What a tracking controller gets, W. */
  double trackedW() {
    return trackedW;
  }

  /** Current into the bus, A. */
  double currentA() {
    return currentA;
  }

  /** Change of that current with the volts, 1/Ω; not positive. */
  double slopePerOhm() {
    return slopePerOhm;
  }
}
