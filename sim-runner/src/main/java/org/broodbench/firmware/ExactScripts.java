package org.broodbench.firmware;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.Readings;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;

/**
 * Short vectors written by hand, each for a mistake that chance seldom meets: thresholds met to the
 * hundredth of a degree, delays to the millisecond, and time that a gap may count towards a release
 * only (rule T3).
 */
final class ExactScripts {
  private static final int OUTDOOR_C = 500;
  private static final int BAD_C = -12_700;

  /** A ramp and a step whose product is one short of an hour's worth (rule H3). */
  private static final int RAMP_CENTI_K_PER_H = 403;

  private static final int RAMP_STEP_MILLIS = 8933;

  private final List<Script> scripts = new ArrayList<>();
  private final Settings plain;

  private ExactScripts(Settings rig) {
    plain =
        rig.with(Setting.FITTED_OUTDOOR, true)
            .with(Setting.FITTED_BROOD_B, false)
            .with(Setting.FITTED_HUMIDITY, false)
            .with(Setting.FITTED_SUPPLY_SELECT, false);
  }

  /** All of them. */
  static List<Script> of(Settings rig) {
    ExactScripts exact = new ExactScripts(rig);
    exact.effect();
    exact.heldAtLimit();
    exact.weld();
    exact.ramp();
    exact.blindGap();
    exact.panel();
    exact.currentGap();
    return exact.scripts;
  }

  /** Entries of one vector as they are put together. */
  private final class Entries {
    private final Settings settings;
    private final Readings in = new Readings();
    private final List<Tick> ticks = new ArrayList<>();
    private int nowMillis;

    Entries(Settings settings, int broodC, int panC) {
      this.settings = settings;
      in.broodA.put(broodC);
      in.pan.put(panC);
      in.outdoor.put(OUTDOOR_C);
      in.top.put(broodC);
      in.battery.put(settings.get(Setting.SHED_SET_BACK_LEAVE_MILLI_V) + 400);
      in.batteryCurrent.put(0);
      in.stateOfCharge.put(900);
      in.batteryTemperature.put(1000);
    }

    Entries step(int dtMillis) {
      nowMillis += ticks.isEmpty() ? 0 : dtMillis;
      ticks.add(Tick.step(nowMillis, in));
      return this;
    }

    Entries steps(int count, int dtMillis) {
      for (int i = 0; i < count; i++) {
        step(dtMillis);
      }
      return this;
    }

    void keep(String name) {
      String number = ", case " + (1 + scripts.size());
      scripts.add(new Script.Fixed("exact " + name + number, settings, ticks));
    }
  }

  /**
   * Runs whose proof hangs on a pan that stands well above, or falls before it rises (rules E1 to
   * E3).
   */
  private void effect() {
    Settings quick = Suites.hurried(plain.with(Setting.FITTED_HEATER_CURRENT, true));
    int broodC = quick.get(Setting.HEAT_SET_POINT_CENTI_C) - 500;
    int aboveC = broodC + quick.get(Setting.EFFECT_ABOVE_CENTI_K);
    for (int off = -1; off <= 1; off++) {
      new Entries(quick, broodC, aboveC + off).steps(30, 5000).keep("effect");
      Entries outdoors = new Entries(quick, broodC, aboveC + 100);
      outdoors.in.outdoor.put(broodC + 100 + off);
      outdoors.steps(30, 5000).keep("effect");
    }
    Entries held = new Entries(quick, broodC, aboveC + 100);
    for (int i = 0; i < 30; i++) {
      held.in.outdoor.put(i < 4 || i % 2 == 0 ? broodC + 101 : BAD_C);
      held.step(5000);
    }
    held.keep("effect");
    for (int off = -1; off <= 1; off++) {
      Entries deep = new Entries(quick, broodC, broodC).steps(5, 5000);
      for (int i = 1; i <= 3; i++) {
        deep.in.pan.put(broodC - 20 * i);
        deep.step(5000);
      }
      deep.in.pan.put(broodC - 60 + quick.get(Setting.EFFECT_RISE_CENTI_K) + off);
      deep.steps(20, 5000).keep("effect");
    }
    Entries once = new Entries(quick, broodC, broodC).steps(8, 5000);
    once.in.heaterCurrent.put(quick.get(Setting.HEATER_RATED_MILLI_A) / 2 + 1);
    once.step(5000);
    once.in.heaterCurrent.clear();
    once.steps(20, 5000).keep("effect");
  }

  /** A brood probe that leaps to its limit, or stands there, and falls silent (rule L6). */
  private void heldAtLimit() {
    Settings quick = Suites.hurried(plain);
    int limitC = quick.get(Setting.LIMIT_BROOD_CENTI_C);
    int releaseC = limitC - quick.get(Setting.LIMIT_BROOD_DIFFERENTIAL_CENTI_K);
    for (int off = -1; off <= 1; off++) {
      Entries leap = new Entries(quick, releaseC + off, releaseC).steps(20, 5000);
      leap.in.testRequest = true;
      leap.in.broodA.put(12_000);
      leap.step(1000);
      leap.in.broodA.clear();
      leap.steps(8, 1000).keep("held at limit");
      Entries there = new Entries(quick, limitC + off, releaseC).steps(20, 5000);
      there.in.testRequest = true;
      there.in.broodA.clear();
      there.steps(8, 1000).keep("held at limit");
    }
  }

  /** A run of the heater that the thermostat ends; the pan stays warm. */
  private Entries ended(Settings quick) {
    int setC = quick.get(Setting.HEAT_SET_POINT_CENTI_C);
    int panC = setC + 10 + quick.get(Setting.WELD_ABOVE_CENTI_K) + 50;
    Entries e = new Entries(quick, setC - 100, panC).steps(8, 5000);
    e.in.broodA.put(setC + 10);
    return e.step(5000);
  }

  /** A pan that does not fall after off, and a current that is older than off (rules D1, D2). */
  private void weld() {
    // a pan that stays as it is must not be taken for stuck
    Settings quick = Suites.hurried(plain).with(Setting.TRUST_STUCK_MILLIS, 21_600_000);
    int blank = quick.get(Setting.WELD_BLANK_MILLIS);
    int look = quick.get(Setting.WELD_LOOK_MILLIS);
    ended(quick).step(blank - 1).step(1).step(look - 1).steps(4, 1).keep("weld");

    Entries second = ended(quick).step(blank);
    second.in.pan.value--;
    second.step(look).step(look - 1).steps(4, 1).keep("weld");

    Entries first = ended(quick).step(blank - 1000);
    int panC = first.in.pan.value;
    first.in.pan.put(BAD_C);
    first.step(1000);
    first.in.pan.put(panC - 1);
    first.step(look - 1000).steps(3, 1000).keep("weld");

    Entries last = ended(quick).step(blank).step(look - 1000);
    last.in.pan.put(BAD_C);
    last.steps(3, 1000).keep("weld");

    Settings measured = Suites.hurried(plain.with(Setting.FITTED_HEATER_CURRENT, true));
    int after = measured.get(Setting.WELD_AFTER_MILLIS);
    for (int age = 0; age <= 1000; age += 250) {
      Entries old = ended(measured);
      old.in.heaterCurrent.put(measured.get(Setting.HEATER_RATED_MILLI_A));
      old.in.heaterCurrent.ageMillis = age;
      old.step(after - 501).steps(3, 1).steps(4, 250).keep("weld by current");
    }
  }

  /** Remainders of the ramp that add up to one less than a hundredth of a degree. */
  private void ramp() {
    Settings slow = plain.with(Setting.HEAT_RAMP_CENTI_K_PER_H, RAMP_CENTI_K_PER_H);
    int setC = slow.get(Setting.HEAT_SET_POINT_CENTI_C);
    new Entries(slow, setC - 500, setC).steps(40, RAMP_STEP_MILLIS).keep("ramp");
    Entries there = new Entries(slow, setC - 50, setC).steps(40, RAMP_STEP_MILLIS);
    there.ticks.add(Tick.setting(Setting.HEAT_SET_POINT_CENTI_C, setC + 100));
    there.steps(5, RAMP_STEP_MILLIS).keep("ramp");
  }

  /** A gap counts in full towards the end of a share (rules T3, G1, B11). */
  private void blindGap() {
    int coldC = plain.get(Setting.HEAT_SURVIVAL_CENTI_C) - 300;
    Entries e = new Entries(plain, coldC, coldC + plain.get(Setting.EFFECT_ABOVE_CENTI_K) + 50);
    e.in.battery.clear();
    e.in.stateOfCharge.clear();
    e.steps(10, 60_000).steps(12, 200_000).keep("blind");
  }

  /** Standby ends by charging: exactly at what counts as charging, and not for want of trust. */
  private void panel() {
    Settings slow =
        Suites.hurried(
                plain
                    .with(Setting.FITTED_PANEL_POWER, true)
                    .with(Setting.FITTED_BATTERY_CURRENT, false))
            .with(Setting.TRUST_GAIN_MILLIS, 150_000);
    Entries lost = standby(slow);
    lost.in.panelPower.clear();
    lost.step(10_000);
    lost.in.panelPower.put(0);
    lost.step(10_000).steps(3, 200_000).keep("panel");
    for (int off = -1; off <= 1; off++) {
      Entries sun = standby(slow);
      sun.in.panelPower.put(slow.get(Setting.BATTERY_CHARGING_MILLI_W) + off);
      sun.steps(20, 10_000).keep("panel");
    }
  }

  private Entries standby(Settings slow) {
    Entries e = new Entries(slow, slow.get(Setting.HEAT_SET_POINT_CENTI_C), 3000);
    e.in.panelPower.put(0);
    e.in.battery.put(slow.get(Setting.SHED_STANDBY_ENTER_MILLI_V) - 100);
    e.steps(20, 10_000);
    e.in.battery.put(slow.get(Setting.SHED_SET_BACK_LEAVE_MILLI_V) + 400);
    return e.steps(10, 10_000);
  }

  /** After a gap a heater current is not trusted sooner, so it cannot tell of a dead heater. */
  private void currentGap() {
    Settings slow =
        Suites.hurried(plain.with(Setting.FITTED_HEATER_CURRENT, true))
            .with(Setting.TRUST_GAIN_MILLIS, 150_000)
            .with(Setting.EFFECT_SHARE_ON_MILLIS, 1_200_000)
            .with(Setting.EFFECT_SHARE_WINDOW_MILLIS, 2_400_000);
    Entries e = new Entries(slow, slow.get(Setting.HEAT_SET_POINT_CENTI_C) - 500, 3000);
    e.in.pan.clear();
    e.steps(22, 10_000);
    e.in.heaterCurrent.put(0);
    e.step(10_000).steps(3, 200_000).keep("current");
  }
}
