package org.broodbench.input;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.matter.Dimension;
import org.broodbench.rig.TuneSpec;
import org.broodbench.rig.TuneSpec.Knob;

/** Keys of what a search for settings may change. */
final class TuneKeys {
  private static final String ROWS = "tune.setting";

  private TuneKeys() {}

  static void declare(Keys.Builder keys) {
    keys.table("tune", "What a search for settings (the verb tune) may do.");
    keys.plain("tune.seasons", Kind.INTEGER)
        .between("1", "300")
        .byDefault("30")
        .help("Seasons that it searches on.");
    keys.plain("tune.unseen_seasons", Kind.INTEGER)
        .between("1", "300")
        .byDefault("12")
        .help("Further seasons that its finding is held against.");
    keys.plain("tune.season_days", Kind.INTEGER)
        .between("7", "366")
        .byDefault("56")
        .help("Length of a season, from the first day of the run on.");
    keys.quantity("tune.tick", "s", Dimension.TIME)
        .between("1 s", "60 s")
        .byDefault("20 s")
        .help(
            "The controller is stepped so often while the search looks, or at its own longer tick.");
    keys.plain("tune.evaluations", Kind.INTEGER)
        .between("1", "1000000")
        .byDefault("2400")
        .help("Most runs of one candidate over one season.");
    keys.plain("tune.seed", Kind.INTEGER)
        .between("0", "9007199254740991")
        .byDefault("1")
        .help("Seed of the seasons.");
    keys.plain("tune.search_seed", Kind.INTEGER)
        .between("0", "9007199254740991")
        .byDefault("1")
        .help("Seed of the search itself.");
    keys.rows(
        ROWS, 0, 40, "A setting that may change; left out, six usual ones around their values.");
    keys.plain("tune.setting.*.key", Kind.TEXT)
        .help("Its dotted key, such as \"controller.heat.set_point\".");
    keys.plain("tune.setting.*.low", Kind.TEXT).help("Lowest value, as its key takes it.");
    keys.plain("tune.setting.*.high", Kind.TEXT).help("Highest value.");
  }

  static void check(Values v, Checks checks) {
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < v.rowCount(ROWS); i++) {
      String row = ROWS + "." + i + ".";
      checks.run(
          () -> {
            Optional<SettingKey> key = find(v.text(row + "key"));
            if (key.isEmpty()) {
              checks.refuse(
                  row + "key",
                  List.of(),
                  "a key of the controller's settings",
                  "They begin with controller. and stand in the tables of that name.");
              return;
            }
            if (!seen.add(key.get().path())) {
              checks.refuse(row + "key", List.of(), "every key once", "");
            }
            checkBounds(v, row, key.get(), checks);
          });
    }
  }

  private static void checkBounds(Values v, String row, SettingKey key, Checks checks) {
    Setting s = key.setting();
    String range = key.write(s.low()) + " to " + key.write(s.high());
    Integer low = count(key, v.text(row + "low"));
    Integer high = count(key, v.text(row + "high"));
    if (low == null || low < s.low() || low > s.high()) {
      checks.refuse(row + "low", List.of(), range, "");
    }
    if (high == null || high < s.low() || high > s.high()) {
      checks.refuse(row + "high", List.of(), range, "");
    } else if (low != null && high <= low) {
      checks.refuse(row + "high", List.of(row + "low"), "above " + v.shown(row + "low"), "");
    }
  }

  private static Optional<SettingKey> find(String path) {
    return SettingKeys.all().stream().filter(k -> k.path().equals(path)).findFirst();
  }

  private static Integer count(SettingKey key, String text) {
    Key declared = ScenarioKeys.all().find(key.path()).orElseThrow();
    try {
      return key.count(ValueReader.readText(declared, text));
    } catch (ValueReader.Refused e) {
      return null;
    }
  }

  static TuneSpec spec(Values v, Settings settings) {
    List<Knob> knobs = new ArrayList<>();
    for (int i = 0; i < v.rowCount(ROWS); i++) {
      String row = ROWS + "." + i + ".";
      SettingKey key = find(v.text(row + "key")).orElseThrow();
      knobs.add(knob(key, count(key, v.text(row + "low")), count(key, v.text(row + "high"))));
    }
    return new TuneSpec(
        knobs.isEmpty() ? usual(settings) : knobs,
        (int) v.integer("tune.seasons"),
        (int) v.integer("tune.unseen_seasons"),
        (int) v.integer("tune.season_days"),
        (int) Math.round(v.number("tune.tick") * 1000),
        (int) v.integer("tune.evaluations"),
        v.integer("tune.seed"),
        v.integer("tune.search_seed"));
  }

  /** Six settings around their present values; the widths are own choices. */
  private static List<Knob> usual(Settings s) {
    boolean byCharge = s.is(Setting.SHED_BY_STATE_OF_CHARGE);
    return List.of(
        around(s, Setting.HEAT_SET_POINT_CENTI_C, -200, 100),
        around(s, Setting.HEAT_DIFFERENTIAL_CENTI_K, -50, 100),
        around(s, Setting.RELAY_MIN_OFF_MILLIS, 0, 600_000),
        around(s, Setting.HEAT_SET_BACK_CENTI_K, -300, 100),
        byCharge
            ? around(s, Setting.SHED_SET_BACK_ENTER_PERMILLE, -200, 90)
            : around(s, Setting.SHED_SET_BACK_ENTER_MILLI_V, -300, 100),
        around(s, Setting.HEAT_SOAK_CENTI_K, 0, 150));
  }

  private static Knob around(Settings s, Setting setting, int below, int above) {
    int now = s.get(setting);
    SettingKey key =
        SettingKeys.all().stream().filter(k -> k.setting() == setting).findFirst().orElseThrow();
    return knob(key, Math.max(setting.low(), now + below), Math.min(setting.high(), now + above));
  }

  private static Knob knob(SettingKey key, int low, int high) {
    String name = key.setting().name();
    if (name.endsWith("_CENTI_C")) {
      return new Knob(key.path(), key.setting(), low, high, 10, 100, "c");
    }
    if (name.endsWith("_CENTI_K")) {
      return new Knob(key.path(), key.setting(), low, high, 10, 100, "k");
    }
    if (name.endsWith("_CENTI_K_PER_H")) {
      return new Knob(key.path(), key.setting(), low, high, 10, 100, "k_per_h");
    }
    if (name.endsWith("_MILLIS")) {
      return new Knob(key.path(), key.setting(), low, high, 10_000, 1000, "s");
    }
    if (name.endsWith("_MILLI_V")) {
      return new Knob(key.path(), key.setting(), low, high, 10, 1000, "v");
    }
    if (name.endsWith("_PERMILLE")) {
      return new Knob(key.path(), key.setting(), low, high, 10, 10, "percent");
    }
    return new Knob(key.path(), key.setting(), low, high, 1, 1, "");
  }
}
