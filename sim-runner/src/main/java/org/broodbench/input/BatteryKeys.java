package org.broodbench.input;

import java.util.List;
import org.broodbench.matter.Dimension;
import org.broodbench.matter.Unit;
import org.broodbench.matter.Units;
import org.broodbench.power.Chemistry;

/**
 * Keys of the battery; most defaults follow its chemistry.
 *
 * <p>The defaults are typical figures of makers' data sheets, one source each, rounded; resistance
 * for flooded and gel batteries from memory.
 */
final class BatteryKeys {
  /** The month behind "% per month". */
  static final double DAYS_PER_MONTH = 30.44;

  private static final Unit AMPERE = Units.get(Dimension.CURRENT, "A");
  private static final Unit MILLIOHM = Units.get(Dimension.RESISTANCE, "mOhm");
  private static final Unit VOLT = Units.get(Dimension.VOLTAGE, "V");

  /**
   * Typical figures of a chemistry.
   *
   * @param milliOhmOf100Ah resistance of a 12 V battery of 100 Ah, mΩ
   * @param chargeRate highest charge current per capacity, A/Ah
   * @param absorption12V charging volts at 12 V nominal and 25 °C, V
   * @param efficiency share of charge stored at low state of charge
   * @param lossPerMonth self-discharge
   * @param real12V mean volts over a slow discharge, V
   */
  private record Typical(
      double milliOhmOf100Ah,
      double chargeRate,
      double absorption12V,
      String efficiency,
      String lossPerMonth,
      double real12V) {}

  private BatteryKeys() {}

  private static Typical typical(Values v) {
    return typical(PowerKeys.chemistry(v));
  }

  private static Typical typical(Chemistry chemistry) {
    return switch (chemistry) {
      case FLOODED -> new Typical(8, 0.20, 14.6, "97 %", "6 %/month", 12);
      case AGM -> new Typical(4, 0.25, 14.4, "97 %", "3 %/month", 12);
      case GEL -> new Typical(6, 0.20, 14.1, "97 %", "3 %/month", 12);
      case LFP -> new Typical(20, 0.50, 14.2, "99 %", "3 %/month", 12.8);
    };
  }

  static void declare(Keys.Builder keys) {
    keys.table("battery", "The battery.");
    keys.choice("battery.chemistry", "flooded", "agm", "gel", "lfp")
        .byDefault("agm")
        .help("Lead-acid with liquid, glass mat or gel, or lithium iron phosphate.");
    keys.quantity("battery.capacity", "Ah", Dimension.CHARGE, Dimension.ENERGY)
        .between("1 Ah", "5000 Ah")
        .help("Charge at the 20-hour rate and 25 degC; energy is read too: \"1.2 kWh\".");
    keys.quantity("battery.nominal_volts", "V", Dimension.VOLTAGE)
        .between("12 V", "24 V")
        .byDefault("12 V")
        .help("12 V or 24 V.");
    keys.quantity("battery.initial_charge", "%", Dimension.RATIO)
        .between("1 %", "100 %")
        .byDefault("100 %")
        .help("State of charge at the start.");
    keys.quantity("battery.resistance", "mOhm", Dimension.RESISTANCE)
        .between("0.1 mOhm", "1000 mOhm")
        .byDefault("at 100 Ah, 12 V: flooded 8, agm 4, gel 6, lfp 20 mOhm", BatteryKeys::resistance)
        .help("Internal resistance at 25 degC.");
    keys.quantity("battery.charge_limit", "A", Dimension.CURRENT)
        .between("0.1 A", "2000 A")
        .byDefault(
            "of the Ah: flooded 20 %, agm 25 %, gel 20 %, lfp 50 %",
            v -> Units.write(Math.max(0.1, typical(v).chargeRate() * capacityAh(v)), AMPERE))
        .help("Highest charge current that the maker allows.");
    keys.quantity("battery.absorption_volts", "V", Dimension.VOLTAGE)
        .between("13 V", "33 V")
        .byDefault(
            "at 12 V: flooded 14.6, agm 14.4, gel 14.1, lfp 14.2 V",
            v -> Units.write(typical(v).absorption12V() * nominalV(v) / 12, VOLT))
        .help("Charging volts at 25 degC.");
    keys.quantity("battery.coulombic_efficiency", "%", Dimension.RATIO)
        .between("50 %", "100 %")
        .byDefault("lead-acid 97 %, lfp 99 %", v -> typical(v).efficiency())
        .help("Share of charge that is stored while the battery is far from full.");
    keys.quantity("battery.self_discharge", "%/month", Dimension.DAILY_RATE)
        .between("0 %/month", "50 %/month")
        .byDefault("flooded 6, agm 3, gel 3, lfp 3 %/month", v -> typical(v).lossPerMonth())
        .help("Charge lost at rest.");
    keys.quantity("battery.time_constant", "h", Dimension.TIME)
        .between("10 min", "100 h")
        .byDefault("4 h")
        .help("How slowly its temperature follows its surroundings.");
    keys.choice("battery.place", "outdoors", "hive")
        .byDefault("outdoors")
        .help("In a ventilated case outdoors, or inside the hive body.");
  }

  private static String resistance(Values v) {
    double milliOhm = typical(v).milliOhmOf100Ah() * 100 / capacityAh(v) * nominalV(v) / 12;
    return Units.write(Math.min(1, Math.max(1e-4, milliOhm / 1000)), MILLIOHM);
  }

  /** Capacity as charge; energy is divided by the mean volts of the chemistry. */
  static double capacityAh(Values v) {
    Quantity capacity = v.quantity("battery.capacity");
    double hours = capacity.base() / 3600;
    return capacity.dimension() == Dimension.CHARGE
        ? hours
        : hours / (typical(v).real12V() * nominalV(v) / 12);
  }

  static double nominalV(Values v) {
    return v.number("battery.nominal_volts");
  }

  static void check(Values v, Checks checks) {
    checks.run(
        () -> {
          if (nominalV(v) != 12 && nominalV(v) != 24) {
            checks.refuse("battery.nominal_volts", List.of(), "12 V or 24 V", "");
          }
        });
    checks.run(
        () -> {
          double ah = capacityAh(v);
          if (v.quantity("battery.capacity").dimension() == Dimension.ENERGY
              && (ah < 1 || ah > 5000)) {
            checks.refuse(
                "battery.capacity",
                List.of(),
                "1 Ah to 5000 Ah; at these volts the energy makes "
                    + Units.write(ah * 3600, Units.get(Dimension.CHARGE, "Ah")),
                "");
          }
        });
    checks.run(
        () -> {
          double perCell = v.number("battery.absorption_volts") * 12 / nominalV(v);
          if (perCell < 13 || perCell > 16.5) {
            String range = nominalV(v) > 12 ? "26 V to 33 V" : "13 V to 16.5 V";
            checks.refuse(
                "battery.absorption_volts",
                List.of("battery.nominal_volts"),
                range
                    + " at battery.nominal_volts = "
                    + v.shown("battery.nominal_volts")
                    + " ("
                    + v.whence("battery.nominal_volts")
                    + ")",
                "");
          }
        });
  }
}
