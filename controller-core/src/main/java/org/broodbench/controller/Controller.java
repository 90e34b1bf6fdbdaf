package org.broodbench.controller;

/**
 * The reference controller: one step turns readings into commands. Whole numbers only; no clock, no
 * allocation and no exception once constructed. SPEC.md is its normative description; rule numbers
 * in comments refer to it.
 *
 * <p>Not thread-safe; one instance belongs to one run.
 */
public final class Controller {
  private static final int LONGEST_MILLI_A = 200000;
  private static final int LONGEST_MILLI_W = 10000000;

  private final boolean broodAFitted;
  private final boolean broodBFitted;
  private final boolean panFitted;
  private final boolean topFitted;
  private final boolean outdoorFitted;
  private final boolean humidityFitted;
  private final boolean batteryFitted;
  private final boolean batteryCurrentFitted;
  private final boolean stateOfChargeFitted;
  private final boolean heaterCurrentFitted;
  private final boolean panelPowerFitted;
  private final boolean fanFitted;
  private final boolean inverterFitted;
  private final boolean keepInverter;
  private final int minOnMillis;
  private final int absentMilliV;
  private final int manyShedsFrom;
  private final int alarmLowCentiC;
  private final int alarmHighCentiC;

  private final Ticker ticker = new Ticker();
  private final SampleJudge broodA;
  private final SampleJudge broodB;
  private final SampleJudge pan;
  private final SampleJudge top;
  private final SampleJudge outdoor;
  private final SampleJudge humidity;
  private final SampleJudge volts;
  private final SampleJudge batteryCurrent;
  private final SampleJudge stateOfCharge;
  private final SampleJudge heaterCurrent;
  private final SampleJudge panelPower;
  private final StuckWatch stuck;
  private final Governing brood;
  private final HeatTarget target;
  private final HeatDemand demand;
  private final PanFallback fallback;
  private final Limits limits;
  private final HeaterEffect effect;
  private final WeldWatch weld;
  private final DutyGate effectShare;
  private final DutyGate blindShare;
  private final RelayGuard relay;
  private final ChargeMeasure charge;
  private final Shedding shedding;
  private final SupplySelect supply;
  private final FanControl fan;
  private final Button button;
  private final Commissioning test;
  private final Alarms alarms;
  private final DailyLook daily = new DailyLook();

  private int stopReason;

  private final Part[] parts;
  private final StateWords state;

  /**
   * Builds a controller in its power-up state.
   *
   * @throws IllegalSettings when {@link Settings#problems()} is not empty
   */
  public Controller(Settings settings) {
    java.util.List<SettingProblem> problems = settings.problems();
    if (!problems.isEmpty()) {
      throw new IllegalSettings(problems);
    }
    broodAFitted = settings.is(Setting.FITTED_BROOD_A);
    broodBFitted = settings.is(Setting.FITTED_BROOD_B);
    panFitted = settings.is(Setting.FITTED_PAN);
    topFitted = settings.is(Setting.FITTED_TOP);
    outdoorFitted = settings.is(Setting.FITTED_OUTDOOR);
    humidityFitted = settings.is(Setting.FITTED_HUMIDITY);
    batteryFitted = settings.is(Setting.FITTED_BATTERY);
    batteryCurrentFitted = settings.is(Setting.FITTED_BATTERY_CURRENT);
    stateOfChargeFitted = settings.is(Setting.FITTED_STATE_OF_CHARGE);
    heaterCurrentFitted = settings.is(Setting.FITTED_HEATER_CURRENT);
    panelPowerFitted = settings.is(Setting.FITTED_PANEL_POWER);
    fanFitted = settings.is(Setting.FITTED_FAN);
    inverterFitted = settings.is(Setting.FITTED_INVERTER);
    keepInverter = settings.is(Setting.SHED_KEEP_INVERTER);
    minOnMillis = settings.get(Setting.RELAY_MIN_ON_MILLIS);
    absentMilliV = settings.get(Setting.BATTERY_LOWEST_MILLI_V);
    manyShedsFrom = settings.get(Setting.SHED_DOUBLE_FROM);
    alarmLowCentiC = settings.get(Setting.ALARM_BROOD_LOW_CENTI_C);
    alarmHighCentiC = settings.get(Setting.ALARM_BROOD_HIGH_CENTI_C);
    broodA = SampleJudge.temperature(settings);
    broodB = SampleJudge.temperature(settings);
    pan = SampleJudge.temperature(settings);
    top = SampleJudge.temperature(settings);
    outdoor = SampleJudge.temperature(settings);
    humidity = SampleJudge.ranged(0, 1000, settings);
    volts =
        SampleJudge.ranged(
            settings.get(Setting.BATTERY_LOWEST_MILLI_V),
            settings.get(Setting.BATTERY_HIGHEST_MILLI_V),
            settings);
    batteryCurrent = SampleJudge.ranged(-LONGEST_MILLI_A, LONGEST_MILLI_A, settings);
    stateOfCharge = SampleJudge.ranged(0, 1000, settings);
    heaterCurrent = SampleJudge.ranged(-LONGEST_MILLI_A, LONGEST_MILLI_A, settings);
    panelPower = SampleJudge.ranged(0, LONGEST_MILLI_W, settings);
    stuck =
        new StuckWatch(
            new SampleJudge[] {broodA, broodB, pan, top, outdoor},
            settings.get(Setting.TRUST_STUCK_MILLIS),
            settings.get(Setting.TRUST_STUCK_OTHER_CENTI_K));
    brood =
        new Governing(
            settings.is(Setting.BROOD_B_LIKE_PLACE), settings.get(Setting.TRUST_PAIR_CENTI_K));
    target = new HeatTarget(settings);
    demand =
        new HeatDemand(
            settings.get(Setting.HEAT_DIFFERENTIAL_CENTI_K),
            settings.get(Setting.HEAT_RAMP_CENTI_K_PER_H),
            settings.get(Setting.HEAT_RAMP_FLOOR_CENTI_C),
            settings.get(Setting.HEAT_REBASE_MILLIS));
    fallback =
        new PanFallback(
            settings.is(Setting.FALLBACK_ALLOWED),
            settings.get(Setting.FALLBACK_DIFFERENTIAL_CENTI_K));
    limits = new Limits(settings);
    effect = new HeaterEffect(settings);
    weld = new WeldWatch(settings);
    effectShare =
        new DutyGate(
            settings.get(Setting.EFFECT_SHARE_ON_MILLIS),
            settings.get(Setting.EFFECT_SHARE_WINDOW_MILLIS));
    blindShare =
        new DutyGate(
            settings.get(Setting.SHED_BLIND_ON_MILLIS),
            settings.get(Setting.SHED_BLIND_WINDOW_MILLIS));
    relay =
        new RelayGuard(
            minOnMillis,
            settings.get(Setting.RELAY_MIN_OFF_MILLIS),
            settings.get(Setting.RELAY_STARTS_PER_HOUR),
            3600000);
    charge = new ChargeMeasure(settings);
    shedding = new Shedding(settings);
    supply = new SupplySelect(settings);
    fan = new FanControl(settings);
    button = new Button(settings);
    test = new Commissioning(settings);
    alarms = new Alarms(settings.get(Setting.ALARM_BROOD_LOW_MILLIS));
    parts =
        new Part[] {
          broodA, broodB, pan, top, outdoor, humidity, volts, batteryCurrent, stateOfCharge,
          heaterCurrent, panelPower, stuck, demand, fallback, limits, effect, weld, effectShare,
          blindShare, relay, shedding, supply, fan, button, test, alarms, daily
        };
    for (Part part : parts) {
      part.reset();
    }
    state = new StateWords(parts);
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
    boolean heaterWasOn = relay.on();
    judge(in, trip, release);
    brood.step(broodA, broodB);
    effect.step(trip, heaterWasOn, pan, brood, outdoor, heaterCurrent);
    weld.step(trip, heaterWasOn, heaterCurrent, in.heaterCurrent.ageMillis, pan, brood, outdoor);
    boolean panTrusted = pan.trusted() && !effect.unproven();
    limits.step(release, broodA, broodB, pan, !panTrusted);
    button.step(trip, release, in.button);
    if (button.longPress()) {
      weld.clearLatch();
      limits.clearLatch();
      alarms.clearLatched();
    }
    if (button.shortPress()) {
      daily.reset();
    }
    power(in, trip, release, heaterWasOn);
    boolean fromShore = supply.source() == SupplySelect.SHORE;
    int level = fromShore ? ShedLevel.FULL : shedding.level();
    boolean serviced = button.serviceRemainingMillis() > 0;
    test.step(trip, in.testRequest, serviced || button.stuck(), heaterWasOn, fan.on());
    target.step(level, in.chargerFull);
    boolean calling = demand.step(trip, release, heaterWasOn, brood, target.broodCentiC());
    boolean panCalling = fallback.step(brood.known(), panTrusted, pan.value(), target.panCentiC());
    int fanBlock = Reason.NONE;
    if (!supply.steady()) {
      fanBlock = Reason.SUPPLY;
    } else if (level >= ShedLevel.FAN_SHED) {
      fanBlock = Reason.SHED;
    } else if (serviced) {
      fanBlock = Reason.SERVICE;
    }
    if (fanFitted) {
      boolean broodLow = !brood.known() || calling;
      fan.ask(
          trip,
          release,
          brood,
          outdoor,
          humidity,
          broodLow,
          fanBlock,
          test.phase() == Commissioning.FAN);
    }
    relay.pass(release);
    effectShare.step(heaterWasOn, trip, release);
    blindShare.step(heaterWasOn, trip, release);
    int denied = denied(level, panTrusted, serviced, heaterWasOn);
    boolean testing = test.phase() == Commissioning.HEATER;
    boolean wish = calling || panCalling || testing;
    boolean on = relay.drive(denied == Reason.NONE, wish);
    if (heaterWasOn && !on) {
      stopReason = denied;
      if (denied == Reason.BROOD_LIMIT) {
        limits.countBroodTrip();
      }
    }
    if (fanFitted) {
      fan.drive(!heaterWasOn && !on);
    }
    daily.step(trip, heaterWasOn, brood, on && !heaterWasOn, shedding.shedNow());
    raise(trip, release);
    show(out, denied, wish, heaterWasOn, testing);
  }

  private void judge(Readings in, int trip, int release) {
    if (broodAFitted) {
      broodA.step(in.broodA, trip, release);
    }
    if (broodBFitted) {
      broodB.step(in.broodB, trip, release);
    }
    if (panFitted) {
      pan.step(in.pan, trip, release);
    }
    if (topFitted) {
      top.step(in.top, trip, release);
    }
    if (outdoorFitted) {
      outdoor.step(in.outdoor, trip, release);
    }
    if (humidityFitted) {
      humidity.step(in.humidity, trip, release);
    }
    if (batteryFitted) {
      volts.step(in.battery, trip, release);
    }
    if (batteryCurrentFitted) {
      batteryCurrent.step(in.batteryCurrent, trip, release);
    }
    if (stateOfChargeFitted) {
      stateOfCharge.step(in.stateOfCharge, trip, release);
    }
    if (heaterCurrentFitted) {
      heaterCurrent.step(in.heaterCurrent, trip, release);
    }
    if (panelPowerFitted) {
      panelPower.step(in.panelPower, trip, release);
    }
    stuck.step(trip);
  }

  private void power(Readings in, int trip, int release, boolean heaterWasOn) {
    boolean absent = false;
    if (batteryFitted) {
      charge.step(
          volts,
          batteryCurrent,
          stateOfCharge,
          panelPower,
          in.chargerFull,
          heaterWasOn,
          fan.on(),
          supply.source() == SupplySelect.SHORE);
      shedding.step(trip, release, charge, in.shorePresent, in.chargerFull);
      absent = in.battery.valid && in.battery.value < absentMilliV;
    } else {
      shedding.bypass();
    }
    supply.step(release, absent, in.shorePresent, shedding.level(), heaterWasOn);
  }

  /** The first permit that is missing, in the rank of table P (rule G2). */
  private int denied(int level, boolean panTrusted, boolean serviced, boolean heaterWasOn) {
    if (weld.latched()) {
      return Reason.ISOLATION;
    }
    if (limits.latched()) {
      return Reason.TRIP_LATCHED;
    }
    if (limits.panTripped()) {
      return Reason.PAN_TRIP;
    }
    if (limits.broodHigh()) {
      return Reason.BROOD_LIMIT;
    }
    if (limits.panHigh()) {
      return Reason.PAN_LIMIT;
    }
    if (!brood.known() && !fallback.active()) {
      return Reason.TRUST;
    }
    if (!supply.steady()) {
      return Reason.SUPPLY;
    }
    if (level >= ShedLevel.HEAT_SHED) {
      return Reason.SHED;
    }
    if (serviced || test.phase() == Commissioning.FAN) {
      return Reason.SERVICE;
    }
    if (fan.holdsHeaterOff()) {
      return Reason.COOLING;
    }
    if (!panTrusted && spent(effectShare, heaterWasOn)) {
      return Reason.EFFECT;
    }
    if (shedding.blind() && level > ShedLevel.FULL && spent(blindShare, heaterWasOn)) {
      return Reason.BLIND;
    }
    return Reason.NONE;
  }

  private boolean spent(DutyGate gate, boolean running) {
    return running ? !gate.mayRun() : !gate.mayStart(minOnMillis);
  }

  private void raise(int trip, int release) {
    boolean broodUntrusted =
        (broodAFitted && !broodA.trusted()) || (broodBFitted && !broodB.trusted());
    alarm(Alarm.TIME, ticker.backwards(), trip, release);
    alarm(Alarm.BROOD_PROBE, broodUntrusted, trip, release);
    alarm(Alarm.PROBES_APART, brood.mode() == Governing.APART, trip, release);
    alarm(Alarm.PROBE_STUCK, stuck.any(), trip, release);
    alarm(Alarm.PAN_PROBE, panFitted && !pan.trusted(), trip, release);
    alarm(Alarm.FALLBACK, !brood.known(), trip, release);
    alarm(Alarm.PAN_TRIP, limits.panTripped(), trip, release);
    alarm(Alarm.TRIP_LATCHED, limits.latched(), trip, release);
    alarm(Alarm.BROOD_LIMIT, limits.broodHigh(), trip, release);
    alarm(Alarm.WELDED, weld.latched(), trip, release);
    alarm(Alarm.EFFECT, effect.unproven(), trip, release);
    alarm(Alarm.BROOD_LOW, brood.known() && brood.callCentiC() < alarmLowCentiC, trip, release);
    alarm(Alarm.BROOD_HIGH, brood.known() && brood.stopCentiC() > alarmHighCentiC, trip, release);
    alarm(Alarm.BLIND, shedding.blind(), trip, release);
    alarm(Alarm.HEAT_SHED, shedding.level() >= ShedLevel.HEAT_SHED, trip, release);
    alarm(Alarm.MANY_SHEDS, shedding.shedsInDay() >= manyShedsFrom, trip, release);
    alarm(Alarm.NO_SUPPLY, supply.source() == SupplySelect.NONE, trip, release);
    alarm(Alarm.HUMIDITY_WET, fan.wet(), trip, release);
    alarm(Alarm.BUTTON_STUCK, button.stuck(), trip, release);
    alarm(Alarm.OUTDOOR_PROBE, outdoorFitted && !outdoor.trusted(), trip, release);
    alarm(Alarm.EMERGENCY, batteryFitted && charge.emergency(), trip, release);
  }

  private void alarm(int alarm, boolean condition, int trip, int release) {
    alarms.step(alarm, condition, trip, release);
  }

  private void show(Commands out, int denied, boolean wish, boolean heaterWasOn, boolean testing) {
    out.heater = relay.on();
    out.isolation = !weld.latched();
    out.fan = fan.on();
    out.supply = supply.source();
    out.shedLevel = shedding.level();
    out.inverter =
        inverterFitted
            && out.supply == SupplySelect.BATTERY
            && (out.shedLevel < ShedLevel.HEAT_SHED || keepInverter);
    out.heaterReason = heaterReason(denied, wish, heaterWasOn, testing);
    out.heaterStopReason = stopReason;
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

  /** Rule G4. */
  private int heaterReason(int denied, boolean wish, boolean heaterWasOn, boolean testing) {
    if (relay.on()) {
      if (testing) {
        return Reason.TEST;
      }
      if (fallback.active()) {
        return Reason.FALLBACK;
      }
      return wish ? Reason.NONE : Reason.MIN_ON;
    }
    if (denied != Reason.NONE) {
      return wish || heaterWasOn || denied == Reason.TRUST ? denied : Reason.NONE;
    }
    if (!wish) {
      return Reason.NONE;
    }
    return relay.startsLeft() || relay.minOffRemainingMillis() > 0 ? Reason.MIN_OFF : Reason.STARTS;
  }

  /** How many words {@link #save} writes. */
  public int stateWords() {
    return state.count();
  }

  /**
   * Writes the whole state.
   *
   * @param words at least {@link #stateWords()} long
   */
  public void save(int[] words) {
    state.save(words, stopReason);
  }

  /**
   * Reads what {@link #save} wrote. The next step counts no time, so nothing is released by it. The
   * future is that of the saved controller; after a loss of power call {@link #powerWasLost} too.
   *
   * @return false when the words were refused (other version, damaged, out of range); the
   *     controller is then at its power-up state
   */
  public boolean restore(int[] words) {
    ticker.restart();
    boolean good = state.restore(words);
    stopReason = good ? state.stopReason() : Reason.NONE;
    return good;
  }

  /**
   * Tells that the outputs were off for an unknown time since the state was saved: both relays
   * start from off, and their minimum off starts anew (rule R7).
   */
  public void powerWasLost() {
    relay.open();
    fan.guard().open();
    supply.reset();
  }
}
