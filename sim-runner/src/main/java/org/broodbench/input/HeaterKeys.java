package org.broodbench.input;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.broodbench.hive.HeatFlow;
import org.broodbench.hive.HeaterSpec;
import org.broodbench.hive.Pan;
import org.broodbench.matter.Dimension;

/** Keys of the heater and its thermal mass. */
final class HeaterKeys {
  /** From here on a filling is taken to be of one temperature, W/K. */
  private static final double ONE_TEMPERATURE_WK = 1000;

  private HeaterKeys() {}

  static void declare(Keys.Builder keys) {
    keys.table("heater", "The heater plate and the thermal mass (pan) above it.");
    keys.quantity("heater.power", "W", Dimension.POWER)
        .between("0 W", "500 W")
        .help(
            "Rated power; 0 for no heater: the controller is not told, asks for heat and raises the alarm effect.");
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
    keys.quantity("heater.plate_area", "cm2", Dimension.AREA)
        .between("20 cm2", "5000 cm2")
        .byDefault("900 cm2")
        .help("Heated area of the plate.");
    keys.choice("heater.fill", words(Pan.Fill.values()))
        .byDefault("sand")
        .help("What the pan is filled with; none is a bare plate of steel.");
    keys.quantity("heater.pan_mass", "kg", Dimension.MASS)
        .between("0.1 kg", "50 kg")
        .byDefault("5 kg")
        .help("Mass of the filling, or of the bare plate.");
    keys.quantity("heater.pan_area", "cm2", Dimension.AREA)
        .between("20 cm2", "5000 cm2")
        .byDefault("1500 cm2")
        .help("Top of the pan.");
    keys.quantity("heater.pan_specific_heat", "J/(kg K)", Dimension.SPECIFIC_HEAT)
        .between("300 J/(kg K)", "4300 J/(kg K)")
        .byDefault("by `fill`: 800, 800, 4182 or 450 J/(kg K)", HeaterKeys::specificHeat)
        .help("Specific heat of the filling.");
    keys.choice("heater.plate_contact", words(Pan.Contact.values()))
        .byDefault("flat")
        .help("How the plate lies under the pan: with paste, flat, or with gaps.");
    keys.quantity("heater.plate_to_pan", "W/K", Dimension.THERMAL_CONDUCTANCE)
        .between("0.0001 W/K", "1000 W/K")
        .byDefault("by areas, contact and filling", HeaterKeys::plateToPan)
        .help("Conductance from plate to the lower half of the filling.");
    keys.quantity("heater.through_fill", "W/K", Dimension.THERMAL_CONDUCTANCE)
        .between("0.0001 W/K", "100000 W/K")
        .byDefault(
            "by area and filling; water and steel are of one temperature", HeaterKeys::through)
        .help("Conductance between the middles of the lower and the upper half of the filling.");
    // 10 W/(m2 K), the standard's inside surface for heat upwards
    keys.quantity("heater.pan_to_air", "W/K", Dimension.THERMAL_CONDUCTANCE)
        .between("0.01 W/K", "20 W/K")
        .byDefault("10 W/(m2 K) times `pan_area`", HeaterKeys::panToAir)
        .help("Conductance from the top of the pan to the air of the lowest box.");
    // the two below: own choice
    keys.quantity("heater.pan_to_nest", "W/K", Dimension.THERMAL_CONDUCTANCE)
        .between("0 W/K", "20 W/K")
        .byDefault("0.3 W/K")
        .help("Conductance from pan to the brood nest by radiation and rising warm air.");
    keys.quantity("heater.plate_to_floor", "W/K", Dimension.THERMAL_CONDUCTANCE)
        .between("0 W/K", "20 W/K")
        .byDefault("0.05 W/K")
        .help("Conductance from plate to the floor board.");
    keys.quantity("heater.plate_limit", "degC", Dimension.TEMPERATURE)
        .between("30 degC", "200 degC")
        .byDefault("70 degC")
        .help("Surface of the plate that counts as too hot; nothing alive reaches it.");
    keys.quantity("heater.contact_limit", "degC", Dimension.TEMPERATURE)
        .between("30 degC", "80 degC")
        .byDefault("45 degC")
        .help("Surface that bees and comb touch that counts as too hot.");
    keys.quantity("heater.flux_limit", "W/m2", Dimension.IRRADIANCE)
        .between("50 W/m2", "20000 W/m2")
        .byDefault("1000 W/m2")
        .help("Power of the plate by its area that counts as too dense.");
  }

  private static Pan.Fill fill(Values v) {
    return Pan.Fill.valueOf(v.text("heater.fill").toUpperCase(Locale.ROOT));
  }

  private static String specificHeat(Values v) {
    return format("%.0f J/(kg K)", fill(v).material().specificHeatJKgK());
  }

  private static String plateToPan(Values v) {
    Pan.Contact contact =
        Pan.Contact.valueOf(v.text("heater.plate_contact").toUpperCase(Locale.ROOT));
    double wk =
        Pan.fromPlateWK(
            fill(v),
            contact,
            v.number("heater.plate_area"),
            v.number("heater.pan_area"),
            v.number("heater.pan_mass"));
    return format("%.4f W/K", wk);
  }

  private static String through(Values v) {
    double wk = Pan.throughWK(fill(v), v.number("heater.pan_area"), v.number("heater.pan_mass"));
    return format("%.4f W/K", Math.min(ONE_TEMPERATURE_WK, wk));
  }

  private static String panToAir(Values v) {
    return format("%.4f W/K", v.number("heater.pan_area") / HeatFlow.UP.surfaceM2KW());
  }

  private static String format(String pattern, double value) {
    return String.format(Locale.ROOT, pattern, value);
  }

  private static String[] words(Enum<?>[] all) {
    return Stream.of(all).map(e -> e.name().toLowerCase(Locale.ROOT)).toArray(String[]::new);
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
        v.number("heater.plate_area"),
        v.number("heater.plate_to_floor"),
        pan(v),
        new HeaterSpec.Limits(
            v.number("heater.plate_limit"),
            v.number("heater.contact_limit"),
            v.number("heater.flux_limit")));
  }

  private static Pan pan(Values v) {
    double throughWK = v.number("heater.through_fill");
    Pan.Bulk bulk = new Pan.Bulk(fill(v), v.number("heater.pan_mass"), v.number("heater.pan_area"));
    return Pan.filled(
            v.number("heater.pan_mass") * v.number("heater.pan_specific_heat"),
            v.number("heater.plate_to_pan"),
            throughWK < ONE_TEMPERATURE_WK ? throughWK : Double.POSITIVE_INFINITY,
            v.number("heater.pan_area"),
            v.number("heater.pan_to_air"),
            v.number("heater.pan_to_nest"))
        .of(bulk);
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
