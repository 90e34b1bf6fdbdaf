package org.broodbench.controller;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Single parts at their edges, where the whole controller would need a long story. */
@Tag("fast")
class PartsTest {
  private static final Settings COMB = Bench.comb();

  private static SampleJudge trusting(Settings settings) {
    return SampleJudge.temperature(
        settings
            .with(Setting.TRUST_GAIN_MILLIS, 0)
            .with(Setting.TRUST_HOLD_MILLIS, 0)
            .with(Setting.TRUST_STEP_CENTI_K, 0));
  }

  private static SampleJudge showing(int value) {
    SampleJudge judge = trusting(COMB);
    SmallModels.show(judge, value);
    return judge;
  }

  private static SampleJudge nothing() {
    return trusting(COMB);
  }

  private static Governing brood(int centiC) {
    Governing brood = new Governing(true, 300);
    brood.step(showing(centiC), nothing());
    return brood;
  }

  @Test
  void rampStartsAnewAfterMoreThanAnHourWithoutHeatAndNotBefore() {
    HeatDemand demand = new HeatDemand(100, 200, 1800, 3_600_000);
    demand.step(0, 0, false, brood(3300), 3300);
    assertEquals(3300, demand.workingCentiC());
    demand.step(3_600_000, 60_000, false, brood(2500), 3300);
    assertEquals(3300, demand.workingCentiC());
    demand.step(1, 1, false, brood(2500), 3300);
    assertEquals(2600, demand.workingCentiC());
    demand.step(1000, 1000, true, brood(2500), 3300);
    demand.step(3_600_000, 60_000, false, brood(2400), 3300);
    assertEquals(2603, demand.workingCentiC());
    demand.step(1, 1, true, brood(2400), 3300);
    assertTrue(demand.calling());
    demand.step(1, 1, false, brood(2603), 3300);
    assertFalse(demand.calling());
  }

  @Test
  void rampCarriesItsRemainder() {
    HeatDemand demand = new HeatDemand(100, 200, 1800, 3_600_000);
    demand.step(0, 0, true, brood(2000), 3300);
    for (int i = 0; i < 18; i++) {
      demand.step(1000, 1000, true, brood(2000), 3300);
    }
    // 200 hundredths an hour are one in 18 s.
    assertEquals(2101, demand.workingCentiC());
    for (int i = 0; i < 17; i++) {
      demand.step(1000, 1000, true, brood(2000), 3300);
    }
    assertEquals(2101, demand.workingCentiC());
    demand.step(1000, 1000, true, brood(2000), 3300);
    assertEquals(2102, demand.workingCentiC());
  }

  @Test
  void theRemainderIsDroppedWhenTheTargetIsReached() {
    HeatDemand demand = new HeatDemand(100, 200, 1800, 3_600_000);
    demand.step(0, 0, true, brood(2000), 2101);
    demand.step(18_500, 18_500, true, brood(2000), 2101);
    assertEquals(2101, demand.workingCentiC());
    demand.step(17_500, 17_500, true, brood(2000), 2102);
    assertEquals(2101, demand.workingCentiC());
    demand.step(500, 500, true, brood(2000), 2102);
    assertEquals(2102, demand.workingCentiC());
  }

  @Test
  void targetsFollowTheLevel() {
    Settings settings =
        COMB.with(Setting.HEAT_SOAK_CENTI_K, 50).with(Setting.HEAT_SURVIVAL_CENTI_C, 1800);
    HeatTarget target = new HeatTarget(settings);
    int[][] expected = {{3300, 3000}, {3000, 2700}, {1800, 1800}, {1800, 1800}, {1800, 1800}};
    for (int level = 0; level < expected.length; level++) {
      target.step(level, false);
      assertEquals(expected[level][0], target.broodCentiC());
      assertEquals(expected[level][1], target.panCentiC());
    }
    target.step(ShedLevel.FULL, true);
    assertEquals(3350, target.broodCentiC());
    target.step(ShedLevel.SET_BACK, true);
    assertEquals(3000, target.broodCentiC());
    HeatTarget low =
        new HeatTarget(
            settings
                .with(Setting.HEAT_SET_BACK_CENTI_K, 2000)
                .with(Setting.FALLBACK_PAN_CENTI_C, 1500));
    low.step(ShedLevel.SET_BACK, false);
    assertEquals(1800, low.broodCentiC());
    low.step(ShedLevel.SURVIVAL, false);
    assertEquals(1500, low.panCentiC());
  }

  @Test
  void anyOfThreeProbesCanBeStuckWhicheverWayAnotherMoves() {
    for (int frozen = 0; frozen < 3; frozen++) {
      for (int other = 0; other < 3; other++) {
        for (int move : new int[] {-500, -499, 499, 500}) {
          if (other != frozen) {
            assertEquals(Math.abs(move) == 500, stuck(frozen, other, move), frozen + " " + other);
          }
        }
      }
    }
  }

  /** Whether probe {@code frozen} is found stuck when only {@code other} moves, 60 s after. */
  private static boolean stuck(int frozen, int other, int move) {
    SampleJudge[] judges = {nothing(), nothing(), nothing()};
    StuckWatch watch = new StuckWatch(judges, 60_000, 500);
    watch.reset();
    for (int step = 0; step < 3; step++) {
      for (int i = 0; i < 3; i++) {
        // Everyone but the frozen one shows a little life.
        int value = 2000 + 100 * i + (i == frozen ? 0 : step % 2);
        SmallModels.show(judges[i], i == other && step == 2 ? 2000 + 100 * i + move : value);
      }
      watch.step(step == 0 ? 0 : 30_000);
    }
    if (watch.any()) {
      assertFalse(judges[frozen].trusted());
    } else {
      assertTrue(judges[frozen].trusted());
    }
    return watch.any();
  }

  @Test
  void othersAreMarkedWhereTheyStandWhenAProbeChanges() {
    SampleJudge[] judges = {nothing(), nothing()};
    StuckWatch watch = new StuckWatch(judges, 60_000, 500);
    watch.reset();
    int[] values = {2000, 2001, 2001, 2001};
    int[] others = {1600, 2000, 2400, 2499};
    for (int step = 0; step < values.length; step++) {
      SmallModels.show(judges[0], values[step]);
      SmallModels.show(judges[1], others[step]);
      watch.step(30_000);
    }
    // 8.99 K since the start, but 4.99 K since the last change.
    assertFalse(watch.any());
    SmallModels.show(judges[0], 2001);
    SmallModels.show(judges[1], 2500);
    watch.step(30_000);
    assertTrue(watch.any());
  }

  @Test
  void broodLimitIsReleasedByTheLastProbeAtItsDifferential() {
    Limits limits = new Limits(COMB, 86_400_000);
    limits.reset();
    limits.step(0, showing(3000), showing(3650), showing(2000), false);
    assertTrue(limits.broodHigh());
    limits.step(0, showing(3000), showing(3601), showing(2000), false);
    assertTrue(limits.broodHigh());
    limits.step(0, showing(3601), showing(3600), showing(2000), false);
    assertTrue(limits.broodHigh());
    limits.step(0, showing(3600), showing(3600), showing(2000), false);
    assertFalse(limits.broodHigh());
    limits.step(0, showing(3650), showing(3000), showing(2000), false);
    limits.step(0, showing(3000), nothing(), showing(2000), false);
    assertFalse(limits.broodHigh());
  }

  @Test
  void aPanWarmedFromOutdoorsIsNoWeldedRelay() {
    for (int outdoorC : new int[] {2001, 2000}) {
      WeldWatch weld = new WeldWatch(COMB);
      weld.reset();
      for (int i = 0; i < 200; i++) {
        weld.step(60_000, false, nothing(), 0, showing(2500), brood(1500), showing(outdoorC));
      }
      assertEquals(outdoorC == 2000, weld.latched(), "outdoors " + outdoorC);
    }
  }

  @Test
  void weldLooksFollowEachOther() {
    WeldWatch weld = new WeldWatch(COMB);
    weld.reset();
    int[] pan = {2900, 2850, 2800, 2750, 2700};
    int off = 0;
    for (int look = 0; look < pan.length; look++) {
      for (int i = 0; i < 10; i++) {
        off += 60_000;
        weld.step(
            off <= 60_000 ? 3_600_000 : 60_000,
            false,
            nothing(),
            0,
            showing(pan[look]),
            brood(1500),
            nothing());
      }
      assertFalse(weld.latched(), "look " + look);
    }
    // The last look starts and ends at 27.00: not falling.
    weld.step(60_000, false, nothing(), 0, showing(2700), brood(1500), nothing());
    assertTrue(weld.latched());
  }

  @Test
  void withoutABatteryTheBestSourceIsShore() {
    SupplySelect supply =
        new SupplySelect(
            COMB.with(Setting.FITTED_SUPPLY_SELECT, true).with(Setting.FITTED_BATTERY, false));
    supply.reset();
    supply.step(60_000, false, false, ShedLevel.FULL, false);
    assertEquals(SupplySelect.NONE, supply.source());
    supply.step(60_000, false, true, ShedLevel.FULL, false);
    assertEquals(SupplySelect.SHORE, supply.source());
    assertFalse(supply.steady());
    supply.step(60_000, false, true, ShedLevel.FULL, false);
    assertTrue(supply.steady());
    supply.step(60_000, false, false, ShedLevel.FULL, false);
    assertEquals(SupplySelect.NONE, supply.source());
  }

  @Test
  void aTransferIsCalledOffWhenTheOldSourceIsBestAgain() {
    SupplySelect supply = new SupplySelect(COMB.with(Setting.FITTED_SUPPLY_SELECT, true));
    supply.reset();
    for (int i = 0; i < 3; i++) {
      supply.step(60_000, false, false, ShedLevel.FULL, false);
    }
    supply.step(60_000, false, true, ShedLevel.FULL, true);
    assertFalse(supply.steady());
    supply.step(1000, false, true, ShedLevel.FULL, true);
    assertEquals(SupplySelect.BATTERY, supply.source(), "waits for the heater");
    supply.step(1000, false, false, ShedLevel.FULL, false);
    assertEquals(SupplySelect.BATTERY, supply.source());
    assertTrue(supply.steady());
  }

  @Test
  void loadsCorrectTheVoltsWhereNoCurrentIsRead() {
    Settings settings = COMB.with(Setting.BATTERY_MILLI_OHM, 100);
    Probes probes = new Probes(settings.with(Setting.TRUST_GAIN_MILLIS, 0));
    probes.reset();
    SmallModels.show(probes.volts, 12_000);
    ChargeMeasure charge = new ChargeMeasure(settings);
    int[] expected = {12_010, 12_510, 12_030, 12_530};
    for (int loads = 0; loads < 4; loads++) {
      boolean heater = loads % 2 == 1;
      boolean fan = loads / 2 == 1;
      charge.step(probes, false, heater, fan, false);
      assertEquals(expected[loads], charge.correctedMilliV());
      assertEquals(expected[loads], charge.value());
      charge.step(probes, false, heater, fan, true);
      assertEquals(12_010, charge.correctedMilliV());
    }
  }

  @Test
  void chargingIsSeenFromItsThresholdOrTakenAsSeenWithoutAReading() {
    Settings settings = COMB.with(Setting.TRUST_GAIN_MILLIS, 0);
    Probes probes = new Probes(settings);
    probes.reset();
    ChargeMeasure charge = new ChargeMeasure(settings);
    charge.step(probes, false, false, false, false);
    assertTrue(charge.chargingOrUnknown());
    SmallModels.show(probes.batteryCurrent, 199);
    charge.step(probes, false, false, false, false);
    assertFalse(charge.chargingOrUnknown());
    SmallModels.show(probes.panelPower, 2999);
    charge.step(probes, false, false, false, false);
    assertFalse(charge.chargingOrUnknown());
    charge.step(probes, true, false, false, false);
    assertTrue(charge.chargingOrUnknown());
    SmallModels.show(probes.panelPower, 3000);
    charge.step(probes, false, false, false, false);
    assertTrue(charge.chargingOrUnknown());
    SmallModels.show(probes.panelPower, 0);
    SmallModels.show(probes.batteryCurrent, 200);
    charge.step(probes, false, false, false, false);
    assertTrue(charge.chargingOrUnknown());
  }

  @Test
  void theLeaveDelayIsNeverLongerThanADay() {
    Settings settings =
        COMB.with(Setting.SHED_LEAVE_DELAY_MILLIS, 14_400_000).with(Setting.SHED_DOUBLE_FROM, 2);
    Bench bench = new Bench(settings).step(0).run(60_000, 1000);
    assertEquals(14_400_000, bench.out.leaveDelayMillis);
    int longest = 0;
    for (int minute = 0; minute < 6 * 1440; minute++) {
      bench.in.battery.put(bench.out.shedLevel < ShedLevel.HEAT_SHED ? 11_900 : 12_900);
      bench.step(60_000);
      longest = Math.max(longest, bench.out.leaveDelayMillis);
    }
    assertEquals(57_600_000, longest);
    assertEquals(0, Span.down(5, 5));
    assertEquals(1, Span.down(6, 5));
    assertEquals(7, Span.up(3, 4, 7));
    assertEquals(7, Span.up(3, Integer.MAX_VALUE, 7));
  }

  @Test
  void aShareLetsARunStartThatStillFits() {
    DutyGate gate = new DutyGate(300, 1000);
    gate.step(true, 200, 200);
    assertTrue(gate.mayStart(100));
    gate.step(true, 1, 1);
    assertFalse(gate.mayStart(100));
    assertTrue(gate.mayRun());
    gate.step(false, 699, 699);
    assertFalse(gate.mayStart(100));
    gate.step(false, 1, 1);
    assertTrue(gate.mayStart(300));
  }

  @Test
  void aRunThatNothingCouldProveProvesNothing() {
    for (boolean withPan : new boolean[] {false, true}) {
      HeaterEffect effect = new HeaterEffect(COMB);
      effect.reset();
      SampleJudge pan = withPan ? showing(2000) : nothing();
      effect.step(60_000, false, pan, brood(3000), nothing(), nothing());
      for (int i = 0; i < 20; i++) {
        assertFalse(effect.unproven());
        effect.step(60_000, true, pan, brood(3000), nothing(), nothing());
      }
      assertEquals(withPan, effect.unproven());
    }
  }

  @Test
  void countsMakeRoomByForgettingTheOldest() {
    RollingCount count = new RollingCount(2, 100);
    count.add();
    count.step(10);
    count.add();
    count.step(10);
    count.add();
    assertEquals(2, count.count());
    count.step(89);
    assertEquals(2, count.count());
    count.step(1);
    assertEquals(1, count.count());
    count.reset();
    assertEquals(0, count.count());
  }
}
