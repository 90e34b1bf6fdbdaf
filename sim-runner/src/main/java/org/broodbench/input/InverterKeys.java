package org.broodbench.input;

import org.broodbench.matter.Dimension;
import org.broodbench.matter.Units;
import org.broodbench.power.InverterSpec;

/** Keys of the inverter: losses, search mode, trips. */
final class InverterKeys {
  private InverterKeys() {}

  static void declare(Keys.Builder keys) {
    keys.table("inverter", "The inverter, where mains voltage is made.");
    keys.quantity("inverter.rated_power", "W", Dimension.POWER)
        .between("0 W", "5000 W")
        .byDefault("0 W on `dc`, twice the heater on `inverter`", InverterKeys::ratedW)
        .help("Rated output; 0 for none.");
    // 1 to 2.5 % of the rating for cheap units, 0.5 to 1 % for good ones; makers' sheets
    keys.quantity("inverter.idle", "W", Dimension.POWER)
        .between("0 W", "100 W")
        .byDefault(
            "1.5 % of the rating",
            v -> PowerKeys.watts(Math.min(100, 0.015 * v.number("inverter.rated_power"))))
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
    keys.plain("inverter.search", Kind.BOOLEAN)
        .byDefault("false")
        .help("Search mode: it sleeps until a load asks for enough.");
    // 15 W, a manual's setting
    keys.quantity("inverter.wake_load", "W", Dimension.POWER)
        .between("1 W", "100 W")
        .byDefault("15 W")
        .help("Least load that it wakes for in search mode; smaller ones get nothing.");
    keys.quantity("inverter.search_power", "W", Dimension.POWER)
        .between("0 W", "50 W")
        .byDefault(
            "a fifth of `idle`",
            v -> PowerKeys.watts(Math.min(50, 0.2 * v.number("inverter.idle"))))
        .help("Draw asleep; a fifth is our own choice.");
    // low 9.3 to 10.5 V, return 10.9 to 12.6 V, high 15.0 to 16.5 V; makers' sheets
    volts(keys, "low_cut", 10.5, "Volts under which it switches off.");
    volts(keys, "low_return", 12, "Volts at which it may return from that.");
    volts(keys, "high_cut", 15.5, "Volts over which it switches off.");
    volts(keys, "high_return", 15, "Volts under which it may return from that.");
    // 30 s, three tries, then locked until 14.0 V show charging; a maker's sheet
    keys.quantity("inverter.return_wait", "s", Dimension.TIME)
        .between("0 s", "1 h")
        .byDefault("30 s")
        .help("Shortest time off.");
    keys.plain("inverter.most_restarts", Kind.INTEGER)
        .between("0", "1000000")
        .byDefault("3")
        .help("Returns from low volts before it waits for `unlock_volts`.");
    volts(keys, "unlock_volts", 14, "Volts that show it that something charges.");
    keys.plain("inverter.returns", Kind.BOOLEAN)
        .byDefault("true")
        .help("Whether it returns by itself after it switched off; false: a hand must do it.");
  }

  private static void volts(Keys.Builder keys, String name, double at12V, String help) {
    keys.quantity("inverter." + name, "V", Dimension.VOLTAGE)
        .between("5 V", "40 V")
        .byDefault(
            Units.write(at12V, Units.get(Dimension.VOLTAGE, "V")) + "; doubled at 24 V",
            v ->
                Units.write(
                    at12V * BatteryKeys.nominalV(v) / 12, Units.get(Dimension.VOLTAGE, "V")))
        .help(help);
  }

  private static String ratedW(Values v) {
    return HeaterKeys.onInverter(v) ? PowerKeys.watts(2 * v.number("heater.power")) : "0 W";
  }

  static InverterSpec inverter(Values v) {
    double ratedW = v.number("inverter.rated_power");
    double quadratic = ratedW > 0 ? v.number("inverter.full_load_loss") / ratedW : 0;
    return new InverterSpec(
        ratedW,
        v.number("inverter.idle"),
        v.number("inverter.linear_loss"),
        quadratic,
        v.flag("inverter.search")
            ? new InverterSpec.Search(
                v.number("inverter.wake_load"), v.number("inverter.search_power"))
            : InverterSpec.Search.NONE,
        new InverterSpec.Trips(
            v.number("inverter.low_cut"),
            v.number("inverter.low_return"),
            v.number("inverter.high_cut"),
            v.number("inverter.high_return"),
            v.number("inverter.return_wait"),
            (int) v.integer("inverter.most_restarts"),
            v.number("inverter.unlock_volts"),
            v.flag("inverter.returns")));
  }

  static void check(Values v, Checks checks) {
    BatteryKeys.below(v, checks, "inverter.low_cut", "inverter.low_return");
    BatteryKeys.below(v, checks, "inverter.low_return", "inverter.high_cut");
    BatteryKeys.below(v, checks, "inverter.high_return", "inverter.high_cut");
  }
}
