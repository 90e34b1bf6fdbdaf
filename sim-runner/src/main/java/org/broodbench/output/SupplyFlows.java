package org.broodbench.output;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.broodbench.power.LoadSpec;
import org.broodbench.power.PowerLedger;
import org.broodbench.power.SupplyUse;
import org.broodbench.rig.Scenario;
import org.broodbench.study.Outcome;

/**
 * The flows through the supply chain over a run, Wh.
 *
 * @param onOfferWh what the panel could have given
 * @param panelWh what it gave
 * @param mainsWh what the mains gave
 * @param chargedWh from the bus into the battery
 * @param dischargedWh from the battery to the bus
 * @param straight what the bus fed without an inverter
 * @param inverter whether there is one
 * @param behindInverter what it fed
 * @param losses where energy was lost, the largest first
 * @param cameInWh all that came in: panel, mains and what the battery gave up
 */
record SupplyFlows(
    double onOfferWh,
    double panelWh,
    double mainsWh,
    double chargedWh,
    double dischargedWh,
    List<Flow> straight,
    boolean inverter,
    List<Flow> behindInverter,
    List<Loss> losses,
    double cameInWh) {

  /** Something that took energy. */
  record Flow(String name, double wh) {}

  /** Places where energy is lost. */
  enum Place {
    /** The charge controller, and the mains charger. */
    CHARGE("charge control"),
    /** The battery itself. */
    BATTERY("the battery"),
    /** The inverter, or the regulator of a heater. */
    INVERTER("the inverter"),
    /** Copper and contacts. */
    WIRES("the wires");

    final String words;

    Place(String words) {
      this.words = words;
    }
  }

  /** A loss. */
  record Loss(Place place, double wh) {}

  /** What is lost at a place, Wh. */
  double lost(Place place) {
    return losses.stream().filter(l -> l.place() == place).mapToDouble(Loss::wh).sum();
  }

  static SupplyFlows of(Outcome o) {
    Scenario s = o.scenario();
    PowerLedger p = o.main().power();
    SupplyUse use = o.main().supply();
    List<Flow> straight = new ArrayList<>();
    List<Flow> behind = new ArrayList<>();
    (s.heater().onInverter() ? behind : straight).add(new Flow("Heater", p.heaterJ / 3600));
    straight.add(new Flow("Fan", p.fanJ / 3600));
    straight.add(new Flow("Controller", p.controllerJ / 3600));
    for (int i = 0; i < use.loads().size(); i++) {
      LoadSpec l = s.loads().get(i);
      (l.onInverter() ? behind : straight)
          .add(new Flow(Markup.capital(l.name()), use.loads().get(i).energyWh()));
    }
    straight.removeIf(f -> f.wh() <= 0);
    behind.removeIf(f -> f.wh() <= 0);
    List<Loss> losses = new ArrayList<>();
    losses.add(new Loss(Place.CHARGE, p.chargeLossJ / 3600));
    losses.add(new Loss(Place.BATTERY, p.batteryLossJ / 3600));
    losses.add(new Loss(Place.INVERTER, p.inverterLossJ / 3600));
    losses.add(new Loss(Place.WIRES, p.wiringLossJ / 3600));
    losses.sort(Comparator.comparingDouble(l -> -l.wh()));
    return new SupplyFlows(
        p.pvAvailableJ / 3600,
        p.pvUsedJ / 3600,
        p.shoreJ / 3600,
        use.battery().chargedWh(),
        use.battery().dischargedWh(),
        straight,
        s.inverter().ratedW() > 0,
        behind,
        losses,
        (p.pvUsedJ + p.shoreJ + Math.max(0, -p.batteryChangeJ)) / 3600);
  }
}
