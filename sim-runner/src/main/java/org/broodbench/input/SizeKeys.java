package org.broodbench.input;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.broodbench.matter.Dimension;
import org.broodbench.rig.SizeSpec;

/** Keys of what may be bought, for sizing. */
final class SizeKeys {
  private static final int MOST = 60;

  /** What is stronger the more of it there is, all else being equal. */
  private static final Map<String, Dimension> STRENGTHS =
      Map.of(
          "hive.insulation", Dimension.LENGTH,
          "pv.power", Dimension.POWER,
          "battery.capacity", Dimension.CHARGE);

  private static final String AGM = "battery.chemistry=agm | battery.capacity=";
  private static final String LFP = "battery.chemistry=lfp | battery.capacity=";

  /** Part, settings, price, mass: invented for the demo, near shop prices of 2024; own choice. */
  private static final Object[][] USUAL = {
    {"insulation", "hive.insulation=0 mm", 0.0, 0.0},
    {"insulation", "hive.insulation=20 mm", 15.0, 0.4},
    {"insulation", "hive.insulation=40 mm", 25.0, 0.8},
    {"insulation", "hive.insulation=60 mm", 35.0, 1.2},
    {"heater", "heater.power=10 W", 12.0, 0.1},
    {"heater", "heater.power=20 W", 15.0, 0.2},
    {"heater", "heater.power=40 W", 20.0, 0.3},
    {"pan", "heater.pan_mass=2 kg", 4.0, 2.3},
    {"pan", "heater.pan_mass=5 kg", 6.0, 5.4},
    {"pan", "heater.pan_mass=10 kg", 9.0, 10.6},
    {"panel", "pv.power=10 W", 18.0, 1.2},
    {"panel", "pv.power=20 W", 25.0, 2.0},
    {"panel", "pv.power=40 W", 40.0, 3.5},
    {"panel", "pv.power=80 W", 65.0, 6.0},
    {"panel", "pv.power=160 W", 110.0, 10.0},
    {"panel", "pv.power=320 W", 200.0, 18.0},
    {"battery", AGM + "7 Ah", 22.0, 2.5},
    {"battery", AGM + "12 Ah", 35.0, 4.0},
    {"battery", AGM + "20 Ah", 55.0, 6.5},
    {"battery", AGM + "40 Ah", 95.0, 12.5},
    {"battery", AGM + "80 Ah", 160.0, 23.0},
    {"battery", AGM + "160 Ah", 300.0, 45.0},
    {"battery", LFP + "6 Ah", 35.0, 0.8},
    {"battery", LFP + "12 Ah", 60.0, 1.6},
    {"battery", LFP + "20 Ah", 90.0, 2.6},
    {"battery", LFP + "50 Ah", 190.0, 6.5}
  };

  private SizeKeys() {}

  static void declare(Keys.Builder keys) {
    keys.table("size", "What sizing must reach. Not used by a run.");
    keys.quantity("size.loss_of_load", "h", Dimension.TIME)
        .between("0 h", "1000 h")
        .byDefault("24 h")
        .help("Most hours in a season with the heat shed for want of charge, on average.");
    keys.quantity("size.reliability", "%", Dimension.RATIO)
        .between("50 %", "100 %")
        .byDefault("90 %")
        .help("Share of the seasons that must meet every requirement.");
    keys.rows(
        "size.choice",
        0,
        MOST,
        "What can be bought. Left out, a usual list of insulation, heaters, pans, panels and"
            + " batteries of two chemistries, with invented prices.");
    keys.plain("size.choice.*.part", Kind.TEXT)
        .help("Name of the part: panel, battery, insulation, heater, pan or your own word.");
    keys.plain("size.choice.*.set", Kind.TEXT)
        .help("KEY=VALUE that builds it in; several are separated by |.");
    keys.quantity("size.choice.*.price", "EUR", Dimension.MONEY)
        .between("0 EUR", "1000000 EUR")
        .help("What it costs; one currency for all.");
    keys.quantity("size.choice.*.mass", "kg", Dimension.MASS)
        .between("0 kg", "1000 kg")
        .byDefault("0 kg")
        .help("Its mass.");
  }

  static SizeSpec size(Values v) {
    Map<String, List<SizeSpec.Choice>> parts = new LinkedHashMap<>();
    String currency = "EUR";
    for (Values row : v.rows("size.choice")) {
      currency = currency(row);
      parts
          .computeIfAbsent(row.text("part"), name -> new ArrayList<>())
          .add(choice(row.text("set"), row.number("price"), row.number("mass")));
    }
    if (parts.isEmpty()) {
      for (Object[] u : USUAL) {
        parts
            .computeIfAbsent((String) u[0], name -> new ArrayList<>())
            .add(choice((String) u[1], (Double) u[2], (Double) u[3]));
      }
    }
    List<SizeSpec.Part> list = new ArrayList<>();
    parts.forEach((name, choices) -> list.add(new SizeSpec.Part(name, choices)));
    return new SizeSpec(
        v.number("size.loss_of_load") / 3600, v.number("size.reliability"), currency, list);
  }

  /**
   * The first setting of a strength makes the strength of the choice, all other settings its kind:
   * so two choices compare only where nothing else tells them apart.
   */
  private static SizeSpec.Choice choice(String set, double price, double massKg) {
    List<String> settings = new ArrayList<>();
    List<String> kind = new ArrayList<>();
    double strength = Double.NaN;
    for (String part : set.split("\\|")) {
      String one = part.strip();
      settings.add(one);
      double found = Double.isNaN(strength) ? strength(one) : Double.NaN;
      if (Double.isNaN(found)) {
        kind.add(one);
      } else {
        strength = found;
        kind.add(one.substring(0, one.indexOf('=')));
      }
    }
    return new SizeSpec.Choice(
        settings, price, massKg, String.join(" | ", kind), Double.isNaN(strength) ? 0 : strength);
  }

  /** In the base unit; not a number where a setting is none of strength, or cannot be read so. */
  private static double strength(String setting) {
    String[] sides = setting.split("=", 2);
    Dimension dimension = STRENGTHS.get(sides[0].strip());
    if (dimension == null || sides.length < 2) {
      return Double.NaN;
    }
    try {
      return Quantity.parse(sides[1].replace("\"", ""), dimension).base();
    } catch (QuantityRefused e) {
      return Double.NaN; // such as a capacity in watt-hours: nothing is compared with it
    }
  }

  private static String currency(Values row) {
    return row.quantity("price").text().replaceAll("[^A-Za-z]", "");
  }

  static void check(Values v, Checks checks) {
    String[] first = new String[1];
    for (Values row : v.rows("size.choice")) {
      checks.run(
          () -> {
            if (!row.text("set").contains("=")) {
              checks.refuse(
                  row.prefix() + "set", List.of(), "KEY=VALUE, such as pv.power=150 W", "");
            }
          });
      checks.run(
          () -> {
            String own = currency(row);
            first[0] = first[0] == null ? own : first[0];
            if (!own.equals(first[0])) {
              checks.refuse(
                  row.prefix() + "price",
                  List.of(),
                  "prices in " + first[0] + ", as of the first choice",
                  "Prices of several currencies cannot be added.");
            }
          });
    }
  }
}
