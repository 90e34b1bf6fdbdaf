package org.broodbench.controller;

/**
 * The exhaust fan (rules F1 to F12): cooling, humidity purge, timed purge, and its own guard. It
 * never runs for cooling together with the heater.
 */
final class FanControl implements Part {
  private final int outdoorCentiK;
  private final int coldCentiC;
  private final int minOnMillis;
  private final int purgeOutdoorCentiC;
  private final int wetPermille;
  private final int wetMillis;
  private final int gainMillis;
  private final int timedEveryMillis;
  private final int timedForMillis;

  private final Hysteresis cool;
  private final Hysteresis purge;
  private final DutyGate coldShare;
  private final DutyGate purgeShare;
  private final Delay wetDelay;
  private final Delay dryDelay;
  private final RelayGuard guard;
  private boolean wet;
  private int timedMillis;

  /** What the fan was last wished for while on; none while off (rule F8). */
  private int purpose;

  // Of this step only.
  private boolean coolAsked;
  private int wishReason;
  private int denyReason;

  FanControl(Settings settings) {
    outdoorCentiK = settings.get(Setting.FAN_OUTDOOR_CENTI_K);
    coldCentiC = settings.get(Setting.FAN_COLD_CENTI_C);
    minOnMillis = settings.get(Setting.FAN_MIN_ON_MILLIS);
    purgeOutdoorCentiC = settings.get(Setting.PURGE_OUTDOOR_CENTI_C);
    wetPermille = settings.get(Setting.PURGE_WET_PERMILLE);
    wetMillis = settings.get(Setting.PURGE_WET_MILLIS);
    gainMillis = settings.get(Setting.TRUST_GAIN_MILLIS);
    timedEveryMillis = settings.get(Setting.PURGE_TIMED_EVERY_MILLIS);
    timedForMillis = settings.get(Setting.PURGE_TIMED_FOR_MILLIS);
    cool =
        new Hysteresis(settings.get(Setting.FAN_ON_CENTI_C), settings.get(Setting.FAN_OFF_CENTI_C));
    purge =
        new Hysteresis(
            settings.get(Setting.PURGE_ON_PERMILLE), settings.get(Setting.PURGE_OFF_PERMILLE));
    coldShare =
        new DutyGate(
            settings.get(Setting.FAN_COLD_ON_MILLIS), settings.get(Setting.FAN_COLD_WINDOW_MILLIS));
    purgeShare =
        new DutyGate(
            settings.get(Setting.PURGE_ON_MILLIS), settings.get(Setting.PURGE_WINDOW_MILLIS));
    wetDelay = new Delay(wetMillis);
    dryDelay = new Delay(gainMillis);
    guard = new RelayGuard(minOnMillis, settings.get(Setting.FAN_MIN_OFF_MILLIS), 0, 0);
  }

  /**
   * Lets time pass and decides what the fan is wanted for.
   *
   * @param blockReason why the fan may not run at all ({@link Reason#NONE}: it may)
   * @param broodLow the brood is not known, calls for heat or would do so at the full set point
   * @param test the commissioning test asks for the fan
   */
  void ask(
      int tripMillis,
      int releaseMillis,
      Governing brood,
      SampleJudge outdoor,
      SampleJudge humidity,
      boolean broodLow,
      int blockReason,
      boolean test) {
    guard.pass(releaseMillis);
    coldShare.step(guard.on(), tripMillis, releaseMillis);
    purgeShare.step(purging(), tripMillis, releaseMillis);
    judgeWet(tripMillis, releaseMillis, humidity);
    boolean hot = cool.step(brood.known(), brood.stopCentiC());
    boolean damp = purge.step(humidity.trusted() && !wet, humidity.value());
    boolean timed = timed(releaseMillis);
    boolean warmOutdoors =
        outdoor.trusted() && outdoor.value() > brood.stopCentiC() - outdoorCentiK;
    boolean coldOutdoors = outdoor.trusted() && outdoor.value() < coldCentiC;
    boolean coldSpent = coldOutdoors && !shareLeft(coldShare);
    boolean mayPurge =
        outdoor.trusted()
            && outdoor.value() >= purgeOutdoorCentiC
            && !broodLow
            && shareLeft(purgeShare);
    wishReason = Reason.NONE;
    if (test) {
      wishReason = Reason.TEST;
    } else if (hot && !warmOutdoors) {
      wishReason = Reason.COOLING;
    } else if (damp && mayPurge) {
      wishReason = Reason.PURGE;
    } else if (timed && mayPurge) {
      wishReason = Reason.TIMED_PURGE;
    }
    denyReason = blockReason;
    if (denyReason == Reason.NONE && hot && warmOutdoors && wishReason != Reason.TEST) {
      denyReason = Reason.WARM_OUTDOORS;
    }
    if (denyReason == Reason.NONE && coldSpent) {
      denyReason = Reason.COLD_SHARE;
    }
    if (denyReason == Reason.NONE && purging() && wishReason == Reason.NONE && !mayPurge) {
      denyReason = Reason.PURGE_ENDED;
    }
    coolAsked = wishReason == Reason.COOLING && denyReason == Reason.NONE;
  }

  private boolean purging() {
    return purpose == Reason.PURGE || purpose == Reason.TIMED_PURGE;
  }

  private boolean shareLeft(DutyGate gate) {
    return guard.on() ? gate.mayRun() : gate.mayStart(minOnMillis);
  }

  private void judgeWet(int tripMillis, int releaseMillis, SampleJudge humidity) {
    boolean high = humidity.trusted() && humidity.value() >= wetPermille;
    boolean low = humidity.trusted() && humidity.value() < wetPermille;
    if (wetDelay.step(high, tripMillis, wetMillis)) {
      wet = true;
    }
    if (dryDelay.step(low, releaseMillis, gainMillis)) {
      wet = false;
    }
  }

  /** Rule F10: runs at the start of every period; the remainder carries the phase. */
  private boolean timed(int releaseMillis) {
    if (timedEveryMillis == 0) {
      return false;
    }
    // A period is longer than the longest release time, so one addition is enough.
    timedMillis -= releaseMillis;
    if (timedMillis <= 0) {
      timedMillis += timedEveryMillis;
    }
    // A state saved under a longer period.
    if (timedMillis > timedEveryMillis) {
      timedMillis = timedEveryMillis;
    }
    return timedMillis > timedEveryMillis - timedForMillis;
  }

  /** Cooling is wanted and allowed, or still running: the heater has to stay off (rule F4). */
  boolean holdsHeaterOff() {
    return coolAsked || purpose == Reason.COOLING;
  }

  /**
   * Drives the fan after the heater.
   *
   * @param heaterOff the heater was off before this step and is off now
   */
  void drive(boolean heaterOff) {
    boolean cooling = wishReason == Reason.COOLING || purpose == Reason.COOLING;
    if (denyReason == Reason.NONE && cooling && !heaterOff) {
      denyReason = Reason.HEATER_FIRST;
    }
    guard.drive(denyReason == Reason.NONE, wishReason != Reason.NONE);
    if (!guard.on()) {
      purpose = Reason.NONE;
    } else if (wishReason != Reason.NONE) {
      purpose = wishReason;
    }
  }

  /** Why the fan runs, or why it does not run though it is wanted (rule F12). */
  int reason() {
    if (guard.on()) {
      return wishReason != Reason.NONE ? wishReason : Reason.MIN_ON;
    }
    if (denyReason != Reason.NONE && denyReason != Reason.PURGE_ENDED) {
      return wishReason != Reason.NONE || denyReason == Reason.WARM_OUTDOORS
          ? denyReason
          : Reason.NONE;
    }
    return wishReason != Reason.NONE ? Reason.MIN_OFF : Reason.NONE;
  }

  boolean on() {
    return guard.on();
  }

  boolean wet() {
    return wet;
  }

  /** Opens the relay and starts its minimum off anew. */
  void open() {
    guard.open();
    purpose = Reason.NONE;
  }

  @Override
  public void reset() {
    cool.reset();
    purge.reset();
    coldShare.reset();
    purgeShare.reset();
    wetDelay.reset();
    dryDelay.reset();
    guard.reset();
    wet = false;
    timedMillis = timedEveryMillis;
    purpose = Reason.NONE;
  }

  @Override
  public void save(Words out) {
    cool.save(out);
    purge.save(out);
    coldShare.save(out);
    purgeShare.save(out);
    wetDelay.save(out);
    dryDelay.save(out);
    guard.save(out);
    out.put(wet);
    out.put(timedMillis);
    out.put(purpose);
  }

  @Override
  public void restore(Words in) {
    cool.restore(in);
    purge.restore(in);
    coldShare.restore(in);
    purgeShare.restore(in);
    wetDelay.restore(in);
    dryDelay.restore(in);
    guard.restore(in);
    wet = in.takeFlag();
    timedMillis = in.takeMillis();
    purpose = in.take(0, Reason.LAST);
  }
}
