package org.broodbench.input;

import java.util.List;
import org.broodbench.hive.HeaterSpec;
import org.broodbench.matter.Dimension;

/** Keys of the heater and its thermal mass. */
final class HeaterKeys {
  private HeaterKeys() {}

  static void declare(Keys.Builder keys) {
    keys.table("heater", "The heater plate and the thermal mass (pan) above it.");
    keys.quantity("heater.power", "W", Dimension.POWER)
        .between("0 W", "500 W")
        .help("Rated power; 0 for no heater.");
    keys.choice("heater.supply", "dc", "inverter")
        .byDefault("dc")
        .help("Straight from the battery, or mains voltage from the inverter.");
    keys.quantity("heater.rated_volts", "V", Dimension.VOLTAGE)
        .between("5 V", "250 V")
        .byDefault("as the battery on `dc`, 230 V on `inverter`", HeaterKeys::volts)
        .help("Volts at which it gives its rated power.");
    keys.plain("heater.regulated", Kind.BOOLEAN)
        .byDefault("false")
        .help("Whether a regulator holds its power when the battery volts change.");
    // own choice: about 0.8 kg of metal
    keys.quantity("heater.plate_heat_capacity", "J/K", Dimension.HEAT_CAPACITY)
        .between("10 J/K", "10000 J/K")
        .byDefault("400 J/K")
        .help("Heat capacity of the plate.");
    keys.quantity("heater.pan_mass", "kg", Dimension.MASS)
        .between("0.1 kg", "50 kg")
        .byDefault("5 kg")
        .help("Mass of the pan and its filling.");
    // dry sand or glass beads, 750 to 840 J/(kg K); water would be 4180
    keys.quantity("heater.pan_specific_heat", "J/(kg K)", Dimension.SPECIFIC_HEAT)
        .between("300 J/(kg K)", "4300 J/(kg K)")
        .byDefault("800 J/(kg K)")
        .help("Specific heat of the filling: sand or glass beads 800, water 4180.");
    // the four conductances: own choice, from a pan of 0.15 m2 and 10 W/(m2 K) to air
    keys.quantity("heater.plate_to_pan", "W/K", Dimension.THERMAL_CONDUCTANCE)
        .between("0.1 W/K", "100 W/K")
        .byDefault("8 W/K")
        .help("Conductance from plate to pan.");
    keys.quantity("heater.pan_to_air", "W/K", Dimension.THERMAL_CONDUCTANCE)
        .between("0.05 W/K", "20 W/K")
        .byDefault("1.5 W/K")
        .help("Conductance from pan to the air of the lowest box.");
    keys.quantity("heater.pan_to_nest", "W/K", Dimension.THERMAL_CONDUCTANCE)
        .between("0 W/K", "20 W/K")
        .byDefault("0.3 W/K")
        .help("Conductance from pan to the brood nest by radiation and rising warm air.");
    keys.quantity("heater.plate_to_floor", "W/K", Dimension.THERMAL_CONDUCTANCE)
        .between("0 W/K", "20 W/K")
        .byDefault("0.05 W/K")
        .help("Conductance from plate to the floor board.");
  }

  private static String volts(Values v) {
    return v.text("heater.supply").equals("inverter") ? "230 V" : v.shown("battery.nominal_volts");
  }

  static boolean onInverter(Values v) {
    return v.text("heater.supply").equals("inverter");
  }

  static HeaterSpec heater(Values v) {
    return new HeaterSpec(
        v.number("heater.power"),
        v.number("heater.rated_volts"),
        onInverter(v),
        v.flag("heater.regulated"),
        v.number("heater.plate_heat_capacity"),
        v.number("heater.pan_mass") * v.number("heater.pan_specific_heat"),
        v.number("heater.plate_to_pan"),
        v.number("heater.pan_to_air"),
        v.number("heater.pan_to_nest"),
        v.number("heater.plate_to_floor"));
  }

  static void check(Values v, Checks checks) {
    checks.run(
        () -> {
          if (onInverter(v)
              && v.number("heater.power") > 0
              && v.number("inverter.rated_power") < v.number("heater.power")) {
            checks.refuse(
                "inverter.rated_power",
                List.of("heater.power", "heater.supply"),
                "at least heater.power = "
                    + v.shown("heater.power")
                    + " ("
                    + v.whence("heater.power")
                    + ")",
                "An inverter cannot feed a heater that is larger than itself.");
          }
        });
  }
}
