package org.broodbench.study;

import static org.broodbench.study.ControllerChanges.number;
import static org.broodbench.study.ControllerChanges.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.broodbench.loop.RunResult;
import org.broodbench.power.BatterySpec;
import org.broodbench.power.Chemistry;
import org.broodbench.power.LoadSpec;
import org.broodbench.power.PvGroup;
import org.broodbench.power.SupplyUse;
import org.broodbench.rig.Scenario;

/** Changes of the supply chain, cheap ones first. */
final class PowerChanges {
  /** Sizes that batteries come in, Ah; common practice, no source. */
  private static final double[] SIZES_AH = {
    7, 12, 18, 26, 35, 50, 75, 100, 150, 200, 300, 400, 600, 800, 1200
  };

  /** A module counts as turned away from the noon sun from here on, degrees; own choice. */
  private static final double TURNED_AWAY_DEG = 60;

  /** Further loads count when they take this share of all that is drawn; own choice. */
  private static final double MUCH = 0.1;

  private final Scenario s;
  private final RunResult r;
  private final List<Change> out = new ArrayList<>();

  private PowerChanges(Scenario scenario, RunResult run) {
    s = scenario;
    r = run;
  }

  static List<Change> of(Scenario s, Set<Need> needs, RunResult r) {
    PowerChanges c = new PowerChanges(s, r);
    if (needs.contains(Need.CHARGE)) {
      c.turnModules();
      c.moveBattery();
      c.dropLoads();
      c.inverter();
      c.panel();
      c.battery();
    }
    return c.out;
  }

  private void turnModules() {
    double noonDeg = s.place().latitudeDeg() < 0 ? 0 : 180;
    List<String> keys = new ArrayList<>();
    for (int i = 0; i < s.pv().groups().size(); i++) {
      PvGroup g = s.pv().groups().get(i);
      double off = Math.abs((g.azimuthDeg() - noonDeg + 540) % 360 - 180);
      if (off > TURNED_AWAY_DEG && g.tiltDeg() > 10) {
        keys.add(text("pv.group.%d.azimuth=%.0f deg", i, noonDeg));
      }
    }
    if (!keys.isEmpty()) {
      out.add(
          new Change(
              text("Turn the panel to the %s, to the noon sun", noonDeg == 0 ? "north" : "south"),
              keys));
    }
  }

  private void moveBattery() {
    if (s.battery().place() != BatterySpec.Place.OUTDOORS) {
      return;
    }
    if (s.battery().chemistry().leadAcid()) {
      out.add(Change.of("Stand the battery in the stand under the hive", "battery.place=stand"));
    } else {
      out.add(
          Change.of(
              "Keep the lithium battery in the warmth of the hive, behind a wall from the bees",
              "battery.place=hive"));
    }
  }

  private void dropLoads() {
    double allWh =
        (r.power().heaterJ + r.power().fanJ + r.power().controllerJ + r.power().otherLoadsJ) / 3600;
    List<SupplyUse.Load> used = r.supply().loads();
    for (int i = 0; i < used.size(); i++) {
      if (used.get(i).energyWh() > MUCH * allWh) {
        out.add(
            Change.of(
                text("Take \"%s\" off this battery", s.loads().get(i).name()),
                text("load.%d.power=0 W", i)));
      }
    }
  }

  private void inverter() {
    if (s.inverter().ratedW() == 0) {
      return;
    }
    boolean others = s.loads().stream().anyMatch(LoadSpec::onInverter);
    if (s.heater().onInverter() && s.heater().powerW() > 0) {
      List<String> keys = new ArrayList<>();
      keys.add("heater.supply=dc");
      keys.add(text("heater.rated_volts=%s V", number(s.battery().nominalV())));
      if (!others) {
        keys.add("inverter.rated_power=0 W");
      }
      out.add(
          new Change(
              "Bypass the inverter: feed a heater for battery volts straight from the battery",
              keys));
    }
    if (s.inverter().idleW() > 1) {
      out.add(
          Change.of(
              text(
                  "Fit an inverter that idles at 1 W instead of %s W",
                  number(s.inverter().idleW())),
              "inverter.idle=1 W"));
    }
  }

  private void panel() {
    double nowW = s.pv().groups().stream().mapToDouble(PvGroup::powerW).sum();
    if (nowW > 0) {
      out.add(
          Change.of(
              text("Fit %s W of panel instead of %s W", number(2 * nowW), number(nowW)),
              text("pv.power=%s W", number(2 * nowW))));
    }
  }

  private void battery() {
    double nowAh = s.battery().capacityAh();
    for (double size : SIZES_AH) {
      if (size >= 1.2 * nowAh) {
        out.add(
            Change.of(
                text("Fit a battery of %s Ah instead of %s Ah", number(size), number(nowAh)),
                text("battery.capacity=%s Ah", number(size))));
        break;
      }
    }
    if (s.battery().chemistry() == Chemistry.LFP) {
      out.add(
          Change.of(
              "Fit a lead-acid battery of the same size, which takes charge in frost",
              "battery.chemistry=agm"));
    }
  }
}
