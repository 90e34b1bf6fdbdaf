package org.broodbench.input;

import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.broodbench.matter.Dimension;
import org.broodbench.matter.Unit;
import org.broodbench.matter.Units;
import org.broodbench.power.BatterySpec;
import org.broodbench.power.BoardSpec;
import org.broodbench.power.ChargeProfile;
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
    keys.plain("battery.strings", Kind.INTEGER)
        .between("1", "12")
        .byDefault("1")
        .help("Like batteries (or pairs in series for 24 V) side by side, each of that capacity.");
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
        .help("Internal resistance of one string at 25 degC.");
    keys.quantity("battery.charge_limit", "A", Dimension.CURRENT)
        .between("0.1 A", "2000 A")
        .byDefault(
            "of the Ah: flooded 20 %, agm 25 %, gel 20 %, lfp 50 %",
            v -> Units.write(Math.max(0.1, typical(v).chargeRate() * capacityAh(v)), AMPERE))
        .help("Highest charge current that the maker allows, one string.");
    keys.quantity("battery.absorption_volts", "V", Dimension.VOLTAGE)
        .between("13 V", "33 V")
        .byDefault(
            "at 12 V: flooded 14.6, agm 14.4, gel 14.1, lfp 14.2 V",
            v -> Units.write(typical(v).absorption12V() * nominalV(v) / 12, VOLT))
        .help("Volts of bulk and absorption at 25 degC.");
    // data sheets and manuals; -5, -4 and -3 mV a cell
    keys.quantity("battery.float_volts", "V", Dimension.VOLTAGE)
        .between("12.5 V", "30 V")
        .byDefault(
            "at 12 V: flooded 13.5, else 13.6 V, at most 0.3 V under `absorption_volts`",
            BatteryKeys::floatVolts)
        .help("Float volts at 25 degC.");
    keys.quantity("battery.compensation", "mV/K", Dimension.VOLTAGE_PER_KELVIN)
        .between("-100 mV/K", "0 mV/K")
        .byDefault(
            "at 12 V: flooded -30, agm -24, gel -18, lfp 0 mV/K",
            v ->
                Units.write(
                    usual(v).compensationVPerK(), Units.get(Dimension.VOLTAGE_PER_KELVIN, "mV/K")))
        .help("Change of charging volts with the battery's temperature.");
    // usual logic of charge controllers' manuals
    keys.quantity("battery.absorption_time", "min", Dimension.TIME)
        .between("0 min", "8 h")
        .byDefault(
            "lead-acid 2 h, lfp 30 min",
            v -> Units.write(usual(v).absorptionS(), Units.get(Dimension.TIME, "min")))
        .help("Longest absorption before float.");
    // 2 to 3 % of the capacity, from memory
    keys.quantity("battery.tail_current", "A", Dimension.CURRENT)
        .between("0 A", "500 A")
        .byDefault("2 % of the Ah", v -> Units.write(0.02 * capacityAh(v), AMPERE))
        .help("Charge current of one string that ends absorption.");
    keys.quantity("battery.rebulk_volts", "V", Dimension.VOLTAGE)
        .between("10 V", "29 V")
        .byDefault(
            "13.2 V, at most 0.1 V under `float_volts`; doubled at 24 V", BatteryKeys::rebulkVolts)
        .help("Volts under which charging starts over.");
    keys.quantity("battery.rebulk_delay", "min", Dimension.TIME)
        .between("0 min", "24 h")
        .byDefault("30 min")
        .help("Time under them.");
    keys.quantity("battery.coulombic_efficiency", "%", Dimension.RATIO)
        .between("50 %", "100 %")
        .byDefault("lead-acid 97 %, lfp 99 %", v -> typical(v).efficiency())
        .help("Share of charge that is stored while the battery is far from full.");
    keys.quantity("battery.self_discharge", "%/month", Dimension.DAILY_RATE)
        .between("0 %/month", "50 %/month")
        .byDefault("flooded 6, agm 3, gel 3, lfp 3 %/month", v -> typical(v).lossPerMonth())
        .help("Charge lost at rest at 25 degC; half of it with every 10 K less.");
    keys.quantity("battery.time_constant", "h", Dimension.TIME)
        .between("10 min", "100 h")
        .byDefault("4 h")
        .help("How slowly its temperature follows its surroundings.");
    keys.choice("battery.place", "outdoors", "stand", "hive")
        .byDefault("outdoors")
        .help(
            "In a ventilated case outdoors, in the stand under the hive, or inside the hive body.");
    // own choice for the stand
    keys.quantity("battery.warmed_share", "%", Dimension.RATIO)
        .between("0 %", "100 %")
        .byDefault(
            "outdoors 0, stand 15, hive 100 %",
            v -> Units.write(place(v).warmedShare(), Units.get(Dimension.RATIO, "%")))
        .help("How far its place is warmed by the air of the brood box.");
    // cell sheets: no charge below 0 degC; return from memory
    keys.plain("battery.frost_cut_off", Kind.BOOLEAN)
        .byDefault("true with `lfp`", v -> "" + !PowerKeys.chemistry(v).leadAcid())
        .help("Whether charging stops below 0 degC, to return at 5 degC.");

    keys.table("battery.board", "The protection board of a lithium battery.");
    keys.plain("battery.board.fitted", Kind.BOOLEAN)
        .byDefault("true with `lfp`", v -> "" + !PowerKeys.chemistry(v).leadAcid())
        .help("Whether there is one.");
    // the board: common practice, no source; 2.5, 3.0, 3.65 and 3.45 V a cell of four
    volts(keys, "battery.board.low_volts", "10 V", BoardSpec::lowV)
        .help("Volts under which it stops discharge.");
    volts(keys, "battery.board.low_return_volts", "12 V", BoardSpec::lowReturnV)
        .help("Volts at which it may let go of that.");
    keys.choice("battery.board.returns", "itself", "charge", "hand")
        .byDefault("charge")
        .help("What lets it go: volts alone once the loads are gone, charging, or only a hand.");
    volts(keys, "battery.board.high_volts", "14.6 V", BoardSpec::highV)
        .help("Volts over which it stops charging.");
    volts(keys, "battery.board.high_return_volts", "13.8 V", BoardSpec::highReturnV)
        .help("Volts under which it lets go of that.");
    keys.quantity("battery.board.discharge_limit", "A", Dimension.CURRENT)
        .between("1 A", "5000 A")
        .byDefault("one hour's current", v -> Units.write(Math.max(1, capacityAh(v)), AMPERE))
        .help("Current of one string over which it stops discharge.");
    keys.quantity("battery.board.limit_return", "s", Dimension.TIME)
        .between("0 s", "24 h")
        .byDefault("30 s")
        .help("Time after which it lets go of that.");
  }

  private static KeyDraft volts(
      Keys.Builder keys, String path, String at12V, ToDoubleFunction<BoardSpec> part) {
    return keys.quantity(path, "V", Dimension.VOLTAGE)
        .between("5 V", "35 V")
        .byDefault(
            at12V + "; doubled at 24 V",
            v -> Units.write(part.applyAsDouble(BoardSpec.usual(1, nominalV(v))), VOLT));
  }

  private static ChargeProfile usual(Values v) {
    return ChargeProfile.usual(PowerKeys.chemistry(v), 0, 0, nominalV(v));
  }

  private static String floatVolts(Values v) {
    double mostV = v.number("battery.absorption_volts") - 0.3 * nominalV(v) / 12;
    return Units.write(Math.min(usual(v).floatV(), mostV), VOLT);
  }

  private static String rebulkVolts(Values v) {
    double mostV = v.number("battery.float_volts") - 0.1 * nominalV(v) / 12;
    return Units.write(Math.min(usual(v).rebulkV(), mostV), VOLT);
  }

  private static BatterySpec.Place place(Values v) {
    return BatterySpec.Place.valueOf(v.text("battery.place").toUpperCase(Locale.ROOT));
  }

  /** The bank of all strings. */
  static BatterySpec battery(Values v) {
    int strings = (int) v.integer("battery.strings");
    return new BatterySpec(
        PowerKeys.chemistry(v),
        strings * capacityAh(v),
        nominalV(v),
        bankOhm(v),
        v.number("battery.initial_charge"),
        strings * v.number("battery.charge_limit"),
        new ChargeProfile(
            v.number("battery.absorption_volts"),
            v.number("battery.float_volts"),
            v.number("battery.compensation"),
            v.number("battery.absorption_time"),
            strings * v.number("battery.tail_current"),
            v.number("battery.rebulk_volts"),
            v.number("battery.rebulk_delay")),
        v.number("battery.coulombic_efficiency"),
        v.number("battery.self_discharge") * DAYS_PER_MONTH,
        v.number("battery.time_constant"),
        place(v),
        v.number("battery.warmed_share"),
        v.flag("battery.frost_cut_off"),
        new BoardSpec(
            v.flag("battery.board.fitted"),
            v.number("battery.board.low_volts"),
            v.number("battery.board.low_return_volts"),
            BoardSpec.Return.valueOf(v.text("battery.board.returns").toUpperCase(Locale.ROOT)),
            v.number("battery.board.high_volts"),
            v.number("battery.board.high_return_volts"),
            strings * v.number("battery.board.discharge_limit"),
            v.number("battery.board.limit_return")));
  }

  /** Internal resistance of all strings side by side, Ω. */
  static double bankOhm(Values v) {
    return v.number("battery.resistance") / v.integer("battery.strings");
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
    below(v, checks, "battery.float_volts", "battery.absorption_volts");
    below(v, checks, "battery.rebulk_volts", "battery.float_volts");
    below(v, checks, "battery.board.low_volts", "battery.board.low_return_volts");
    below(v, checks, "battery.board.high_return_volts", "battery.board.high_volts");
  }

  /** Refuses a value that is not below another. */
  static void below(Values v, Checks checks, String low, String high) {
    checks.run(
        () -> {
          if (v.number(low) >= v.number(high)) {
            checks.refuse(
                low,
                List.of(high),
                "below " + high + " = " + v.shown(high) + " (" + v.whence(high) + ")",
                "");
          }
        });
  }
}
