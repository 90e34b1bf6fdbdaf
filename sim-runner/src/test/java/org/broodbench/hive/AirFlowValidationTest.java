package org.broodbench.hive;

import org.broodbench.checks.CheckRows;
import org.broodbench.checks.CheckRows.Row;
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
