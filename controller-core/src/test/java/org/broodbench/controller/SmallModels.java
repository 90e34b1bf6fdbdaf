package org.broodbench.controller;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

/**
 * Parts with timings scaled down to a few units and one input for each region between thresholds. A
 * unit of time is one millisecond; a step is 0, 1 or (a gap) 3 units of trip time and at most 2 of
 * release time.
 */
final class SmallModels {
  static final int[] TRIP = {0, 1, 3};
  static final int[] RELEASE = {0, 1, 2};

  private SmallModels() {}

  static Settings small() {
    return Bench.comb()
        .with(Setting.TRUST_HOLD_MILLIS, 0)
        .with(Setting.TRUST_GAIN_MILLIS, 0)
        .with(Setting.TRUST_STEP_CENTI_K, 0)
        .with(Setting.HEAT_SET_POINT_CENTI_C, 2000)
        .with(Setting.HEAT_DIFFERENTIAL_CENTI_K, 2)
        .with(Setting.HEAT_SURVIVAL_CENTI_C, 1990)
        .with(Setting.HEAT_RAMP_FLOOR_CENTI_C, 1995)
        .with(Setting.HEAT_RAMP_CENTI_K_PER_H, 3_600_000)
        .with(Setting.HEAT_REBASE_MILLIS, 2)
        .with(Setting.LIMIT_BROOD_CENTI_C, 2100)
        .with(Setting.FALLBACK_PAN_CENTI_C, 2600)
        .with(Setting.LIMIT_TRIPS_TO_LATCH, 2)
        .with(Setting.WELD_AFTER_MILLIS, 2)
        .with(Setting.WELD_BLANK_MILLIS, 3)
        .with(Setting.WELD_LOOK_MILLIS, 2)
        .with(Setting.EFFECT_JUDGE_MILLIS, 3)
        .with(Setting.EFFECT_SHARE_ON_MILLIS, 2)
        .with(Setting.EFFECT_SHARE_WINDOW_MILLIS, 5)
        .with(Setting.SHED_BLIND_ON_MILLIS, 2)
        .with(Setting.SHED_BLIND_WINDOW_MILLIS, 4)
        .with(Setting.RELAY_MIN_ON_MILLIS, 2)
        .with(Setting.RELAY_MIN_OFF_MILLIS, 3)
        .with(Setting.RELAY_STARTS_PER_HOUR, 2)
        .with(Setting.SHED_ENTER_DELAY_MILLIS, 1)
        .with(Setting.SHED_LEAVE_DELAY_MILLIS, 2)
        .with(Setting.SHED_DOUBLE_FROM, 2)
        .with(Setting.SHED_BLIND_AFTER_MILLIS, 1)
        .with(Setting.SHED_BLIND_HEAT_SHED_MILLIS, 3)
        .with(Setting.FAN_COLD_ON_MILLIS, 2)
        .with(Setting.FAN_COLD_WINDOW_MILLIS, 5)
        .with(Setting.FAN_MIN_ON_MILLIS, 1)
        .with(Setting.FAN_MIN_OFF_MILLIS, 2)
        .with(Setting.PURGE_ON_MILLIS, 2)
        .with(Setting.PURGE_WINDOW_MILLIS, 4)
        .with(Setting.PURGE_WET_MILLIS, 2)
        .with(Setting.PURGE_TIMED_EVERY_MILLIS, 5)
        .with(Setting.PURGE_TIMED_FOR_MILLIS, 2)
        .with(Setting.FITTED_SUPPLY_SELECT, true)
        .with(Setting.SUPPLY_DEAD_MILLIS, 2)
        .with(Setting.SUPPLY_DWELL_MILLIS, 3)
        .with(Setting.BUTTON_LONG_MILLIS, 2)
        .with(Setting.BUTTON_STUCK_MILLIS, 4)
        .with(Setting.SERVICE_HOLD_MILLIS, 3)
        .with(Setting.TEST_MILLIS, 2)
        .with(Setting.TEST_WAIT_MILLIS, 3);
  }

  /** A judge that trusts exactly what is usable in this step. */
  static SampleJudge plain(int lowest, int highest) {
    return SampleJudge.ranged(lowest, highest, small());
  }

  /** Puts {@code value} into the judge, or a missing sample for null. */
  static void show(SampleJudge judge, Integer value) {
    Sample sample = new Sample();
    if (value != null) {
      sample.put(value);
    }
    judge.step(sample, 1, 1);
  }

  /** R1 to R6, C1, C4 and the guard's share of C9. */
  static final class Relay extends Explorer.Model {
    private static final int MIN_ON = 3;
    private static final int MIN_OFF = 4;
    private static final int MOST = 2;
    private static final int HOUR = 12;
    private final RelayGuard guard;

    Relay() {
      this(new RelayGuard(MIN_ON, MIN_OFF, MOST, HOUR));
    }

    private Relay(RelayGuard guard) {
      // aux: time since the last stop, since the last start, and the ages of three starts
      super(5, guard);
      this.guard = guard;
      aux[2] = HOUR;
      aux[3] = HOUR;
      aux[4] = HOUR;
    }

    @Override
    int inputs() {
      return 12;
    }

    @Override
    void apply(int input) {
      boolean permit = input % 2 == 1;
      boolean wish = input / 2 % 2 == 1;
      int dt = RELEASE[input / 4];
      for (int i = 0; i < aux.length; i++) {
        aux[i] = Math.min(aux[i] + dt, HOUR);
      }
      boolean was = guard.on();
      guard.pass(dt);
      boolean on = guard.drive(permit, wish);
      int recent = (aux[2] < HOUR ? 1 : 0) + (aux[3] < HOUR ? 1 : 0) + (aux[4] < HOUR ? 1 : 0);
      if (!was && on) {
        assertTrue(permit && wish, "R3: started unasked");
        assertTrue(aux[0] >= MIN_OFF, "C1: off for " + aux[0]);
        assertTrue(recent < MOST, "C4: " + recent + " starts before this one");
        aux[4] = aux[3];
        aux[3] = aux[2];
        aux[2] = 0;
        aux[1] = 0;
      } else if (!was) {
        assertFalse(
            permit && wish && aux[0] >= MIN_OFF && recent < MOST, "C9: held off for nothing");
      } else if (!on) {
        assertTrue(!permit || (!wish && aux[1] >= MIN_ON), "R2: stopped early");
        aux[0] = 0;
      } else {
        assertTrue(permit, "R1: on without a permit");
        assertTrue(wish || aux[1] < MIN_ON, "R2: on for nothing");
      }
    }

    @Override
    String describe(int input) {
      return "permit "
          + input % 2
          + " wish "
          + input / 2 % 2
          + " after "
          + RELEASE[input / 4]
          + " units";
    }
  }

  /** G1: no window holds more than the allowance and the overshoot of one late tick. */
  static final class Gate extends Explorer.Model {
    private static final int ALLOW = 3;
    private static final int WINDOW = 8;
    private final DutyGate gate;

    Gate() {
      this(new DutyGate(ALLOW, WINDOW));
    }

    private Gate(DutyGate gate) {
      // aux: the last units as bits, newest lowest; whether the output is on
      super(2, gate);
      this.gate = gate;
    }

    @Override
    int inputs() {
      return 6;
    }

    @Override
    void apply(int input) {
      int dt = 1 + input / 2;
      boolean was = aux[1] == 1;
      for (int i = 0; i < dt; i++) {
        aux[0] = (aux[0] << 1 | aux[1]) & 0xff;
      }
      gate.step(was, dt, Math.min(dt, 2));
      assertTrue(Integer.bitCount(aux[0]) <= ALLOW + 2, "G1: " + Integer.toBinaryString(aux[0]));
      boolean asked = input % 2 == 1;
      boolean may = was ? gate.mayRun() : gate.mayStart(2);
      if (aux[0] == 0 && asked) {
        assertTrue(may, "C9: a whole window off and still refused");
      }
      aux[1] = asked && may ? 1 : 0;
    }
  }

  /** H2 to H7. */
  static final class Demand extends Explorer.Model {
    private static final int[] CALL = {1980, 1993, 1997, 1998, 1999, 2000, 2005, 0};
    private final HeatDemand demand;
    private final SampleJudge judge = plain(1, 5000);
    private final Governing brood = new Governing(true, 300);

    Demand() {
      this(new HeatDemand(2, 3_600_000, 1995, 2));
    }

    private Demand(HeatDemand demand) {
      super(0, demand);
      this.demand = demand;
    }

    @Override
    int inputs() {
      return CALL.length * 3 * 2 * 3;
    }

    @Override
    void apply(int input) {
      int call = CALL[input % 8];
      int dt = RELEASE[input / 8 % 3];
      boolean on = input / 24 % 2 == 1;
      int target = new int[] {2000, 1997, 1990}[input / 48];
      show(judge, call == 0 ? null : Integer.valueOf(call));
      brood.step(judge, plain(0, 1));
      int before = demand.workingCentiC();
      boolean started = demand.started();
      boolean calling = demand.step(TRIP[input / 8 % 3], dt, on, brood, target);
      if (call == 0) {
        assertFalse(calling, "H5");
        return;
      }
      int working = demand.workingCentiC();
      assertTrue(working <= target, "H2: " + working + " above " + target);
      if (started && on) {
        assertTrue(working <= before + dt, "H3: jumped from " + before + " to " + working);
      }
      if (!started) {
        assertEquals(Math.min(target, Math.max(1995, call + 2)), working, "H4");
      }
      assertTrue(call < working || !calling, "H6");
      assertTrue(call > working - 2 || calling, "H7");
    }
  }

  /** L1 to L8. */
  static final class LimitFlags extends Explorer.Model {
    private static final Integer[] PAN = {2000, 3600, 3601, 3800, 4299, 4300, null};
    private static final Integer[] BROOD = {2000, 2050, 2051, 2100, null};
    private final Limits limits;
    private final SampleJudge a = plain(0, 12500);
    private final SampleJudge b = plain(0, 12500);
    private final SampleJudge pan = plain(0, 12500);

    LimitFlags() {
      this(new Limits(small(), 6));
    }

    private LimitFlags(Limits limits) {
      super(0, limits);
      this.limits = limits;
    }

    @Override
    int inputs() {
      return 7 * 5 * 2 * 3 * 2 * 2;
    }

    @Override
    void apply(int input) {
      Integer panC = PAN[input % 7];
      Integer broodC = BROOD[input / 7 % 5];
      boolean untrusted = input / 35 % 2 == 1 || panC == null;
      int dt = RELEASE[input / 70 % 3];
      boolean press = input / 210 % 2 == 1;
      boolean broodTrip = input / 420 == 1;
      show(pan, panC);
      show(a, broodC);
      show(b, null);
      boolean wasHigh = limits.panHigh();
      boolean wasBrood = limits.broodHigh();
      boolean wasLatched = limits.latched();
      limits.step(dt, a, b, pan, untrusted);
      if (panC != null) {
        assertTrue(panC < 3800 || limits.panHigh(), "L1");
        assertTrue(panC < 4300 || limits.panTripped(), "L3");
        assertTrue(panC > 3600 || !limits.panHigh() && !limits.panTripped(), "L2");
        boolean between = panC > 3600 && panC < 3800 && !untrusted;
        assertTrue(!between || limits.panHigh() == wasHigh, "L2: differential");
      } else {
        assertFalse(limits.panHigh(), "L2: an old reading holds heat back");
      }
      if (broodC != null) {
        assertTrue(broodC < 2100 || limits.broodHigh(), "L4");
        assertTrue(broodC > 2050 || !limits.broodHigh(), "L6");
        assertTrue(
            broodC <= 2050 || broodC >= 2100 || limits.broodHigh() == wasBrood, "L6: differential");
      }
      assertTrue(!wasLatched || limits.latched(), "L7: a latch let go by itself");
      if (broodTrip && limits.broodHigh()) {
        limits.countBroodTrip();
      }
      if (press) {
        boolean latched = limits.latched();
        limits.clearLatch();
        boolean cause = limits.panHigh() || limits.broodHigh();
        assertEquals(latched && cause, limits.latched(), "L8");
      }
    }
  }

  /** B5 to B12 and C6. */
  static final class Shed extends Explorer.Model {
    private static final int DAY = 24;
    private static final int[] MILLI_V = {
      12800, 12549, 12499, 12449, 12299, 12250, 12199, 12150, 12050, 11800, 11600
    };
    private static final int INPUTS = MILLI_V.length + 4;
    private final Shedding shedding;
    private final ChargeMeasure charge;
    private final Probes probes;
    private final Settings settings;

    Shed() {
      this(small().with(Setting.BATTERY_MILLI_OHM, 0).with(Setting.FITTED_BATTERY_CURRENT, true));
    }

    private Shed(Settings settings) {
      this(settings, new Shedding(settings, DAY));
    }

    private Shed(Settings settings, Shedding shedding) {
      // aux: how long the leave condition has held; ages of six sheds
      super(7, shedding);
      this.settings = settings;
      this.shedding = shedding;
      this.charge = new ChargeMeasure(settings);
      this.probes = new Probes(settings);
      for (int i = 1; i < 7; i++) {
        aux[i] = DAY;
      }
      aux[0] = -1;
    }

    @Override
    int inputs() {
      return INPUTS * 2;
    }

    @Override
    void apply(int input) {
      int kind = input % INPUTS;
      int dt = RELEASE[1 + input / INPUTS];
      int trip = TRIP[1 + input / INPUTS];
      Integer volts = kind < MILLI_V.length ? Integer.valueOf(MILLI_V[kind]) : null;
      boolean full = kind == MILLI_V.length + 1;
      boolean shore = kind == MILLI_V.length + 2;
      boolean emergency = kind == MILLI_V.length + 3;
      show(probes.volts, emergency ? Integer.valueOf(10800) : volts);
      // Charging is seen at the two highest volt classes alone.
      show(probes.batteryCurrent, kind < 2 ? 500 : -500);
      charge.step(probes, full, false, false, false);
      int before = shedding.level();
      int delay = shedding.leaveDelayNowMillis();
      boolean known = volts != null || emergency;
      int leave = before == 0 ? 0 : settings.get(SettingsCheck.leave(before, false));
      boolean holds = known ? !emergency && volts >= leave : full;
      if (before == ShedLevel.STANDBY) {
        holds &= kind < 2 || full;
      }
      for (int i = 1; i < 7; i++) {
        aux[i] = Math.min(aux[i] + dt, DAY);
      }
      aux[0] = !holds ? -1 : aux[0] < 0 ? 0 : Math.min(aux[0] + dt, DAY);
      shedding.step(trip, dt, charge, shore, full);
      int after = shedding.level();
      if (emergency) {
        assertEquals(ShedLevel.STANDBY, after, "B7");
      }
      boolean firstMeasure = before == ShedLevel.HEAT_SHED && after == ShedLevel.FULL;
      boolean blindAtFirst = before == ShedLevel.HEAT_SHED && shedding.blind();
      if (after < before && !firstMeasure && !blindAtFirst) {
        assertEquals(before - 1, after, "B8: by more than one level");
        assertTrue(aux[0] >= Math.min(delay, 2), "C6: held for " + aux[0] + " of " + delay);
        assertTrue(aux[0] >= 2, "C6: held for " + aux[0]);
      }
      if (shedding.shedNow()) {
        assertTrue(after >= ShedLevel.HEAT_SHED && after > before, "B10");
        System.arraycopy(aux, 1, aux, 2, 5);
        aux[1] = 0;
        // With 2 units of delay doubling from the second shed on: at 0, 4, 12, 28.
        int recent = 0;
        for (int i = 1; i < 7; i++) {
          recent += aux[i] < DAY ? 1 : 0;
        }
        assertTrue(recent <= 4, "C6: " + recent + " sheds in a day");
        assertEquals(Math.min(recent, 4), shedding.shedsInDay(), "B10: count");
      }
      if (after != before) {
        aux[0] = -1;
      }
    }

    @Override
    String describe(int input) {
      int kind = input % INPUTS;
      String what =
          kind < MILLI_V.length
              ? MILLI_V[kind] + " mV"
              : new String[] {"missing", "charger full", "shore", "emergency"}
                  [kind - MILLI_V.length];
      return what + " after " + TRIP[1 + input / INPUTS];
    }
  }

  /** S3 to S8 and C5. */
  static final class Supply extends Explorer.Model {
    private final SupplySelect supply;

    Supply(boolean preferBattery) {
      this(new SupplySelect(small().with(Setting.SUPPLY_PREFER_BATTERY, preferBattery)));
    }

    private Supply(SupplySelect supply) {
      // aux: time since the last break, source before it, time on the source
      super(3, supply);
      this.supply = supply;
    }

    @Override
    int inputs() {
      return 2 * 2 * 2 * 2 * 3;
    }

    @Override
    void apply(int input) {
      boolean absent = input % 2 == 1;
      boolean shore = input / 2 % 2 == 1;
      int level = input / 4 % 2 == 1 ? ShedLevel.HEAT_SHED : ShedLevel.FULL;
      int dt = RELEASE[input / 16];
      int before = supply.source();
      // A heater can only be on if the last step allowed it.
      boolean heaterOn = input / 8 % 2 == 1 && before != SupplySelect.NONE && aux[1] == 1;
      aux[0] = Math.min(aux[0] + dt, 9);
      aux[2] = Math.min(aux[2] + dt, 9);
      supply.step(dt, absent, shore, level, heaterOn);
      int after = supply.source();
      assertTrue(after == before || before == 0 || after == 0, "C5: no break");
      boolean lost = (before == 1 && absent) || (before == 2 && !shore);
      if (after != before && after == 0) {
        assertTrue(lost || !heaterOn, "S7: opened under load");
        assertTrue(lost || aux[2] >= 3, "S6: left before its dwell");
        aux[0] = 0;
      }
      if (after != before && after != 0) {
        assertTrue(aux[0] >= 2, "S8: dead time " + aux[0]);
        assertFalse(supply.steady(), "S7: loads in the step that closes");
        aux[2] = 0;
      }
      assertTrue(after != 1 || !absent, "S5");
      assertTrue(after != 2 || shore, "S5");
      aux[1] = supply.steady() ? 1 : 0;
    }
  }

  /** K1 to K6. */
  static final class Press extends Explorer.Model {
    private final Button button;

    Press() {
      this(new Button(small()));
    }

    private Press(Button button) {
      // aux: was down, length of the press, has been up
      super(3, button);
      this.button = button;
    }

    @Override
    int inputs() {
      return 6;
    }

    @Override
    void apply(int input) {
      boolean pressed = input % 2 == 1;
      int trip = TRIP[input / 2];
      int hold = button.serviceRemainingMillis();
      int left = Math.max(hold - RELEASE[input / 2], 0);
      button.step(trip, RELEASE[input / 2], pressed);
      if (pressed) {
        aux[1] = aux[0] == 1 ? Math.min(aux[1] + trip, 4) : 0;
        aux[0] = 1;
        assertFalse(button.shortPress() || button.longPress(), "K1");
        assertEquals(aux[1] >= 4, button.stuck(), "K4");
        assertEquals(left, button.serviceRemainingMillis(), "K2: hold");
      } else {
        boolean ends = aux[0] == 1 && aux[2] == 1;
        assertEquals(ends && aux[1] < 2, button.shortPress(), "K2");
        assertEquals(ends && aux[1] >= 2 && aux[1] < 4, button.longPress(), "K3");
        int now = button.shortPress() ? (left > 0 ? 0 : 3) : left;
        assertEquals(now, button.serviceRemainingMillis(), "K2: hold");
        aux[0] = 0;
        aux[1] = 0;
        aux[2] = 1;
      }
    }
  }

  /** P1 to P6, in units of 20 s. */
  static final class Judge extends Explorer.Model {
    private static final int[] TRIPS = {0, 20_000, 40_000, 70_000};
    private static final Integer[] VALUES = {3000, 3900, 3210, 8500, 20_000, null};
    private final SampleJudge judge;

    Judge() {
      this(
          SampleJudge.temperature(
              Bench.comb()
                  .with(Setting.TRUST_GAIN_MILLIS, 40_000)
                  .with(Setting.TRUST_RATE_CENTI_K_PER_S, 10)));
    }

    private Judge(SampleJudge judge) {
      // aux: time since the last good sample, time good so far (-1: last one was not good)
      super(2, judge);
      this.judge = judge;
      aux[0] = 60_000;
      aux[1] = -1;
    }

    @Override
    int inputs() {
      return 24;
    }

    @Override
    void apply(int input) {
      int trip = TRIPS[input / 6];
      int release = Math.min(trip, 60_000);
      Integer value = VALUES[input % 6];
      Sample sample = new Sample();
      if (value != null) {
        sample.put(value);
      }
      boolean was = judge.trusted();
      int last = judge.value();
      judge.step(sample, trip, release);
      aux[0] = Math.min(aux[0] + trip, 60_000);
      boolean inRange = value != null && value != 8500 && value <= 12_500;
      assertEquals(inRange, judge.usable(), "P1");
      boolean slow =
          aux[0] >= 60_000 || (value != null && Math.abs(value - last) <= 200 + aux[0] / 100);
      assertEquals(inRange && slow, judge.good(), "P2");
      if (judge.good()) {
        aux[1] = aux[1] < 0 ? 0 : Math.min(aux[1] + release, 40_000);
        assertEquals(was || aux[1] >= 40_000, judge.trusted(), "P4");
        assertEquals(value, judge.value(), "P3");
        aux[0] = 0;
      } else {
        aux[1] = -1;
        assertEquals(was && aux[0] <= 30_000, judge.trusted(), "P3");
        assertEquals(last, judge.value(), "P3: held value");
      }
    }
  }

  /** K7 to K10. */
  static final class Test extends Explorer.Model {
    private final Commissioning test;

    Test() {
      this(new Commissioning(small()));
    }

    private Test(Commissioning test) {
      // aux: heater on, fan on
      super(2, test);
      this.test = test;
    }

    @Override
    int inputs() {
      return 2 * 2 * 4 * 3;
    }

    @Override
    void apply(int input) {
      boolean cancel = input / 2 % 2 == 1;
      int before = test.phase();
      test.step(TRIP[input / 16], input % 2 == 1, cancel, aux[0] == 1, aux[1] == 1);
      int after = test.phase();
      assertTrue(!cancel || after == Commissioning.IDLE, "K7");
      assertTrue(
          after == before || after == Commissioning.IDLE || after == before + 1,
          "K8: phase " + before + " to " + after);
      aux[0] = input / 4 % 2;
      aux[1] = input / 8 % 2;
    }
  }

  /** F1 to F11 and C5, the heater standing for whatever the fan lets run. */
  static final class Fan extends Explorer.Model {
    private static final Integer[] BROOD = {3500, 3650, 3700, null};
    private static final Integer[] OUTDOOR = {null, 400, 1100, 3690};
    private static final Integer[] HUMIDITY = {null, 700, 800, 860, 995};
    private final FanControl fan;
    private final SampleJudge a = plain(0, 12500);
    private final SampleJudge outdoor = plain(0, 12500);
    private final SampleJudge humidity = plain(0, 1000);
    private final Governing brood = new Governing(true, 300);

    Fan() {
      this(new FanControl(small()));
    }

    private Fan(FanControl fan) {
      // aux: heater on, cold on-time as bits, fan on
      super(3, fan);
      this.fan = fan;
    }

    @Override
    int inputs() {
      return 4 * 4 * 5 * 2 * 2 * 2 * 2;
    }

    @Override
    void apply(int input) {
      Integer broodC = BROOD[input % 4];
      Integer outdoorC = OUTDOOR[input / 4 % 4];
      Integer damp = HUMIDITY[input / 16 % 5];
      boolean low = input / 80 % 2 == 1 || broodC == null;
      int block = input / 160 % 2 == 1 ? Reason.SHED : Reason.NONE;
      boolean wantsHeat = input / 320 % 2 == 1;
      int dt = 1 + input / 640;
      show(a, broodC);
      show(outdoor, outdoorC);
      show(humidity, damp);
      brood.step(a, plain(0, 1));
      boolean was = fan.on();
      for (int i = 0; i < dt; i++) {
        aux[1] = (aux[1] << 1 | (was ? 1 : 0)) & 0x1f;
      }
      fan.ask(dt, dt, brood, outdoor, humidity, low, block, false);
      boolean heaterWas = aux[0] == 1;
      boolean heater = wantsHeat && !fan.holdsHeaterOff();
      fan.drive(!heaterWas && !heater);
      boolean on = fan.on();
      boolean coolingAllowed =
          broodC != null
              && broodC >= 3700
              && block == Reason.NONE
              && (outdoorC == null || outdoorC == 1100);
      assertFalse(coolingAllowed && heater, "F4: the heater stands in the way of cooling");
      aux[0] = heater ? 1 : 0;
      if (on) {
        assertEquals(Reason.NONE, block, "F11: runs though blocked");
        assertFalse(heater && fan.reason() == Reason.COOLING, "C5");
        if (outdoorC != null && broodC != null && broodC >= 3700) {
          assertTrue(outdoorC <= broodC - 100, "F2");
        }
        if (fan.reason() == Reason.PURGE || fan.reason() == Reason.TIMED_PURGE) {
          assertTrue(outdoorC != null && outdoorC >= 1000 && !low, "F6");
        }
        if (outdoorC != null && outdoorC < 500) {
          // Two units of allowance, one of a late tick.
          assertTrue(Integer.bitCount(aux[1]) <= 3, "F3: " + Integer.toBinaryString(aux[1]));
        }
      }
      aux[2] = on ? 1 : 0;
    }
  }

  /**
   * The whole heater path: limits, effect, weld, thermostat, fallback, permits, guard; supply,
   * shedding, fan, button and blindness as flags.
   */
  static final class Heat extends Explorer.Model {
    private static final Integer[] BROOD = {1990, 1999, 2000, 2100, null};
    private static final Integer[] PAN = {2100, 2595, 2850, 3800, 4300, null};
    private static final int OTHERS = 8;
    private final HeaterPath path;
    private final boolean fallback;
    private final SampleJudge a = plain(0, 12500);
    private final SampleJudge b = plain(0, 12500);
    private final SampleJudge pan = plain(0, 12500);
    private final SampleJudge none = plain(0, 12500);
    private final Governing brood = new Governing(true, 300);

    Heat(boolean fallback) {
      this(small().with(Setting.FALLBACK_ALLOWED, fallback), fallback);
    }

    private Heat(Settings settings, boolean fallback) {
      this(new HeaterPath(settings, 7, 6), fallback);
    }

    private Heat(HeaterPath path, boolean fallback) {
      // aux: time since the last stop, time on, ages of two starts
      super(4, path);
      this.path = path;
      this.fallback = fallback;
      aux[2] = 7;
      aux[3] = 7;
    }

    @Override
    int inputs() {
      return BROOD.length * PAN.length * OTHERS * 2;
    }

    @Override
    void apply(int input) {
      Integer broodC = BROOD[input % 5];
      Integer panC = PAN[input / 5 % 6];
      int other = input / 30 % 8;
      int trip = TRIP[1 + input / 240];
      int release = RELEASE[1 + input / 240];
      boolean was = path.relay().on();
      int level =
          other == 1 ? ShedLevel.HEAT_SHED : other == 2 ? ShedLevel.SURVIVAL : ShedLevel.FULL;
      show(a, broodC);
      show(b, null);
      show(pan, panC);
      show(none, null);
      brood.step(a, b);
      path.observe(trip, release, a, b, brood, pan, none, none, 0);
      if (other == 7) {
        path.clearLatches();
      }
      path.want(trip, release, level, false, pan, false);
      boolean on = path.drive(trip, release, other != 3, level, other == 4, other == 5, other == 6);
      for (int i = 0; i < 4; i++) {
        aux[i] = Math.min(aux[i] + release, 7);
      }
      if (on) {
        assertTrue(broodC == null || broodC < 2100, "C3: brood at its limit");
        assertTrue(panC == null || panC < 3800, "C3: pan at its limit");
        assertTrue(broodC != null || (fallback && panC != null), "C3: nothing trusted");
        assertTrue(other != 1 && other != 3, "C3: shed or no supply");
        assertTrue(other != 4 && other != 5, "K5, F4");
        assertFalse(path.limits().latched() || path.weld().latched(), "L7, D3");
      }
      if (on && !was) {
        assertTrue(aux[0] >= 3, "C1: off for " + aux[0]);
        assertTrue(aux[2] >= 7 || aux[3] >= 7, "C4");
        aux[3] = aux[2];
        aux[2] = 0;
        aux[1] = 0;
      }
      if (!on && was) {
        int reason = path.stopReason();
        if (aux[1] < 2) {
          assertTrue(reason != Reason.NONE && Reason.stopKind(reason) != null, "C2");
        }
        aux[0] = 0;
      }
      if (!on) {
        assertTrue(path.reason() != Reason.MIN_ON && path.reason() != Reason.FALLBACK, "G4: off");
        boolean nothing =
            broodC != null
                && broodC <= 1990
                && panC != null
                && panC < 3600
                && other == 0
                && !path.effect().unproven()
                && !path.limits().latched()
                && !path.limits().broodHigh()
                && !path.limits().panHigh()
                && !path.weld().latched()
                && path.demand().workingCentiC() == 2000
                && path.relay().startsLeft()
                && path.relay().minOffRemainingMillis() == 0;
        assertFalse(nothing, "C9: cold, nothing forbids, and off: " + Reason.name(path.reason()));
      }
    }

    @Override
    String describe(int input) {
      String[] others = {
        "-", "heat shed", "survival", "no supply", "service", "fan", "blind", "long press"
      };
      return "brood "
          + BROOD[input % 5]
          + " pan "
          + PAN[input / 5 % 6]
          + " "
          + others[input / 30 % 8]
          + " after "
          + TRIP[1 + input / 240];
    }
  }
}
