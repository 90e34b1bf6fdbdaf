package org.broodbench.input;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.matter.Dimension;
import org.broodbench.matter.Units;
import org.broodbench.power.Chemistry;
import org.broodbench.power.FuseSizes;
import org.broodbench.power.LoadSpec;
import org.broodbench.power.ShoreSpec;
import org.broodbench.power.WiringSpec;

/** Keys of panel, inverter, shore power, wires and other loads; the battery has its own class. */
final class PowerKeys {
  private PowerKeys() {}

  static void declare(Keys.Builder keys) {
    BatteryKeys.declare(keys);
    PvKeys.declare(keys);
    InverterKeys.declare(keys);

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
    // a good crimp under 1 mOhm, spring clip 5 to 20 clean and 50 and more corroded; low confidence
    keys.quantity("wiring.heater_contacts", "mOhm", Dimension.RESISTANCE)
        .between("0 mOhm", "1000 mOhm")
        .byDefault("10 mOhm")
        .help("Clips, plugs and fuse holder in the heater's circuit: crimps 2, clean clips 20.");
    keys.quantity("wiring.battery_clips", "mOhm", Dimension.RESISTANCE)
        .between("0 mOhm", "500 mOhm")
        .byDefault("0 mOhm")
        .help("Clips on the battery on top of its leads: clean 10 to 40, corroded 100.");
    // 1.25 times what flows for long, then the next usual size; common practice
    keys.quantity("wiring.battery_fuse", "A", Dimension.CURRENT)
        .between("0 A", "1000 A")
        .byDefault("1.25 times what may flow for long, next usual size", PowerKeys::batteryFuse)
        .help("Rating of the fuse at the battery; 0 for none.");
    keys.quantity("wiring.heater_fuse", "A", Dimension.CURRENT)
        .between("0 A", "1000 A")
        .byDefault("1.25 times the heater's current, next usual size", PowerKeys::heaterFuse)
        .help("Rating of the fuse of a heater on the battery side; 0 for none.");
    // data sheets of small converters, from memory
    keys.quantity("wiring.regulator_efficiency", "%", Dimension.RATIO)
        .between("50 %", "100 %")
        .byDefault("92 %")
        .help("What the regulator passes on where the heater is `regulated`.");
    // crimps under 1 mOhm, fuse holder 2 to 5 mOhm, a metre of lead: own choice
    keys.quantity("wiring.battery_lead", "mOhm", Dimension.RESISTANCE)
        .between("0 mOhm", "500 mOhm")
        .byDefault("15 mOhm")
        .help("Leads, fuse and contacts between battery and the rest.");

    keys.rows("load", 0, 20, "Further loads.");
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
    keys.choice("load.*.supply", "dc", "inverter")
        .byDefault("dc")
        .help("On the battery side, or mains voltage from the inverter.");
  }

  static String watts(double powerW) {
    return Units.write(powerW, Units.get(Dimension.POWER, "W"));
  }

  private static String fuse(double currentA) {
    return Units.write(FuseSizes.atLeastA(1.25 * currentA), Units.get(Dimension.CURRENT, "A"));
  }

  /** At 14.4 V on a 12 V bank, where a resistive element draws most; a regulator most at 10 V. */
  private static double heaterA(Values v) {
    double scale = BatteryKeys.nominalV(v) / 12;
    double w = v.number("heater.power");
    double ratedV = v.number("heater.rated_volts");
    return v.flag("heater.regulated") || HeaterKeys.onInverter(v)
        ? w / 0.85 / (10 * scale)
        : w / ratedV * (14.4 * scale / ratedV);
  }

  private static String heaterFuse(Values v) {
    return HeaterKeys.onInverter(v) || v.number("heater.power") <= 0 ? "0 A" : fuse(heaterA(v));
  }

  private static String batteryFuse(Values v) {
    double scale = BatteryKeys.nominalV(v) / 12;
    double loadsW = v.number("fan.power") + v.number("controller.power");
    for (Values row : v.rows("load")) {
      loadsW += row.number("power");
    }
    double outA = heaterA(v) + loadsW / (10 * scale) + v.number("inverter.idle") / (10 * scale);
    double sourceW = PvKeys.ratedW(v) + v.number("shore.power");
    double inA =
        Math.min(
            sourceW / (11 * scale),
            v.integer("battery.strings") * v.number("battery.charge_limit"));
    return fuse(Math.max(outA, inA));
  }

  static Chemistry chemistry(Values v) {
    return Chemistry.valueOf(v.text("battery.chemistry").toUpperCase(Locale.ROOT));
  }

  static ShoreSpec shore(Values v) {
    return new ShoreSpec(
        v.flag("shore.present"), v.number("shore.power"), v.number("shore.efficiency"));
  }

  /** Everything between the battery's terminals and the bus, Ω. */
  static double batteryLeadOhm(Values v) {
    return v.number("wiring.battery_lead") + v.number("wiring.battery_clips");
  }

  static WiringSpec wiring(Values v) {
    return new WiringSpec(
        v.number("wiring.heater_length"),
        v.number("wiring.heater_wire") * 1e6,
        v.number("wiring.heater_contacts"),
        batteryLeadOhm(v),
        v.number("wiring.battery_fuse"),
        v.number("wiring.heater_fuse"),
        v.number("wiring.regulator_efficiency"));
  }

  static List<LoadSpec> loads(Values v) {
    List<LoadSpec> loads = new ArrayList<>();
    for (Values row : v.rows("load")) {
      loads.add(
          new LoadSpec(
              row.text("name"),
              row.number("power"),
              row.number("from") / 3600,
              row.number("to") / 3600,
              row.text("supply").equals("inverter")));
    }
    return loads;
  }

  static void check(Values v, Checks checks) {
    BatteryKeys.check(v, checks);
    PvKeys.check(v, checks);
    InverterKeys.check(v, checks);
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
