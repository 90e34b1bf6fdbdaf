package org.broodbench.controller;

import java.util.List;

/**
 * The reference controller: one step turns readings into commands. Whole numbers only; no clock, no
 * allocation and no exception once constructed. SPEC.md is its normative description; rule numbers
 * in comments refer to it.
 *
 * <p>Not thread-safe; one instance belongs to one run.
 */
public final class Controller {
  private static final int HOUR_MILLIS = 3600000;
  private static final int DAY_MILLIS = 86400000;

  private final boolean fanFitted;
  private final boolean inverterFitted;
  private final boolean keepInverter;
  private final int absentMilliV;
  private final int manyShedsFrom;
  private final int alarmLowCentiC;
  private final int alarmHighCentiC;

  private final Ticker ticker = new Ticker();
  private final Probes probes;
  private final Governing brood;
  private final HeaterPath heater;
  private final ChargeMeasure charge;
  private final Shedding shedding;
  private final SupplySelect supply;
  private final FanControl fan;
  private final Button button;
  private final Commissioning test;
  private final Alarms alarms;
  private final DailyLook daily = new DailyLook();
  private final StateWords state;

  /**
   * Builds a controller in its power-up state.
   *
   * @param settings what it is to do; kept as they are
   * @throws IllegalSettings when {@link Settings#problems()} is not empty
   */
  public Controller(Settings settings) {
    List<SettingProblem> problems = settings.problems();
    if (!problems.isEmpty()) {
      throw new IllegalSettings(problems);
    }
    fanFitted = settings.is(Setting.FITTED_FAN);
    inverterFitted = settings.is(Setting.FITTED_INVERTER);
    keepInverter = settings.is(Setting.SHED_KEEP_INVERTER);
    absentMilliV = settings.get(Setting.BATTERY_LOWEST_MILLI_V);
    manyShedsFrom = settings.get(Setting.SHED_DOUBLE_FROM);
    alarmLowCentiC = settings.get(Setting.ALARM_BROOD_LOW_CENTI_C);
    alarmHighCentiC = settings.get(Setting.ALARM_BROOD_HIGH_CENTI_C);
    probes = new Probes(settings);
    brood =
        new Governing(
            settings.is(Setting.BROOD_B_LIKE_PLACE), settings.get(Setting.TRUST_PAIR_CENTI_K));
    heater = new HeaterPath(settings, HOUR_MILLIS, DAY_MILLIS);
    charge = new ChargeMeasure(settings);
    shedding = new Shedding(settings, DAY_MILLIS);
    supply = new SupplySelect(settings);
    fan = new FanControl(settings);
    button = new Button(settings);
    test = new Commissioning(settings);
    alarms = new Alarms(settings.get(Setting.ALARM_BROOD_LOW_MILLIS));
    state =
        new StateWords(
            new Part[] {probes, heater, shedding, supply, fan, button, test, alarms, daily});
  }

  /**
   * One step. Any tick from 100 ms to 60 s will do, with jitter; longer gaps are counted with care.
   *
   * @param nowMillis a counter of milliseconds that wraps at 32 bits
   * @param in what the drivers read
   * @param out filled anew
   */
  public void step(int nowMillis, Readings in, Commands out) {
    ticker.step(nowMillis);
    int trip = ticker.tripMillis();
    int release = ticker.releaseMillis();
    boolean heaterWasOn = heater.relay().on();
    probes.step(in, trip, release);
    brood.step(probes.broodA, probes.broodB);
    heater.observe(
        trip,
        release,
        probes.broodA,
        probes.broodB,
        brood,
        probes.pan,
        probes.outdoor,
        probes.heaterCurrent,
        in.heaterCurrent.ageMillis);
    button(in, trip, release);
    power(in, trip, release, heaterWasOn);
    boolean fromShore = supply.source() == SupplySelect.SHORE;
    int level = fromShore ? ShedLevel.FULL : shedding.level();
    boolean serviced = button.serviceRemainingMillis() > 0;
    test.step(trip, in.testRequest, serviced || button.stuck(), heaterWasOn, fan.on());
    heater.want(
        trip, release, level, in.chargerFull, probes.pan, test.phase() == Commissioning.HEATER);
    boolean fanTest = test.phase() == Commissioning.FAN;
    if (fanFitted) {
      fan.ask(
          trip,
          release,
          brood,
          probes.outdoor,
          probes.humidity,
          heater.broodLow(),
          fanBlock(level, serviced),
          fanTest);
    }
    boolean on =
        heater.drive(
            trip,
            release,
            supply.steady(),
            level,
            serviced || fanTest,
            fan.holdsHeaterOff(),
            shedding.blind() && !fromShore);
    if (fanFitted) {
      fan.drive(!heaterWasOn && !on);
    }
    daily.step(trip, heaterWasOn, brood, on && !heaterWasOn, shedding.shedNow());
    raise(trip, release);
    show(out);
  }

  private void button(Readings in, int trip, int release) {
    button.step(trip, release, in.button);
    if (button.longPress()) {
      heater.clearLatches();
      alarms.clearLatched();
    }
    if (button.shortPress()) {
      daily.reset();
    }
  }

  private void power(Readings in, int trip, int release, boolean heaterWasOn) {
    boolean absent = false;
    if (probes.batteryFitted) {
      charge.step(
          probes, in.chargerFull, heaterWasOn, fan.on(), supply.source() == SupplySelect.SHORE);
      shedding.step(trip, release, charge, in.shorePresent, in.chargerFull);
      absent = in.battery.valid && in.battery.value < absentMilliV;
    } else {
      shedding.bypass();
    }
    supply.step(release, absent, in.shorePresent, shedding.level(), heaterWasOn);
  }

  private int fanBlock(int level, boolean serviced) {
    if (!supply.steady()) {
      return Reason.SUPPLY;
    }
    if (level >= ShedLevel.FAN_SHED) {
      return Reason.SHED;
    }
    return serviced ? Reason.SERVICE : Reason.NONE;
  }

  private void raise(int trip, int release) {
    boolean broodUntrusted =
        (probes.broodAFitted && !probes.broodA.trusted())
            || (probes.broodBFitted && !probes.broodB.trusted());
    boolean low = brood.known() && brood.callCentiC() < alarmLowCentiC;
    boolean hot = brood.known() && brood.stopCentiC() > alarmHighCentiC;
    Limits limits = heater.limits();
    int conditions =
        bit(Alarm.TIME, ticker.backwards())
            | bit(Alarm.BROOD_PROBE, broodUntrusted)
            | bit(Alarm.PROBES_APART, brood.mode() == Governing.APART)
            | bit(Alarm.PROBE_STUCK, probes.stuck.any())
            | bit(Alarm.PAN_PROBE, probes.panFitted && !probes.pan.trusted())
            | bit(Alarm.FALLBACK, !brood.known())
            | bit(Alarm.PAN_TRIP, limits.panTripped())
            | bit(Alarm.TRIP_LATCHED, limits.latched())
            | bit(Alarm.BROOD_LIMIT, limits.broodHigh())
            | bit(Alarm.WELDED, heater.weld().latched())
            | bit(Alarm.EFFECT, heater.effect().unproven())
            | bit(Alarm.BROOD_LOW, low)
            | bit(Alarm.BROOD_HIGH, hot)
            | bit(Alarm.BLIND, shedding.blind())
            | bit(Alarm.HEAT_SHED, shedding.level() >= ShedLevel.HEAT_SHED)
            | bit(Alarm.MANY_SHEDS, shedding.shedsInDay() >= manyShedsFrom)
            | bit(Alarm.NO_SUPPLY, supply.source() == SupplySelect.NONE)
            | bit(Alarm.HUMIDITY_WET, fan.wet())
            | bit(Alarm.BUTTON_STUCK, button.stuck())
            | bit(Alarm.OUTDOOR_PROBE, probes.outdoorFitted && !probes.outdoor.trusted())
            | bit(Alarm.EMERGENCY, probes.batteryFitted && charge.emergency());
    alarms.step(conditions, trip, release);
  }

  private static int bit(int alarm, boolean condition) {
    return condition ? 1 << alarm : 0;
  }

  private void show(Commands out) {
    RelayGuard relay = heater.relay();
    HeatDemand demand = heater.demand();
    out.heater = relay.on();
    out.isolation = !heater.weld().latched();
    out.fan = fan.on();
    out.supply = supply.source();
    out.shedLevel = shedding.level();
    out.inverter =
        inverterFitted
            && out.supply == SupplySelect.BATTERY
            && (out.shedLevel < ShedLevel.HEAT_SHED || keepInverter);
    out.heaterReason = heater.reason();
    out.heaterStopReason = heater.stopReason();
    out.fanReason = fan.reason();
    out.alarms = alarms.activeBits();
    out.latchedAlarms = alarms.latchedBits();
    out.governingCentiC = brood.known() ? brood.callCentiC() : Commands.NO_TEMPERATURE;
    out.governingHighCentiC = brood.known() ? brood.stopCentiC() : Commands.NO_TEMPERATURE;
    out.workingSetPointCentiC = demand.started() ? demand.workingCentiC() : Commands.NO_TEMPERATURE;
    out.minOffRemainingMillis = relay.minOffRemainingMillis();
    out.minOnRemainingMillis = relay.minOnRemainingMillis();
    out.serviceRemainingMillis = button.serviceRemainingMillis();
    out.testPhase = test.phase();
    out.correctedMilliV = charge.correctedMilliV();
    out.leaveDelayMillis = shedding.leaveDelayNowMillis();
    out.shedsInDay = shedding.shedsInDay();
    daily.show(out);
  }

  /** {@return how many words {@link #save} writes} */
  public int stateWords() {
    return state.count();
  }

  /**
   * Writes the whole state.
   *
   * @param words at least {@link #stateWords()} long
   */
  public void save(int[] words) {
    state.save(words);
  }

  /**
   * Reads what {@link #save} wrote. The next step counts no time, so nothing is released by it. The
   * future is that of the saved controller; after a loss of power call {@link #powerWasLost} too.
   *
   * @param words as {@link #save} left them, at least {@link #stateWords()} long
   * @return false when the words were refused (other version, damaged, out of range); the
   *     controller is then at its power-up state
   */
  public boolean restore(int[] words) {
    ticker.restart();
    return state.restore(words);
  }

  /**
   * Tells that the outputs were off for an unknown time since the state was saved: both relays
   * start from off, and their minimum off starts anew (rule R7).
   */
  public void powerWasLost() {
    heater.relay().open();
    fan.open();
    supply.reset();
  }
}
