package org.broodbench.matter;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.broodbench.checks.CheckRows;
import org.broodbench.checks.CheckRows.Row;
import org.junit.jupiter.api.Test;

/**
 * Tables and worked examples of the ASHRAE handbook and check values of IAPWS; source beside each
 * row.
 */
class MoistAirValidationTest {

  @Test
  void everyRowOfMoistAirIsMet() {
    CheckRows.of("PSY").run(121, MoistAirValidationTest::compute);
  }

  private static double compute(Row r) {
    String id = r.id();
    if (id.startsWith("PSY-PWS") || id.equals("PSY-P-0")) {
      return id.equals("PSY-P-0")
          ? MoistAir.saturationIcePa(0)
          : MoistAir.saturationPa(r.number("T_C"));
    }
    if (id.startsWith("PSY-WS")) {
      return MoistAir.humidityRatio(MoistAir.saturationPa(r.number("T_C")), 101325);
    }
    if (id.startsWith("PSY-HS")) {
      double t = r.number("T_C");
      return MoistAir.enthalpyJPerKg(t, MoistAir.humidityRatio(MoistAir.saturationPa(t), 101325));
    }
    if (id.startsWith("PSY-EX1")) {
      return example(r);
    }
    if (id.startsWith("PSY-ATM")) {
      return MoistAir.standardPressurePa(r.number("z_m"));
    }
    if (id.startsWith("PSY-IF97")) {
      return WaterReference.if97Pa(r.number("T_K")) / 1e6;
    }
    if (id.startsWith("PSY-R14")) {
      return WaterReference.r14Pa(r.number("T_K")) / 1e6;
    }
    if (id.startsWith("PSY-P-")) {
      double t = r.number("T_C");
      return r.text("phase").equals("ice")
          ? MoistAir.saturationIcePa(t)
          : MoistAir.saturationWaterPa(t);
    }
    if (id.startsWith("PSY-MAGI")) {
      return MoistAir.saturationIcePa(r.number("T_C"));
    }
    if (id.startsWith("PSY-MAGW")) {
      return MoistAir.magnusWaterPa(r.number("T_C"));
    }
    if (id.startsWith("PSY-G")) {
      return grid(r);
    }
    if (id.startsWith("PSY-HFG")) {
      return MoistAir.latentHeatJPerKg(r.number("T_C")) / 1000;
    }
    if (id.equals("PSY-EVAP")) {
      return r.number("m_g_per_d") / 1000 / 86400 * MoistAir.latentHeatJPerKg(r.number("T_C"));
    }
    return stream(r);
  }

  private static double example(Row r) {
    double t = r.number("Tdb_C");
    double p = r.number("p_Pa");
    double w = MoistAir.humidityRatioFromWetBulb(t, r.number("Twb_C"), p);
    return switch (r.id()) {
      case "PSY-EX1-W" -> w;
      case "PSY-EX1-TD" -> MoistAir.dewPointC(MoistAir.vapourPa(w, p));
      case "PSY-EX1-RH" -> MoistAir.relativeHumidityOverWater(MoistAir.vapourPa(w, p), t);
      case "PSY-EX1-H" -> MoistAir.enthalpyJPerKg(t, w);
      default -> MoistAir.specificVolumeM3PerKg(t, w, p);
    };
  }

  private static double grid(Row r) {
    double t = r.number("T_C");
    double p = r.number("p_Pa");
    double e = r.number("RH") * MoistAir.saturationPa(t);
    double w = MoistAir.humidityRatio(e, p);
    return switch (r.id().substring(r.id().lastIndexOf('-') + 1)) {
      case "W" -> w;
      case "TD" -> MoistAir.dewOrFrostPointC(e);
      case "H" -> MoistAir.enthalpyJPerKg(t, w);
      case "TW" -> MoistAir.wetBulbC(t, w, p);
      default -> MoistAir.densityKgPerM3(t, w, p);
    };
  }

  /**
   * Enthalpy carried out by a stream of dry air that enters as outdoor and leaves as indoor air, W.
   */
  private static double stream(Row r) {
    double ti = r.number("Ti_C");
    double to = r.number("To_C");
    double wi = MoistAir.humidityRatio(r.number("RHi") * MoistAir.saturationPa(ti), 101325);
    double wo = MoistAir.humidityRatio(r.number("RHo") * MoistAir.saturationPa(to), 101325);
    return r.number("m_da_g_s")
        / 1000
        * (MoistAir.enthalpyJPerKg(ti, wi) - MoistAir.enthalpyJPerKg(to, wo));
  }

  /**
   * The polynomials of the simulation step against the full equations: 1e-6, about 15 microkelvin.
   */
  @Test
  void polynomialsStayWithinOneMillionth() {
    for (int i = 0; i <= 140000; i++) {
      double t = -60 + i / 1000.0;
      assertEquals(
          1, MoistAir.fastSaturationWaterPa(t) / MoistAir.saturationWaterPa(t), 1e-7, "at " + t);
    }
    for (int i = 0; i <= 80000; i++) {
      double t = -80 + i / 1000.0;
      assertEquals(
          1, MoistAir.fastSaturationIcePa(t) / MoistAir.saturationIcePa(t), 2e-7, "ice at " + t);
    }
  }

  @Test
  void supercooledWaterIsTenPercentAboveIceAtMinusTen() {
    // 10 percent at -10 and 22 percent at -20 degC: WMO No. 8, chapter 4
    assertEquals(1.10, MoistAir.saturationWaterPa(-10) / MoistAir.saturationIcePa(-10), 0.005);
    assertEquals(1.22, MoistAir.saturationWaterPa(-20) / MoistAir.saturationIcePa(-20), 0.01);
  }

  @Test
  void dewAndFrostPointInvertTheirPressures() {
    for (double t = -60; t <= 90; t += 0.5) {
      assertEquals(t, MoistAir.dewPointC(MoistAir.saturationWaterPa(t)), 1e-8);
    }
    for (double t = -90; t <= 0; t += 0.5) {
      assertEquals(t, MoistAir.frostPointC(MoistAir.saturationIcePa(t)), 1e-8);
    }
  }
}
