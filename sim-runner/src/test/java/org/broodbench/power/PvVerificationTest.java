package org.broodbench.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** The curve against its own equation, the table against the curve, scaled groups against both. */
class PvVerificationTest {

  /** Solved current and volts meet the single-diode equation written out once more. */
  @Property(tries = 300)
  void theCurveSolvesItsEquation(
      @ForAll @DoubleRange(min = 1, max = 1300) double wm2,
      @ForAll @DoubleRange(min = -40, max = 85) double cellC,
      @ForAll @DoubleRange(min = 0, max = 28) double volts) {
    DiodeCurve curve = new DiodeCurve();
    curve.set(wm2, cellC);
    curve.at(volts);
    double i = curve.currentA();
    double t = cellC + 273.15;
    double gap = 1.121 * (1 - 0.0002677 * (t - 298.15));
    double saturation =
        2.6797e-11
            * StrictMath.pow(t / 298.15, 3)
            * StrictMath.exp((1.121 / 298.15 - gap / t) / 8.617333262e-5);
    double x = volts + i * 1.0547;
    double right =
        wm2 / 1000 * 1.173 * (1 + 0.0004 * (cellC - 25))
            - saturation * StrictMath.expm1(x / (1.0036 * 36 * 8.617333262e-5 * t))
            - x / (405.962 * 1000 / wm2);
    // a billionth of an ampere, for large reverse currents of their size
    assertEquals(right, i, 1e-9 * Math.max(1, Math.abs(i)));
    curve.at(volts + 1e-6);
    double up = curve.currentA();
    curve.at(volts);
    assertEquals(
        (up - i) / 1e-6, curve.slopePerOhm(), 1e-3 * Math.max(1, Math.abs(curve.slopePerOhm())));
  }

  /** From 20 W/m² up within a thousandth, below within a ten-thousandth of the rated power. */
  @Property(tries = 300)
  void theTableFollowsTheCurve(
      @ForAll @DoubleRange(min = 0, max = 1400) double wm2,
      @ForAll @DoubleRange(min = -40, max = 90) double cellC) {
    DiodeCurve curve = new DiodeCurve();
    curve.set(wm2, cellC);
    PeakTable t = PeakTable.CRYSTALLINE;
    double exact = curve.peakW() / t.standardW();
    double tolerance = wm2 >= 20 ? 1e-3 * exact : 1e-4;
    assertEquals(exact, t.power(wm2, cellC), tolerance);
    if (wm2 >= 20) {
      assertEquals(curve.peakV() / t.standardV(), t.volts(wm2, cellC), 3e-3);
    }
  }

  private static PvArray array(boolean tracking, double peakV, double coefficientPerK) {
    PvGroup group = new PvGroup(200, 60, 180, coefficientPerK, PvGroup.Mounting.OPEN, List.of());
    return new PvArray(
        new PvSpec(
            List.of(group),
            PvSpec.Curve.DIODE,
            PvSpec.Cells.WIND,
            45,
            1,
            1,
            tracking,
            0.94,
            peakV,
            0.2,
            LoadOutput.NONE));
  }

  /** A scaled group has its rated power at its peak volts, and its own coefficient. */
  @Test
  void aGroupMeetsItsNameplate() {
    PvArray a = array(true, 34, -0.0035);
    // wind so strong that the cells are at air temperature within a ten-thousandth of a kelvin
    a.light(new double[] {1000}, 25, 1e7);
    assertEquals(200, a.peakW(), 0.1);
    a.connect(34);
    assertEquals(200, 34 * a.currentA(), 0.1);
    a.light(new double[] {1000}, 50, 1e7);
    assertEquals(200 * (1 - 0.0035 * 25), a.peakW(), 0.1, "the nameplate's coefficient");
  }

  /** A tracker that only steps down: below the bus the modules give what they give at the bus. */
  @Test
  void aTrackerCannotStepUp() {
    PvArray a = array(true, 18, -0.004);
    a.light(new double[] {1000}, 25, 1e7);
    a.track(13);
    assertEquals(a.peakW(), a.trackedW(), 1e-9);
    a.track(20);
    a.connect(20);
    assertEquals(20 * a.currentA(), a.trackedW(), 1e-9);
    assertTrue(a.trackedW() < a.peakW());
    a.track(28);
    assertEquals(0, a.trackedW(), "a 12 V module gives nothing to a 24 V battery");
  }
}
