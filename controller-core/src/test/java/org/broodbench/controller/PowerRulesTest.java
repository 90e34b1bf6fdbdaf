package org.broodbench.controller;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rules B, S through the whole controller. */
@Tag("fast")
class PowerRulesTest {
  /** No load correction: what is put is what counts. */
  private static final Settings PLAIN =
      Bench.combFull().with(Setting.BATTERY_MILLI_OHM, 0).with(Setting.BATTERY_WORST_MILLI_OHM, 0);

  private static Bench awake(Settings settings) {
    return new Bench(settings).step(0).run(60_000, 1000);
  }

  @ParameterizedTest
  @CsvSource({
    "12250, 1",
    "12251, 0",
    "12150, 2",
    "12151, 1",
    "12050, 3",
    "12051, 2",
    "11800, 4",
    "11801, 3",
    "11600, 5",
    "11601, 4"
  })
  void levelsAreSkippedDownwardsAfterTheEnterDelay(int milliV, int level) {
    Bench bench = awake(PLAIN);
    bench.in.battery.put(milliV);
    bench.step(1000).run(59_000, 1000);
    assertEquals(ShedLevel.FULL, bench.out.shedLevel);
    bench.step(1000);
    assertEquals(level, bench.out.shedLevel);
  }

  @Test
  void aBreakStartsTheEnterDelayAnew() {
    Bench bench = awake(PLAIN);
    bench.in.battery.put(12_000);
    bench.run(60_000, 1000);
    bench.in.battery.put(12_300);
    bench.step(1000);
    bench.in.battery.put(12_000);
    bench.run(60_000, 1000);
    assertEquals(ShedLevel.FULL, bench.out.shedLevel);
    bench.step(1000);
    assertEquals(ShedLevel.HEAT_SHED, bench.out.shedLevel);
  }

  @Test
  void recoveryIsOneLevelAtATimeEachWithItsWholeDelay() {
    Bench bench = awake(PLAIN);
    bench.in.battery.put(11_500);
    bench.run(61_000, 1000);
    assertEquals(ShedLevel.STANDBY, bench.out.shedLevel);
    bench.in.battery.put(12_900);
    bench.in.batteryCurrent.put(200);
    for (int level = ShedLevel.FAN_SHED; level >= ShedLevel.FULL; level--) {
      bench.step(1000).run(1_799_000, 1000);
      assertEquals(level + 1, bench.out.shedLevel);
      bench.step(1000);
      assertEquals(level, bench.out.shedLevel);
    }
  }

  @Test
  void standbyIsLeftOnlyWhileChargeFlowsIn() {
    Bench bench = awake(PLAIN);
    bench.in.battery.put(11_500);
    bench.run(61_000, 1000);
    bench.in.battery.put(12_900);
    bench.in.batteryCurrent.put(199);
    bench.run(4_000_000, 1000);
    assertEquals(ShedLevel.STANDBY, bench.out.shedLevel);
    bench.in.batteryCurrent.put(200);
    bench.run(1_801_000, 1000);
    assertEquals(ShedLevel.FAN_SHED, bench.out.shedLevel);
  }

  @Test
  void standbyIsLeftByPanelPowerOrWithoutAnySuchReading() {
    Settings panel =
        PLAIN.with(Setting.FITTED_BATTERY_CURRENT, false).with(Setting.FITTED_PANEL_POWER, true);
    Bench bench = awake(panel);
    bench.in.battery.put(11_500);
    bench.in.panelPower.put(2999);
    bench.run(61_000, 1000);
    bench.in.battery.put(12_900);
    bench.run(2_000_000, 1000);
    assertEquals(ShedLevel.STANDBY, bench.out.shedLevel);
    bench.in.panelPower.put(3000);
    bench.run(1_801_000, 1000);
    assertEquals(ShedLevel.FAN_SHED, bench.out.shedLevel);
    Bench blindly = awake(panel.with(Setting.FITTED_PANEL_POWER, false));
    blindly.in.battery.put(11_500);
    blindly.run(61_000, 1000);
    blindly.in.battery.put(12_900);
    blindly.run(1_801_000, 1000);
    assertEquals(ShedLevel.FAN_SHED, blindly.out.shedLevel);
  }

  @Test
  void emergencyVoltsShedEverythingAtOnce() {
    Bench bench = awake(PLAIN);
    bench.in.battery.put(10_801);
    bench.step(1000);
    assertEquals(ShedLevel.FULL, bench.out.shedLevel);
    bench.in.battery.put(10_800);
    bench.step(1000);
    assertEquals(ShedLevel.STANDBY, bench.out.shedLevel);
    assertTrue(bench.alarm(Alarm.EMERGENCY));
    assertEquals(1, bench.out.shedsInDay);
  }

  /** A heavy load lifts the corrected volts above the leave threshold; raw volts decide. */
  @Test
  void standbyIsNotLeftWhileRawVoltsAreAnEmergency() {
    Bench bench = awake(Bench.combFull().with(Setting.FITTED_PANEL_POWER, true));
    bench.in.panelPower.put(5000);
    bench.in.batteryCurrent.put(-60_000);
    bench.in.battery.put(10_800);
    bench.run(4_000_000, 1000);
    assertEquals(12_600, bench.out.correctedMilliV);
    assertEquals(ShedLevel.STANDBY, bench.out.shedLevel);
    assertEquals(1, bench.out.shedsInDay, "not left for a moment");
    bench.in.battery.put(10_801);
    bench.run(1_801_000, 1000);
    assertEquals(ShedLevel.FAN_SHED, bench.out.shedLevel);
  }

  @Test
  void theLowestVoltsInRangeAreAnEmergencyAndNotAMissingBattery() {
    Bench bench = awake(PLAIN);
    bench.in.battery.put(6000);
    bench.step(1000);
    assertEquals(Commands.SUPPLY_BATTERY, bench.out.supply);
    assertEquals(ShedLevel.STANDBY, bench.out.shedLevel);
  }

  @Test
  void sunDoesNotFakeRecovery() {
    Bench bench = awake(Bench.combFull());
    bench.in.batteryCurrent.put(10_000);
    bench.in.battery.put(12_850);
    bench.step(1000);
    // 10 A into 30 mOhm lift the reading by 0.30 V.
    assertEquals(12_550, bench.out.correctedMilliV);
    bench.in.batteryCurrent.put(-10_000);
    bench.step(1000);
    assertEquals(13_150, bench.out.correctedMilliV);
  }

  @Test
  void theLeaveDelayDoublesFromTheFourthShedInADay() {
    Bench bench = awake(PLAIN);
    int[] delays = {1_800_000, 1_800_000, 1_800_000, 3_600_000, 7_200_000};
    for (int shed = 1; shed <= delays.length; shed++) {
      bench.in.battery.put(12_000);
      bench.run(120_000, 60_000);
      assertEquals(ShedLevel.HEAT_SHED, bench.out.shedLevel);
      assertEquals(shed, bench.out.shedsInDay);
      assertEquals(delays[shed - 1], bench.out.leaveDelayMillis);
      assertEquals(shed >= 4, bench.alarm(Alarm.MANY_SHEDS));
      bench.in.battery.put(12_450);
      bench.run(delays[shed - 1] + 60_000, 60_000);
      assertEquals(ShedLevel.SURVIVAL, bench.out.shedLevel);
    }
    assertEquals(5, bench.out.sheds);
  }

  /** Volts that shed as soon as they may and recover as soon as they may, for three days. */
  @Test
  void theWorstVoltsShedEightTimesInADayAndNoMore() {
    Bench bench = awake(PLAIN);
    int most = 0;
    for (int at = 0; at < 3 * 86_400; at += 10) {
      bench.in.battery.put(bench.out.shedLevel < ShedLevel.HEAT_SHED ? 12_000 : 12_900);
      bench.in.batteryCurrent.put(1000);
      bench.step(10_000);
      most = Math.max(most, bench.out.shedsInDay);
    }
    assertEquals(8, most);
    assertEquals(Invariants.shedBound(PLAIN), most);
  }

  @Test
  void deeperShedsWithoutARecoveryAreOneShed() {
    Bench bench = awake(PLAIN);
    bench.in.battery.put(12_000);
    bench.run(61_000, 1000);
    bench.in.battery.put(11_700);
    bench.run(61_000, 1000);
    bench.in.battery.put(11_500);
    bench.run(61_000, 1000);
    assertEquals(ShedLevel.STANDBY, bench.out.shedLevel);
    assertEquals(1, bench.out.shedsInDay);
  }

  @ParameterizedTest
  @CsvSource({"12449, 3", "12450, 0"})
  void powerUpLevelFollowsTheFirstTrustedMeasure(int milliV, int level) {
    Bench bench = new Bench(PLAIN);
    bench.in.battery.put(milliV);
    bench.step(0);
    assertEquals(ShedLevel.HEAT_SHED, bench.out.shedLevel);
    bench.run(60_000, 1000);
    assertEquals(level, bench.out.shedLevel);
    assertEquals(0, bench.out.shedsInDay);
  }

  @Test
  void blindIsSurvivalInAShareAndHeatShedAfterTwelveHours() {
    Bench bench = awake(PLAIN);
    bench.in.broodA.put(1600);
    bench.in.broodB.put(1600);
    bench.in.battery.clear();
    bench.run(30_000 + 1000, 1000);
    bench.run(59_000, 1000);
    assertEquals(ShedLevel.FULL, bench.out.shedLevel);
    bench.step(1000);
    assertEquals(ShedLevel.SURVIVAL, bench.out.shedLevel);
    assertTrue(bench.alarm(Alarm.BLIND));
    bench.untilHeaterOn();
    bench.in.pan.put(2650);
    int heated = 0;
    for (int s = 0; s < 7200; s++) {
      bench.step(1000);
      heated += bench.out.heater ? 1 : 0;
    }
    assertEquals(1800, heated, 1);
    bench.run(43_200_000, 60_000);
    assertEquals(ShedLevel.HEAT_SHED, bench.out.shedLevel);
  }

  @Test
  void shoreOrAFullChargerMakeNothingBlind() {
    for (int which = 0; which < 2; which++) {
      Bench bench = awake(PLAIN);
      bench.in.battery.clear();
      bench.in.shorePresent = which == 0;
      bench.in.chargerFull = which == 1;
      bench.run(600_000, 1000);
      assertEquals(ShedLevel.FULL, bench.out.shedLevel);
    }
  }

  @Test
  void aFullChargerStandsForRecoveryWhileVoltsAreLost() {
    Bench bench = awake(PLAIN);
    bench.in.battery.put(12_000);
    bench.run(61_000, 1000);
    bench.in.battery.clear();
    bench.in.chargerFull = true;
    bench.run(31_000, 1000);
    bench.run(1_800_000, 1000);
    assertEquals(ShedLevel.SURVIVAL, bench.out.shedLevel);
  }

  @Test
  void stateOfChargeShedsLithium() {
    Settings settings = Settings.defaults(ProbePlace.BROOD_COMB, Chemistry.LITHIUM_IRON_PHOSPHATE);
    Bench bench = awake(settings);
    bench.in.stateOfCharge.put(201);
    bench.run(120_000, 1000);
    assertEquals(ShedLevel.SURVIVAL, bench.out.shedLevel);
    bench.in.stateOfCharge.put(200);
    bench.run(61_000, 1000);
    assertEquals(ShedLevel.HEAT_SHED, bench.out.shedLevel);
    bench.in.stateOfCharge.put(300);
    bench.run(1_801_000, 1000);
    assertEquals(ShedLevel.SURVIVAL, bench.out.shedLevel);
  }

  @Test
  void inverterGoesWithHeatUnlessItIsDeclaredAsNeeded() {
    for (boolean keep : new boolean[] {false, true}) {
      Bench bench = awake(PLAIN.with(Setting.SHED_KEEP_INVERTER, keep));
      assertTrue(bench.out.inverter);
      bench.in.battery.put(12_150);
      bench.run(61_000, 1000);
      assertTrue(bench.out.inverter);
      bench.in.battery.put(12_050);
      bench.run(61_000, 1000);
      assertEquals(keep, bench.out.inverter);
    }
  }

  private static final Settings SELECT =
      PLAIN.with(Setting.FITTED_SUPPLY_SELECT, true).with(Setting.SUPPLY_DEAD_MILLIS, 3000);

  @Test
  void transferOpensTheHeaterThenBreaksThenMakes() {
    Bench bench = awake(SELECT).untilHeaterOn();
    assertEquals(Commands.SUPPLY_BATTERY, bench.out.supply);
    bench.in.shorePresent = true;
    bench.step(1000);
    assertFalse(bench.out.heater);
    assertEquals(Reason.SUPPLY, bench.out.heaterStopReason);
    assertEquals(Commands.SUPPLY_BATTERY, bench.out.supply);
    bench.step(1000);
    assertEquals(Commands.SUPPLY_NONE, bench.out.supply);
    bench.run(2000, 1000);
    assertEquals(Commands.SUPPLY_NONE, bench.out.supply);
    bench.step(1000);
    assertEquals(Commands.SUPPLY_SHORE, bench.out.supply);
    bench.run(300_000, 1000);
    assertTrue(bench.out.heater);
  }

  @Test
  void shedLevelsDoNotRestrictLoadsFromShore() {
    Bench bench = awake(SELECT);
    bench.in.shorePresent = true;
    bench.in.battery.put(11_500);
    bench.run(400_000, 1000);
    assertEquals(ShedLevel.STANDBY, bench.out.shedLevel);
    assertTrue(bench.out.heater);
    assertFalse(bench.out.inverter);
    bench.in.shorePresent = false;
    bench.step(1000);
    assertFalse(bench.out.heater);
    assertEquals(Reason.SUPPLY, bench.out.heaterStopReason);
    bench.run(10_000, 1000);
    assertEquals(Commands.SUPPLY_BATTERY, bench.out.supply);
    assertFalse(bench.out.heater);
    bench.in.broodA.put(1600);
    bench.in.broodB.put(1600);
    bench.run(120_000, 1000);
    assertEquals(Reason.SHED, bench.out.heaterReason);
  }

  @Test
  void batteryFirstKeepsShoreForWhenHeatWouldBeShed() {
    Bench bench = awake(SELECT.with(Setting.SUPPLY_PREFER_BATTERY, true));
    bench.in.shorePresent = true;
    bench.run(300_000, 1000);
    assertEquals(Commands.SUPPLY_BATTERY, bench.out.supply);
    bench.in.battery.put(12_000);
    bench.run(80_000, 1000);
    assertEquals(Commands.SUPPLY_SHORE, bench.out.supply);
  }

  @Test
  void aSourceIsKeptForItsDwell() {
    Bench bench = awake(SELECT.with(Setting.SUPPLY_DWELL_MILLIS, 600_000));
    bench.in.shorePresent = true;
    bench.run(500_000, 1000);
    assertEquals(Commands.SUPPLY_BATTERY, bench.out.supply);
    bench.run(100_000, 1000);
    assertEquals(Commands.SUPPLY_SHORE, bench.out.supply);
  }

  @Test
  void noSupplyIsNotAShedAndReturnsAsItWas() {
    Bench bench = awake(PLAIN).untilHeaterOn();
    int working = bench.out.workingSetPointCentiC;
    bench.in.battery.put(5999);
    bench.step(1000);
    assertEquals(Reason.SUPPLY, bench.out.heaterReason);
    assertEquals(Commands.SUPPLY_NONE, bench.out.supply);
    assertEquals(ShedLevel.FULL, bench.out.shedLevel);
    assertFalse(bench.out.heater);
    assertEquals(Reason.SUPPLY, bench.out.heaterStopReason);
    bench.in.battery.put(12_800);
    bench.step(1000);
    assertEquals(ShedLevel.FULL, bench.out.shedLevel);
    bench.run(299_000, 1000);
    assertTrue(bench.out.heater);
    assertTrue(bench.out.workingSetPointCentiC >= working);
  }

  @Test
  void aRigWithoutBatteryLivesOnShoreAlone() {
    Bench bench = awake(Bench.comb().with(Setting.FITTED_BATTERY, false));
    assertEquals(Commands.SUPPLY_NONE, bench.out.supply);
    assertEquals(ShedLevel.FULL, bench.out.shedLevel);
    bench.run(60_000, 1000);
    assertTrue(bench.alarm(Alarm.NO_SUPPLY));
    bench.in.shorePresent = true;
    bench.run(240_000, 1000);
    assertEquals(Commands.SUPPLY_SHORE, bench.out.supply);
    assertTrue(bench.out.heater);
  }

  /** S6: a preferred battery that shows for one step takes the heat away; it comes back after. */
  @Test
  void aBatteryThatShowsForOneStepTakesTheHeatAwayForMinimumOff() {
    Bench bench =
        new Bench(
            PLAIN
                .with(Setting.FITTED_SUPPLY_SELECT, true)
                .with(Setting.SUPPLY_PREFER_BATTERY, true));
    bench.set(in -> in.shorePresent = true).run(600_000, 1000);
    assertEquals(Commands.SUPPLY_BATTERY, bench.out.supply);
    bench.set(in -> in.battery.put(5000)).run(900_000, 1000);
    bench.untilHeaterOn();
    assertEquals(Commands.SUPPLY_SHORE, bench.out.supply);
    bench.set(in -> in.battery.put(10_801)).step(1000);
    assertFalse(bench.out.heater);
    assertEquals(Reason.SUPPLY, bench.out.heaterReason);
    assertEquals(Commands.SUPPLY_SHORE, bench.out.supply);
    bench.set(in -> in.battery.put(5000)).step(1000);
    assertEquals(Reason.MIN_OFF, bench.out.heaterReason);
    bench.run(PLAIN.get(Setting.RELAY_MIN_OFF_MILLIS) + 2000, 1000);
    assertTrue(bench.out.heater, Reason.name(bench.out.heaterReason));
  }
}
