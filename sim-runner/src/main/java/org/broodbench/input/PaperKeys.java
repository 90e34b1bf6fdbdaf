package org.broodbench.input;

import java.util.Locale;
import java.util.Optional;
import org.broodbench.matter.Dimension;
import org.broodbench.matter.Units;
import org.broodbench.power.Chemistry;
import org.broodbench.power.Copper;
import org.broodbench.rig.Known;
import org.broodbench.rig.PaperSpec;

/** Keys of what a run does not simulate and the audit judges: protection, ratings, strangers. */
final class PaperKeys {
  private static final String[] KNOWN = {"yes", "no", "unknown"};

  private PaperKeys() {}

  static void declare(Keys.Builder keys) {
    keys.choice("heater.cut_out", "none", "self_resetting", "manual", "one_shot")
        .byDefault("none")
        .help(
            "Independent thermal cut-out on the plate, in series with the heater, by how it closes again.");
    keys.quantity("heater.cut_out_opens", "degC", Dimension.TEMPERATURE)
        .between("30 degC", "200 degC")
        .byDefault("55 degC")
        .help("Temperature at which it opens.");
    // bimetal discs 3 to 5 K, from memory
    keys.quantity("heater.cut_out_tolerance", "K", Dimension.TEMPERATURE_DIFFERENCE)
        .between("0 K", "30 K")
        .byDefault("3 K")
        .help("How far off that it may be.");
    keys.choice("heater.fails_off", KNOWN)
        .byDefault("unknown")
        .help(
            "Whether the heat goes off when the controller stops, hangs or loses power: contact open without current, watch-dog.");
    // a common small relay: 10 A at 30 V of direct current
    keys.quantity("wiring.relay_rating", "A", Dimension.CURRENT)
        .between("0.1 A", "200 A")
        .byDefault("10 A")
        .help("Current that the contact which switches the heater may carry at its volts.");
    keys.quantity("wiring.battery_wire", "mm2", Dimension.AREA)
        .between("0.1 mm2", "120 mm2")
        .byDefault("the usual size that carries what `battery_fuse` lets pass", PaperKeys::lead)
        .help("Cross-section of the leads at the battery, behind its fuse.");
    keys.quantity("battery.box_vent", "cm2", Dimension.AREA)
        .between("0 cm2", "5000 cm2")
        .byDefault("100 cm2, 0 cm2 in the hive", PaperKeys::vent)
        .help(
            "Free area of each of the two vents of the battery's box, below and above; 0 for a closed box.");
    keys.choice("pv.starts_on_open_board", KNOWN)
        .byDefault("unknown")
        .help(
            "Whether the charge controller starts while the battery's protection board holds it open.");
    keys.choice("controller.keeps_latches", KNOWN)
        .byDefault("unknown")
        .help("Whether latches and the count of sheds outlive a loss of power.");

    keys.table("battery.beside", "Another battery side by side with the bank; no run knows it.");
    keys.choice("battery.beside.chemistry", "none", "flooded", "agm", "gel", "lfp")
        .byDefault("none")
        .help("Its kind; none where there is no other.");
    keys.quantity("battery.beside.capacity", "Ah", Dimension.CHARGE)
        .between("1 Ah", "5000 Ah")
        .byDefault("as the bank's", v -> amperehours(BatteryKeys.capacityAh(v)))
        .help("Its charge at the 20-hour rate.");
    keys.quantity("battery.beside.charge", "%", Dimension.RATIO)
        .between("0 %", "100 %")
        .byDefault("50 %")
        .help("Its state of charge when the two are joined.");
    keys.quantity("battery.beside.resistance", "mOhm", Dimension.RESISTANCE)
        .between("0.1 mOhm", "1000 mOhm")
        .byDefault("as the bank's", v -> v.shown("battery.resistance"))
        .help("Its internal resistance.");
  }

  private static String lead(Values v) {
    return Units.write(
        Copper.sizeForMm2(v.number("wiring.battery_fuse")) * 1e-6,
        Units.get(Dimension.AREA, "mm2"));
  }

  private static String vent(Values v) {
    return v.text("battery.place").equals("hive") ? "0 cm2" : "100 cm2";
  }

  private static String amperehours(double ah) {
    return Units.write(ah * 3600, Units.get(Dimension.CHARGE, "Ah"));
  }

  static PaperSpec paper(Values v) {
    String beside = v.text("battery.beside.chemistry");
    return new PaperSpec(
        new PaperSpec.CutOut(
            PaperSpec.Kind.valueOf(v.text("heater.cut_out").toUpperCase(Locale.ROOT)),
            v.number("heater.cut_out_opens"),
            v.number("heater.cut_out_tolerance")),
        known(v, "heater.fails_off"),
        v.number("wiring.relay_rating"),
        v.number("wiring.battery_wire") * 1e6,
        v.number("battery.box_vent"),
        beside.equals("none")
            ? Optional.empty()
            : Optional.of(
                new PaperSpec.Beside(
                    Chemistry.valueOf(beside.toUpperCase(Locale.ROOT)),
                    v.number("battery.beside.capacity") / 3600,
                    v.number("battery.beside.charge"),
                    v.number("battery.beside.resistance"))),
        known(v, "pv.starts_on_open_board"),
        known(v, "controller.keeps_latches"));
  }

  private static Known known(Values v, String path) {
    return Known.valueOf(v.text(path).toUpperCase(Locale.ROOT));
  }
}
