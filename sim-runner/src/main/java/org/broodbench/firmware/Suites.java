package org.broodbench.firmware;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.broodbench.controller.Chemistry;
import org.broodbench.controller.ProbePlace;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;

/**
 * The shipped suites: rigs that together fit every optional part and both kinds of battery, each
 * with its own timings, with short ones and with varied settings, played with jitter and on the
 * dot.
 */
public final class Suites {
  /** Entries in one vector. */
  static final int STEPS = 2000;

  /** From so many entries on, ways to each change come first. */
  private static final long MANY = 100_000;

  /** Changes of what is shown that are looked for in one rig of the shipped suites. */
  private static final int CHANGES = 300;

  private static final int POWER_UPS = 300;
  private static final int POWER_UP_STEPS = 80;

  private static final int FOCUSED = 12;
  private static final int FOCUSED_STEPS = 1000;
  private static final int DAYS_STEPS = 2200;

  private Suites() {}

  private static Settings comb(Chemistry chemistry) {
    return Settings.defaults(ProbePlace.BROOD_COMB, chemistry);
  }

  /** Everything but supply selection and the two ways to measure heater current and panel power. */
  private static Settings full() {
    return comb(Chemistry.AGM)
        .with(Setting.FITTED_BROOD_B, true)
        .with(Setting.FITTED_TOP, true)
        .with(Setting.FITTED_OUTDOOR, true)
        .with(Setting.FITTED_HUMIDITY, true)
        .with(Setting.FITTED_BATTERY_CURRENT, true)
        .with(Setting.FITTED_INVERTER, true)
        .with(Setting.FITTED_ISOLATION, true)
        .with(Setting.PURGE_TIMED_EVERY_MILLIS, 3_600_000);
  }

  /** A name and settings. */
  record Rig(String name, Settings settings) {}

  static List<Rig> rigs() {
    Settings lithium =
        comb(Chemistry.LITHIUM_IRON_PHOSPHATE)
            .with(Setting.FITTED_HEATER_CURRENT, true)
            .with(Setting.FITTED_OUTDOOR, true)
            .with(Setting.FITTED_HUMIDITY, true);
    return List.of(
        new Rig("plain", comb(Chemistry.AGM)),
        new Rig("full", full()),
        new Rig(
            "two supplies",
            full()
                .with(Setting.FITTED_SUPPLY_SELECT, true)
                .with(Setting.SUPPLY_PREFER_BATTERY, true)
                .with(Setting.FITTED_BATTERY_CURRENT, false)
                .with(Setting.FITTED_PANEL_POWER, true)
                .with(Setting.HEAT_SOAK_CENTI_K, 100)),
        new Rig("lithium", lithium.with(Setting.FALLBACK_ALLOWED, false)),
        new Rig(
            "lithium, all fitted",
            lithium
                .with(Setting.FITTED_BROOD_B, true)
                .with(Setting.FITTED_BATTERY_CURRENT, true)
                .with(Setting.FITTED_PANEL_POWER, true)
                .with(Setting.FITTED_INVERTER, true)
                .with(Setting.FITTED_SUPPLY_SELECT, true)),
        new Rig(
            "second probe elsewhere",
            full()
                .with(Setting.BROOD_B_LIKE_PLACE, false)
                .with(Setting.LIMIT_BROOD_B_CENTI_C, 3000)
                .with(Setting.RELAY_STARTS_PER_HOUR, 2)
                .with(Setting.RELAY_MIN_OFF_MILLIS, 60_000)
                .with(Setting.RELAY_MIN_ON_MILLIS, 30_000)
                .with(Setting.SHED_KEEP_INVERTER, true)),
        new Rig(
            "nest edge, no battery",
            Settings.defaults(ProbePlace.NEST_EDGE, Chemistry.FLOODED)
                .with(Setting.FITTED_BATTERY, false)
                .with(Setting.FITTED_FAN, false)),
        new Rig(
            "box air, shore first",
            Settings.defaults(ProbePlace.BOX_AIR, Chemistry.FLOODED)
                .with(Setting.FITTED_SUPPLY_SELECT, true)
                .with(Setting.FITTED_OUTDOOR, true)
                .with(Setting.FITTED_HEATER_CURRENT, true)
                .with(Setting.FITTED_INVERTER, true)));
  }

  /** The same rig with timings so short that every delay ends many times in a vector. */
  static Settings hurried(Settings settings) {
    return settings
        .with(Setting.TRUST_HOLD_MILLIS, 5000)
        .with(Setting.TRUST_GAIN_MILLIS, 2000)
        .with(Setting.TRUST_OLDEST_MILLIS, 5000)
        .with(Setting.TRUST_STUCK_MILLIS, 60_000)
        .with(Setting.TRUST_STUCK_OTHER_CENTI_K, 100)
        .with(Setting.HEAT_RAMP_CENTI_K_PER_H, 6000)
        .with(Setting.HEAT_REBASE_MILLIS, 120_000)
        .with(Setting.WELD_BLANK_MILLIS, 60_000)
        .with(Setting.WELD_ABOVE_CENTI_K, 300)
        .with(Setting.WELD_LOOK_MILLIS, 60_000)
        .with(Setting.EFFECT_JUDGE_MILLIS, 60_000)
        .with(Setting.EFFECT_SHARE_ON_MILLIS, 30_000)
        .with(Setting.EFFECT_SHARE_WINDOW_MILLIS, 120_000)
        .with(Setting.RELAY_MIN_ON_MILLIS, 10_000)
        .with(Setting.RELAY_MIN_OFF_MILLIS, 20_000)
        .with(Setting.RELAY_STARTS_PER_HOUR, 12)
        .with(Setting.SHED_ENTER_DELAY_MILLIS, 5000)
        .with(Setting.SHED_LEAVE_DELAY_MILLIS, 60_000)
        .with(Setting.SHED_BLIND_AFTER_MILLIS, 10_000)
        .with(Setting.SHED_BLIND_ON_MILLIS, 20_000)
        .with(Setting.SHED_BLIND_WINDOW_MILLIS, 60_000)
        .with(Setting.SHED_BLIND_HEAT_SHED_MILLIS, 120_000)
        .with(Setting.FAN_COLD_ON_MILLIS, 20_000)
        .with(Setting.FAN_COLD_WINDOW_MILLIS, 60_000)
        .with(Setting.FAN_MIN_ON_MILLIS, 5000)
        .with(Setting.FAN_MIN_OFF_MILLIS, 10_000)
        .with(
            Setting.FAN_OFF_CENTI_C,
            settings.get(Setting.HEAT_SET_POINT_CENTI_C)
                + settings.get(Setting.HEAT_SOAK_CENTI_K)
                + 50)
        .with(Setting.PURGE_ON_MILLIS, 20_000)
        .with(Setting.PURGE_WINDOW_MILLIS, 60_000)
        .with(Setting.PURGE_WET_MILLIS, 60_000)
        .with(
            Setting.PURGE_TIMED_EVERY_MILLIS,
            settings.is(Setting.PURGE_TIMED_EVERY_MILLIS) ? 120_000 : 0)
        .with(Setting.PURGE_TIMED_FOR_MILLIS, 30_000)
        .with(Setting.SUPPLY_DEAD_MILLIS, 2000)
        .with(Setting.SUPPLY_DWELL_MILLIS, 10_000)
        .with(Setting.SERVICE_HOLD_MILLIS, 60_000)
        .with(Setting.TEST_MILLIS, 20_000)
        .with(Setting.TEST_WAIT_MILLIS, 60_000)
        .with(Setting.ALARM_BROOD_LOW_MILLIS, 30_000);
  }

  /**
   * The same rig with other values for about half of its settings: anywhere in their bounds, or
   * doubled or halved; only what the core takes. Some delays are then longer than the 60 s that a
   * gap may count towards a release (rule T3).
   */
  static Settings varied(Settings settings, long seed) {
    Random random = new Random(seed);
    Settings varied = seed % 3 == 0 ? settings.with(Setting.TRUST_GAIN_MILLIS, 150_000) : settings;
    for (Setting setting : Setting.values()) {
      boolean flag = setting.low() == 0 && setting.high() == 1;
      if (random.nextInt(flag ? 6 : 2) > 0) {
        continue;
      }
      int span = setting.high() - setting.low();
      int value =
          switch (random.nextInt(flag ? 1 : 3)) {
            case 0 -> setting.low() + random.nextInt(span + 1);
            case 1 -> settings.get(setting) / 2;
            default -> Math.min(setting.high() / 2, settings.get(setting)) * 2;
          };
      Settings next = varied.with(setting, value);
      if (next.problems().isEmpty()) {
        varied = next;
      }
    }
    return varied;
  }

  /**
   * Vectors over all rigs until they have about so many entries.
   *
   * @param entries at least one vector a rig is given
   */
  public static List<Script> shipped(long entries) {
    List<Script> scripts = new ArrayList<>();
    if (entries > MANY) {
      for (Rig rig : rigs()) {
        Settings quick = hurried(rig.settings());
        scripts.addAll(new TransitionWalk(quick).vectors(rig.name(), CHANGES));
      }
      scripts.addAll(powerUps());
      scripts.addAll(focused());
      scripts.addAll(ExactScripts.of(full()));
    }
    scripts.addAll(wandering(entries));
    return scripts;
  }

  /** Many short vectors: what the one before left behind must not be seen after a power-up. */
  private static List<Script> powerUps() {
    List<Script> scripts = new ArrayList<>();
    for (int seed = 1_000_001; seed <= 1_000_000 + POWER_UPS; seed++) {
      Rig rig = rigs().get(seed % rigs().size());
      Settings settings = seed % 4 == 0 ? rig.settings() : hurried(rig.settings());
      String name = rig.name() + ", power-up, seed " + seed;
      scripts.add(new WanderingScript(name, settings, seed, seed % 2 == 0, POWER_UP_STEPS, true));
    }
    return scripts;
  }

  /** Rules that wandering readings seldom put to the test. */
  private static List<Script> focused() {
    List<Script> scripts = new ArrayList<>();
    Settings timed =
        full()
            .with(Setting.FITTED_BROOD_B, false)
            .with(Setting.LIMIT_TRIPS_TO_LATCH, 3)
            .with(Setting.BROOD_B_LIKE_PLACE, true);
    List<Settings> some =
        List.of(
            hurried(timed),
            hurried(full()),
            hurried(full().with(Setting.FITTED_OUTDOOR, false)),
            hurried(full().with(Setting.FITTED_HEATER_CURRENT, true)),
            timed.with(Setting.TRUST_GAIN_MILLIS, 150_000),
            timed
                .with(Setting.TRUST_GAIN_MILLIS, 150_000)
                .with(Setting.FITTED_HEATER_CURRENT, true));
    for (FocusedScript.Focus focus : FocusedScript.Focus.values()) {
      for (int seed = 1; seed <= FOCUSED; seed++) {
        Settings settings = some.get(seed % some.size());
        String name = focus.name().toLowerCase(Locale.ROOT) + ", seed " + seed;
        int steps = focus == FocusedScript.Focus.DAYS ? DAYS_STEPS : FOCUSED_STEPS;
        scripts.add(new FocusedScript(name, settings, focus, seed, steps));
      }
    }
    return scripts;
  }

  private static List<Script> wandering(long entries) {
    List<Script> scripts = new ArrayList<>();
    long seed = 1;
    int steps = (int) Math.max(40, Math.min(STEPS, entries / (6L * rigs().size())));
    for (long given = 0; given < entries; ) {
      for (Rig rig : rigs()) {
        seed++;
        String n = rig.name() + ", seed " + seed;
        Settings quick = hurried(rig.settings());
        scripts.add(new WanderingScript(n + ", quick", quick, seed, seed % 3 != 0, steps, true));
        scripts.add(new WanderingScript(n, rig.settings(), seed, seed % 2 == 0, steps, true));
        Settings other = varied(seed % 2 == 0 ? quick : rig.settings(), seed);
        scripts.add(new WanderingScript(n + ", varied", other, seed, seed % 2 != 0, steps, true));
        given += 3L * steps;
      }
    }
    return scripts;
  }

  /** A script with every entry written out. */
  public static Script.Fixed asList(Script script) {
    return script instanceof Script.Fixed fixed ? fixed : Reference.record(script, Long.MAX_VALUE);
  }

  /**
   * Vectors for one set of settings, as a board keeps them or a scenario gives them.
   *
   * @param keyed settings change now and then
   */
  public static List<Script> of(String name, Settings settings, long entries, boolean keyed) {
    List<Script> scripts = new ArrayList<>();
    int steps = (int) Math.max(40, Math.min(STEPS, entries / 8));
    for (long given = 0, seed = 1; given < entries; given += steps, seed++) {
      scripts.add(
          new WanderingScript(
              name + ", seed " + seed, settings, seed, seed % 2 == 0, steps, keyed));
    }
    return scripts;
  }

  /**
   * What is written out for a board: ways to each change for every rig, vectors for what chance
   * seldom meets, and short wandering ones.
   *
   * @param entries about how many wandering entries
   */
  public static List<Script> forBoards(long entries) {
    List<Script> scripts = new ArrayList<>();
    for (Rig rig : rigs()) {
      scripts.addAll(new TransitionWalk(hurried(rig.settings())).vectors(rig.name(), 100_000));
    }
    scripts.addAll(ExactScripts.of(full()));
    scripts.addAll(wandering(entries));
    return scripts;
  }
}
