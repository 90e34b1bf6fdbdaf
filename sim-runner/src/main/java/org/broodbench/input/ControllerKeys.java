package org.broodbench.input;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.controller.Chemistry;
import org.broodbench.controller.ProbePlace;
import org.broodbench.controller.Setting;
import org.broodbench.controller.SettingProblem;
import org.broodbench.controller.Settings;
import org.broodbench.matter.Dimension;
import org.broodbench.matter.Units;
import org.broodbench.rig.ControllerSpec;
import org.broodbench.rig.ProbeSpec.Role;

/**
 * Keys of the controller. Bounds and most defaults are those of the controller itself; some
 * defaults follow the rig that the scenario describes.
 */
final class ControllerKeys {
  private static final String SET_POINT = "controller.heat.set_point";
  private static final String FAN_ON = "controller.fan.on_above";

  /** Own choice, in thousandths: a charge counter drifts by some hundredths over a week. */
  private static final int LEAST_CHARGE_GAP = 50;

  private ControllerKeys() {}

  static void declare(Keys.Builder keys) {
    keys.table("controller", "The board that runs the controller.");
    keys.quantity("controller.tick", "s", Dimension.TIME)
        .between("0.1 s", "60 s")
        .byDefault("1 s")
        .help("Time between two steps of the controller.");
    // a small board with one relay coil of 0.5 W at half duty; own choice
    keys.quantity("controller.power", "W", Dimension.POWER)
        .between("0 W", "20 W")
        .byDefault("0.6 W")
        .help("What the board draws, relay coils included.");
    keys.quantity("controller.heat_in_hive", "%", Dimension.RATIO)
        .between("0 %", "100 %")
        .byDefault("0 %")
        .help("Share of that power which warms the hive from inside.");
    // relays of 12 V drop out below about 6 V and pull in above 8; the rest is own choice
    keys.quantity("controller.brown_out", "V", Dimension.VOLTAGE)
        .between("2 V", "28 V")
        .byDefault("9.5 V; doubled at 24 V", v -> volts(v, 9.5))
        .help("Volts of the battery side under which the board resets and its relays open.");
    keys.quantity("controller.restart", "V", Dimension.VOLTAGE)
        .between("2 V", "30 V")
        .byDefault("10.5 V; doubled at 24 V", v -> volts(v, 10.5))
        .help("Volts at which it starts again.");
    keys.quantity("controller.boot_time", "s", Dimension.TIME)
        .between("0 s", "10 min")
        .byDefault("5 s")
        .help("Time at these volts until it runs.");
    group(keys, "heat", "The thermostat and the protection of the heater's relay.");
    group(keys, "fallback", "Heat by the pan probe alone.");
    group(keys, "fan", "The cooling fan.");
    group(keys, "purge", "The fan against damp.");
    group(keys, "limit", "Upper limits.");
    group(keys, "weld", "Finding a relay that does not open.");
    group(keys, "effect", "Finding a heater that does not heat.");
    group(keys, "trust", "Which readings are believed.");
    group(keys, "battery", "What the controller knows of the battery.");
    group(keys, "shed", "What is switched off to spare the battery, and when it returns.");
    group(keys, "supply", "Battery or shore power.");
    group(keys, "button", "The button.");
    group(keys, "alarm", "Alarms.");
  }

  private static String volts(Values v, double at12V) {
    return Units.write(at12V * BatteryKeys.nominalV(v) / 12, Units.get(Dimension.VOLTAGE, "V"));
  }

  private static void group(Keys.Builder keys, String name, String help) {
    keys.table("controller." + name, help);
    Settings usual = Settings.defaults(ProbePlace.BROOD_COMB, Chemistry.AGM);
    for (SettingKey key : SettingKeys.all()) {
      if (key.path().startsWith("controller." + name + ".")) {
        int count = usual.get(key.setting());
        key.declare(keys, count).byDefault(words(key, count), v -> defaultText(key, v));
      }
    }
  }

  /** The default in words: both or all three where it follows something. */
  private static String words(SettingKey key, int usual) {
    String text = key.write(usual);
    String edge = key.write(at(ProbePlace.NEST_EDGE, key.setting()));
    String air = key.write(at(ProbePlace.BOX_AIR, key.setting()));
    if (!text.equals(edge) || !text.equals(air)) {
      text += " at `brood_comb`, " + edge + " at `nest_edge`, " + air + " at `box_air`";
    }
    Settings lithium = Settings.defaults(ProbePlace.BROOD_COMB, Chemistry.LITHIUM_IRON_PHOSPHATE);
    if (lithium.get(key.setting()) != usual) {
      text += "; " + key.write(lithium.get(key.setting())) + " with `lfp`";
    }
    if (key.setting().name().endsWith("_MILLI_V")) {
      text += "; doubled at 24 V";
    }
    if (key.path().contains("_leave_")) {
      text += "; higher where the rig needs a wider gap";
    }
    return switch (key.setting()) {
      case HEAT_SURVIVAL_CENTI_C, HEAT_RAMP_FLOOR_CENTI_C ->
          text + ", at most the lowest set point of the run";
      case ALARM_BROOD_LOW_CENTI_C -> text + ", at most 1 K below the lowest set point of the run";
      case BATTERY_MILLI_OHM -> "battery and leads as they are";
      case BATTERY_WORST_MILLI_OHM -> "twice `resistance`";
      case HEATER_RATED_MILLI_A -> "from `heater.power` and the volts";
      case FAN_RATED_MILLI_A -> "from `fan.power` and the volts";
      default -> text;
    };
  }

  private static int at(ProbePlace place, Setting setting) {
    return Settings.defaults(place, Chemistry.AGM).get(setting);
  }

  private static String defaultText(SettingKey key, Values v) {
    int count = base(v).get(key.setting());
    if (key.path().contains("_leave_")) {
      return key.write(leave(key, count, v));
    }
    return switch (key.setting()) {
      case HEAT_SURVIVAL_CENTI_C, HEAT_RAMP_FLOOR_CENTI_C ->
          key.write(Math.min(count, centi(lowestSetPointC(v))));
      case ALARM_BROOD_LOW_CENTI_C -> key.write(Math.min(count, centi(lowestSetPointC(v)) - 100));
      case BATTERY_MILLI_OHM ->
          key.write(milli(1000, BatteryKeys.bankOhm(v) + PowerKeys.batteryLeadOhm(v)));
      case BATTERY_WORST_MILLI_OHM ->
          key.write(milli(2000, 2 * v.number("controller.battery.resistance")));
      case HEATER_RATED_MILLI_A ->
          key.write(Math.max(10, milli(100_000, heaterW(v) / BatteryKeys.nominalV(v))));
      case FAN_RATED_MILLI_A ->
          key.write(milli(20_000, v.number("fan.power") / BatteryKeys.nominalV(v)));
      default -> key.write(count);
    };
  }

  /**
   * A level is left where the controller would by itself, or as far above its beginning as this rig
   * needs: what a shed heater gives back in volts must not look like recovery.
   */
  private static int leave(SettingKey key, int usual, Values v) {
    double enter = v.number(key.path().replace("_leave_", "_enter_"));
    if (key.path().endsWith("_charge")) {
      return Math.min(1000, Math.max(usual, (int) Math.rint(enter * 1000) + LEAST_CHARGE_GAP));
    }
    double sagV =
        (v.number("controller.battery.heater_current") + v.number("controller.battery.fan_current"))
            * (v.number("controller.battery.worst_resistance")
                - v.number("controller.battery.resistance"));
    double needV =
        sagV
            + v.number("controller.battery.rebound")
            + v.number("controller.battery.reading_error");
    int leastMilliV = ((int) Math.ceil((enter + needV) * 100) + 1) * 10;
    return Math.min(100_000, Math.max(usual, leastMilliV));
  }

  /** The set point, or a lower one that an event brings: a colony is weaned by set points alone. */
  private static double lowestSetPointC(Values v) {
    double lowestC = v.number(SET_POINT);
    for (Values event : v.rows("event")) {
      if (event.text("what").equals("set_point")) {
        lowestC = Math.min(lowestC, event.number("set_point"));
      }
    }
    return lowestC;
  }

  private static int centi(double value) {
    return (int) Math.rint(value * 100);
  }

  private static int milli(int most, double value) {
    return (int) Math.min(most, Math.rint(value * 1000));
  }

  /** What the heater takes from the battery, the losses of an inverter at its load included. */
  private static double heaterW(Values v) {
    double powerW = v.number("heater.power");
    if (!HeaterKeys.onInverter(v) || powerW == 0) {
      return powerW;
    }
    double ratedW = Math.max(powerW, v.number("inverter.rated_power"));
    return powerW
        + v.number("inverter.idle")
        + v.number("inverter.linear_loss") * powerW
        + v.number("inverter.full_load_loss") * powerW * powerW / ratedW;
  }

  /** The controller's own defaults for this place, chemistry and nominal volts. */
  private static Settings base(Values v) {
    ProbePlace place = ProbePlace.valueOf(v.text("probe.brood_a.place").toUpperCase(Locale.ROOT));
    Chemistry chemistry =
        switch (PowerKeys.chemistry(v)) {
          case FLOODED -> Chemistry.FLOODED;
          // gel is held to the thresholds of glass mat: the same acid, the same open-circuit volts
          case AGM, GEL -> Chemistry.AGM;
          case LFP -> Chemistry.LITHIUM_IRON_PHOSPHATE;
        };
    Settings settings = Settings.defaults(place, chemistry);
    return BatteryKeys.nominalV(v) == 24 ? settings.atNominalVolts(24) : settings;
  }

  static Settings settings(Values v) {
    Settings settings =
        base(v)
            .with(Setting.FITTED_BROOD_B, ProbeKeys.fitted(v, Role.BROOD_B))
            .with(Setting.FITTED_PAN, ProbeKeys.fitted(v, Role.PAN))
            .with(Setting.FITTED_TOP, ProbeKeys.fitted(v, Role.TOP))
            .with(Setting.FITTED_OUTDOOR, ProbeKeys.fitted(v, Role.OUTDOOR))
            .with(Setting.FITTED_HUMIDITY, v.flag("sensor.humidity"))
            .with(Setting.FITTED_BATTERY_CURRENT, v.flag("sensor.battery_current"))
            .with(Setting.FITTED_STATE_OF_CHARGE, v.flag("sensor.state_of_charge"))
            .with(Setting.FITTED_HEATER_CURRENT, v.flag("sensor.heater_current"))
            .with(Setting.FITTED_FAN, v.number("fan.power") > 0)
            .with(Setting.FITTED_INVERTER, v.number("inverter.rated_power") > 0)
            .with(Setting.FITTED_SUPPLY_SELECT, v.number("shore.power") > 0)
            .with(
                Setting.BROOD_B_LIKE_PLACE,
                v.text("probe.brood_a.place").equals(v.text("probe.brood_b.place")));
    for (SettingKey key : SettingKeys.all()) {
      settings = key.put(settings, v);
    }
    return settings;
  }

  static ControllerSpec controller(Values v) {
    return new ControllerSpec(
        settings(v),
        (int) Math.rint(v.number("controller.tick") * 1000),
        v.number("controller.power"),
        v.number("controller.heat_in_hive"),
        v.number("controller.brown_out"),
        v.number("controller.restart"),
        v.number("controller.boot_time"));
  }

  static void check(Values v, Checks checks) {
    BatteryKeys.below(v, checks, "controller.brown_out", "controller.restart");
    boolean[] fanTold = {false};
    checks.run(
        () -> {
          double leastC = v.number(SET_POINT) + 1;
          if (v.number(FAN_ON) < leastC) {
            fanTold[0] = true;
            checks.refuse(
                FAN_ON,
                List.of(SET_POINT),
                "at least "
                    + SET_POINT
                    + " + 1 K = "
                    + Units.write(leastC, Units.get(Dimension.TEMPERATURE, "degC"))
                    + " ("
                    + v.whence(SET_POINT)
                    + ")",
                "The fan would blow out the heat that the heater makes."
                    + " Raise on_above or lower set_point.");
          }
        });
    checks.run(
        () -> {
          for (SettingProblem problem : settings(v).problems()) {
            report(problem, fanTold[0], checks);
          }
        });
    for (int i = 0; i < v.rowCount("event"); i++) {
      String row = "event." + i + ".";
      checks.run(() -> checkEvent(v, row, checks));
    }
  }

  /** A set point that the controller would refuse when it is keyed in during the run. */
  private static void checkEvent(Values v, String row, Checks checks) {
    Settings settings = settings(v);
    if (!v.text(row + "what").equals("set_point") || !settings.problems().isEmpty()) {
      return;
    }
    Settings then =
        settings.with(Setting.HEAT_SET_POINT_CENTI_C, centi(v.number(row + "set_point")));
    for (SettingProblem problem : then.problems()) {
      List<SettingKey> all = SettingKeys.all();
      String key = SettingKey.namedIn(problem.setting(), all).get(0);
      checks.refuse(
          row + "set_point",
          List.of(key),
          "what fits " + key + " = " + v.shown(key) + " (" + v.whence(key) + ")",
          key + " would have to be " + translate(problem.allowedText(), all) + ".");
    }
  }

  /** A problem of the controller, told with the keys of the scenario. */
  private static void report(SettingProblem problem, boolean fanTold, Checks checks) {
    List<SettingKey> all = SettingKeys.all();
    List<String> named = SettingKey.namedIn(problem.setting(), all);
    String key = named.isEmpty() ? SET_POINT : named.get(0);
    if (key.equals(FAN_ON) && fanTold) {
      return;
    }
    List<String> others = new ArrayList<>(related(problem, all));
    others.remove(key);
    checks.refuse(
        key, others, translate(problem.allowedText(), all), translate(problem.hint(), all));
  }

  /** Keys that could be changed instead, the likeliest first. */
  private static List<String> related(SettingProblem problem, List<SettingKey> all) {
    List<String> keys = new ArrayList<>(SettingKey.namedIn(problem.hint(), all));
    if (problem.hint().contains("set point")) {
      keys.add(SET_POINT);
    }
    if (problem.hint().contains("brood limit")) {
      keys.add("controller.limit.brood");
    }
    if (problem.hint().contains("mOhm")) {
      keys.add("controller.battery.worst_resistance");
      keys.add("controller.battery.resistance");
      keys.add("controller.battery.heater_current");
      keys.add("heater.power");
    }
    if (problem.setting().contains("shed_")) {
      String level = problem.setting().replaceAll("_(enter|leave)_.*", "");
      for (String prefix : List.of(level + "_", "shed_")) {
        all.stream()
            .filter(k -> k.setting().key().startsWith(prefix))
            .forEach(k -> keys.add(k.path()));
      }
    }
    return keys;
  }

  /** Names of settings replaced by the keys that a scenario has for them. */
  private static String translate(String text, List<SettingKey> all) {
    String told = text;
    for (SettingKey key : all) {
      told = told.replace(key.setting().key(), key.path());
    }
    return told;
  }
}
