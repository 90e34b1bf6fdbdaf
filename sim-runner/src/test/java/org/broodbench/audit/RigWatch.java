package org.broodbench.audit;

import java.util.Set;
import java.util.TreeSet;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Setting;
import org.broodbench.controller.ShedLevel;
import org.broodbench.loop.Onlooker;
import org.broodbench.loop.Pace;
import org.broodbench.loop.ReferenceController;
import org.broodbench.loop.RunResult;
import org.broodbench.loop.Simulation;
import org.broodbench.plant.Plant;
import org.broodbench.power.CutOut;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Forcing;

/** Watches a run for what the audit's findings foretell, and for charge spent below its floor. */
final class RigWatch implements Onlooker {
  /** What opens to save something else than charge: no business of the shed levels. */
  private static final Set<String> OTHER =
      Set.of("board_high_volts", "charge_frost", "inverter_high_volts");

  /** Charge that a minute of delay takes, 0 to 1. */
  private static final double COUNTED = 0.01;

  /** Charge of lead-acid by a volt at rest: all of it over 1.3 V of a 12 V battery, 1/V. */
  private static final double SHARE_PER_V = 1 / 1.3;

  private final double slack;
  private final double heaterFloor;
  private final double fanFloor;
  private final double inverterFloor;
  private boolean[] wasOpen;

  /** Highest shed level. */
  int level;

  /** Charge at the first shedding of the heat; not a number without one. */
  double shedSoc = Double.NaN;

  /** Cut-outs that opened before standby. */
  final Set<String> early = new TreeSet<>();

  /** Those of them that opened with heater, fan or inverter commanded on. */
  final Set<String> underLoad = new TreeSet<>();

  /** All cut-outs that opened. */
  final Set<String> opened = new TreeSet<>();

  /** Most that the true charge lay below its floor with a load on, 0 to 1; below 0 above it. */
  double below = -1;

  /** The load that it was on with. */
  String belowBy = "";

  /** Whether the bus was dead at some time. */
  boolean dead;

  RunResult result;

  private RigWatch(PaperRig rig) {
    Scenario s = rig.scenario();
    Supply p =
        new Supply(
            s, Math.min(rig.season().worstWeek().minAirC(), rig.season().darkestMonth().minAirC()));
    double coldC = Math.min(25, p.coldBatteryC());
    // what the settings declare of the reading: its error, and the slow return of rested volts
    double declaredV =
        (s.controller().settings().get(Setting.BATTERY_ERROR_MILLI_V)
                + s.controller().settings().get(Setting.BATTERY_REBOUND_MILLI_V))
            / 1000.0;
    slack = p.byCharge() ? COUNTED : declaredV * SHARE_PER_V / p.scale();
    heaterFloor = Math.min(p.heatShedCharge(25), p.heatShedCharge(coldC));
    fanFloor = p.meant(Setting.SHED_FAN_ENTER_MILLI_V, Setting.SHED_FAN_ENTER_PERMILLE);
    inverterFloor =
        p.acLoadsW() > 0
            ? p.meant(Setting.SHED_STANDBY_ENTER_MILLI_V, Setting.SHED_STANDBY_ENTER_PERMILLE)
            : heaterFloor;
  }

  static RigWatch run(PaperRig rig, Scenario over, Forcing forcing, Pace pace) {
    RigWatch watch = new RigWatch(rig);
    watch.result =
        new Simulation(
                over, forcing, new ReferenceController(over.controller().settings()), pace, watch)
            .run();
    return watch;
  }

  @Override
  public void step(double endS, double lengthS, Plant plant, Commands commands) {
    double soc = plant.supply().battery().stateOfCharge();
    level = Math.max(level, commands.shedLevel);
    dead |= plant.supply().dead();
    if (commands.shedLevel >= ShedLevel.HEAT_SHED && Double.isNaN(shedSoc)) {
      shedSoc = soc;
    }
    int n = plant.supply().cutOutCount();
    wasOpen = wasOpen == null ? new boolean[n] : wasOpen;
    for (int i = 0; i < n; i++) {
      CutOut c = plant.supply().cutOut(i);
      if (c.open() && !wasOpen[i] && !OTHER.contains(c.name())) {
        opened.add(c.name());
        if (commands.shedLevel < ShedLevel.STANDBY) {
          early.add(c.name());
          if (commands.heater || commands.fan || commands.inverter) {
            underLoad.add(c.name());
          }
        }
      }
      wasOpen[i] = c.open();
    }
    if (!plant.supply().dead() && commands.supply == Commands.SUPPLY_BATTERY) {
      floor("heater", commands.heater, heaterFloor - soc);
      floor("fan", commands.fan, fanFloor - soc);
      floor("inverter", commands.inverter, inverterFloor - soc);
    }
  }

  /** Whether no load was on with less charge than its floor, nor lost its supply while on. */
  boolean keepsCharge() {
    return below <= slack && underLoad.isEmpty();
  }

  private void floor(String load, boolean on, double lack) {
    if (on && lack > below) {
      below = lack;
      belowBy = load;
    }
  }
}
