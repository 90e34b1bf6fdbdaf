package org.broodbench.power;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.broodbench.checks.CheckRows;
import org.broodbench.checks.CheckRows.Row;
import org.junit.jupiter.api.Test;

/** Wells, bus, inverter, copper and modules as the run uses them; source beside each row. */
class PowerValidationTest {
  private static final double MONTH_S = 30.44 * 86_400;

  @Test
  void power() {
    CheckRows.of("power").run(53, PowerValidationTest::compute);
  }

  private static double compute(Row r) {
    String[] parts = r.id().split("-");
    return switch (parts[0]) {
      case "KIBAM" -> wells(r);
      case "SELF" -> selfDischarge(r.number("per_month"), r.number("months"));
      case "CP" -> constantPower(r);
      case "LVD" -> sag(r);
      case "INV" -> r.id().equals("INV-IDLE-DAY") ? idleWh(r) : weighted(r, parts[2]);
      case "AWG" ->
          parts[2].equals("d")
              ? Copper.gaugeDiameterMm(r.number("n"))
              : Copper.ohmPerKm(Copper.gaugeMm2(r.number("n")));
      case "NEC8" ->
          // both ways of 500 ft are 1000 ft
          Copper.loopOhm(500 * 0.3048, Copper.gaugeMm2(r.number("n")), r.number("T_C"));
      case "VD", "HTR" -> elementW(r);
      case "PV" ->
          r.id().equals("PV-NOCT")
              ? PvModule.cellC(r.number("Ta_C"), r.number("noct_C"), r.number("G"))
              : PvModule.powerW(
                  r.number("P_stc"), r.number("gamma"), r.number("G"), r.number("Tc_C"));
      default -> throw new IllegalArgumentException(r.id());
    };
  }

  private static double wells(Row r) {
    double c = r.number("c");
    double k = r.number("k");
    double full = r.number("qmax");
    TwoWells w = new TwoWells(c, k, full, 1);
    return switch (r.id().substring(6)) {
      case "STEP-q1" -> {
        w.hold(r.number("I_A"), r.number("t_h"));
        yield w.availableAh();
      }
      case "STEP-q2" -> {
        // in many steps, which must not matter
        for (int i = 0; i < 1000; i++) {
          w.hold(r.number("I_A"), r.number("t_h") / 1000);
        }
        yield w.boundAh();
      }
      case "HEAD" -> {
        w.hold(r.number("I_A"), r.number("t_h"));
        yield full * (w.boundHead() - w.availableHead());
      }
      case "REST" -> {
        w.hold(r.number("I_A"), r.number("t_h"));
        w.hold(0, r.number("rest_h"));
        yield w.availableAh();
      }
      case "EMPTY" -> {
        double hours = 0;
        double stepH = 1e-6;
        while (w.availableAh() > 0) {
          w.hold(r.number("I_A"), stepH);
          hours += stepH;
        }
        yield hours;
      }
      case "IDMAX" -> w.mostDischargeA(r.number("t_h"));
      case "ICMAX" -> {
        w.set(r.number("q1"), r.number("q2"));
        yield w.mostChargeA(r.number("t_h"));
      }
      default -> TwoWells.dischargedAh(c, k, full, r.number("t_h"));
    };
  }

  private static double selfDischarge(double perMonth, double months) {
    BatterySpec spec =
        new BatterySpec(
            Chemistry.AGM,
            100,
            12,
            0.006,
            1,
            25,
            14.4,
            0.97,
            perMonth,
            14_400,
            BatterySpec.Place.OUTDOORS);
    Battery battery = new Battery(spec, 25);
    PowerLedger ledger = new PowerLedger();
    for (double t = 0; t < months * MONTH_S; t += MONTH_S / 1000) {
      battery.hold(0, battery.ocvV(), MONTH_S / 1000, ledger);
    }
    return battery.stateOfCharge();
  }

  private static double constantPower(Row r) {
    Bus bus = new Bus();
    bus.ocvV = r.number("ocv_V");
    bus.ohm = r.number("R_ohm");
    bus.constantW = r.number("P_W");
    bus.highestV = 15;
    bus.solve();
    assertEquals(
        bus.batteryA(), Bus.constantPowerA(bus.ocvV, bus.ohm, bus.constantW), 1e-9, r.id());
    return bus.batteryA();
  }

  private static double sag(Row r) {
    Bus bus = new Bus();
    double elementOhm = r.number("rated_V") * r.number("rated_V") / r.number("P_W");
    // open-circuit volts at which the element draws the row's current
    bus.ocvV = r.number("I_A") * (elementOhm + r.number("R_ohm"));
    bus.ohm = r.number("R_ohm");
    bus.conductance = 1 / elementOhm;
    bus.highestV = 15;
    bus.solve();
    return bus.ocvV - bus.volts();
  }

  private static double weighted(Row r, String weights) {
    double rated = 400;
    InverterSpec spec =
        new InverterSpec(rated, r.number("p0") * rated, r.number("a"), r.number("b") / rated);
    double[] load;
    double[] weight;
    if (weights.equals("EU")) {
      load = new double[] {0.05, 0.1, 0.2, 0.3, 0.5, 1};
      weight = new double[] {0.03, 0.06, 0.13, 0.1, 0.48, 0.2};
    } else {
      load = new double[] {0.1, 0.2, 0.3, 0.5, 0.75, 1};
      weight = new double[] {0.04, 0.05, 0.12, 0.21, 0.53, 0.05};
    }
    double sum = 0;
    for (int i = 0; i < load.length; i++) {
      sum += weight[i] * Inverter.efficiency(spec, load[i] * rated);
    }
    return sum;
  }

  private static double idleWh(Row r) {
    SupplyChain chain = chain(r.number("idle_W"), 12, 0.01, 0, 60);
    SupplyInputs in = inputs();
    in.inverter = true;
    for (int i = 0; i < r.number("hours") * 360; i++) {
      chain.solve(10, in);
      chain.accept();
    }
    return chain.ledger().inverterLossJ / 3600;
  }

  private static double elementW(Row r) {
    // half full, a flooded bank of this many nominal volts rests at the row's bus volts
    double nominalV = 12 * r.number("bus_V") / 12.10;
    SupplyChain chain = chain(0, nominalV, 1e-9, r.number("loop_ohm"), r.number("rated_W"));
    SupplyInputs in = inputs();
    in.heater = true;
    chain.solve(1e-3, in);
    return chain.heaterW();
  }

  private static SupplyChain chain(
      double idleW, double nominalV, double batteryOhm, double wireOhm, double heaterW) {
    // a cable of 1 m, so thick that it has the row's resistance at 20 °C
    WiringSpec wiring =
        wireOhm > 0
            ? new WiringSpec(1, 2 * Copper.OHM_MM2_PER_M / wireOhm, 0)
            : new WiringSpec(0, 1, 0);
    return new SupplyChain(
        new SupplySpec(
            new PvSpec(List.of(new PvGroup(100, 60, 180)), -0.004, 45, 1, true, 1, 18, 0),
            new BatterySpec(
                Chemistry.FLOODED,
                100,
                nominalV,
                batteryOhm,
                0.5,
                25,
                14.4,
                0.97,
                0,
                14_400,
                BatterySpec.Place.OUTDOORS),
            new InverterSpec(idleW > 0 ? 1000 : 0, idleW, 0, 0),
            new SupplySpec.Heater(heaterW, 12, false, false),
            new ShoreSpec(false, 0, 1),
            wiring,
            new SupplySpec.Board(0, 0, 0, 0),
            0,
            List.of()),
        25);
  }

  private static SupplyInputs inputs() {
    SupplyInputs in = new SupplyInputs(1);
    in.airC = 20;
    in.batteryPlaceC = 10;
    return in;
  }
}
