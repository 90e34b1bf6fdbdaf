package org.broodbench.input;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.matter.Dimension;
import org.broodbench.matter.Units;
import org.broodbench.power.LoadOutput;
import org.broodbench.power.PvGroup;
import org.broodbench.power.PvSpec;

/** Keys of the modules and their charge controller. */
final class PvKeys {
  private PvKeys() {}

  static void declare(Keys.Builder keys) {
    keys.table("pv", "The solar panel and its charge controller.");
    keys.quantity("pv.power", "W", Dimension.POWER)
        .between("0 W", "10000 W")
        .optional("sum of the groups")
        .help("Rated power of all groups together; the groups are scaled to it.");
    // De Soto and others 2006; the one-point form of IEC 61215
    keys.choice("pv.curve", "diode", "one_point")
        .byDefault("diode")
        .help("Single-diode curve, or rated power in proportion to the light.");
    // Faiman 2008; form of IEC 61215
    keys.choice("pv.cell_temperature", "wind", "noct")
        .byDefault("wind")
        .help("Cells warmed by light and cooled by wind, or by `noct` alone.");
    // makers' sheets of crystalline modules: -0.3 to -0.45 %/K, 43 to 47 degC
    keys.quantity("pv.temperature_coefficient", "%/K", Dimension.RATIO_PER_KELVIN)
        .between("-1 %/K", "-0.05 %/K")
        .optional("by the `type` of each group")
        .help("Change of power with the temperature of the cells, for all groups.");
    keys.quantity("pv.noct", "degC", Dimension.TEMPERATURE)
        .between("30 degC", "60 degC")
        .byDefault("45 degC")
        .help("Nominal operating temperature of the cells.");
    keys.quantity("pv.clean_share", "%", Dimension.RATIO)
        .between("5 %", "100 %")
        .byDefault("95 %")
        .help("Share of sunlight that dirt leaves.");
    // own choice: snow slides off a steep module within hours or days
    keys.quantity("pv.snow_share", "%", Dimension.RATIO)
        .between("0 %", "100 %")
        .byDefault("80 %")
        .help("Share of sunlight left on the modules while snow lies on the ground.");
    keys.choice("pv.charge_control", "tracking", "pulse_width")
        .byDefault("tracking")
        .help("Tracking of the best working point, or pulse-width at battery volts.");
    keys.quantity("pv.tracking_efficiency", "%", Dimension.RATIO)
        .between("50 %", "100 %")
        .byDefault("94 %")
        .help("Efficiency of a tracking controller.");
    keys.quantity("pv.module_peak_volts", "V", Dimension.VOLTAGE)
        .between("5 V", "150 V")
        .byDefault(
            "18 V for 12 V, 36 V for 24 V",
            v -> Units.write(1.5 * BatteryKeys.nominalV(v), Units.get(Dimension.VOLTAGE, "V")))
        .help("Volts at the best working point; counts with pulse-width control.");
    keys.quantity("pv.controller_power", "W", Dimension.POWER)
        .between("0 W", "20 W")
        .byDefault("0.2 W")
        .help("What the charge controller itself draws.");
    // 11.1 to 11.5 V and 12.6 V with 2 to 5 s of delay; manuals of charge controllers
    keys.plain("pv.load_output", Kind.BOOLEAN)
        .byDefault("false")
        .help("Whether controller and loads hang on the charge controller's load output.");
    volts(keys, "pv.load_cut", 11.1, "Volts under which the load output opens.");
    volts(keys, "pv.load_return", 12.6, "Volts at which it closes again.");
    keys.quantity("pv.load_delay", "s", Dimension.TIME)
        .between("0 s", "1 h")
        .byDefault("5 s")
        .help("Time below or above before it does.");
    keys.rows("pv.group", 1, 10, "Modules on one plane; left out, there is one group.");
    keys.quantity("pv.group.*.power", "W", Dimension.POWER)
        .between("0 W", "10000 W")
        .byDefault("100 W")
        .help("Rated power.");
    keys.quantity("pv.group.*.tilt", "deg", Dimension.ANGLE)
        .between("0 deg", "90 deg")
        .byDefault("45 deg")
        .help("Slope from the horizontal.");
    keys.quantity("pv.group.*.azimuth", "deg", Dimension.ANGLE)
        .between("0 deg", "360 deg")
        .byDefault(
            "towards the noon sun", v -> v.root().number("site.latitude") < 0 ? "0 deg" : "180 deg")
        .help("Direction it faces: 90 east, 180 south, 270 west.");
    // makers' sheets: -0.34 to -0.40, -0.39 to -0.45, -0.25 to -0.32 %/K
    keys.choice("pv.group.*.type", "mono", "poly", "thin_film")
        .byDefault("mono")
        .help("Cells, for the temperature coefficient: -0.37, -0.41, -0.28 %/K.");
    keys.choice("pv.group.*.mounting", "open", "flush")
        .byDefault("open")
        .help("On an open rack, or flat on a lid or wall with nearly no air behind.");
    keys.rows("pv.shade", 0, 20, "Direct light taken from modules at certain hours.");
    keys.plain("pv.shade.*.group", Kind.INTEGER)
        .between("0", "9")
        .optional("every group")
        .help("Group that is shaded, counted from 0.");
    keys.quantity("pv.shade.*.from", "h", Dimension.TIME)
        .between("0 h", "24 h")
        .help("Time of day at which it begins, UTC.");
    keys.quantity("pv.shade.*.to", "h", Dimension.TIME)
        .between("0 h", "24 h")
        .help("Time of day at which it ends, UTC; before `from`: over midnight.");
    keys.quantity("pv.shade.*.open", "%", Dimension.RATIO)
        .between("0 %", "100 %")
        .byDefault("0 %")
        .help("Share of the direct light that still arrives.");
  }

  private static KeyDraft volts(Keys.Builder keys, String path, double at12V, String help) {
    return keys.quantity(path, "V", Dimension.VOLTAGE)
        .between("5 V", "35 V")
        .byDefault(
            Units.write(at12V, Units.get(Dimension.VOLTAGE, "V")) + "; doubled at 24 V",
            v ->
                Units.write(
                    at12V * BatteryKeys.nominalV(v) / 12, Units.get(Dimension.VOLTAGE, "V")))
        .help(help);
  }

  /**
   * The groups, scaled so that their sum is {@code pv.power} where that is given. A group set by
   * option goes above the sum of the file.
   */
  static PvSpec pv(Values v) {
    List<Values> rows = v.rows("pv.group");
    double sumW = sumW(v);
    double wantedW = ratedW(v);
    List<PvGroup> groups = new ArrayList<>();
    for (Values row : rows) {
      double shareW = sumW > 0 ? row.number("power") * wantedW / sumW : wantedW / rows.size();
      groups.add(
          new PvGroup(
              shareW,
              row.number("tilt"),
              row.number("azimuth"),
              coefficientPerK(v, row),
              PvGroup.Mounting.valueOf(row.text("mounting").toUpperCase(Locale.ROOT)),
              shades(v, groups.size())));
    }
    return new PvSpec(
        groups,
        PvSpec.Curve.valueOf(v.text("pv.curve").toUpperCase(Locale.ROOT)),
        PvSpec.Cells.valueOf(v.text("pv.cell_temperature").toUpperCase(Locale.ROOT)),
        v.number("pv.noct"),
        v.number("pv.clean_share"),
        v.number("pv.snow_share"),
        v.text("pv.charge_control").equals("tracking"),
        v.number("pv.tracking_efficiency"),
        v.number("pv.module_peak_volts"),
        v.number("pv.controller_power"),
        new LoadOutput(
            v.flag("pv.load_output"),
            v.number("pv.load_cut"),
            v.number("pv.load_return"),
            v.number("pv.load_delay")));
  }

  private static double sumW(Values v) {
    double sumW = 0;
    for (Values row : v.rows("pv.group")) {
      sumW += row.number("power");
    }
    return sumW;
  }

  /** Rated power of all groups, W. */
  static double ratedW(Values v) {
    boolean overruled =
        !v.isFromOption("pv.power")
            && v.rows("pv.group").stream().anyMatch(row -> row.isFromOption("power"));
    return v.has("pv.power") && !overruled ? v.number("pv.power") : sumW(v);
  }

  private static double coefficientPerK(Values v, Values row) {
    if (v.has("pv.temperature_coefficient")) {
      return v.number("pv.temperature_coefficient");
    }
    return switch (row.text("type")) {
      case "poly" -> -0.0041;
      case "thin_film" -> -0.0028;
      default -> -0.0037;
    };
  }

  private static List<PvGroup.Shade> shades(Values v, int group) {
    List<PvGroup.Shade> shades = new ArrayList<>();
    for (Values row : v.rows("pv.shade")) {
      if (!row.has("group") || row.integer("group") == group) {
        shades.add(
            new PvGroup.Shade(
                row.number("from") / 3600, row.number("to") / 3600, row.number("open")));
      }
    }
    return shades;
  }

  static void check(Values v, Checks checks) {
    BatteryKeys.below(v, checks, "pv.load_cut", "pv.load_return");
    for (int i = 0; i < v.rowCount("pv.shade"); i++) {
      String key = "pv.shade." + i + ".group";
      checks.run(
          () -> {
            if (v.has(key) && v.integer(key) >= v.rowCount("pv.group")) {
              checks.refuse(
                  key,
                  List.of(),
                  "0 to " + (v.rowCount("pv.group") - 1) + ": the groups that there are",
                  "");
            }
          });
    }
  }
}
