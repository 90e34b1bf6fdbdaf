package org.broodbench.power;

import java.util.List;

/** Supply chains for tests: parts that differ from a usual small rig are set one by one. */
final class Chains {
  PvSpec pv = panel(100, true, LoadOutput.NONE);
  BatterySpec battery = battery(Chemistry.AGM, 100, 0.8);
  InverterSpec inverter = new InverterSpec(0, 0, 0, 0);
  SupplySpec.Heater heater = new SupplySpec.Heater(40, 12, false, false);
  WiringSpec wiring = new WiringSpec(3, 2.5, 0.015);
  List<LoadSpec> loads = List.of();
  ShoreSpec shore = new ShoreSpec(false, 0, 0.85);
  SupplySpec.Board board = new SupplySpec.Board(0.6, 9.5, 10.5, 5);

  SupplyChain chain(double placeC) {
    return new SupplyChain(
        new SupplySpec(pv, battery, inverter, heater, shore, wiring, board, 1.5, loads), placeC);
  }

  static PvSpec panel(double powerW, boolean tracking, LoadOutput output) {
    return new PvSpec(
        List.of(new PvGroup(powerW, 50, 180)),
        PvSpec.Curve.DIODE,
        PvSpec.Cells.WIND,
        45,
        0.95,
        1,
        tracking,
        0.94,
        18,
        0.2,
        output);
  }

  static BatterySpec battery(Chemistry chemistry, double capacityAh, double soc) {
    return new BatterySpec(
        chemistry,
        capacityAh,
        12,
        0.006,
        soc,
        capacityAh / 4,
        chemistry == Chemistry.LFP ? 14.2 : 14.4,
        0.97,
        0.03,
        600,
        BatterySpec.Place.OUTDOORS);
  }

  /** Night, calm, at some temperature. */
  static SupplyInputs night(double airC) {
    SupplyInputs in = new SupplyInputs(1);
    in.airC = airC;
    in.batteryPlaceC = airC;
    in.windMS = 1;
    return in;
  }

  /** Steps of 10 s for some hours. */
  static void pass(SupplyChain chain, SupplyInputs in, double hours) {
    for (int i = 0; i < hours * 360; i++) {
      chain.solve(10, in);
      chain.accept();
    }
  }

  static CutOut cutOut(SupplyChain chain, String name) {
    for (int i = 0; i < chain.cutOutCount(); i++) {
      if (chain.cutOut(i).name().equals(name)) {
        return chain.cutOut(i);
      }
    }
    throw new IllegalArgumentException("no cut-out " + name);
  }
}
