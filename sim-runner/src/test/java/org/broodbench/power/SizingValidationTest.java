package org.broodbench.power;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.broodbench.checks.CheckRows;
import org.junit.jupiter.api.Test;

/**
 * Worked sizings on paper against the supply chain that studies size with: the chain, with losses
 * taken out, must need just the battery, the energy and the panel that the arithmetic says. The
 * factor for cold is that of the row: the program has no table of it, its batteries lock charge in
 * the cold instead.
 */
class SizingValidationTest {
  private static final double STEP_S = 60;

  /** Far more than any load of a row could draw. */
  private static final double STRONG_A = 1e4;

  private static BatterySpec ideal(double capacityAh, double soc) {
    return new BatterySpec(
        Chemistry.LFP,
        capacityAh,
        12,
        1e-9,
        soc,
        STRONG_A,
        ChargeProfile.usual(Chemistry.LFP, 14.2, capacityAh, 12),
        1,
        0,
        3600,
        BatterySpec.Place.OUTDOORS,
        0,
        false,
        BoardSpec.NONE);
  }

  private static SupplyChain chain(
      PvSpec pv, BatterySpec battery, boolean inverter, double boardW, List<LoadSpec> loads) {
    return new SupplyChain(
        new SupplySpec(
            pv,
            battery,
            // no-load draw and losses of a 1000 W sine inverter, as in the row
            inverter ? new InverterSpec(1000, 9.6, 0.06, 1.07e-4) : new InverterSpec(0, 0, 0, 0),
            new SupplySpec.Heater(60, inverter ? 230 : 12, inverter, true),
            new ShoreSpec(false, 0, 1),
            new WiringSpec(0, 2.5, 0),
            new SupplySpec.Board(boardW, 2, 3, 5),
            0,
            loads),
        25);
  }

  private static PvSpec panel(double powerW, double trackingEfficiency) {
    return new PvSpec(
        List.of(new PvGroup(powerW, 0, 180)), 0, 45, 1, true, trackingEfficiency, 18, 0);
  }

  private static void pass(SupplyChain chain, double hours, double heaterH, double sunH) {
    SupplyInputs in = new SupplyInputs(1);
    in.airC = 25;
    in.batteryPlaceC = 25;
    in.inverter = true;
    for (int i = 0; i < Math.round(hours * 3600 / STEP_S); i++) {
      in.hourOfDay = (i + 0.5) * STEP_S / 3600 % 24;
      in.heater = in.hourOfDay < heaterH;
      in.groupWM2[0] = in.hourOfDay < sunH ? 1000 : 0;
      chain.solve(STEP_S, in);
      chain.accept();
    }
  }

  /**
   * The least battery that a load takes down to a depth and no deeper, at 25 °C, as charge at the
   * row's volts.
   */
  private static double batteryAh(CheckRows.Row row) {
    double days = row.number("days");
    double low = 10;
    double high = 5000;
    double ah = 0;
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      List<LoadSpec> load = List.of(new LoadSpec("all", row.number("day_wh") / 24, 0, 0));
      SupplyChain chain = chain(panel(0, 1), ideal(middle, 1), false, 0, load);
      pass(chain, 24 * days, 0, 0);
      PowerLedger p = chain.ledger();
      double meanV = p.otherLoadsJ / 3600 / p.chargeOutAh;
      ah = middle * meanV / row.number("V");
      if (chain.battery().stateOfCharge() < 1 - row.number("dod")) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return ah * row.number("multiplier");
  }

  /** Energy that a day takes out of the battery, Wh. */
  private static double dayWh(boolean inverter) {
    SupplyChain chain =
        chain(panel(0, 1), ideal(500, 1), inverter, 1, List.of(new LoadSpec("fan", 3, 0, 2)));
    pass(chain, 24, 8, 0);
    PowerLedger p = chain.ledger();
    assertEquals(60 * 8, p.heaterJ / 3600, 1e-6, "the heater has its watts");
    return (p.heaterJ + p.inverterLossJ + p.otherLoadsJ + p.controllerJ) / 3600;
  }

  /** Rated power that gives a day's energy at the bus, W. */
  private static double arrayW(CheckRows.Row row) {
    double triedW = 400;
    SupplyChain chain =
        chain(panel(triedW, row.number("chain")), ideal(500, 0.2), false, 0, List.of());
    pass(chain, 24, 0, row.number("sun_h"));
    PowerLedger p = chain.ledger();
    return triedW * row.number("day_wh") / ((p.pvUsedJ - p.chargeLossJ) / 3600);
  }

  @Test
  void theChainNeedsWhatTheArithmeticSays() {
    CheckRows.of("sizing")
        .run(
            6,
            row ->
                row.has("inverter")
                    ? dayWh(row.text("inverter").equals("yes"))
                    : row.has("sun_h") ? arrayW(row) : batteryAh(row));
  }
}
