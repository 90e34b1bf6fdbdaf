package org.broodbench.audit;

import static org.broodbench.audit.Finding.PRACTICE;
import static org.broodbench.audit.Words.of;
import static org.broodbench.audit.Words.set;
import static org.broodbench.audit.Words.up;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.power.Copper;
import org.broodbench.power.FuseSizes;
import org.broodbench.power.WiringSpec;

/** Copper, fuses, contacts, inverter and element against the currents they carry. */
final class WiringChecks {
  /** Drop in the heater's circuit that is worth a warning, share of the bus volts. */
  static final double MOST_DROP = 0.05;

  /** What flows for long is at most this share of a fuse's or a contact's rating. */
  static final double FOR_LONG = 1.25;

  private static final double LEAST_CONTACT_OHM = 0.002;

  private final Facts f;
  private final Findings out;

  WiringChecks(Facts f, Findings out) {
    this.f = f;
    this.out = out;
  }

  void run() {
    if (f.heats()) {
      relay();
      if (!f.supply.onInverter()) {
        drop();
        heaterFuse();
        elementVolts();
      }
    }
    batteryFuse();
    inverterSmall();
    asleep();
  }

  private void drop() {
    double v = f.supply.workV();
    double a = f.supply.heaterA(v);
    double ohm = f.supply.heaterWireOhm();
    double share = a * ohm / v;
    if (share <= MOST_DROP) {
      return;
    }
    WiringSpec w = f.s.wiring();
    out.add(
        "voltage_drop",
        Severity.WARN,
        "The heater's wires eat volts",
        of(
            "2 x %.1f m x %.5f ohm mm²/m / %.2f mm² = %.1f mOhm, contacts %.1f mOhm; %.2f A x %.1f mOhm = %.2f V of %.1f V = %.1f %%, and %.1f W turn into heat in the wires",
            w.heaterLengthM(),
            Copper.OHM_MM2_PER_M,
            w.heaterMm2(),
            1000 * (ohm - w.heaterContactOhm()),
            1000 * w.heaterContactOhm(),
            a,
            1000 * ohm,
            a * ohm,
            v,
            100 * share,
            a * a * ohm),
        "Take thicker wire and sound contacts",
        dropCure(v),
        "copper: IEC 60028; 3 % to 5 % from source to load: notes of the NEC");
  }

  private List<String> dropCure(double v) {
    WiringSpec w = f.s.wiring();
    // what the element would draw without any wire is more than with it
    double mostA =
        f.s.heater().regulated()
            ? f.supply.heaterA(v)
            : v * f.s.heater().powerW() / (f.s.heater().ratedV() * f.s.heater().ratedV());
    double allowedOhm = 0.95 * MOST_DROP * v / mostA;
    List<String> cure = new ArrayList<>();
    double contacts = w.heaterContactOhm();
    if (contacts > allowedOhm / 3) {
      contacts = Math.min(LEAST_CONTACT_OHM, allowedOhm / 3);
      cure.add(set("wiring.heater_contacts", 1000 * contacts, 2, "mOhm"));
    }
    double perMetre = 2 * Copper.OHM_MM2_PER_M / (allowedOhm - contacts);
    double lengthM = w.heaterLengthM();
    if (perMetre * lengthM > 120) {
      lengthM = Words.down(120 / perMetre, 0.1);
      cure.add(set("wiring.heater_length", lengthM, 1, "m"));
    }
    double mm2 = Copper.usualMm2(perMetre * lengthM);
    if (mm2 > w.heaterMm2()) {
      cure.add(set("wiring.heater_wire", mm2, 2, "mm2"));
    } else if (cure.isEmpty()) {
      cure.add(set("wiring.heater_wire", w.heaterMm2(), 2, "mm2"));
    }
    return cure;
  }

  private void heaterFuse() {
    WiringSpec w = f.s.wiring();
    double a = f.supply.heaterA(f.supply.highV());
    double carries = Copper.carriesA(w.heaterMm2());
    double guards = w.heaterFuseA() > 0 ? w.heaterFuseA() : w.batteryFuseA();
    String source =
        "ampacity: table of IEC 60364-5-52, method C, from memory; fuse at most what the wire carries, at least 1.25 times what flows for long: "
            + PRACTICE;
    double fuseA = FuseSizes.atLeastA(FOR_LONG * a);
    double mm2 = Math.max(w.heaterMm2(), Copper.sizeForMm2(fuseA));
    List<String> cure =
        mm2 > w.heaterMm2()
            ? List.of(
                set("wiring.heater_wire", mm2, 2, "mm2"), set("wiring.heater_fuse", fuseA, 1, "A"))
            : List.of(set("wiring.heater_fuse", fuseA, 1, "A"));
    if (guards <= 0 || guards > carries) {
      out.add(
          "fuse_wire",
          Severity.STOP,
          "No fuse protects the heater's wire",
          guards <= 0
              ? of("a wire of %.2f mm² that carries %.1f A has no fuse", w.heaterMm2(), carries)
              : of(
                  "fuse %.1f A; a wire of %.2f mm² carries 15 x %.2f^0.62 = %.1f A",
                  guards, w.heaterMm2(), w.heaterMm2(), carries),
          "Fuse the wire, and take one that carries the fuse",
          cure,
          source);
    }
    if (w.heaterFuseA() > 0 && w.heaterFuseA() < FOR_LONG * a) {
      out.add(
          "fuse_small",
          w.heaterFuseA() * 1.1 < f.supply.heaterA(f.supply.workV())
              ? Severity.STOP
              : Severity.WARN,
          "A fuse is too small for what flows",
          of(
              "the heater takes %.2f A at %.1f V; 1.25 x %.2f = %.2f A, fuse %.1f A",
              a, f.supply.highV(), a, FOR_LONG * a, w.heaterFuseA()),
          "Take the next usual size",
          cure,
          PRACTICE);
    }
  }

  private void batteryFuse() {
    WiringSpec w = f.s.wiring();
    double carries = Copper.carriesA(f.s.paper().batteryWireMm2());
    double a = f.supply.allLoadsA();
    double fuseA = FuseSizes.atLeastA(FOR_LONG * a);
    if (w.batteryFuseA() <= 0 || w.batteryFuseA() > carries) {
      double rating = w.batteryFuseA() > 0 ? w.batteryFuseA() : fuseA;
      double mm2 = Math.max(f.s.paper().batteryWireMm2(), Copper.sizeForMm2(rating));
      if (rating > Copper.carriesA(mm2)) {
        rating = FuseSizes.atMostA(Copper.carriesA(mm2));
      }
      out.add(
          "fuse_wire",
          Severity.STOP,
          "No fuse protects the battery's leads",
          of(
              "%s at the battery; leads of %.2f mm² carry 15 x %.2f^0.62 = %.1f A",
              w.batteryFuseA() > 0 ? of("fuse %.1f A", w.batteryFuseA()) : "no fuse",
              f.s.paper().batteryWireMm2(),
              f.s.paper().batteryWireMm2(),
              carries),
          "Fuse the battery at its post, with leads that carry the fuse",
          List.of(
              set("wiring.battery_fuse", rating, 1, "A"),
              set("wiring.battery_wire", mm2, 2, "mm2")),
          PRACTICE);
    }
    if (w.batteryFuseA() > 0 && w.batteryFuseA() < a) {
      double mm2 = Math.max(f.s.paper().batteryWireMm2(), Copper.sizeForMm2(fuseA));
      out.add(
          "fuse_small",
          w.batteryFuseA() * 1.1 < a ? Severity.STOP : Severity.WARN,
          "A fuse is too small for what flows",
          of(
              "all loads take %.1f A at %.1f V, fuse %.1f A at the battery",
              a, f.supply.workV(), w.batteryFuseA()),
          "Take the next usual size over 1.25 times that",
          List.of(
              set("wiring.battery_fuse", fuseA, 1, "A"), set("wiring.battery_wire", mm2, 2, "mm2")),
          PRACTICE);
    }
  }

  private void relay() {
    double a = f.supply.contactA(f.supply.highV());
    double rating = f.s.paper().relayA();
    if (FOR_LONG * a <= rating) {
      return;
    }
    out.add(
        "relay_rating",
        a > rating ? Severity.STOP : Severity.WARN,
        "The heater's contact is too small",
        of(
            "%.1f W at %.1f V: %.2f A; 1.25 x %.2f = %.2f A, rating %.1f A",
            f.supply.onInverter() ? f.s.heater().powerW() : f.supply.heaterInputW(f.supply.highV()),
            f.supply.onInverter() ? f.s.heater().ratedV() : f.supply.highV(),
            a,
            a,
            FOR_LONG * a,
            rating),
        "Take a contact for that current at its volts",
        List.of(set("wiring.relay_rating", up(FOR_LONG * a, 1), 0, "A")),
        "1.25 times for heaters, which count as continuous: NEC 425; contact life 100,000 at rated load: makers' sheets");
  }

  /** An element of other volts than the battery has. */
  private void elementVolts() {
    if (f.s.heater().regulated()) {
      return;
    }
    double ratio = f.s.battery().nominalV() / f.s.heater().ratedV();
    double factor = ratio * ratio;
    if (factor <= 1.5 && factor >= 0.67) {
      return;
    }
    out.add(
        "heater_volts",
        factor > 1.5 ? Severity.STOP : Severity.WARN,
        "The element is made for other volts",
        of(
            "%.0f W at %.0f V on a battery of %.0f V: (%.0f/%.0f)² = %.2f times its power",
            f.s.heater().powerW(),
            f.s.heater().ratedV(),
            f.s.battery().nominalV(),
            f.s.battery().nominalV(),
            f.s.heater().ratedV(),
            factor),
        "Take an element for the battery's volts",
        List.of(set("heater.rated_volts", f.s.battery().nominalV(), 0, "V")),
        "Ohm's law");
  }

  private void inverterSmall() {
    double w = f.supply.acLoadsW() + (f.supply.onInverter() ? f.s.heater().powerW() : 0);
    if (w <= 0 || w <= f.s.inverter().ratedW()) {
      return;
    }
    out.add(
        "inverter_small",
        Severity.STOP,
        "The inverter is too small",
        of("heater and mains loads together %.0f W, rated %.0f W", w, f.s.inverter().ratedW()),
        "Take one for all of them",
        List.of(set("inverter.rated_power", up(FOR_LONG * w, 10), 0, "W")),
        PRACTICE);
  }

  /** Loads too small to wake an inverter in search mode. */
  private void asleep() {
    double wakeW = f.s.inverter().search().wakeW();
    if (f.s.inverter().ratedW() <= 0 || wakeW <= 0) {
      return;
    }
    double heaterW = f.supply.onInverter() ? f.s.heater().powerW() : 0;
    double w = heaterW + f.supply.acLoadsW();
    if (w <= 0 || w >= wakeW) {
      return;
    }
    out.add(
        "inverter_asleep",
        Severity.STOP,
        "The inverter never wakes for its loads",
        of("all loads together %.1f W; it wakes from %.1f W on", w, wakeW),
        "Switch its search mode off",
        List.of("inverter.search=false"),
        "search modes wake at about 15 W: a manual");
  }
}
