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

  /** Part, settings, price, mass: invented, in the range of shops in 2024; own choice. */
  private static final Object[][] USUAL = {
    {"insulation", "hive.insulation=0 mm", 0.0, 0.0},
    {"insulation", "hive.insulation=20 mm", 15.0, 0.4},
    {"insulation", "hive.insulation=40 mm", 25.0, 0.8},
    {"insulation", "hive.insulation=60 mm", 35.0, 1.2},
    {"panel", "pv.power=50 W", 45.0, 4.0},
    {"panel", "pv.power=100 W", 75.0, 7.0},
    {"panel", "pv.power=150 W", 105.0, 10.0},
    {"panel", "pv.power=200 W", 135.0, 12.0},
    {"panel", "pv.power=300 W", 195.0, 18.0},
    {"panel", "pv.power=400 W", 250.0, 22.0},
    {"battery", "battery.capacity=30 Ah", 75.0, 10.0},
    {"battery", "battery.capacity=50 Ah", 110.0, 15.0},
    {"battery", "battery.capacity=80 Ah", 160.0, 23.0},
    {"battery", "battery.capacity=120 Ah", 225.0, 33.0},
    {"battery", "battery.capacity=180 Ah", 330.0, 48.0},
    {"battery", "battery.capacity=260 Ah", 470.0, 68.0}
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
        "What can be bought. The choices of a part stand from weak to strong; left out, a usual"
            + " list of insulation, panels and lead-acid batteries with invented prices.");
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
      List<String> settings = new ArrayList<>();
      for (String one : row.text("set").split("\\|")) {
        settings.add(one.strip());
      }
      currency = currency(row);
      parts
          .computeIfAbsent(row.text("part"), name -> new ArrayList<>())
          .add(new SizeSpec.Choice(settings, row.number("price"), row.number("mass")));
    }
    if (parts.isEmpty()) {
      for (Object[] u : USUAL) {
        parts
            .computeIfAbsent((String) u[0], name -> new ArrayList<>())
            .add(new SizeSpec.Choice(List.of((String) u[1]), (Double) u[2], (Double) u[3]));
      }
    }
    List<SizeSpec.Part> list = new ArrayList<>();
    parts.forEach((name, choices) -> list.add(new SizeSpec.Part(name, choices)));
    return new SizeSpec(
        v.number("size.loss_of_load") / 3600, v.number("size.reliability"), currency, list);
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
