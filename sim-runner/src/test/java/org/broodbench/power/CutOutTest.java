package org.broodbench.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Everything that opens by itself in the chain: when it does, and how it closes, or does not. */
class CutOutTest {

  @Test
  void aCutOutWaitsForItsDelaysAndCounts() {
    CutOut c = new CutOut("x", "why", true, 20, 30);
    for (int i = 0; i < 3; i++) {
      c.judge(true, false);
      c.accept(10);
      c.judge(false, false); // the cause goes away too soon
      c.accept(10);
    }
    assertFalse(c.open());
    c.judge(true, false);
    c.accept(10);
    c.accept(10);
    assertTrue(c.open());
    c.judge(false, true);
    c.accept(10);
    c.accept(10);
    assertTrue(c.open(), "20 s of 30");
    c.accept(10);
    assertFalse(c.open());
    assertEquals(30, c.openS());
    assertEquals(1, c.trips());
    CutOut never = new CutOut("y", "why", false, 0, 0);
    never.judge(true, false);
    never.accept(10);
    never.judge(false, true);
    never.accept(1e6);
    assertTrue(never.open());
  }

  @Test
  void aFuseMeltsWithinTheBandsOfItsStandardAndStaysOpen() {
    // share of the rating, shortest and longest time: ISO 8820-3, from memory
    double[][] bands = {{1.35, 0.75, 600}, {2, 0.15, 5}, {3.5, 0.08, 0.5}};
    for (double[] band : bands) {
      Fuse f = new Fuse("f", 10);
      double s = 0;
      while (!f.cutOut().open() && s < 1000) {
        f.judge(10 * band[0]);
        f.accept(0.01);
        s += 0.01;
      }
      assertTrue(s >= band[1] && s <= band[2], band[0] + " times melts after " + s + " s");
      f.judge(0);
      f.accept(1e5);
      assertTrue(f.cutOut().open());
    }
    Fuse carries = new Fuse("f", 10);
    carries.judge(10.9);
    carries.accept(1e6);
    assertFalse(carries.cutOut().open(), "109 % is carried for ever");
  }

  /** No volts satisfy 700 W from a worn battery: the board resets, and starts again by itself. */
  @Test
  void noSolutionIsABrownOutOfTheBoardAndNotAnException() {
    Chains rig = new Chains();
    rig.battery = Chains.battery(Chemistry.AGM, 20, 0.6);
    rig.wiring = new WiringSpec(0, 2.5, 0.06);
    rig.heater = new SupplySpec.Heater(700, 12, false, true);
    SupplyChain chain = rig.chain(10);
    SupplyInputs in = Chains.night(10);
    Chains.pass(chain, in, 0.1);
    assertFalse(chain.dead());
    in.heater = true;
    chain.solve(10, in);
    assertEquals(0, chain.heaterW());
    assertTrue(chain.volts() > 11, "without its loads the bus stands at " + chain.volts());
    chain.accept();
    assertTrue(chain.dead());
    in.heater = false; // relays fell open
    Chains.pass(chain, in, 0.1);
    assertFalse(chain.dead(), "the volts are back, and so is the board");
    CutOut c = Chains.cutOut(chain, "controller_brown_out");
    assertEquals(1, c.trips());
    assertTrue(c.returnsByItself() && c.openS() >= 5 && c.openS() <= 20);
    assertTrue(Math.abs(chain.ledger().energyResidualJ()) < 1e-6);
  }

  /** The inverter gives up before the board does, where that saves the bus. */
  @Test
  void anInverterThatPullsTheBusDownGoesFirst() {
    Chains rig = inverterRig(20, 0.6);
    rig.wiring = new WiringSpec(0, 2.5, 0.06);
    rig.heater = new SupplySpec.Heater(700, 230, true, false);
    SupplyChain chain = rig.chain(10);
    SupplyInputs in = Chains.night(10);
    in.heater = true;
    in.inverter = true;
    Chains.pass(chain, in, 0.01);
    assertTrue(Chains.cutOut(chain, "inverter_low_volts").trips() > 0);
    assertEquals(0, Chains.cutOut(chain, "controller_brown_out").trips());
    assertFalse(chain.dead());
  }

  private static Chains inverterRig(double capacityAh, double soc) {
    Chains rig = new Chains();
    rig.battery = Chains.battery(Chemistry.FLOODED, capacityAh, soc);
    rig.inverter =
        new InverterSpec(
            1000,
            10,
            0.06,
            1e-4,
            InverterSpec.Search.NONE,
            new InverterSpec.Trips(11.8, 12.0, 15.5, 15, 30, 2, 13, true));
    rig.heater = new SupplySpec.Heater(150, 230, true, false);
    return rig;
  }

  /** After its restarts are used up it stays off in the night and returns with the sun. */
  @Test
  void anInverterLocksAfterItsRestartsUntilSomethingCharges() {
    Chains rig = inverterRig(60, 0.5);
    rig.pv = Chains.panel(400, true, LoadOutput.NONE);
    SupplyChain chain = rig.chain(20);
    SupplyInputs in = Chains.night(20);
    in.heater = true;
    in.inverter = true;
    Chains.pass(chain, in, 12);
    CutOut low = Chains.cutOut(chain, "inverter_low_volts");
    assertEquals(3, low.trips(), "it trips, and twice more after its two restarts");
    assertTrue(low.open());
    in.heater = false;
    in.groupWM2[0] = 800;
    Chains.pass(chain, in, 3);
    assertFalse(low.open(), "13 V show that something charges");
  }

  /** A flooded battery in deep cold is charged with more volts than the inverter bears. */
  @Test
  void chargingAColdBatteryCanShutTheInverterDown() {
    Chains rig = inverterRig(40, 0.97);
    rig.pv = Chains.panel(300, true, LoadOutput.NONE);
    SupplyChain chain = rig.chain(-25);
    SupplyInputs in = Chains.night(-25);
    in.inverter = true;
    in.groupWM2[0] = 900;
    Chains.pass(chain, in, 2);
    assertTrue(Chains.cutOut(chain, "inverter_high_volts").trips() > 0);
    Chains mild = inverterRig(40, 0.97);
    mild.pv = rig.pv;
    SupplyChain warm = mild.chain(10);
    in.airC = 10;
    in.batteryPlaceC = 10;
    Chains.pass(warm, in, 2);
    assertEquals(0, Chains.cutOut(warm, "inverter_high_volts").trips());
  }

  @Test
  void searchModeLeavesSmallLoadsInTheDark() {
    Chains rig = new Chains();
    rig.inverter =
        new InverterSpec(
            1000, 10, 0.06, 1e-4, new InverterSpec.Search(15, 2), InverterSpec.Trips.NONE);
    rig.heater = new SupplySpec.Heater(0, 230, true, false);
    rig.loads = List.of(new LoadSpec("lamp", 5, 0, 0, true), new LoadSpec("saw", 60, 6, 7, true));
    SupplyChain chain = rig.chain(10);
    SupplyInputs in = Chains.night(10);
    in.inverter = true;
    in.hourOfDay = 3;
    Chains.pass(chain, in, 1);
    assertEquals(0, chain.ledger().otherLoadsJ);
    assertEquals(2 * 3600, chain.ledger().inverterLossJ, 1e-6);
    in.hourOfDay = 6.5;
    Chains.pass(chain, in, 1);
    SupplyUse.Load lamp = chain.use().loads().get(0);
    SupplyUse.Load saw = chain.use().loads().get(1);
    assertEquals(2, lamp.wantedH(), 1e-9);
    assertEquals(1, lamp.fedH(), 1e-9, "it shines once the saw has woken the inverter");
    assertEquals(60, saw.energyWh(), 1e-9);
    assertEquals(65 * 3600, chain.ledger().otherLoadsJ, 1e-6);
  }

  @Test
  void aDischargedLeadAcidBatteryFreezesAndThaws() {
    Chains rig = new Chains();
    rig.battery = Chains.battery(Chemistry.FLOODED, 100, 0.3);
    SupplyChain chain = rig.chain(-5);
    SupplyInputs in = Chains.night(-16);
    Chains.pass(chain, in, 2);
    CutOut ice = Chains.cutOut(chain, "battery_frozen");
    assertTrue(ice.open() && chain.dead());
    in.groupWM2[0] = 800;
    double before = chain.battery().stateOfCharge();
    Chains.pass(chain, in, 1);
    assertTrue(chain.battery().stateOfCharge() <= before, "ice takes no charge");
    in.airC = 5;
    in.batteryPlaceC = 5;
    Chains.pass(chain, in, 2);
    assertFalse(ice.open());
    assertFalse(chain.dead());
    Chains full = new Chains();
    full.battery = Chains.battery(Chemistry.FLOODED, 100, 1);
    SupplyChain other = full.chain(-5);
    Chains.pass(other, Chains.night(-30), 3);
    assertEquals(0, Chains.cutOut(other, "battery_frozen").trips(), "a full one bears -30");
  }

  @Test
  void lithiumIsNotChargedInFrostAndAgainFromFiveDegrees() {
    Chains rig = new Chains();
    rig.battery = Chains.battery(Chemistry.LFP, 100, 0.4);
    SupplyChain chain = rig.chain(-4);
    SupplyInputs in = Chains.night(-4);
    in.groupWM2[0] = 800;
    Chains.pass(chain, in, 0.1);
    double before = chain.battery().stateOfCharge();
    Chains.pass(chain, in, 1);
    assertTrue(chain.battery().stateOfCharge() <= before);
    assertTrue(chain.pvUsedW() > 0.5, "the sun still feeds the loads");
    in.airC = 4;
    in.batteryPlaceC = 4;
    Chains.pass(chain, in, 2);
    assertTrue(Chains.cutOut(chain, "charge_frost").open(), "not before 5 degrees");
    in.airC = 7;
    in.batteryPlaceC = 7;
    Chains.pass(chain, in, 2);
    assertTrue(chain.battery().stateOfCharge() > before + 0.01);
    assertEquals(0, chain.use().battery().frostChargeAh());
  }

  private static SupplyChain drained(BoardSpec.Return returns) {
    Chains rig = new Chains();
    BatterySpec b = Chains.battery(Chemistry.LFP, 10, 0.05);
    BoardSpec u = b.board();
    rig.battery =
        new BatterySpec(
            b.chemistry(),
            b.capacityAh(),
            b.nominalV(),
            b.resistanceOhm(),
            b.initialSoc(),
            b.chargeLimitA(),
            b.charge(),
            b.coulombicEfficiency(),
            b.selfDischargePerMonth(),
            b.timeConstantS(),
            b.place(),
            b.warmedShare(),
            b.frostCutOff(),
            new BoardSpec(
                true,
                u.lowV(),
                u.lowReturnV(),
                returns,
                u.highV(),
                u.highReturnV(),
                u.dischargeLimitA(),
                u.limitReturnS()));
    SupplyChain chain = rig.chain(25);
    SupplyInputs in = Chains.night(25);
    in.heater = true;
    Chains.pass(chain, in, 1);
    assertTrue(Chains.cutOut(chain, "board_low_volts").open() && chain.dead());
    return chain;
  }

  @Test
  void aProtectionBoardComesBackByChargingOrOnlyByHand() {
    SupplyInputs sun = Chains.night(25);
    sun.groupWM2[0] = 600;
    SupplyChain byCharge = drained(BoardSpec.Return.CHARGE);
    Chains.pass(byCharge, Chains.night(25), 6);
    assertTrue(byCharge.dead(), "nothing charges at night");
    Chains.pass(byCharge, sun, 1);
    assertFalse(byCharge.dead());
    SupplyChain byHand = drained(BoardSpec.Return.HAND);
    Chains.pass(byHand, sun, 5);
    assertTrue(byHand.dead(), "full again, and still off");
    assertTrue(byHand.battery().stateOfCharge() > 0.5);
    assertFalse(Chains.cutOut(byHand, "board_low_volts").returnsByItself());
  }

  /** A lead-acid charger on lithium cells: the board stops it, lets go and stops it again. */
  @Test
  void aProtectionBoardStopsTooManyVoltsAndTooMuchCurrent() {
    Chains rig = new Chains();
    rig.battery =
        new BatterySpec(
            Chemistry.LFP,
            20,
            12,
            0.02,
            0.9,
            10,
            15.2,
            0.99,
            0.03,
            600,
            BatterySpec.Place.OUTDOORS);
    SupplyChain chain = rig.chain(15);
    SupplyInputs in = Chains.night(15);
    in.groupWM2[0] = 800;
    Chains.pass(chain, in, 4);
    CutOut high = Chains.cutOut(chain, "board_high_volts");
    assertTrue(high.trips() > 0, "at " + chain.use().battery().highestV() + " V");
    assertFalse(chain.dead(), "loads are still fed");
    Chains strong = new Chains();
    strong.battery = Chains.battery(Chemistry.LFP, 3, 0.9);
    SupplyChain small = strong.chain(15);
    SupplyInputs night = Chains.night(15);
    night.heater = true; // 3.3 A from a battery that allows 3
    Chains.pass(small, night, 0.2);
    CutOut limit = Chains.cutOut(small, "board_current");
    assertTrue(limit.trips() > 1, "it lets go after its time and trips again");
  }

  @Test
  void aLoadOutputLetsGoAndReturnsAtItsVolts() {
    Chains rig = new Chains();
    rig.battery = Chains.battery(Chemistry.AGM, 20, 0.5);
    rig.pv = Chains.panel(100, true, new LoadOutput(true, 11.8, 12.6, 5));
    SupplyChain chain = rig.chain(20);
    SupplyInputs in = Chains.night(20);
    in.heater = true;
    Chains.pass(chain, in, 3);
    CutOut out = Chains.cutOut(chain, "load_output");
    assertTrue(out.open() && chain.dead());
    assertEquals(1, out.trips(), "it does not chatter: rested volts stay under 12.6 V");
    in.heater = false;
    in.groupWM2[0] = 700;
    Chains.pass(chain, in, 1);
    assertFalse(out.open());
  }

  @Test
  void aFuseTooSmallEndsTheHeatForGood() {
    Chains rig = new Chains();
    rig.wiring = new WiringSpec(3, 2.5, 0.01, 0.015, 40, 2, 1);
    SupplyChain chain = rig.chain(20);
    SupplyInputs in = Chains.night(20);
    in.heater = true;
    Chains.pass(chain, in, 0.5);
    assertTrue(Chains.cutOut(chain, "heater_fuse").open());
    assertEquals(0, chain.heaterW());
    assertFalse(chain.dead(), "the rest of the rig goes on");
    assertThrows(IllegalArgumentException.class, () -> Chains.cutOut(chain, "load_output"));
  }
}
