package org.broodbench.study;

import static org.broodbench.study.ControllerChanges.number;
import static org.broodbench.study.ControllerChanges.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.broodbench.hive.BoxSpec;
import org.broodbench.hive.HiveSpec;
import org.broodbench.hive.Layer;
import org.broodbench.hive.Pan;
import org.broodbench.loop.RunResult;
import org.broodbench.rig.Scenario;

/** Changes of hive, heater and thermal mass, cheap ones first. Steps are own choices. */
final class HiveChanges {
  private static final double MORE_INSULATION_MM = 30;

  private final Scenario s;
  private final HiveSpec hive;
  private final Set<Need> needs;
  private final RunResult r;
  private final List<Change> out = new ArrayList<>();

  private HiveChanges(Scenario scenario, Set<Need> needs, RunResult run) {
    s = scenario;
    hive = scenario.hive();
    this.needs = needs;
    r = run;
  }

  static List<Change> of(Scenario s, Set<Need> needs, RunResult r) {
    HiveChanges c = new HiveChanges(s, needs, r);
    c.openings();
    c.paint();
    c.room();
    c.insulation();
    c.pan();
    c.heater();
    return c.out;
  }

  private boolean any(Need... some) {
    return Stream.of(some).anyMatch(needs::contains);
  }

  private void openings() {
    double ventCm2 = hive.topVentM2() * 1e4;
    double wideMm = hive.entranceWidthM() * 1e3;
    if (any(Need.WARMTH, Need.MOISTURE)) {
      if (ventCm2 > 0) {
        vent(ventCm2, ventCm2 > 1 ? ventCm2 / 2 : 0);
      }
      if (wideMm >= 30) {
        entrance(wideMm, wideMm / 2);
      }
    }
    if (any(Need.COOLING, Need.FRESH_AIR, Need.DRYNESS)) {
      vent(ventCm2, Math.min(400, ventCm2 < 1.5 ? 5 : 3 * ventCm2));
      double mostMm = 1e3 * Math.max(hive.lengthM(), hive.widthM());
      if (1.5 * wideMm <= mostMm) {
        entrance(wideMm, Math.min(mostMm, 2 * wideMm));
      }
    }
  }

  private void vent(double fromCm2, double toCm2) {
    String now = fromCm2 == 0 ? "none" : number(fromCm2) + " cm²";
    String what =
        toCm2 == 0
            ? text("Shut the upper vent of %s", now)
            : text("Open the upper vent to %s cm² instead of %s", number(toCm2), now);
    out.add(Change.of(what, text("hive.top_vent=%s cm2", number(toCm2))));
  }

  private void entrance(double fromMm, double toMm) {
    out.add(
        Change.of(
            text(
                "%s the entrance to %.0f mm instead of %.0f mm",
                toMm < fromMm ? "Narrow" : "Widen", toMm, fromMm),
            text("hive.entrance_width=%.0f mm", toMm)));
  }

  private void paint() {
    if (any(Need.COOLING, Need.MOISTURE) && hive.wallSkin().solarAbsorptance() > 0.4) {
      out.add(
          Change.of(
              "Paint the hive white", "hive.solar_absorptance=30 %", "hive.lid_absorptance=30 %"));
    }
  }

  /** Less room to warm around the nest. */
  private void room() {
    BoxSpec box = hive.boxes().get(hive.broodBox());
    if (any(Need.WARMTH) && box.dummyBoards() == 0 && box.frames() >= 5) {
      out.add(
          Change.of(
              "Close off the room beside the brood with two dummy boards",
              text("hive.box.%d.dummy_boards=2", hive.broodBox())));
    }
    boolean fits = hive.boxes().size() == 1 && s.colony().broodFrames() <= 4;
    if (any(Need.WARMTH) && fits && box.frames() > 6) {
      out.add(
          Change.of(
              "Move the colony into a box of five frames",
              "hive.width=200 mm",
              "hive.box.0.frames=5"));
    }
  }

  private void insulation() {
    double nowMm = 0;
    for (List<Layer> face : List.of(hive.wall(), hive.floor(), hive.lid())) {
      double faceMm = 0;
      for (Layer l : face.subList(1, face.size())) {
        faceMm += l.insulates() ? 1e3 * l.thicknessM() : 0;
      }
      nowMm = Math.max(nowMm, faceMm);
    }
    nowMm = Math.rint(nowMm);
    if (any(Need.WARMTH, Need.CHARGE, Need.DRYNESS) && nowMm + MORE_INSULATION_MM <= 300) {
      insulation(nowMm, nowMm + MORE_INSULATION_MM);
    }
    if (any(Need.COOLING) && nowMm >= 10) {
      insulation(nowMm, Math.rint(nowMm / 4));
    }
  }

  private void insulation(double fromMm, double toMm) {
    out.add(
        Change.of(
            text(
                "Insulate with %.0f mm all round instead of %s",
                toMm, fromMm == 0 ? "none" : text("%.0f mm", fromMm)),
            text("hive.insulation=%.0f mm", toMm)));
  }

  private void pan() {
    Pan.Bulk bulk = s.heater().pan().bulk();
    if (bulk != null && any(Need.CALM, Need.WARMTH, Need.COOL_PAN) && s.heater().powerW() > 0) {
      double toKg = Math.min(50, 2 * bulk.massKg());
      out.add(
          Change.of(
              text("Fill the pan with %s kg instead of %s kg", number(toKg), number(bulk.massKg())),
              text("heater.pan_mass=%s kg", number(toKg))));
    }
  }

  private void heater() {
    double nowW = s.heater().powerW();
    if (nowW == 0) {
      return;
    }
    if (any(Need.WARMTH)) {
      heater(nowW, Math.max(nowW + 5, 5 * Math.rint(1.5 * nowW / 5)));
    }
    if (any(Need.CALM, Need.COOL_PAN) && nowW > 8) {
      heater(nowW, Math.max(5, Math.rint(0.6 * nowW)));
    }
    if (any(Need.COOLING) && r.heaterCommanded().starts() > 0) {
      heater(nowW, 0);
    }
  }

  private void heater(double fromW, double toW) {
    out.add(
        Change.of(
            toW == 0
                ? text("Unplug the heater of %s W", number(fromW))
                : text("Fit a heater of %s W instead of %s W", number(toW), number(fromW)),
            text("heater.power=%s W", number(toW))));
  }
}
