package org.broodbench.input;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.matter.Dimension;
import org.broodbench.matter.Units;
import org.broodbench.power.BatterySpec;
import org.broodbench.power.Chemistry;
import org.broodbench.power.InverterSpec;
import org.broodbench.power.LoadSpec;
import org.broodbench.power.PvGroup;
import org.broodbench.power.PvSpec;
import org.broodbench.power.ShoreSpec;
import org.broodbench.power.WiringSpec;

/** Keys of panel, inverter, shore power, wires and other loads; the battery has its own class. */
final class PowerKeys {
  private PowerKeys() {}

  static void declare(Keys.Builder keys) {
    BatteryKeys.declare(keys);
    pv(keys);
    keys.table("inverter", "The inverter, where mains voltage is made.");
    keys.quantity("inverter.rated_power", "W", Dimension.POWER)
        .between("0 W", "5000 W")
        .byDefault("0 W on `dc`, twice the heater on `inverter`", PowerKeys::inverterW)
        .help("Rated output; 0 for none.");
    // 1 to 2.5 % of the rating for cheap units, 0.5 to 1 % for good ones; makers' sheets
    keys.quantity("inverter.idle", "W", Dimension.POWER)
        .between("0 W", "100 W")
        .byDefault(
            "1.5 % of the rating",
            v -> watts(Math.min(100, 0.015 * v.number("inverter.rated_power"))))
        .help("Draw without load.");
    // both: fit to the sheet of a 1000 W sine unit; how the two share the loss is a choice
    keys.quantity("inverter.linear_loss", "%", Dimension.RATIO)
        .between("0 %", "50 %")
        .byDefault("6 %")
        .help("Loss in proportion to the output.");
    keys.quantity("inverter.full_load_loss", "%", Dimension.RATIO)
        .between("0 %", "50 %")
        .byDefault("10.7 %")
        .help("Further loss at full output, growing with the square of the output.");

    keys.table("shore", "Mains charger on the battery side.");
    keys.quantity("shore.power", "W", Dimension.POWER)
        .between("0 W", "3000 W")
        .byDefault("0 W")
        .help("Highest output of the charger; 0 for none.");
    keys.plain("shore.present", Kind.BOOLEAN)
        .byDefault("true where there is a charger", v -> "" + (v.number("shore.power") > 0))
        .help("Whether mains power is there at the start.");
    keys.quantity("shore.efficiency", "%", Dimension.RATIO)
        .between("30 %", "100 %")
        .byDefault("85 %")
        .help("Share of mains energy that reaches the battery side.");

    keys.table("wiring", "Copper between the parts.");
    keys.quantity("wiring.heater_length", "m", Dimension.LENGTH)
        .between("0 m", "100 m")
        .byDefault("3 m")
        .help("Length of the heater's cable, one way.");
    keys.quantity("wiring.heater_wire", "mm2", Dimension.AREA)
        .between("0.1 mm2", "120 mm2")
        .byDefault("2.5 mm2")
        .help("Cross-section of the heater's cable; \"14 AWG\" is read too.");
    // crimps under 1 mOhm, fuse holder 2 to 5 mOhm, a metre of lead: own choice
    keys.quantity("wiring.battery_lead", "mOhm", Dimension.RESISTANCE)
        .between("0 mOhm", "500 mOhm")
        .byDefault("15 mOhm")
        .help("Leads, fuse and contacts between battery and the rest.");

    keys.rows("load", 0, 20, "Further loads on the battery side.");
    keys.plain("load.*.name", Kind.TEXT).byDefault("load").help("What you call it.");
    keys.quantity("load.*.power", "W", Dimension.POWER)
        .between("0 W", "2000 W")
        .help("Power while it is on.");
    keys.quantity("load.*.from", "h", Dimension.TIME)
        .between("0 h", "24 h")
        .byDefault("0 h")
        .help("Time of day at which it comes on, UTC; equal to `to`: always on.");
    keys.quantity("load.*.to", "h", Dimension.TIME)
        .between("0 h", "24 h")
        .byDefault("as `from`", v -> v.shown("from"))
        .help("Time of day at which it goes off, UTC.");
  }

  private static void pv(Keys.Builder keys) {
    keys.table("pv", "The solar panel and its charge controller.");
    keys.quantity("pv.power", "W", Dimension.POWER)
        .between("0 W", "10000 W")
        .optional("sum of the groups")
        .help("Rated power of all groups together; the groups are scaled to it.");
    // makers' sheets of crystalline modules: -0.3 to -0.45 %/K, 43 to 47 degC
    keys.quantity("pv.temperature_coefficient", "%/K", Dimension.RATIO_PER_KELVIN)
        .between("-1 %/K", "0 %/K")
        .byDefault("-0.4 %/K")
        .help("Change of power with the temperature of the cells.");
    keys.quantity("pv.noct", "degC", Dimension.TEMPERATURE)
        .between("30 degC", "60 degC")
        .byDefault("45 degC")
        .help("Nominal operating temperature of the cells.");
    keys.quantity("pv.clean_share", "%", Dimension.RATIO)
        .between("5 %", "100 %")
        .byDefault("95 %")
        .help("Share of sunlight that dirt, snow and shade leave.");
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
  }

  private static String watts(double powerW) {
    return Units.write(powerW, Units.get(Dimension.POWER, "W"));
  }

  private static String inverterW(Values v) {
    return HeaterKeys.onInverter(v) ? watts(2 * v.number("heater.power")) : "0 W";
  }

  static BatterySpec battery(Values v) {
    return new BatterySpec(
        chemistry(v),
        BatteryKeys.capacityAh(v),
        BatteryKeys.nominalV(v),
        v.number("battery.resistance"),
        v.number("battery.initial_charge"),
        v.number("battery.charge_limit"),
        v.number("battery.absorption_volts"),
        v.number("battery.coulombic_efficiency"),
        v.number("battery.self_discharge") * BatteryKeys.DAYS_PER_MONTH,
        v.number("battery.time_constant"),
        BatterySpec.Place.valueOf(v.text("battery.place").toUpperCase(Locale.ROOT)));
  }

  static Chemistry chemistry(Values v) {
    return Chemistry.valueOf(v.text("battery.chemistry").toUpperCase(Locale.ROOT));
  }

  /**
   * The groups, scaled so that their sum is {@code pv.power} where that is given. A group set by
   * option goes above the sum of the file.
   */
  static PvSpec pv(Values v) {
    List<Values> rows = v.rows("pv.group");
    double sumW = 0;
    for (Values row : rows) {
      sumW += row.number("power");
    }
    boolean overruled =
        !v.isFromOption("pv.power") && rows.stream().anyMatch(row -> row.isFromOption("power"));
    double wantedW = v.has("pv.power") && !overruled ? v.number("pv.power") : sumW;
    List<PvGroup> groups = new ArrayList<>();
    for (Values row : rows) {
      double shareW = sumW > 0 ? row.number("power") * wantedW / sumW : wantedW / rows.size();
      groups.add(new PvGroup(shareW, row.number("tilt"), row.number("azimuth")));
    }
    return new PvSpec(
        groups,
        v.number("pv.temperature_coefficient"),
        v.number("pv.noct"),
        v.number("pv.clean_share"),
        v.text("pv.charge_control").equals("tracking"),
        v.number("pv.tracking_efficiency"),
        v.number("pv.module_peak_volts"),
        v.number("pv.controller_power"));
  }

  static InverterSpec inverter(Values v) {
    double ratedW = v.number("inverter.rated_power");
    double quadratic = ratedW > 0 ? v.number("inverter.full_load_loss") / ratedW : 0;
    return new InverterSpec(
        ratedW, v.number("inverter.idle"), v.number("inverter.linear_loss"), quadratic);
  }

  static ShoreSpec shore(Values v) {
    return new ShoreSpec(
        v.flag("shore.present"), v.number("shore.power"), v.number("shore.efficiency"));
  }

  static WiringSpec wiring(Values v) {
    return new WiringSpec(
        v.number("wiring.heater_length"),
        v.number("wiring.heater_wire") * 1e6,
        v.number("wiring.battery_lead"));
  }

  static List<LoadSpec> loads(Values v) {
    List<LoadSpec> loads = new ArrayList<>();
    for (Values row : v.rows("load")) {
      loads.add(
          new LoadSpec(
              row.text("name"),
              row.number("power"),
              row.number("from") / 3600,
              row.number("to") / 3600));
    }
    return loads;
  }

  static void check(Values v, Checks checks) {
    BatteryKeys.check(v, checks);
    checks.run(
        () -> {
          if (v.flag("shore.present") && v.number("shore.power") <= 0) {
            checks.refuse(
                "shore.present",
                List.of("shore.power"),
                "false where there is no charger (shore.power)",
                "Give the output of the mains charger as shore.power.");
          }
        });
  }
}
