package org.broodbench.controller;

/**
 * The shed level (rules B5 to B13): downwards by as many levels as its thresholds say, upwards one
 * level at a time after the whole leave delay.
 */
final class Shedding implements Part {
  /** Enough for a rolling day: with the shortest leave delay doubling leaves room for 13. */
  private static final int SHED_PLACES = 16;

  private final int[] enter = new int[ShedLevel.STANDBY + 1];
  private final int[] leave = new int[ShedLevel.STANDBY + 1];
  private final int enterDelayMillis;
  private final int leaveDelayMillis;
  private final int doubleFrom;
  private final int blindAfterMillis;
  private final int blindHeatShedMillis;

  private int level;
  private boolean decided;
  private boolean shedArmed;
  private final Delay[] enterDelay = new Delay[ShedLevel.STANDBY + 1];
  private final Delay leaveDelay;
  private final Delay blind;
  private final RollingCount sheds;
  private final int dayMillis;

  // Of this step only.
  private boolean blindNow;
  private boolean shedNow;

  Shedding(Settings settings, int dayMillis) {
    this.dayMillis = dayMillis;
    leaveDelay = new Delay(dayMillis);
    sheds = new RollingCount(SHED_PLACES, dayMillis);
    boolean byStateOfCharge = settings.is(Setting.SHED_BY_STATE_OF_CHARGE);
    enterDelayMillis = settings.get(Setting.SHED_ENTER_DELAY_MILLIS);
    leaveDelayMillis = settings.get(Setting.SHED_LEAVE_DELAY_MILLIS);
    doubleFrom = settings.get(Setting.SHED_DOUBLE_FROM);
    blindAfterMillis = settings.get(Setting.SHED_BLIND_AFTER_MILLIS);
    blindHeatShedMillis = settings.get(Setting.SHED_BLIND_HEAT_SHED_MILLIS);
    int blindCap = blindAfterMillis > blindHeatShedMillis ? blindAfterMillis : blindHeatShedMillis;
    blind = new Delay(blindCap);
    enterDelay[ShedLevel.FULL] = new Delay(enterDelayMillis);
    for (int i = ShedLevel.SET_BACK; i <= ShedLevel.STANDBY; i++) {
      enter[i] = settings.get(SettingsCheck.enter(i, byStateOfCharge));
      leave[i] = settings.get(SettingsCheck.leave(i, byStateOfCharge));
      enterDelay[i] = new Delay(enterDelayMillis);
    }
  }

  /**
   * @param charge what tells how full the battery is
   * @param shorePresent shore power is there, whichever source is selected
   */
  void step(
      int tripMillis,
      int releaseMillis,
      ChargeMeasure charge,
      boolean shorePresent,
      boolean chargerFull) {
    sheds.step(releaseMillis);
    shedNow = false;
    boolean trusted = charge.trusted();
    int value = charge.value();
    if (trusted && !decided) {
      // Rule B12: heat shed was assumed until the first trusted measure.
      level = value < leave[ShedLevel.HEAT_SHED] ? ShedLevel.HEAT_SHED : ShedLevel.FULL;
      decided = true;
    }
    boolean unseen = !trusted && !shorePresent && !chargerFull;
    blindNow = blind.step(unseen, tripMillis, blindAfterMillis);
    boolean longBlind = blind.step(unseen, 0, blindHeatShedMillis);
    int down = ShedLevel.FULL;
    for (int i = ShedLevel.SET_BACK; i <= ShedLevel.STANDBY; i++) {
      if (enterDelay[i].step(trusted && value <= enter[i], tripMillis, enterDelayMillis)) {
        down = i;
      }
    }
    if (blindNow) {
      // Rule B11; a level that was only assumed gives way to survival.
      int blindLevel = longBlind ? ShedLevel.HEAT_SHED : ShedLevel.SURVIVAL;
      if (!decided) {
        decided = true;
        level = blindLevel;
      }
      down = blindLevel > down ? blindLevel : down;
    }
    if (charge.emergency()) {
      decided = true;
      down = ShedLevel.STANDBY;
    }
    move(releaseMillis, down, charge, chargerFull);
  }

  /** No battery is fitted: nothing is ever shed. */
  void bypass() {
    level = ShedLevel.FULL;
  }

  private void move(int releaseMillis, int down, ChargeMeasure charge, boolean chargerFull) {
    if (down > level) {
      level = down;
      leaveDelay.reset();
      if (level >= ShedLevel.HEAT_SHED && shedArmed) {
        sheds.add();
        shedArmed = false;
        shedNow = true;
      }
      return;
    }
    boolean may =
        level > ShedLevel.FULL
            && (charge.trusted() ? charge.value() >= leave[level] : chargerFull)
            && (level < ShedLevel.STANDBY || charge.chargingOrUnknown())
            && down < level;
    if (leaveDelay.step(may, releaseMillis, leaveDelayNowMillis())) {
      level--;
      decided = true;
      shedArmed = true;
      leaveDelay.reset();
    }
  }

  /** The leave delay, doubled for every shed from the stated one on, at most a day (rule B10). */
  int leaveDelayNowMillis() {
    int delay = leaveDelayMillis;
    for (int n = sheds.count(); n >= doubleFrom && delay < dayMillis; n--) {
      delay *= 2;
    }
    return delay < dayMillis ? delay : dayMillis;
  }

  /** One of {@link ShedLevel}'s. */
  int level() {
    return level;
  }

  /** The measure has been untrusted for the stated time with no other sign of charge. */
  boolean blind() {
    return blindNow;
  }

  /** A shed was counted in this step. */
  boolean shedNow() {
    return shedNow;
  }

  int shedsInDay() {
    return sheds.count();
  }

  @Override
  public void reset() {
    level = ShedLevel.HEAT_SHED;
    decided = false;
    shedArmed = true;
    for (int i = 0; i < enterDelay.length; i++) {
      enterDelay[i].reset();
    }
    leaveDelay.reset();
    blind.reset();
    sheds.reset();
    blindNow = false;
    shedNow = false;
  }

  @Override
  public void save(Words out) {
    out.put(level);
    out.put(decided);
    out.put(shedArmed);
    for (int i = 0; i < enterDelay.length; i++) {
      enterDelay[i].save(out);
    }
    leaveDelay.save(out);
    blind.save(out);
    sheds.save(out);
  }

  @Override
  public void restore(Words in) {
    level = in.take(ShedLevel.FULL, ShedLevel.STANDBY);
    decided = in.takeFlag();
    shedArmed = in.takeFlag();
    for (int i = 0; i < enterDelay.length; i++) {
      enterDelay[i].restore(in);
    }
    leaveDelay.restore(in);
    blind.restore(in);
    sheds.restore(in);
  }
}
