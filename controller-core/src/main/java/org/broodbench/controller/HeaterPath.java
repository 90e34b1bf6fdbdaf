package org.broodbench.controller;

/**
 * From readings to the heater relay: limits, effect, welded relay, thermostat, fallback, permits
 * and guard (sections 4, 5 and 7 of SPEC.md). The parts outside hand in what they found as flags.
 */
final class HeaterPath implements Part {
  private final int minOnMillis;
  private final HeatTarget target;
  private final HeatDemand demand;
  private final PanFallback fallback;
  private final Limits limits;
  private final HeaterEffect effect;
  private final WeldWatch weld;
  private final DutyGate effectShare;
  private final DutyGate blindShare;
  private final RelayGuard relay;

  private final int coldCentiC;

  private int stopReason;

  // Of this step only.
  private Governing brood;
  private boolean panBelieved;
  private boolean wasOn;
  private boolean testing;
  private boolean wish;
  private int denied;

  HeaterPath(Settings settings, int hourMillis, int dayMillis) {
    minOnMillis = settings.get(Setting.RELAY_MIN_ON_MILLIS);
    coldCentiC =
        settings.get(Setting.HEAT_SET_POINT_CENTI_C)
            - settings.get(Setting.HEAT_DIFFERENTIAL_CENTI_K);
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
    limits = new Limits(settings, dayMillis);
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
            hourMillis);
  }

  /** First part of a step: what the probes say of heater and pan. */
  void observe(
      int tripMillis,
      int releaseMillis,
      SampleJudge broodA,
      SampleJudge broodB,
      Governing governing,
      SampleJudge pan,
      SampleJudge outdoor,
      SampleJudge heaterCurrent,
      int heaterCurrentAgeMillis) {
    brood = governing;
    wasOn = relay.on();
    effect.step(tripMillis, wasOn, pan, brood, outdoor, heaterCurrent);
    weld.step(tripMillis, wasOn, heaterCurrent, heaterCurrentAgeMillis, pan, brood, outdoor);
    panBelieved = pan.trusted() && !effect.unproven();
    limits.step(releaseMillis, broodA, broodB, pan, !panBelieved);
  }

  /** A long press: clears latches whose cause is gone. */
  void clearLatches() {
    weld.clearLatch();
    limits.clearLatch();
  }

  /**
   * Second part of a step: what is wished.
   *
   * @param level shed level as far as it restricts the loads
   * @param heaterTest the commissioning test asks for heat
   */
  void want(
      int tripMillis,
      int releaseMillis,
      int level,
      boolean chargerFull,
      SampleJudge pan,
      boolean heaterTest) {
    target.step(level, chargerFull);
    boolean calling = demand.step(tripMillis, releaseMillis, wasOn, brood, target.broodCentiC());
    boolean panCalling = fallback.step(brood.known(), panBelieved, pan.value(), target.panCentiC());
    testing = heaterTest;
    wish = calling || panCalling || testing;
  }

  /** Last part of a step: permits, then the guard. */
  boolean drive(
      int tripMillis,
      int releaseMillis,
      boolean supplySteady,
      int level,
      boolean serviced,
      boolean fanHolds,
      boolean blind) {
    relay.pass(releaseMillis);
    effectShare.step(wasOn, tripMillis, releaseMillis);
    blindShare.step(wasOn, tripMillis, releaseMillis);
    denied = denied(supplySteady, level, serviced, fanHolds, blind);
    boolean on = relay.drive(denied == Reason.NONE, wish);
    if (wasOn && !on) {
      stopReason = denied;
      if (denied == Reason.BROOD_LIMIT) {
        limits.countBroodTrip();
      }
    }
    return on;
  }

  /** The first permit that is missing, in the rank of the table of permits (rule G2). */
  private int denied(
      boolean supplySteady, int level, boolean serviced, boolean fanHolds, boolean blind) {
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
    if (!supplySteady) {
      return Reason.SUPPLY;
    }
    if (level >= ShedLevel.HEAT_SHED) {
      return Reason.SHED;
    }
    if (serviced) {
      return Reason.SERVICE;
    }
    if (fanHolds) {
      return Reason.COOLING;
    }
    if (!panBelieved && spent(effectShare)) {
      return Reason.EFFECT;
    }
    if (blind && spent(blindShare)) {
      return Reason.BLIND;
    }
    return Reason.NONE;
  }

  private boolean spent(DutyGate gate) {
    return wasOn ? !gate.mayRun() : !gate.mayStart(minOnMillis);
  }

  /** Rule G4. */
  int reason() {
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
      return wish || wasOn || denied == Reason.TRUST ? denied : Reason.NONE;
    }
    if (!wish) {
      return Reason.NONE;
    }
    return relay.startsLeft() || relay.minOffRemainingMillis() > 0 ? Reason.MIN_OFF : Reason.STARTS;
  }

  /** Rule G5. */
  int stopReason() {
    return stopReason;
  }

  /** Rule F6: no air is changed for dryness while the brood lacks heat, shed or not. */
  boolean broodLow() {
    return !brood.known() || demand.calling() || brood.callCentiC() <= coldCentiC;
  }

  HeatDemand demand() {
    return demand;
  }

  Limits limits() {
    return limits;
  }

  HeaterEffect effect() {
    return effect;
  }

  WeldWatch weld() {
    return weld;
  }

  RelayGuard relay() {
    return relay;
  }

  @Override
  public void reset() {
    demand.reset();
    fallback.reset();
    limits.reset();
    effect.reset();
    weld.reset();
    effectShare.reset();
    blindShare.reset();
    relay.reset();
    stopReason = Reason.NONE;
  }

  @Override
  public void save(Words out) {
    demand.save(out);
    fallback.save(out);
    limits.save(out);
    effect.save(out);
    weld.save(out);
    effectShare.save(out);
    blindShare.save(out);
    relay.save(out);
    out.put(stopReason);
  }

  @Override
  public void restore(Words in) {
    demand.restore(in);
    fallback.restore(in);
    limits.restore(in);
    effect.restore(in);
    weld.restore(in);
    effectShare.restore(in);
    blindShare.restore(in);
    relay.restore(in);
    stopReason = in.take(Reason.NONE, Reason.BLIND);
  }
}
