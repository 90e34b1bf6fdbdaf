package org.broodbench.controller;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayDeque;
import java.util.Deque;

/** C1 to C6 and C10, watched from outside with true time and no look into the core. */
final class Invariants implements Player.Watcher {
  private static final long HOUR = 3_600_000L;
  private static final long DAY = 86_400_000L;

  private final Settings settings;
  private final int shedsMost;
  private long now;
  private boolean heater;
  private int supply = -1;
  private int level = -1;
  private long lastStop;
  private long lastStart;
  private long leaveHeldSince = -1;
  private boolean recovered = true;
  private final Deque<Long> starts = new ArrayDeque<>();
  private final Deque<Long> sheds = new ArrayDeque<>();
  int startsSeen;
  int shedsSeen;

  Invariants(Settings settings) {
    this.settings = settings;
    this.shedsMost = shedBound(settings);
  }

  /**
   * The most sheds in a rolling 24 h by arithmetic: a shed, its whole leave delay, the next shed at
   * once, with delays doubled as B10 says.
   */
  static int shedBound(Settings settings) {
    long at = 0;
    int sheds = 1;
    while (true) {
      long delay = settings.get(Setting.SHED_LEAVE_DELAY_MILLIS);
      for (int n = sheds; n >= settings.get(Setting.SHED_DOUBLE_FROM); n--) {
        delay *= 2;
      }
      at += Math.min(delay, DAY);
      if (at >= DAY) {
        return sheds;
      }
      sheds++;
    }
  }

  @Override
  public void powerLost() {
    if (heater) {
      lastStop = now;
    }
    heater = false;
    readyMillis = 0;
    supply = Commands.SUPPLY_NONE;
  }

  @Override
  public void step(long trueMillis, boolean counted, Readings in, Commands out) {
    now += trueMillis;
    released += Math.min(trueMillis, 60_000);
    starts(out);
    limits(in, out);
    assertFalse(out.heater && out.fan && out.fanReason == Reason.COOLING, "C5: heater with fan");
    if (supply >= 0 && out.supply != supply) {
      assertFalse(out.heater, "C5: heater closed while the supply changes");
      assertTrue(
          supply == Commands.SUPPLY_NONE
              || out.supply == Commands.SUPPLY_NONE
              || !settings.is(Setting.FITTED_SUPPLY_SELECT),
          "C5: supply changed without a break");
    }
    supply = out.supply;
    levels(trueMillis, counted, in, out);
    liveness(trueMillis, counted, in, out);
    heater = out.heater;
  }

  /**
   * C9 from outside: when nothing that can be seen forbids heat for so long that minimum off, two
   * ticks, and the regaining of trust in the pan (rate void and gain: 120 s, alarm lag 120 s) are
   * over, heat is on.
   */
  private void liveness(long trueMillis, boolean counted, Readings in, Commands out) {
    boolean sourcesStay = sourcesStay(in);
    boolean ready =
        out.governingCentiC != Commands.NO_TEMPERATURE
            && out.governingCentiC
                <= out.workingSetPointCentiC - settings.get(Setting.HEAT_DIFFERENTIAL_CENTI_K)
            && out.governingHighCentiC < out.workingSetPointCentiC
            && out.supply != Commands.SUPPLY_NONE
            && (out.shedLevel <= ShedLevel.SET_BACK || out.supply == Commands.SUPPLY_SHORE)
            && !out.fan
            && out.fanReason == Reason.NONE
            && (out.alarms & FORBIDDING) == 0
            && below(in.pan, 3600)
            && Math.abs(in.pan.value - lastPanCentiC) <= 200
            && sourcesStay
            && below(in.broodA, settings.get(Setting.LIMIT_BROOD_CENTI_C) - 50)
            && below(in.broodB, settings.get(Setting.LIMIT_BROOD_B_CENTI_C) - 50)
            && out.serviceRemainingMillis == 0
            && out.testPhase == 0
            && startsReleased.stream().filter(start -> start > released - HOUR).count()
                < settings.get(Setting.RELAY_STARTS_PER_HOUR);
    lastPanCentiC = Math.max(-30_000, Math.min(in.pan.value, 30_000));
    if (!ready || !counted) {
      readyMillis = 0;
      return;
    }
    readyMillis += Math.min(trueMillis, 60_000);
    if (readyMillis > settings.get(Setting.RELAY_MIN_OFF_MILLIS) + 360_000L) {
      assertTrue(out.heater, "C9: off though nothing forbids: " + Reason.name(out.heaterReason));
      livenessSeen++;
    }
  }

  /** A source that comes or goes puts a transfer on its way, which opens the heater (S6, S7). */
  private boolean sourcesStay(Readings in) {
    int lowest = settings.get(Setting.BATTERY_LOWEST_MILLI_V);
    boolean battery = !(in.battery.valid && in.battery.value < lowest);
    boolean stay = battery == lastBattery && in.shorePresent == lastShore;
    lastBattery = battery;
    lastShore = in.shorePresent;
    return stay || !settings.is(Setting.FITTED_SUPPLY_SELECT);
  }

  private static boolean below(Sample sample, int centiC) {
    return sample.valid && sample.ageMillis == 0 && sample.value > -5500 && sample.value < centiC;
  }

  private static final int FORBIDDING =
      1 << Alarm.TRIP_LATCHED
          | 1 << Alarm.WELDED
          | 1 << Alarm.EFFECT
          | 1 << Alarm.PAN_PROBE
          | 1 << Alarm.PAN_TRIP
          | 1 << Alarm.BROOD_LIMIT
          | 1 << Alarm.BLIND
          | 1 << Alarm.PROBE_STUCK;

  private long readyMillis;
  private int lastPanCentiC;
  private boolean lastBattery;

  /** Time as what forbids counts it: a late step is at most a minute (T3). */
  private long released;

  private final Deque<Long> startsReleased = new ArrayDeque<>();
  private boolean lastShore;
  int livenessSeen;

  private void starts(Commands out) {
    if (out.heater && !heater) {
      long off = now - lastStop;
      assertTrue(
          off >= settings.get(Setting.RELAY_MIN_OFF_MILLIS), "C1: started after " + off + " ms");
      starts.add(now);
      startsReleased.add(released);
      startsSeen++;
      lastStart = now;
      while (starts.peek() <= now - HOUR) {
        starts.remove();
      }
      assertTrue(
          starts.size() <= settings.get(Setting.RELAY_STARTS_PER_HOUR),
          "C4: " + starts.size() + " starts in an hour");
    }
    if (!out.heater && heater) {
      lastStop = now;
      if (now - lastStart < settings.get(Setting.RELAY_MIN_ON_MILLIS)) {
        assertNotEquals(Reason.NONE, out.heaterStopReason, "C2: early stop without a reason");
        assertTrue(
            !Reason.stopKind(out.heaterStopReason).equals("thermostat"), "C2: kind of early stop");
      }
    }
  }

  private void limits(Readings in, Commands out) {
    if (!out.heater) {
      return;
    }
    boolean alike = settings.is(Setting.BROOD_B_LIKE_PLACE);
    int limit = settings.get(Setting.LIMIT_BROOD_CENTI_C);
    int limitB = alike ? limit : settings.get(Setting.LIMIT_BROOD_B_CENTI_C);
    assertFalse(atLimit(in.broodA, limit), "C3: probe A at its limit");
    assertFalse(
        settings.is(Setting.FITTED_BROOD_B) && atLimit(in.broodB, limitB), "C3: B at its limit");
    assertFalse(atLimit(in.pan, settings.get(Setting.LIMIT_PAN_CENTI_C)), "C3: pan at its limit");
    assertTrue(out.governingHighCentiC < limit, "C10: trusted brood at its limit");
    assertNotEquals(Commands.SUPPLY_NONE, out.supply, "C3: no supply");
    assertTrue(
        out.shedLevel < ShedLevel.HEAT_SHED || out.supply == Commands.SUPPLY_SHORE,
        "C3: heat at shed level " + out.shedLevel);
    assertTrue(
        out.governingCentiC != Commands.NO_TEMPERATURE || settings.is(Setting.FALLBACK_ALLOWED),
        "C3: no trusted temperature");
  }

  private static boolean atLimit(Sample sample, int limit) {
    return sample.valid
        && sample.ageMillis >= 0
        && sample.ageMillis <= 60_000
        && sample.value >= limit
        && sample.value <= 12_500
        && sample.value != 8500;
  }

  /** C6: the leave condition is read off the readings and the corrected volts that are shown. */
  private void levels(long trueMillis, boolean counted, Readings in, Commands out) {
    if (!settings.is(Setting.FITTED_BATTERY)) {
      assertTrue(out.shedLevel == ShedLevel.FULL, "B13");
      return;
    }
    if (level > ShedLevel.FULL && level >= 0) {
      boolean byCharge = settings.is(Setting.SHED_BY_STATE_OF_CHARGE);
      int leave = settings.get(SettingsCheck.leave(level, byCharge));
      boolean seen = byCharge ? in.stateOfCharge.value >= leave : out.correctedMilliV >= leave;
      // While the reading is missing the last good value stands for at most 30 s, or charger-full.
      boolean doubtful = byCharge ? !in.stateOfCharge.valid : out.correctedMilliV == 0;
      boolean holds = seen || doubtful || in.chargerFull || odd(byCharge, in);
      if (!holds) {
        leaveHeldSince = -1;
      } else if (leaveHeldSince < 0) {
        leaveHeldSince = now;
      }
      // The very first trusted measure decides the level at power-up (B12) without a delay.
      boolean decision = level == ShedLevel.HEAT_SHED && out.shedLevel == ShedLevel.FULL;
      boolean powerUp = level == ShedLevel.HEAT_SHED && !everDecided;
      if (out.shedLevel < level && !decision && !powerUp) {
        assertTrue(out.shedLevel == level - 1, "C6: recovered by more than one level");
        assertTrue(
            leaveHeldSince >= 0
                && now - leaveHeldSince >= settings.get(Setting.SHED_LEAVE_DELAY_MILLIS),
            "C6: recovered too early");
      }
      if (decision) {
        assertFalse(everDecided, "C6: heat shed to full at once");
      }
    }
    if (out.shedLevel != level) {
      leaveHeldSince = -1;
      everDecided = everDecided || level >= 0;
    }
    if (level >= 0 && out.shedLevel > level && out.shedLevel >= ShedLevel.HEAT_SHED && recovered) {
      recovered = false;
      shedsSeen++;
      sheds.add(now);
      while (sheds.peek() <= now - DAY) {
        sheds.remove();
      }
      assertTrue(sheds.size() <= shedsMost, "C6: " + sheds.size() + " sheds in a day");
    }
    if (level >= 0 && out.shedLevel < level) {
      recovered = true;
    }
    level = out.shedLevel;
  }

  private boolean everDecided;

  private static boolean odd(boolean byCharge, Readings in) {
    Sample sample = byCharge ? in.stateOfCharge : in.battery;
    return !sample.valid || sample.ageMillis != 0 || sample.value < 0 || sample.value > 17_000;
  }
}
