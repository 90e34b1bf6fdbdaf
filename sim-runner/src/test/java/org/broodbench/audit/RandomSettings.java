package org.broodbench.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/** Rigs that a seed decides, as settings on top of one base file: well and badly matched. */
final class RandomSettings {
  private final SplittableRandom random;
  private final List<String> set = new ArrayList<>();

  private RandomSettings(long seed) {
    random = new SplittableRandom(seed);
  }

  /** Settings as they are typed behind the command; a few of them the reader may refuse. */
  static List<String> of(long seed) {
    RandomSettings r = new RandomSettings(seed);
    // every third rig is meant well, so that some pass
    boolean kind = seed % 3 == 0;
    r.weather(seed, kind);
    r.hive(kind);
    double volts = r.chance(0.15) ? 24 : 12;
    boolean lithium = r.chance(0.35);
    boolean inverter = r.chance(kind ? 0.1 : 0.3);
    r.heater(kind, inverter, volts);
    r.battery(kind, lithium, volts);
    r.controller(kind, lithium, volts);
    r.paper(kind);
    return List.copyOf(r.set);
  }

  private double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }

  private boolean chance(double p) {
    return random.nextDouble() < p;
  }

  private void put(String key, double value, String unit) {
    set.add(String.format(Locale.ROOT, "%s=%.3f %s", key, value, unit).trim());
  }

  private void put(String key, String word) {
    set.add(key + "=" + word);
  }

  private String one(String... words) {
    return words[random.nextInt(words.length)];
  }

  private void weather(long seed, boolean kind) {
    String climate = one("upland", "far_north", "desert_edge", "southern", "town", "plains");
    put("weather.climate", climate);
    put(
        "site.latitude",
        switch (climate) {
          case "far_north" -> "64 N";
          case "desert_edge" -> "31 N";
          case "southern" -> "36 S";
          default -> "48 N";
        });
    int month = kind ? 3 + random.nextInt(7) : 1 + random.nextInt(12);
    put("run.from", String.format(Locale.ROOT, "2027-%02d-01", month));
    put("weather.generator_seed", String.valueOf(seed));
    put("weather.spell_days", String.valueOf(random.nextInt(6)));
    put("weather.colder_by", kind ? 0 : between(0, 8), "K");
  }

  private void hive(boolean kind) {
    put("hive.insulation", between(kind ? 30 : 0, 80), "mm");
    put("hive.top_vent", between(0, kind ? 3 : 20), "cm2");
    put("hive.box.0.stores", between(1, 12), "kg");
    put("colony.bees", String.valueOf((int) between(kind ? 4000 : 800, 16_000)));
    put("colony.brood_cells", String.valueOf(chance(0.1) ? 0 : (int) between(500, 10_000)));
    put("colony.heat_loss_factor", between(1, 2.85), "");
  }

  private void heater(boolean kind, boolean inverter, double volts) {
    put("heater.power", between(8, kind ? 30 : 90), "W");
    if (inverter) {
      put("heater.supply", "inverter");
      put("inverter.rated_power", between(60, 400), "W");
      put("inverter.idle", between(0.5, 12), "W");
      put("inverter.search", String.valueOf(chance(0.2)));
      if (chance(0.2)) {
        put("inverter.low_cut", volts / 12 * between(10.5, 12.2), "V");
        put("inverter.low_return", volts / 12 * between(12.3, 14.6), "V");
      }
      put("inverter.returns", String.valueOf(!chance(kind ? 0 : 0.15)));
    } else if (chance(0.1)) {
      put("heater.rated_volts", 36 - volts, "V");
    }
    put("heater.pan_mass", between(1, 12), "kg");
    put("heater.plate_area", between(kind ? 600 : 100, 1200), "cm2");
    put("wiring.heater_length", between(1, 8), "m");
    put("wiring.heater_wire", between(0.75, 6), "mm2");
    if (chance(0.15)) {
      put("wiring.heater_fuse", between(1, 25), "A");
    }
    put("wiring.relay_rating", between(kind ? 8 : 1, 20), "A");
    put("fan.power", chance(0.3) ? 0 : between(0.5, 3), "W");
    if (chance(0.2)) {
      put("load.0.power", between(1, 15), "W");
      put("load.0.supply", inverter ? "inverter" : "dc");
    }
  }

  private void battery(boolean kind, boolean lithium, double volts) {
    put("battery.nominal_volts", volts, "V");
    put("battery.chemistry", lithium ? "lfp" : one("flooded", "agm", "gel"));
    put("battery.capacity", between(kind ? 60 : 8, 180), "Ah");
    put("battery.initial_charge", between(kind ? 90 : 60, 100), "%");
    put("battery.place", lithium ? one("outdoors", "stand", "hive") : one("outdoors", "stand"));
    if (chance(kind ? 0.05 : 0.2)) {
      put("battery.resistance", between(5, 200), "mOhm");
    }
    if (lithium) {
      put("battery.frost_cut_off", String.valueOf(!chance(0.2)));
      double lowV = volts / 12 * between(9.5, kind ? 11 : 12.8);
      put("battery.board.low_volts", lowV, "V");
      put("battery.board.low_return_volts", lowV + between(0.3, 1), "V");
      put("battery.board.returns", chance(kind ? 0 : 0.25) ? "hand" : one("charge", "itself"));
      put("pv.starts_on_open_board", "yes");
    } else {
      put("battery.box_vent", between(kind ? 120 : 0, 200), "cm2");
    }
    put("pv.power", between(kind ? 120 : 5, kind ? 500 : 300), "W");
    if (chance(0.2)) {
      put("pv.load_output", "true");
      put("pv.load_cut", volts / 12 * between(10.2, 12), "V");
      put("pv.load_return", volts / 12 * between(12.2, 14.6), "V");
    }
    if (chance(0.1)) {
      put("shore.power", between(20, 150), "W");
    }
  }

  private void controller(boolean kind, boolean lithium, double volts) {
    String place = chance(kind ? 0.9 : 0.6) ? "brood_comb" : one("nest_edge", "box_air");
    put("probe.brood_a.place", place);
    if (chance(0.3)) {
      double c = place.equals("brood_comb") ? between(30, 34.9) : between(16, 27);
      put("controller.heat.set_point", c, "degC");
    }
    put("controller.heat.differential", between(0.2, 2), "K");
    put("controller.heat.min_on", between(0.5, 5), "min");
    put("controller.heat.min_off", between(1, 8), "min");
    if (place.equals("brood_comb")) {
      put("controller.fan.off_below", between(35.5, 37), "degC");
      put("controller.fan.on_above", between(37, 39), "degC");
    }
    put("sensor.battery_current", String.valueOf(chance(0.5)));
    if (!kind && chance(0.3)) {
      double shiftV = between(-0.75, 0.15);
      double shiftPercent = between(-7, 20);
      double[] enterV = {12.25, 12.15, 12.05, 11.8, 11.6};
      double[] leaveV = {12.55, 12.50, 12.45, 12.3, 12.2};
      double[] percent = {40, 30, 20, 15, 10};
      String[] levels = {"set_back", "survival", "heat", "fan", "standby"};
      for (int i = 0; i < levels.length; i++) {
        String key = "controller.shed." + levels[i];
        if (lithium) {
          put(key + "_enter_charge", Math.max(0.5 * (5 - i), percent[i] + shiftPercent), "%");
          put(key + "_leave_charge", percent[i] + Math.max(0, shiftPercent) + 10, "%");
        } else {
          put(key + "_enter_volts", volts / 12 * (enterV[i] + shiftV), "V");
          put(key + "_leave_volts", volts / 12 * (leaveV[i] + Math.max(0, shiftV)), "V");
        }
      }
    }
  }

  private void paper(boolean kind) {
    double bad = kind ? 0 : 0.1;
    if (chance(bad)) {
      put("heater.cut_out", one("none", "self_resetting"));
    }
    if (!kind) {
      put("heater.cut_out_opens", between(52, 60), "degC");
      put("heater.cut_out_tolerance", between(0.5, 4), "K");
    }
    if (chance(bad)) {
      put("heater.fails_off", one("no", "unknown"));
    }
    if (chance(bad)) {
      put("battery.beside.chemistry", one("flooded", "agm", "gel", "lfp"));
    }
  }
}
