package org.broodbench.loop;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.broodbench.hive.BoxSpec;
import org.broodbench.plant.Plant;
import org.broodbench.rig.EventSpec;
import org.broodbench.rig.FaultKind;
import org.broodbench.rig.Scenario;

/** Carries out the events of a scenario at their times. */
final class ScenarioEvents {
  private record Due(long atMs, Runnable deed) {}

  private final List<Due> due = new ArrayList<>();
  private int next;

  /** Between two resets of a board that cannot stay up, s. */
  private static final double RESETS_EVERY_S = 3600;

  /**
   * @param reset resets the controller's board
   */
  ScenarioEvents(
      Scenario scenario,
      Plant plant,
      SteppedController controller,
      Recorder recorder,
      Faults faults,
      Runnable reset) {
    for (EventSpec e : scenario.events()) {
      long atMs = Math.round(e.atS() * 1000);
      if (e instanceof EventSpec.OpenLid lid) {
        add(
            atMs,
            () -> {
              plant.hive().setLidOpen(true);
              recorder.event(lid.atS(), "lid", "closed", "open", "the keeper looks in");
            });
        double closesAtS = lid.atS() + lid.durationS();
        add(
            Math.round(closesAtS * 1000),
            () -> {
              plant.hive().setLidOpen(false);
              recorder.event(closesAtS, "lid", "open", "closed", "the keeper is done");
            });
      } else if (e instanceof EventSpec.ChangeVent vent) {
        add(
            atMs,
            () -> {
              plant.hive().setTopVent(vent.topVentM2());
              recorder.event(
                  vent.atS(), "upper vent", "", cm2(vent.topVentM2()), "set by the keeper");
            });
      } else if (e instanceof EventSpec.ShorePower shore) {
        add(
            atMs,
            () -> {
              boolean before = plant.supply().shorePresent();
              plant.supply().setShore(shore.present());
              recorder.event(
                  shore.atS(),
                  "shore power",
                  before ? "there" : "gone",
                  plant.supply().shorePresent() ? "there" : "gone",
                  "as the scenario says");
            });
      } else if (e instanceof EventSpec.InstallColony install) {
        add(
            atMs,
            () -> {
              plant.hive().install(install.bees(), install.broodCells());
              recorder.colonyCame(install.bees(), install.broodCells());
              recorder.event(
                  install.atS(),
                  "colony",
                  "",
                  String.format(
                      Locale.ROOT,
                      "%.0f bees, %.0f brood cells more",
                      install.bees(),
                      install.broodCells()),
                  "moved in");
            });
      } else if (e instanceof EventSpec.Feed feed) {
        add(
            atMs,
            () -> {
              plant.hive().feed(feed.massKg(), feed.waterShare(), feed.temperatureC());
              recorder.event(
                  feed.atS(),
                  "feed",
                  "",
                  String.format(Locale.ROOT, "%.0f g", feed.massKg() * 1000),
                  "given by the keeper");
            });
      } else if (e instanceof EventSpec.AddBox box) {
        add(
            atMs,
            () -> {
              plant.addBox(new BoxSpec(box.heightM(), box.frames(), box.storesKg()));
              recorder.event(
                  box.atS(),
                  "boxes",
                  String.valueOf(plant.hive().spec().boxes().size() - 1),
                  String.valueOf(plant.hive().spec().boxes().size()),
                  "a box was put on top");
            });
      } else if (e instanceof EventSpec.SetPoint point) {
        add(
            atMs,
            () -> {
              boolean taken = controller.keyInSetPoint(point.setPointC());
              recorder.event(
                  point.atS(),
                  "set point",
                  "",
                  String.format(Locale.ROOT, "%.2f °C", point.setPointC()),
                  taken ? "keyed in by the keeper" : "refused by the controller");
            });
      }
    }
    for (EventSpec e : scenario.events()) {
      if (e instanceof EventSpec.Fault fault && fault.kind().appliesTo(scenario)) {
        addFault(fault, 86_400.0 * scenario.window().days(), recorder, faults, reset);
      }
    }
    due.sort(Comparator.comparingLong(Due::atMs));
  }

  private void addFault(
      EventSpec.Fault fault, double runS, Recorder recorder, Faults faults, Runnable reset) {
    String what = "fault " + fault.kind().key();
    add(
        Math.round(fault.atS() * 1000),
        () -> {
          faults.begin(fault);
          recorder.event(fault.atS(), what, "whole", "broken", "as the scenario says");
        });
    double endS = fault.kind().canEnd() ? fault.atS() + fault.durationS() : runS;
    if (fault.kind() == FaultKind.CONTROLLER_RESETS) {
      for (double s = fault.atS(); s < endS && s < runS; s += RESETS_EVERY_S) {
        add(Math.round(s * 1000), reset);
      }
    }
    if (endS < runS) {
      add(
          Math.round(endS * 1000),
          () -> {
            faults.end(fault);
            recorder.event(endS, what, "broken", "whole", "as the scenario says");
          });
    }
  }

  private static String cm2(double m2) {
    return String.format(Locale.ROOT, "%.1f cm²", m2 * 1e4);
  }

  private void add(long atMs, Runnable deed) {
    due.add(new Due(atMs, deed));
  }

  /** When the next event is due, ms since the start; far away where none is left. */
  long nextMs() {
    return next < due.size() ? due.get(next).atMs() : Long.MAX_VALUE;
  }

  /** Carries out what is due. */
  void at(long nowMs) {
    while (next < due.size() && due.get(next).atMs() <= nowMs) {
      due.get(next++).deed().run();
    }
  }
}
