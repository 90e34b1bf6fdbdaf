package org.broodbench.audit;

import static org.broodbench.audit.Words.of;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.Setting;
import org.broodbench.power.LoadSpec;
import org.broodbench.power.PvGroup;
import org.broodbench.power.PvModule;
import org.broodbench.power.PvSpec;
import org.broodbench.rig.Scenario;

/** A rig and its weather with everything that more than one check asks for, worked out once. */
final class Facts {
  /** Volts of a 12 V battery that charges straight from modules, V. */
  private static final double CHARGING_V = 13;

  final Scenario s;
  final Season season;
  final Supply supply;
  final double setPointC;

  /** Heat at the mean of the worst week. */
  final HeatNeed week;

  /** Heat at its coldest moment. */
  final HeatNeed coldest;

  /** Heat at the mean of the darkest month. */
  final HeatNeed month;

  final Budget weekBudget;
  final Budget monthBudget;

  Facts(Scenario s, Season season) {
    this(s, season, HeatNeeds.of(s, season));
  }

  /**
   * @param needs what this rig at this set point asks for in this season
   */
  Facts(Scenario s, Season season, HeatNeeds needs) {
    this.s = s;
    this.season = season;
    supply = new Supply(s, Math.min(season.worstWeek().minAirC(), season.darkestMonth().minAirC()));
    setPointC = needs.setPointC();
    week = needs.week();
    coldest = needs.coldest();
    month = needs.month();
    weekBudget = budget(season.worstWeek(), week);
    monthBudget = budget(season.darkestMonth(), month);
  }

  /** Whether there is a heater at all. */
  boolean heats() {
    return s.heater().powerW() > 0;
  }

  /** The most heat that the plate gives on the mean of a day, W. */
  double mostHeatW() {
    return supply.heaterW(supply.workV());
  }

  private Budget budget(Season.Stretch w, HeatNeed need) {
    List<Budget.Take> takes = new ArrayList<>();
    double mostW = mostHeatW();
    double perWatt = mostW > 0 ? supply.heaterInputW(supply.workV()) / mostW : 0;
    double heat = 24 * perWatt * Math.min(need.ownW(), mostW);
    if (heats()) {
      takes.add(
          new Budget.Take(
              "heater",
              heat,
              of(
                  "holding %.1f °C at %.1f °C outdoors takes %.1f W (%.1f to %.1f W by the cluster's heat loss; walls %.2f W/K + air %.2f W/K, colony %.1f W), at most %.1f W, x %.3f with its losses x 24 h = %.0f Wh",
                  setPointC,
                  w.meanAirC(),
                  need.ownW(),
                  need.leastW(),
                  need.mostW(),
                  need.solidWK(),
                  need.airWK(),
                  need.colonyW(),
                  mostW,
                  perWatt,
                  heat)));
    }
    double fixed = 0;
    if (supply.inverterUsed()) {
      double wh = 24 * supply.idleW();
      fixed += wh;
      takes.add(
          new Budget.Take("inverter idle", wh, of("%.1f W x 24 h = %.0f Wh", supply.idleW(), wh)));
    }
    double boards = s.controller().powerW() + s.pv().controllerPowerW();
    fixed += 24 * boards;
    takes.add(
        new Budget.Take(
            "controllers",
            24 * boards,
            of(
                "(%.1f W + %.1f W) x 24 h = %.0f Wh",
                s.controller().powerW(), s.pv().controllerPowerW(), 24 * boards)));
    for (LoadSpec l : s.loads()) {
      double wh = supply.loadInputW(l) * Supply.hours(l);
      fixed += wh;
      takes.add(
          new Budget.Take(
              l.name(),
              wh,
              of("%.1f W x %.1f h = %.0f Wh", supply.loadInputW(l), Supply.hours(l), wh)));
    }
    List<String> gives = new ArrayList<>();
    double panelWh = 0;
    PvSpec pv = s.pv();
    for (int g = 0; g < pv.groups().size(); g++) {
      double wh = pv.groups().get(g).powerW() * perWattWh(w, g);
      panelWh += wh;
      gives.add(
          of(
              "%.0f W x %.2f kWh/m² x %.3f (dirt, cells, charge controller) = %.0f Wh",
              pv.groups().get(g).powerW(),
              w.groups().get(g).kWhM2Day(),
              perWattWh(w, g) / Math.max(1e-9, w.groups().get(g).kWhM2Day()),
              wh));
    }
    double shoreWh = s.shore().present() ? 24 * s.shore().powerW() : 0;
    if (shoreWh > 0) {
      gives.add(of("mains charger %.0f W x 24 h = %.0f Wh", s.shore().powerW(), shoreWh));
    }
    return new Budget(
        w.name(),
        w.days(),
        takes,
        fixed + 24 * perWatt * Math.min(need.leastW(), mostW),
        fixed + heat,
        fixed + 24 * perWatt * Math.min(need.mostW(), mostW),
        panelWh,
        shoreWh,
        gives.isEmpty() ? "nothing" : String.join(" + ", gives));
  }

  /** What a watt of a module group gives a day behind its charge controller, Wh. */
  double perWattWh(Season.Stretch w, int group) {
    PvSpec pv = s.pv();
    PvGroup g = pv.groups().get(group);
    Season.Lit lit = w.groups().get(group);
    double sun = lit.kWhM2Day() * pv.soilingFactor();
    if (!pv.tracking()) {
      return sun * Math.min(1, CHARGING_V * supply.scale() / pv.modulePeakV());
    }
    double cellC =
        PvModule.cellC(
            lit.airC(),
            w.meanWindMS(),
            lit.wM2(),
            g.mounting().stillWM2K(),
            g.mounting().windWSM3K());
    return sun * (1 + g.coefficientPerK() * (cellC - 25)) * pv.trackingEfficiency();
  }

  /** What a watt of all groups together gives, shared out as they are, Wh a day. */
  double perWattWh(Season.Stretch w) {
    int n = s.pv().groups().size();
    double sum = 0;
    double rated = s.pv().powerW();
    for (int g = 0; g < n; g++) {
      double share = rated > 0 ? s.pv().groups().get(g).powerW() / rated : 1.0 / n;
      sum += share * perWattWh(w, g);
    }
    return sum;
  }

  int setting(Setting setting) {
    return s.controller().settings().get(setting);
  }
}
