package org.broodbench.input;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.matter.Dimension;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.ProbeSpec.Role;
import org.broodbench.rig.SensorSpec;

/** Keys of the probes and the other readings. */
final class ProbeKeys {
  private static final List<String> BROOD_PLACES = List.of("brood_comb", "nest_edge", "box_air");

  private ProbeKeys() {}

  static void declare(Keys.Builder keys) {
    for (Role role : Role.values()) {
      String name = name(role);
      String table = "probe." + name;
      keys.table(table, "The probe " + words(role) + ".");
      if (brood(role)) {
        keys.choice(table + ".place", BROOD_PLACES.toArray(String[]::new))
            .byDefault("brood_comb")
            .help("Between brood combs, at the edge of the nest, or in the air of the box.");
        // the mantle lies a quarter of the way in; own choice, as the model of the cluster has it
        keys.quantity(table + ".nest_share", "", Dimension.RATIO)
            .between("0", "1")
            .byDefault("0.25")
            .onlyWhen("place", "nest_edge")
            .help("How far from the air of the box to the nest it hangs: mantle of bees 0.25.");
      }
      if (role == Role.PAN) {
        keys.choice(table + ".place", "top", "filling")
            .byDefault("top")
            .help("On top of the thermal mass, or in its filling.");
      }
      if (role == Role.TOP) {
        keys.choice(table + ".place", "air", "lid")
            .byDefault("air")
            .help("In the air under the lid, or on the lid itself.");
      }
      if (role != Role.BROOD_A) {
        keys.plain(table + ".fitted", Kind.BOOLEAN)
            .byDefault(String.valueOf(role == Role.PAN || role == Role.OUTDOOR))
            .help("Whether it is there.");
      }
      // packaged probe in still air 1 to 3 min; a step of 1/16 K is usual for digital probes
      keys.quantity(table + ".lag", "s", Dimension.TIME)
          .between("0 s", "30 min")
          .byDefault(role == Role.PAN ? "30 s" : "90 s")
          .help("Time constant of the probe where it hangs.");
      keys.quantity(table + ".noise", "K", Dimension.TEMPERATURE_DIFFERENCE)
          .between("0 K", "5 K")
          .byDefault("0.05 K")
          .help("Standard deviation of one sample.");
      keys.quantity(table + ".resolution", "K", Dimension.TEMPERATURE_DIFFERENCE)
          .between("0 K", "2 K")
          .byDefault("0.0625 K")
          .help("Step of the reading.");
      keys.quantity(table + ".offset", "K", Dimension.TEMPERATURE_DIFFERENCE)
          .between("-10 K", "10 K")
          .byDefault("0 K")
          .help("Reading minus truth.");
    }
    sensors(keys);
  }

  private static void sensors(Keys.Builder keys) {
    keys.table("sensor", "The readings other than temperatures.");
    keys.plain("sensor.humidity", Kind.BOOLEAN)
        .byDefault("false")
        .help("Whether a humidity probe hangs between the combs.");
    // makers' sheets: 2 to 5 points
    keys.quantity("sensor.humidity_error", "%", Dimension.RATIO)
        .between("0 %", "20 %")
        .byDefault("3 %")
        .help("Its standard deviation, in points of humidity.");
    // a divider for 18 V on a 12-bit converter
    keys.quantity("sensor.volts_resolution", "mV", Dimension.VOLTAGE)
        .between("0 mV", "1000 mV")
        .byDefault("5 mV")
        .help("Step of the battery volts reading.");
    keys.quantity("sensor.volts_error", "mV", Dimension.VOLTAGE)
        .between("-1000 mV", "1000 mV")
        .byDefault("0 mV")
        .help("Battery volts reading minus truth.");
    keys.plain("sensor.battery_current", Kind.BOOLEAN)
        .byDefault("false")
        .help("Whether battery current is measured.");
    keys.plain("sensor.state_of_charge", Kind.BOOLEAN)
        .byDefault("true for lfp, else false", v -> "" + v.text("battery.chemistry").equals("lfp"))
        .help("Whether a charge counter gives the state of charge.");
    keys.quantity("sensor.state_of_charge_error", "%", Dimension.RATIO)
        .between("-50 %", "50 %")
        .byDefault("0 %")
        .help("State of charge reading minus truth, in points.");
    keys.plain("sensor.heater_current", Kind.BOOLEAN)
        .byDefault("false")
        .help("Whether heater current is measured.");
    keys.plain("sensor.charger_full", Kind.BOOLEAN)
        .byDefault("false")
        .help("Whether the charge controller reports a full battery.");
  }

  private static String name(Role role) {
    return role.name().toLowerCase(Locale.ROOT);
  }

  private static String words(Role role) {
    return switch (role) {
      case BROOD_A -> "that the brood is judged by";
      case BROOD_B -> "beside it, where there is a second one";
      case PAN -> "on the thermal mass";
      case TOP -> "under the lid";
      case OUTDOOR -> "outdoors in the shade";
    };
  }

  private static boolean brood(Role role) {
    return role == Role.BROOD_A || role == Role.BROOD_B;
  }

  static boolean fitted(Values v, Role role) {
    return role == Role.BROOD_A || v.flag("probe." + name(role) + ".fitted");
  }

  static List<ProbeSpec> probes(Values v) {
    List<ProbeSpec> probes = new ArrayList<>();
    for (Role role : Role.values()) {
      if (fitted(v, role)) {
        String table = "probe." + name(role) + ".";
        probes.add(
            new ProbeSpec(
                role,
                place(v, role),
                v.number(table + "lag"),
                v.number(table + "noise"),
                v.number(table + "resolution"),
                v.number(table + "offset"),
                brood(role) ? v.number(table + "nest_share") : 0));
      }
    }
    return probes;
  }

  private static ProbeSpec.Place place(Values v, Role role) {
    return switch (role) {
      case BROOD_A, BROOD_B ->
          ProbeSpec.Place.valueOf(
              v.text("probe." + name(role) + ".place").toUpperCase(Locale.ROOT));
      case PAN ->
          v.text("probe.pan.place").equals("top")
              ? ProbeSpec.Place.PAN
              : ProbeSpec.Place.PAN_FILLING;
      case TOP ->
          v.text("probe.top.place").equals("air") ? ProbeSpec.Place.TOP : ProbeSpec.Place.LID;
      case OUTDOOR -> ProbeSpec.Place.OUTDOOR;
    };
  }

  static SensorSpec sensors(Values v) {
    return new SensorSpec(
        v.flag("sensor.humidity"),
        v.number("sensor.humidity_error") * 100,
        v.number("sensor.volts_resolution"),
        v.number("sensor.volts_error"),
        v.flag("sensor.battery_current"),
        v.flag("sensor.state_of_charge"),
        v.number("sensor.state_of_charge_error"),
        v.flag("sensor.heater_current"),
        v.flag("sensor.charger_full"));
  }
}
