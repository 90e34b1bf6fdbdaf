package org.broodbench.audit;

import static org.broodbench.audit.Finding.PRACTICE;
import static org.broodbench.audit.Words.down;
import static org.broodbench.audit.Words.of;
import static org.broodbench.audit.Words.set;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.Setting;
import org.broodbench.hive.HeaterSpec;
import org.broodbench.rig.Known;
import org.broodbench.rig.PaperSpec;
import org.broodbench.rig.ProbeSpec;
import org.broodbench.rig.Scenario;

/** Hot surfaces and what stands between them and a fire: plate, contact, cut-out, failing off. */
final class SurfaceChecks {
  /** Above this nothing in a hive may get by a fault, °C: wax melts from 62 °C. */
  static final double FAULT_C = 60;

  /** Air of a hive with brood in working order, °C. */
  private static final double WARM_AIR_C = 30;

  private final Facts f;
  private final Findings out;

  SurfaceChecks(Facts f, Findings out) {
    this.f = f;
    this.out = out;
  }

  void run() {
    if (!f.heats()) {
      return;
    }
    plate();
    contact();
    cutOut();
    failsOff();
  }

  /** Heat of the element at the highest volts, W. */
  private static double hotW(Facts f) {
    return f.supply.heaterW(f.supply.highV());
  }

  /**
   * Rated power for a watt at the highest volts, W/W, as if no wire took its share: a smaller
   * element loses less in it.
   */
  private static double ratedPerHotW(Facts f) {
    HeaterSpec h = f.s.heater();
    double ratio = f.supply.highV() / h.ratedV();
    return h.onInverter() || h.regulated() ? 1 : 1 / (ratio * ratio);
  }

  private static double panWK(Scenario s) {
    return s.heater().pan().airWK() + s.heater().pan().nestWK();
  }

  /** Warmest top of the pan in working order, °C: of the coldest hour, or its control limit. */
  static double topC(Facts f) {
    double neededC = f.coldest.warmestPanC();
    return f.s.probe(ProbeSpec.Role.PAN) == null
        ? neededC
        : Math.min(neededC, f.setting(Setting.LIMIT_PAN_CENTI_C) / 100.0);
  }

  /** Warmest plate in working order, °C. */
  static double plateC(Facts f) {
    return topC(f) + hotW(f) * SteadyHive.plateKPerW(f.s.heater().pan());
  }

  private String plateSum() {
    return of(
        "top of the pan %.1f °C %s + %.1f W at %.1f V x %.2f K/W = %.1f °C",
        topC(f),
        topC(f) < f.coldest.warmestPanC() ? "(its control limit)" : "(of the coldest hour)",
        hotW(f),
        f.supply.highV(),
        SteadyHive.plateKPerW(f.s.heater().pan()),
        plateC(f));
  }

  private void plate() {
    HeaterSpec h = f.s.heater();
    double fluxWM2 = hotW(f) / h.plateM2();
    boolean hot = plateC(f) > h.limits().plateC();
    boolean dense = fluxWM2 > h.limits().plateWM2();
    if (!hot && !dense) {
      return;
    }
    List<String> cure = new ArrayList<>();
    double factor = 0.98 * ratedPerHotW(f);
    double byFlux = h.limits().plateWM2() * h.plateM2() * factor;
    double byHeat = (h.limits().plateC() - 0.5 - topC(f)) / SteadyHive.plateKPerW(h.pan()) * factor;
    cure.add(
        set(
            "heater.power",
            Math.max(0, down(Math.min(h.powerW(), Math.min(byFlux, byHeat)), 0.5)),
            1,
            "W"));
    out.add(
        "plate_surface",
        Severity.WARN,
        "The plate gets too hot or too dense",
        of(
            "plate: %s (limit %.0f °C); %.1f W / %.3f m² = %.0f W/m² (limit %.0f W/m²)",
            plateSum(), h.limits().plateC(), hotW(f), h.plateM2(), fluxWM2, h.limits().plateWM2()),
        "Take less power, a larger plate or a better contact",
        cure,
        "limits: own choice, keys heater.plate_limit and heater.flux_limit");
  }

  private void contact() {
    double limit = f.s.heater().limits().contactC();
    boolean seen = f.s.probe(ProbeSpec.Role.PAN) != null;
    double controlC = f.setting(Setting.LIMIT_PAN_CENTI_C) / 100.0;
    double steadyC = WARM_AIR_C + hotW(f) / panWK(f.s);
    double topC = seen ? Math.min(controlC, steadyC) : steadyC;
    if (topC <= limit) {
      return;
    }
    List<String> cure = new ArrayList<>();
    if (!seen) {
      cure.add("probe.pan.fitted=true");
    }
    double leastC = f.setting(Setting.FALLBACK_PAN_CENTI_C) / 100.0;
    double panC = Math.max(leastC, Math.min(38, down(limit - 2, 0.5)));
    cure.add(set("controller.limit.pan", panC, 1, "degC"));
    out.add(
        "bee_contact",
        Severity.WARN,
        "Bees and comb may touch too hot a pan",
        of(
            "all heat for ever: %.0f °C + %.1f W / %.2f W/K = %.1f °C%s; bees and comb bear %.0f °C",
            WARM_AIR_C,
            hotW(f),
            panWK(f.s),
            steadyC,
            seen ? of(", the probe limits it at %.1f °C", controlC) : ", and no probe limits it",
            limit),
        "Limit the pan by a probe on it",
        cure,
        "limit: own choice, key heater.contact_limit; wax softens near 40 °C");
  }

  private void cutOut() {
    PaperSpec.CutOut c = f.s.paper().cutOut();
    double plateC = plateC(f);
    boolean stays = f.s.paper().cutOutStaysOpen();
    boolean between =
        c.opensC() - c.toleranceK() > plateC && c.opensC() + c.toleranceK() <= FAULT_C;
    if (!stays) {
      List<String> cure = new ArrayList<>(List.of("heater.cut_out=manual"));
      if (!between) {
        cure.addAll(bandCure(plateC));
      }
      out.add(
          "no_cutout",
          Severity.STOP,
          c.kind() == PaperSpec.Kind.NONE
              ? "No independent cut-out on the plate"
              : "The cut-out on the plate closes again by itself",
          of(
              "%s; contacts weld closed and solid-state switches fail closed; all heat for ever: %.0f °C + %.1f W x (1/%.2f W/K + %.2f K/W) = %.0f °C at the plate",
              c.kind() == PaperSpec.Kind.NONE
                  ? "none is fitted"
                  : "a self-resetting one heats again and again",
              WARM_AIR_C,
              hotW(f),
              panWK(f.s),
              SteadyHive.plateKPerW(f.s.heater().pan()),
              WARM_AIR_C + hotW(f) * (1 / panWK(f.s) + SteadyHive.plateKPerW(f.s.heater().pan()))),
          "Put one that stays open in series with the heater, on its plate"
              + (between || cure.stream().noneMatch(x -> x.startsWith("heater.power="))
                  ? ""
                  : "; there is room for it below 60 °C only with less power"),
          cure,
          PRACTICE);
    } else if (!between) {
      out.add(
          "cutout_band",
          Severity.STOP,
          "The cut-out's tolerance does not lie between the warmest normal plate and 60 °C",
          of(
              "it opens between %.1f and %.1f °C (%.1f ± %.1f); warmest normal plate: %s; nothing may pass %.0f °C",
              c.opensC() - c.toleranceK(),
              c.opensC() + c.toleranceK(),
              c.opensC(),
              c.toleranceK(),
              plateSum(),
              FAULT_C),
          "Choose one between the two; where there is no room, less power",
          bandCure(plateC),
          "wax melts from 62 °C, from memory; the rule " + PRACTICE);
    }
  }

  /** A cut-out half way between, of a tolerance that fits; less power where there is no room. */
  private List<String> bandCure(double plateC) {
    List<String> cure = new ArrayList<>();
    double warmC = plateC;
    if (FAULT_C - warmC < 4) {
      double topC = Math.min(topC(f), 45);
      warmC = 0.5 * (topC + FAULT_C - 4);
      HeaterSpec h = f.s.heater();
      double watts = (warmC - topC) / SteadyHive.plateKPerW(h.pan()) * ratedPerHotW(f);
      cure.add(set("heater.power", down(watts, 0.5), 1, "W"));
      if (topC(f) > topC) {
        cure.add("probe.pan.fitted=true");
        cure.add("controller.limit.pan=38 degC");
      }
    }
    double middleC = Math.rint(5 * (warmC + FAULT_C)) / 10;
    double room = Math.min(middleC - warmC, FAULT_C - middleC) - 0.2;
    cure.add(set("heater.cut_out_opens", middleC, 1, "degC"));
    cure.add(
        set(
            "heater.cut_out_tolerance",
            Math.min(f.s.paper().cutOut().toleranceK(), down(room, 0.1)),
            1,
            "K"));
    return cure;
  }

  private void failsOff() {
    Known known = f.s.paper().failsOff();
    if (known == Known.YES) {
      return;
    }
    out.add(
        "fail_off",
        known == Known.NO ? Severity.STOP : Severity.WARN,
        known == Known.NO
            ? "The heat stays on when the controller stops"
            : "Nobody knows whether the heat goes off when the controller stops",
        of(
            "%.1f W stay on without a controller: the pan rises to %.0f °C + %.1f / %.2f W/K = %.0f °C",
            hotW(f), WARM_AIR_C, hotW(f), panWK(f.s), WARM_AIR_C + hotW(f) / panWK(f.s)),
        "Use a contact that opens without current and a watch-dog, try it, and say so",
        List.of("heater.fails_off=yes"),
        PRACTICE);
  }
}
