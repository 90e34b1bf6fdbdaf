package org.broodbench.hive;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.broodbench.checks.CheckRows;
import org.broodbench.checks.CheckRows.Row;
import org.broodbench.matter.Material;
import org.junit.jupiter.api.Test;

/** Flows through openings and the operating point of a fan; source beside each row. */
class AirFlowValidationTest {

  @Test
  void openings() {
    CheckRows.of("VEN").run(17, AirFlowValidationTest::flow);
  }

  private static double flow(Row r) {
    String kind = r.id().substring(4);
    // the rows of buoyancy were made with 9.81 m/s², the run has the standard 9.80665
    double gravity = StrictMath.sqrt(9.81 / AirFlow.GRAVITY_M_S2);
    if (kind.startsWith("STACK")) {
      return gravity
          * AirFlow.stackM3S(
              r.number("Cd"), r.number("A_m2"), r.number("h_m"), r.number("Ti_C"), outside(r));
    }
    if (kind.startsWith("TWO")) {
      return gravity
          * AirFlow.twoOpeningsM3S(
              r.number("Cd"),
              r.number("A_low_m2"),
              r.number("A_high_m2"),
              r.number("H_m"),
              r.number("Ti_C"),
              outside(r));
    }
    if (kind.startsWith("NPL")) {
      return AirFlow.neutralLevelM(
          r.number("A_low_m2"),
          r.number("A_high_m2"),
          r.number("H_m"),
          r.number("Ti_C"),
          outside(r));
    }
    if (kind.startsWith("BS")) {
      double areaM2 = r.number("w_m") * r.number("h_m");
      return gravity
          * AirFlow.exchangeM3S(
              r.number("Cd"), areaM2, r.number("h_m"), r.number("Ti_C"), outside(r));
    }
    if (kind.startsWith("WIND")) {
      return AirFlow.windM3S(r.number("Cv"), r.number("A_m2"), r.number("U_ms"));
    }
    return switch (kind) {
      case "CD38" -> AirFlow.twoWayDischarge(r.number("Ti_C"), outside(r));
      case "SER-2", "SER-3" -> AirFlow.seriesAreaM2(r.number("A1"), r.number("A2"));
      case "QUAD" -> AirFlow.inQuadratureM3S(r.number("Qs"), r.number("Qw"));
      default -> throw new IllegalArgumentException(r.id());
    };
  }

  /** The way of air of the run, without wind and fan, is the formula of two openings. */
  @Test
  void twoOpeningsOnTheWayOfAir() {
    double gravity = StrictMath.sqrt(9.81 / AirFlow.GRAVITY_M_S2);
    int count = 0;
    for (Row r : CheckRows.of("VEN").rows()) {
      if (r.id().startsWith("VEN-TWO")) {
        double cd = r.number("Cd");
        double[] heightM = {r.number("H_m")};
        AirPath path = path(heightM, cd * r.number("A_low_m2"), cd * r.number("A_high_m2"), 0);
        path.evaluate(new double[] {r.number("Ti_C")}, new int[] {0}, outside(r), 0, false);
        assertEquals(r.expected(), gravity * path.throughM3S(), r.tolerance(), r.id());
        count++;
      }
    }
    assertTrue(count >= 2, "rows: " + count);
  }

  private static AirPath path(double[] heightM, double lowM2, double highM2, double windCp) {
    AirPath path =
        new AirPath(heightM, new double[heightM.length], lowM2, windCp, new FanSpec(0, 0, 0));
    path.setVent(highM2);
    return path;
  }

  /** Wind on walls, through two openings, and sheets with holes. */
  @Test
  void windAndSheets() {
    CheckRows.of("VEN-WIND")
        .run(
            16,
            r -> {
              String kind = r.id().substring(4);
              if (kind.startsWith("CP")) {
                return WindPressure.coefficient(r.number("incidence_deg"), r.number("side_ratio"));
              }
              if (kind.startsWith("PERF-I")) {
                return Separator.thinPlateLoss(r.number("open_fraction"));
              }
              if (kind.startsWith("PERF-B")) {
                return Separator.thickPlateLoss(r.number("open_fraction"));
              }
              if (kind.equals("WP")) {
                return WindPressure.velocityPressurePa(r.number("rho"), r.number("U_ms"));
              }
              double cd = r.number("Cd");
              AirPath path =
                  path(
                      new double[] {0.25},
                      cd * r.number("A1"),
                      cd * r.number("A2"),
                      r.number("Cp1") - r.number("Cp2"));
              path.evaluate(new double[] {10}, new int[] {0}, 10, r.number("U_ms"), false);
              return path.throughM3S();
            });
  }

  /** Buoyancy and wind on one way add in quadrature when both push up, and oppose otherwise. */
  @Test
  void pressuresAdd() {
    AirPath path = path(new double[] {0.25, 0.25}, 3e-4, 2e-4, 0.25);
    double[] warm = {20, 20};
    double[] cold = {-20, -20};
    int[] air = {0, 1};
    path.evaluate(warm, air, 0, 0, false);
    double stack = path.throughM3S();
    path.evaluate(new double[] {0, 0}, air, 0, 3, false);
    double wind = path.throughM3S();
    path.evaluate(warm, air, 0, 3, false);
    assertEquals(AirFlow.inQuadratureM3S(stack, wind), path.throughM3S(), 0.03 * path.throughM3S());
    path.evaluate(cold, air, 0, 0, false);
    assertTrue(path.throughM3S() < 0);
    path.evaluate(cold, air, 0, 10, false);
    assertTrue(path.throughM3S() > 0);
  }

  /** A sheet slows the stack; a board without a hole all but stops it. */
  @Test
  void separatorsSlowTheStack() {
    int[] air = {0, 1};
    double[] warm = {20, 20};
    double planM2 = 0.467 * 0.375;
    double[] flows = new double[4];
    Separator[] kinds = {
      Separator.NONE,
      new Separator(Separator.Kind.SHEET, 0.5, 0.004, 0, 0.001, Material.STEEL),
      new Separator(Separator.Kind.BOARD, 0, 0, 5e-4, 0.01, Material.PLYWOOD),
      new Separator(Separator.Kind.BOARD, 0, 0, 0, 0.01, Material.PLYWOOD)
    };
    for (int i = 0; i < kinds.length; i++) {
      double[] drag = {0, kinds[i].drag(planM2, 0.5, 0.6)};
      AirPath path = new AirPath(new double[] {0.244, 0.244}, drag, 4e-3, 0, new FanSpec(0, 0, 0));
      path.setVent(4e-3);
      path.evaluate(warm, air, 0, 0, false);
      flows[i] = path.throughM3S();
    }
    assertTrue(flows[1] < flows[0] && flows[1] > 0.95 * flows[0], "sheet " + flows[1] / flows[0]);
    assertTrue(flows[2] < 0.1 * flows[1], "board with a hole");
    assertTrue(flows[3] < 0.2 * flows[2] && flows[3] > 0, "board without");
  }

  /** The two-way share against the closed solution over the height of the neutral level. */
  @Test
  void counterflowFollowsTheNeutralLevel() {
    for (double s = 0.5; s <= 1; s += 0.02) {
      double x = StrictMath.pow(s, 1.5) - StrictMath.pow(1 - s, 1.5);
      double counter = 2 * StrictMath.sqrt(2) * StrictMath.pow(1 - s, 1.5);
      double through = x * 2 * StrictMath.sqrt(2) * 1e-3;
      assertEquals(counter, AirFlow.counterM3S(1e-3, through) / 1e-3, 0.03, "level " + s);
    }
    assertEquals(0, AirFlow.counterM3S(0, 0), 0);
    assertTrue(AirFlow.counterM3S(1e-4, 1e-3) < 1e-6);
  }

  /** Fan laws and a straight curve; the operating points by the way of air of the run. */
  @Test
  void fanLawsAndCurves() {
    CheckRows.of("FAN-LAW")
        .run(
            13,
            r -> {
              if (r.id().startsWith("FAN-LIN")) {
                return operating(r, FanSpec.Curve.LINE);
              }
              if (r.has("n_ratio")) {
                return new FanSpec(1, 1, 1).atSpeed(r.number("n_ratio")).powerW();
              }
              FanSpec fan =
                  new FanSpec(r.number("P1"), r.number("Q1"), r.number("dp1"))
                      .atSpeed(r.number("n2_rpm") / r.number("n1_rpm"));
              return r.id().endsWith("-Q")
                  ? fan.freeFlowM3S()
                  : r.id().endsWith("-DP") ? fan.shutOffPa() : fan.powerW();
            });
    for (Row r : CheckRows.of("FAN").rows()) {
      if (r.id().startsWith("FAN-PAR")) {
        assertEquals(r.expected(), operating(r, FanSpec.Curve.PARABOLA), r.tolerance(), r.id());
      }
    }
  }

  private static double operating(Row r, FanSpec.Curve curve) {
    FanSpec fan = new FanSpec(1, r.number("Q0_m3s"), r.number("p0_Pa"), curve);
    // Δp = K Q² = ρ/2 Q²/(C_d A)² at the density of the rating
    double effectiveM2 = StrictMath.sqrt(1.204 / (2 * r.number("K")));
    AirPath path = new AirPath(new double[] {0.25}, new double[1], effectiveM2, 0, fan);
    path.setVent(1);
    path.evaluate(new double[] {10}, new int[] {0}, 10, 0, true);
    return path.throughM3S();
  }

  private static double outside(Row r) {
    return r.number("To_C");
  }

  @Test
  void fan() {
    CheckRows.of("FAN")
        .run(
            3,
            r ->
                r.id().equals("FAN-KORI")
                    ? Fan.orificeResistance(r.number("rho"), r.number("Cd"), r.number("A_m2"))
                    : Fan.operatingM3S(r.number("p0_Pa"), r.number("Q0_m3s"), r.number("K")));
  }
}
