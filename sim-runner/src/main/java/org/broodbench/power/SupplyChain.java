package org.broodbench.power;

import java.util.ArrayList;
import java.util.List;

/**
 * Panel, charge control, battery, inverter, wiring and loads, solved together once a step.
 *
 * <p>When no volts satisfy the loads, the inverter (where one runs) gives up first; where that does
 * not help, all loads drop out for the step and the controller's board resets. {@link Guards} and
 * {@link InverterUnit} hold what may open by itself; their changes take effect with the step after.
 * Without battery on the bus nothing runs: charge controllers do not start without one.
 */
public final class SupplyChain {
  /** Change of mean open-circuit volts between two rounds that is no more worth another. */
  private static final double SETTLED = 1e-12;

  /** Current by which a straightened module curve may be off, A; it only shifts the answer. */
  private static final double CURVE_SETTLED_A = 1e-7;

  /** Loss in the wire by which its tangent may be off, W; it only shifts the answer. */
  private static final double WIRE_SETTLED_W = 1e-7;

  private static final int MOST_ROUNDS = 20;

  private final SupplySpec spec;
  private final PvSpec pv;
  private final SupplySpec.Heater heater;
  private final LoadSpec[] loads;
  private final double leadOhm;
  private final Battery battery;
  private final PvArray array;
  private final ChargeControl charge;
  private final InverterUnit inverter;
  private final Guards guards;
  private final CutOut[] cutOuts;
  private final Bus bus = new Bus();
  private final PowerLedger ledger = new PowerLedger();
  private final SupplyCounters counters;

  private boolean shorePresent;

  // of the solved step
  private double seconds;
  private double placeC;
  private double hourOfDay;
  private boolean bussed;
  private boolean feeding;
  private double pvMostW;
  private double pvUsedW;
  private double shoreW;
  private double heaterW;
  private double heaterWireW;
  private double fanNowW;
  private double controllerNowW;
  private double otherW;
  private double ownW;
  private double chargeLossW;
  private double conversionLossW;
  private double regulatedW;
  private double wireOhm;
  private double elementShare;
  private double elementOhm;
  private double ocvMidV;
  private double curveA;
  private double currentBeforeA;
  private double voltsBefore;

  /** A chain with a rested battery at the temperature of its place, °C. */
  public SupplyChain(SupplySpec spec, double placeC) {
    this.spec = spec;
    pv = spec.pv();
    heater = spec.heater();
    loads = spec.loads().toArray(LoadSpec[]::new);
    leadOhm = spec.wiring().batteryLeadOhm();
    shorePresent = spec.shore().present();
    battery = new Battery(spec.battery(), placeC);
    array = new PvArray(pv);
    charge = new ChargeControl(spec.battery().charge());
    inverter = new InverterUnit(spec.inverter());
    guards = new Guards(spec);
    List<CutOut> all = new ArrayList<>(guards.all());
    if (inverter.fitted()) {
      all.addAll(List.of(inverter.cutOuts()));
    }
    cutOuts = all.toArray(CutOut[]::new);
    counters = new SupplyCounters(spec, placeC);
    bus.ohm = battery.resistanceOhm() + leadOhm;
    bus.ocvV = battery.ocvV();
    bus.highestV = charge.highestV(placeC);
    bus.solve(); // volts at rest, for a first reading
    voltsBefore = bus.volts();
  }

  /** Works out one step of some seconds; nothing moves until {@link #accept}. */
  public void solve(double stepS, SupplyInputs in) {
    seconds = stepS;
    placeC = in.batteryPlaceC;
    hourOfDay = in.hourOfDay;
    array.light(in.groupWM2, in.airC, in.windMS);
    pvMostW = array.peakW();
    bussed = guards.connected();
    bus.ohm = battery.resistanceOhm() + leadOhm;
    bus.chargeOhm = battery.chargeOhm() + leadOhm;
    bus.highestV = charge.highestV(battery.temperatureC());
    bus.highestChargeA =
        guards.charging(battery.temperatureC()) ? spec.battery().chargeLimitA() : 0;
    double shoreMostW = shorePresent && bussed ? spec.shore().powerW() : 0;
    double trackedW = 0;
    if (pv.tracking() && bussed) {
      array.track(voltsBefore);
      trackedW = array.trackedW();
    }
    bus.sourceW = trackedW * pv.trackingEfficiency() + shoreMostW;
    wireOhm =
        spec.wiring().heaterContactOhm()
            + Copper.loopOhm(spec.wiring().heaterLengthM(), spec.wiring().heaterMm2(), in.airC);
    double hours = stepS / 3600;
    boolean runs = guards.controllerRuns();
    elementShare = in.elementShare;
    boolean closed = in.heater && (runs || in.heaterWelded);
    demand(guards.discharging(), guards.feeding(), runs, closed && guards.heaterClosed(), in.fan);
    inverter.ask(runs && in.inverter, acLoadW(closed));
    settle(hours);
    boolean inverterFell = false;
    boolean collapsed = false;
    if (bus.brownOut() && inverter.running()) {
      inverterFell = true;
      inverter.ask(false, 0);
      settle(hours);
    }
    if (bus.brownOut()) {
      collapsed = true;
      demand(false, false, false, false, false);
      settle(hours);
    }
    book(trackedW, shoreMostW, closed);
    double a = bus.batteryA();
    double dcHeaterA = bussed && !heater.onInverter() ? heaterInputA() : 0;
    guards.judge(bus.volts(), bus.volts() + a * leadOhm, a, dcHeaterA, collapsed, battery);
    inverter.judge(bus.volts(), inverterFell);
  }

  /** What the parts on the battery side want. */
  private void demand(boolean powered, boolean fed, boolean runs, boolean heaterOn, boolean fanOn) {
    feeding = fed;
    ownW = powered ? pv.controllerPowerW() : 0;
    controllerNowW = runs ? spec.board().powerW() : 0;
    fanNowW = runs && fanOn ? spec.fanW() : 0;
    otherW = 0;
    for (LoadSpec l : loads) {
      otherW += fed && !l.onInverter() && l.onAt(hourOfDay) ? l.powerW() : 0;
    }
    double elementW = heater.powerW() * elementShare;
    boolean heats = fed && heaterOn && elementW > 0 && !heater.onInverter();
    elementOhm = heats ? heater.ratedV() * heater.ratedV() / elementW : 0;
    bus.conductance = heats && !heater.regulated() ? 1 / (elementOhm + wireOhm) : 0;
    regulatedW = heats && heater.regulated() ? elementW : 0;
  }

  private double acLoadW(boolean heaterOn) {
    double w = heaterOn && heater.onInverter() ? heater.powerW() * elementShare : 0;
    for (LoadSpec l : loads) {
      w += l.onInverter() && l.onAt(hourOfDay) ? l.powerW() : 0;
    }
    return w;
  }

  /**
   * Solves the bus with the mean open-circuit volts over the step, which depend a little on the
   * current themselves, the loss in the wire of a regulated heater, and modules straight on the
   * bus, whose curves are taken as their tangents. Each round shrinks what is left by a factor of
   * ten to a thousand.
   */
  private void settle(double hours) {
    double baseW =
        otherW
            + fanNowW
            + controllerNowW
            + ownW
            + inverter.inputW()
            + regulatedW / spec.wiring().regulatorEfficiency();
    heaterWireW = 0;
    bus.loadA = 0;
    ocvMidV = battery.meanOcvV(currentBeforeA, hours);
    bus.constantW = baseW;
    boolean direct = bussed && !pv.tracking() && pvMostW > 0;
    tangent(direct, voltsBefore);
    rounds(hours, baseW, direct);
    if (direct && curveA < 0) {
      tangent(false, 0); // the battery stands above the modules' open-circuit volts
      rounds(hours, baseW, false);
    }
  }

  private void rounds(double hours, double baseW, boolean direct) {
    for (int round = 0; round < MOST_ROUNDS; round++) {
      bus.ocvV = ocvMidV;
      bus.solve();
      curveA = bus.sourceA - bus.sourceFallPerOhm * bus.volts();
      if (bus.brownOut()) {
        return;
      }
      double meanV = battery.meanOcvV(bus.batteryA(), hours);
      double change = meanV - ocvMidV;
      double wireChange = 0;
      if (regulatedW > 0) {
        // what this solution counted as lost in the wire, and the tangent for the next
        heaterWireW = bus.constantW - baseW + bus.loadA * bus.volts();
        double a = heaterInputA();
        double wireW = a * a * wireOhm;
        wireChange = wireW - heaterWireW;
        bus.loadA = -2 * wireW / bus.volts();
        bus.constantW = baseW + 3 * wireW;
      }
      boolean straight = true;
      if (direct) {
        tangent(true, bus.volts());
        double off = array.currentA() - curveA;
        straight = off < CURVE_SETTLED_A && off > -CURVE_SETTLED_A;
      }
      straight &= wireChange < WIRE_SETTLED_W && wireChange > -WIRE_SETTLED_W;
      if (straight && change < SETTLED && change > -SETTLED) {
        return; // booked with the volts that the current was worked out with
      }
      ocvMidV = meanV;
    }
  }

  private void tangent(boolean direct, double volts) {
    bus.sourceA = 0;
    bus.sourceFallPerOhm = 0;
    if (direct) {
      array.connect(volts);
      bus.sourceFallPerOhm = -array.slopePerOhm();
      bus.sourceA = array.currentA() + bus.sourceFallPerOhm * volts;
    }
  }

  private double heaterInputA() {
    return regulatedW > 0
        ? regulatedW / spec.wiring().regulatorEfficiency() / bus.volts()
        : bus.volts() * bus.conductance;
  }

  /** Works out the flows of the solved bus. */
  private void book(double trackedW, double shoreMostW, boolean heaterOn) {
    double v = bus.volts();
    double elementA = v * bus.conductance;
    double output = inverter.outputW();
    double acHeaterW =
        output > 0 && heaterOn && heater.onInverter() ? heater.powerW() * elementShare : 0;
    otherW += output - acHeaterW;
    heaterW = acHeaterW + regulatedW + elementA * elementA * elementOhm;
    heaterWireW += elementA * elementA * wireOhm;
    conversionLossW =
        inverter.inputW() - output + regulatedW * (1 / spec.wiring().regulatorEfficiency() - 1);
    double share = bus.usedShare();
    if (pv.tracking()) {
      pvUsedW = share * trackedW;
      chargeLossW = ownW + pvUsedW * (1 - pv.trackingEfficiency());
    } else {
      pvUsedW = share * v * curveA;
      chargeLossW = ownW;
    }
    // a cold module in dim light lies above the one-point curve
    pvMostW = pvMostW > pvUsedW ? pvMostW : pvUsedW;
    shoreW = share * shoreMostW / spec.shore().efficiency();
    chargeLossW += shoreW * (1 - spec.shore().efficiency());
  }

  /** Moves the chain to the end of the solved step and books the flows. */
  public void accept() {
    double h = seconds;
    double a = bus.batteryA();
    double v = bus.volts();
    ledger.pvAvailableJ += h * pvMostW;
    ledger.pvUsedJ += h * pvUsedW;
    ledger.shoreJ += h * shoreW;
    ledger.heaterJ += h * heaterW;
    ledger.fanJ += h * fanNowW;
    ledger.controllerJ += h * controllerNowW;
    ledger.otherLoadsJ += h * otherW;
    ledger.chargeLossJ += h * chargeLossW;
    ledger.inverterLossJ += h * conversionLossW;
    ledger.wiringLossJ += h * (heaterWireW + a * a * leadOhm);
    counters.battery(battery, charge.stage(), a, v, h);
    for (int g = 0; g < array.count(); g++) {
      counters.group(g, array.mostW(g), h);
    }
    for (int i = 0; i < loads.length; i++) {
      if (loads[i].onAt(hourOfDay)) {
        counters.load(i, loads[i].onInverter() ? inverter.outputW() > 0 : feeding, h);
      }
    }
    battery.hold(a, ocvMidV, h, ledger);
    battery.follow(placeC, h);
    currentBeforeA = a;
    voltsBefore = v;
    if (bussed) {
      charge.accept(v, -a, battery.temperatureC(), h);
    }
    guards.accept(h);
    inverter.accept(v, h);
  }

  /** The battery ages at a stroke to a share of its capacity, above 0 to 1. */
  public void ageBattery(double shareLeft) {
    battery.age(shareLeft, ledger);
  }

  /** A cell of the battery is shorted. */
  public void loseCell() {
    battery.loseCell(ledger);
  }

  /** The battery is taken away, or brought back as it was. */
  public void takeBattery(boolean away) {
    guards.take(away);
  }

  /** The fuse at the battery's post blows, or a new one is put in. */
  public void batteryFuse(boolean blown) {
    guards.batteryFuse(blown);
  }

  /** The fuse of the heater's own circuit blows, or a new one is put in. */
  public void heaterFuse(boolean blown) {
    guards.heaterFuse(blown);
  }

  /** The inverter trips for good, or is made to run again. */
  public void tripInverter(boolean broken) {
    inverter.setBroken(broken);
  }

  /** Brings shore power or takes it away, from the next step on. */
  public void setShore(boolean present) {
    shorePresent = present && spec.shore().powerW() > 0;
  }

  /** Whether shore power feeds the bus. */
  public boolean shorePresent() {
    return shorePresent;
  }

  /** Whether the controller's board is without power. */
  public boolean dead() {
    return !guards.controllerRuns();
  }

  /** Number of things that may open by themselves. */
  public int cutOutCount() {
    return cutOuts.length;
  }

  /** One of them. */
  public CutOut cutOut(int index) {
    return cutOuts[index];
  }

  /** What the parts did so far. */
  public SupplyUse use() {
    return counters.use(List.of(cutOuts));
  }

  /** The battery. */
  public Battery battery() {
    return battery;
  }

  /** The balances so far. */
  public PowerLedger ledger() {
    return ledger;
  }

  /** Volts at the bus in the solved step, V. */
  public double volts() {
    return bus.volts();
  }

  /** Battery current in the solved step, A, discharge positive. */
  public double batteryA() {
    return bus.batteryA();
  }

  /** Whether the charge controller has come to float. */
  public boolean full() {
    return charge.stage() == ChargeControl.Stage.FLOAT;
  }

  /** Heat of the element in the solved step, W. */
  public double heaterW() {
    return heaterW;
  }

  /** Power taken from the modules in the solved step, W. */
  public double pvUsedW() {
    return pvUsedW;
  }

  /** All power of loads and their losses at the bus in the solved step, W. */
  public double loadW() {
    return heaterW + heaterWireW + fanNowW + controllerNowW + otherW + conversionLossW;
  }
}
