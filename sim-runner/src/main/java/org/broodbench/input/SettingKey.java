package org.broodbench.input;

import java.util.List;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;
import org.broodbench.matter.Dimension;
import org.broodbench.matter.Unit;
import org.broodbench.matter.Units;

/**
 * One setting of the controller as a key: the suffix of its name tells the unit that the controller
 * counts in, and with that how people write it.
 *
 * @param setting the setting
 * @param path dotted key
 * @param help one line
 */
record SettingKey(Setting setting, String path, String help) {
  /** How the count of a setting relates to a quantity: base value = count / perBase. */
  private record Scale(Dimension dimension, String unit, double perBase) {}

  private Scale scale() {
    String name = setting.name();
    if (name.endsWith("_CENTI_C")) {
      return new Scale(Dimension.TEMPERATURE, "degC", 100);
    }
    if (name.endsWith("_CENTI_K")) {
      return new Scale(Dimension.TEMPERATURE_DIFFERENCE, "K", 100);
    }
    if (name.endsWith("_CENTI_K_PER_H")) {
      return new Scale(Dimension.TEMPERATURE_RATE, "K/h", 100);
    }
    if (name.endsWith("_CENTI_K_PER_S")) {
      return new Scale(Dimension.TEMPERATURE_RATE, "K/s", 100 / 3600.0);
    }
    if (name.endsWith("_MILLI_V")) {
      return new Scale(Dimension.VOLTAGE, "V", 1000);
    }
    if (name.endsWith("_MILLI_A")) {
      return new Scale(Dimension.CURRENT, "A", 1000);
    }
    if (name.endsWith("_MILLI_W")) {
      return new Scale(Dimension.POWER, "W", 1000);
    }
    if (name.endsWith("_MILLI_OHM")) {
      return new Scale(Dimension.RESISTANCE, "mOhm", 1000);
    }
    if (name.endsWith("_PERMILLE")) {
      return new Scale(Dimension.RATIO, "%", 1000);
    }
    if (name.endsWith("_MILLIS")) {
      return new Scale(Dimension.TIME, "s", 1000);
    }
    return null;
  }

  private boolean isFlag() {
    return scale() == null && setting.low() == 0 && setting.high() == 1;
  }

  /** A count of this setting as people write it: "5 min", "33 degC", "true". */
  String write(int count) {
    Scale scale = scale();
    if (scale == null) {
      return isFlag() ? String.valueOf(count != 0) : String.valueOf(count);
    }
    return Units.write(count / scale.perBase(), unit(scale, count));
  }

  /** Times read best in the largest unit that makes a whole number. */
  private static Unit unit(Scale scale, int count) {
    String spelling = scale.unit();
    if (scale.dimension() == Dimension.TIME) {
      boolean hours = count != 0 && count % 3_600_000 == 0;
      boolean minutes = count != 0 && count % 60_000 == 0;
      spelling = hours ? "h" : minutes ? "min" : "s";
    }
    return Units.get(scale.dimension(), spelling);
  }

  /** Declares the key with the bounds of the setting. */
  KeyDraft declare(Keys.Builder keys, int usual) {
    Scale scale = scale();
    KeyDraft draft;
    if (isFlag()) {
      draft = keys.plain(path, Kind.BOOLEAN);
    } else if (scale == null) {
      draft =
          keys.plain(path, Kind.INTEGER)
              .between(String.valueOf(setting.low()), String.valueOf(setting.high()));
    } else {
      draft =
          keys.quantity(path, unit(scale, usual).spelling(), scale.dimension())
              .between(write(setting.low()), write(setting.high()));
    }
    return draft.help(help);
  }

  /** The settings with the value of this key put in, rounded to a whole count. */
  Settings put(Settings settings, Values values) {
    Scale scale = scale();
    if (isFlag()) {
      return settings.with(setting, values.flag(path));
    }
    if (scale == null) {
      return settings.with(setting, (int) values.integer(path));
    }
    return settings.with(setting, (int) Math.rint(values.number(path) * scale.perBase()));
  }

  /** A value as a count of the controller. */
  int count(Object value) {
    if (value instanceof Quantity quantity) {
      return (int) Math.rint(quantity.base() * scale().perBase());
    }
    return value instanceof Boolean flag ? flag ? 1 : 0 : ((Long) value).intValue();
  }

  /** Keys that a message of the controller is about. */
  static List<String> namedIn(String message, List<SettingKey> keys) {
    return keys.stream()
        .filter(key -> message.contains(key.setting().key()))
        .map(SettingKey::path)
        .toList();
  }
}
