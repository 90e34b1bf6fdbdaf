package org.broodbench.firmware;

import java.util.Random;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Readings;
import org.broodbench.controller.Sample;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;

/**
 * Readings that stay at what one rule is about, where wandering seldom gets: both sides of its
 * thresholds to the hundredth of a degree, both sides of its times to the millisecond.
 *
 * @param seed of all chance
 * @param steps how many entries
 */
record FocusedScript(String name, Settings settings, Focus focus, long seed, int steps)
    implements Script {
  /** What a vector is about. */
  enum Focus {
    /** Runs whose proof hangs on the pan standing well above (rules E1 to E3). */
    EFFECT,
    /** A pan that stays warm long after off (rules D1 and D2). */
    WELD,
    /** Purges by time, under periods that change (rule F10). */
    TIMED,
    /** No measure of the battery (rule B11 and its share). */
    BLIND,
    /** Trips that are hours apart, over a day and a half (rule L7). */
    DAYS,
    /** A charger full before the first measure (rules B8 and B12). */
    FIRST_MEASURE
  }

  @Override
  public Player play() {
    return new Stay();
  }

  /** One playing. */
  private final class Stay implements Player {
    private final Random random = new Random(seed);
    private final Readings in = new Readings();
    private final int setC = settings.get(Setting.HEAT_SET_POINT_CENTI_C);
    private int left = steps;
    private int now;
    private int step;
    private int broodC = setC - 500;
    private int apartC;
    private int panC = setC - 600;
    private int outdoorC = 500;
    private int buttonFor;
    private int tripFor;
    private int deafFor = 20 + random.nextInt(60);
    private int tick = 1000;
    private boolean cold;
    private final boolean panDead = random.nextInt(3) == 0;

    private boolean chance(int oneIn) {
      return random.nextInt(oneIn) == 0;
    }

    /** On it, or one beside it. */
    private int about(int value) {
      return value + random.nextInt(3) - 1;
    }

    private int get(Setting setting) {
      return settings.get(setting);
    }

    @Override
    public Tick next(Commands last) {
      if (left-- <= 0) {
        return null;
      }
      if (focus == Focus.TIMED && step > 0 && chance(40)) {
        int every =
            chance(2)
                ? get(Setting.PURGE_TIMED_EVERY_MILLIS)
                : get(Setting.PURGE_TIMED_FOR_MILLIS) + 60_000 + random.nextInt(60_000);
        return Tick.setting(Setting.PURGE_TIMED_EVERY_MILLIS, every);
      }
      int dt = step == 0 ? 0 : time(last);
      now += dt;
      step++;
      steady();
      switch (focus) {
        case EFFECT -> effect();
        case WELD -> weld();
        case TIMED -> timed();
        case BLIND -> blind();
        case DAYS -> days();
        case FIRST_MEASURE -> firstMeasure();
      }
      in.broodA.put(broodC);
      in.broodB.put(broodC + apartC);
      in.pan.put(panC);
      in.outdoor.put(outdoorC);
      // shorter than the time for which a value is held: the probe stays trusted without a sample
      if ((focus == Focus.EFFECT || focus == Focus.WELD) && dt < get(Setting.TRUST_HOLD_MILLIS)) {
        lose(in.pan, in.outdoor, in.heaterCurrent);
      }
      if (focus == Focus.EFFECT && panDead && seed % 2 == 0) {
        in.pan.clear();
      }
      return Tick.step(now, in);
    }

    private void steady() {
      in.top.put(broodC - 300 + step % 2);
      in.humidity.put(600);
      in.battery.put(get(Setting.SHED_SET_BACK_LEAVE_MILLI_V) + 400);
      in.batteryCurrent.put(500);
      in.stateOfCharge.put(900);
      in.batteryTemperature.put(1000);
      in.heaterCurrent.put(0);
      in.panelPower.put(0);
    }

    private void lose(Sample... samples) {
      for (Sample sample : samples) {
        if (chance(5)) {
          sample.clear();
        }
      }
    }

    private int time(Commands last) {
      if (focus == Focus.DAYS) {
        return 60_000;
      }
      if (chance(60)) {
        tick = new int[] {1000, 5000, 10_000}[random.nextInt(3)];
      }
      if (!chance(7)) {
        return tick;
      }
      int some =
          switch (focus) {
            case EFFECT -> get(Setting.EFFECT_JUDGE_MILLIS);
            case WELD ->
                new int[] {
                      get(Setting.WELD_BLANK_MILLIS),
                      get(Setting.WELD_LOOK_MILLIS),
                      get(Setting.WELD_AFTER_MILLIS)
                    }
                    [random.nextInt(3)];
            case TIMED -> get(Setting.PURGE_TIMED_FOR_MILLIS);
            case BLIND -> get(Setting.SHED_BLIND_ON_MILLIS);
            default -> get(Setting.SHED_LEAVE_DELAY_MILLIS);
          };
      return chance(20) ? 200_000 : Math.max(0, about(some));
    }

    private void apart() {
      if (chance(60)) {
        apartC = chance(2) ? 0 : 40;
      }
    }

    /** The pan stands at the threshold before the run and does not rise in it. */
    private void effect() {
      apart();
      if (chance(50)) {
        int above = get(Setting.EFFECT_ABOVE_CENTI_K);
        panC = about(broodC + apartC + above);
        outdoorC = chance(2) ? 500 : about(panC - above);
      }
      if (chance(25)) {
        in.heaterCurrent.put(about(get(Setting.HEATER_RATED_MILLI_A) / 2));
      }
    }

    private void weld() {
      apart();
      cold ^= chance(80);
      broodC = cold ? setC - 500 : setC + 20;
      if (chance(40)) {
        int above = get(Setting.WELD_ABOVE_CENTI_K);
        panC = about(broodC + apartC + above);
        outdoorC = chance(2) ? 500 : about(panC - above);
      } else if (chance(4)) {
        panC = about(panC);
      }
      if (chance(15)) {
        in.heaterCurrent.put(get(Setting.HEATER_RATED_MILLI_A));
        in.heaterCurrent.ageMillis = Math.max(0, about(1000 * random.nextInt(3)));
      }
      press();
    }

    /** A long press now and then, to clear what was latched. */
    private void press() {
      if (buttonFor > 0) {
        buttonFor--;
      } else if (chance(80)) {
        buttonFor = 2 + random.nextInt(8);
      }
      in.button = buttonFor > 0;
    }

    private void timed() {
      broodC = setC + 20;
      outdoorC = get(Setting.PURGE_OUTDOOR_CENTI_C) + 500;
    }

    private void blind() {
      in.battery.clear();
      in.stateOfCharge.clear();
      panC = setC - 600 + step % 9 * 30;
      broodC = setC - 500 + step % 3;
    }

    private void days() {
      if (tripFor > 0) {
        tripFor--;
      } else if (step == 10 || step == 700 + seed || step == 1460 + 7 * seed) {
        tripFor = 2;
      }
      panC = tripFor > 0 ? get(Setting.LIMIT_PAN_TRIP_CENTI_C) : setC - 600 + step % 7;
      broodC = setC - 500 + step % 5;
    }

    private void firstMeasure() {
      in.chargerFull = deafFor > 0;
      if (deafFor > 0) {
        deafFor--;
        in.battery.clear();
        in.stateOfCharge.clear();
      }
    }
  }
}
