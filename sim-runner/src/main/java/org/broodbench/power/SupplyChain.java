package org.broodbench.power;

import java.util.List;

/**
 * Panel, charge control, battery, inverter, wiring and loads, solved together once a step.
 *
 * <p>When no volts satisfy the loads, when the bus falls below the drop-out volts or when the
 * battery is empty, the bus is dead: every load, the controller included, is off until the volts
 * have come back to the restart level. Both levels are our own choice: 9.5 and 12.0 V on a 12 V
 * bank.
 */
public final class SupplyChain {
  private static final double DROP_OUT_PER_V = 9.5 / 12;
  private static final double RESTART_PER_V = 12.0 / 12;

  /** Change of volts (or watts of wire loss) between two rounds that is no more worth another. */
  private static final double SETTLED = 1e-12;

  private static final int MOST_ROUNDS = 20;

  private final PvSpec pv;
  private final BatterySpec batterySpec;
  private final InverterSpec inverter;
  private final HeaterLine line;
  private final ShoreSpec shore;
  private final double leadOhm;
  private final double fanW;
  private final double controllerW;
  private final List<LoadSpec> loads;
  private final Battery battery;
  private final Bus bus = new Bus();
  private final PowerLedger ledger = new PowerLedger();

  private boolean dead;
  private boolean deadNext;
  private boolean shorePresent;

  private double seconds;
  private double pvMostW;
  private double pvUsedW;
  private double shoreW;
  private double heaterW;
  private double heaterWireW;
  private double fanNowW;
  private double controllerNowW;
  private double otherW;
  private double chargeLossW;
  private double inverterLossW;
  private double ocvMidV;
  private double currentBeforeA;
  private double placeC;

  /**
   * The heater as the chain sees it.
   *
   * @param powerW rated power, W; 0 for none
   * @param ratedV rated volts, V
   * @param onInverter whether it hangs on the inverter
   * @param regulated whether its power is held whatever the volts
   * @param wireOhm loop resistance of its cable, Ω
   */
  public record HeaterLine(
      double powerW, double ratedV, boolean onInverter, boolean regulated, double wireOhm) {}

  /** A chain with a rested battery. */
  public SupplyChain(
      PvSpec pv,
      BatterySpec batterySpec,
      InverterSpec inverter,
      HeaterLine line,
      ShoreSpec shore,
      double leadOhm,
      double fanW,
      double controllerW,
      List<LoadSpec> loads,
      double placeC) {
    this.pv = pv;
    this.batterySpec = batterySpec;
    this.inverter = inverter;
    this.line = line;
    this.shore = shore;
    this.leadOhm = leadOhm;
    this.fanW = fanW;
    this.controllerW = controllerW;
    this.loads = List.copyOf(loads);
    this.shorePresent = shore.present();
    battery = new Battery(batterySpec, placeC);
    bus.ohm = battery.resistanceOhm() + leadOhm;
    bus.ocvV = battery.ocvV();
    bus.highestV = battery.absorptionV();
    bus.solve(); // volts at rest, for a first reading
  }

  /**
   * Works out one step; the battery moves only with {@link #accept}.
   *
   * @param stepS length, s
   * @param heaterOn heater relay closed
   * @param fanOn fan on
   * @param inverterOn inverter enabled
   * @param groupWM2 irradiance on each module group, W/m²
   * @param airC outdoor air, °C
   * @param batteryPlaceC temperature where the battery stands, °C
   * @param hourOfDay hour of the day, UTC, for scheduled loads
   */
  public void solve(
      double stepS,
      boolean heaterOn,
      boolean fanOn,
      boolean inverterOn,
      double[] groupWM2,
      double airC,
      double batteryPlaceC,
      double hourOfDay) {
    seconds = stepS;
    placeC = batteryPlaceC;
    pvMostW = 0;
    double peakA = 0;
    for (int g = 0; g < groupWM2.length; g++) {
      PvGroup group = pv.groups().get(g);
      double wm2 = groupWM2[g] * pv.soilingFactor();
      double cellC = PvModule.cellC(airC, pv.noctC(), wm2);
      pvMostW += PvModule.powerW(group.powerW(), pv.temperatureCoefficientPerK(), wm2, cellC);
      peakA += group.powerW() / pv.modulePeakV() * wm2 / 1000;
    }
    bus.sourceA = pv.tracking() ? 0 : peakA;
    double pvBusW = pv.tracking() ? pvMostW * pv.trackingEfficiency() : 0;
    double shoreMostW = shorePresent ? shore.powerW() : 0;
    bus.sourceW = pvBusW + shoreMostW;
    bus.ohm = battery.resistanceOhm() + leadOhm;
    bus.highestV = battery.absorptionV();
    bus.highestChargeA = battery.highestChargeA();
    boolean alive = !dead;
    boolean heats = alive && heaterOn && line.powerW() > 0;
    boolean inverts = alive && inverterOn && inverter.ratedW() > 0;
    otherW = alive ? otherLoadsW(hourOfDay) : 0;
    fanNowW = alive && fanOn ? fanW : 0;
    controllerNowW = alive ? controllerW : 0;
    double ownW = alive ? pv.controllerPowerW() : 0;
    inverterLossW = 0;
    double inverterInW = 0;
    double acHeaterW = 0;
    if (inverts) {
      acHeaterW = heats && line.onInverter() ? line.powerW() : 0;
      inverterInW = Inverter.inputW(inverter, acHeaterW);
      inverterLossW = inverterInW - acHeaterW;
    }
    boolean dcHeats = heats && !line.onInverter();
    double elementOhm = dcHeats ? line.ratedV() * line.ratedV() / line.powerW() : 0;
    bus.conductance = dcHeats && !line.regulated() ? 1 / (elementOhm + line.wireOhm()) : 0;
    double regulatedW = dcHeats && line.regulated() ? line.powerW() : 0;
    double baseW = otherW + fanNowW + controllerNowW + ownW + inverterInW + regulatedW;
    settle(stepS / 3600, baseW, regulatedW);
    deadNext = nextDead();
    if (bus.brownOut()) {
      // the loads pull the bus down: this step passes without them
      bus.conductance = 0;
      otherW = 0;
      fanNowW = 0;
      controllerNowW = 0;
      ownW = 0;
      inverterLossW = 0;
      acHeaterW = 0;
      regulatedW = 0;
      settle(stepS / 3600, 0, 0);
    }
    double v = bus.volts();
    double elementA = v * bus.conductance;
    heaterW = acHeaterW + regulatedW + elementA * elementA * elementOhm;
    heaterWireW += elementA * elementA * line.wireOhm();
    double share = bus.usedShare();
    if (pv.tracking()) {
      pvUsedW = share * pvMostW;
      chargeLossW = ownW + share * pvMostW * (1 - pv.trackingEfficiency());
    } else {
      pvUsedW = share * v * peakA;
      chargeLossW = ownW;
      pvMostW =
          pvMostW > pvUsedW
              ? pvMostW
              : pvUsedW; // a cold module in dim light lies above the one-point curve
    }
    shoreW = share * shoreMostW / shore.efficiency();
    chargeLossW += shoreW * (1 - shore.efficiency());
  }

  /**
   * Solves the bus with the mean open-circuit volts over the step, which depend a little on the
   * current themselves, and the loss in the wire of a regulated heater, which depends on the volts.
   * Each round shrinks what is left by a factor of ten to a thousand.
   */
  private void settle(double hours, double baseW, double regulatedW) {
    heaterWireW = 0;
    bus.constantW = baseW;
    ocvMidV = battery.meanOcvV(currentBeforeA, hours);
    for (int round = 0; round < MOST_ROUNDS; round++) {
      bus.ocvV = ocvMidV;
      bus.solve();
      if (bus.brownOut()) {
        return;
      }
      double meanV = battery.meanOcvV(bus.batteryA(), hours);
      double changeV = meanV - ocvMidV;
      double changeW = 0;
      if (regulatedW > 0) {
        double a = regulatedW / bus.volts();
        double wireW = a * a * line.wireOhm();
        changeW = wireW - heaterWireW;
        heaterWireW = wireW;
        bus.constantW = baseW + wireW;
      }
      if (changeV < SETTLED && changeV > -SETTLED && changeW < SETTLED && changeW > -SETTLED) {
        return; // booked with the volts that the current was worked out with
      }
      ocvMidV = meanV;
    }
    ocvMidV = bus.ocvV;
  }

  private boolean nextDead() {
    double scale = batterySpec.nominalV();
    if (dead) {
      return bus.volts() < RESTART_PER_V * scale || battery.empty();
    }
    return bus.brownOut()
        || bus.volts() < DROP_OUT_PER_V * scale
        || (battery.empty() && bus.batteryA() > 0);
  }

  private double otherLoadsW(double hourOfDay) {
    double sumW = 0;
    for (LoadSpec l : loads) {
      double from = l.fromHourUtc();
      double to = l.toHourUtc();
      boolean on =
          from == to
              || (from < to
                  ? hourOfDay >= from && hourOfDay < to
                  : hourOfDay >= from || hourOfDay < to);
      if (on) {
        sumW += l.powerW();
      }
    }
    return sumW;
  }

  /** Moves the battery to the end of the solved step and books the flows. */
  public void accept() {
    double h = seconds;
    ledger.pvAvailableJ += h * pvMostW;
    ledger.pvUsedJ += h * pvUsedW;
    ledger.shoreJ += h * shoreW;
    ledger.heaterJ += h * heaterW;
    ledger.fanJ += h * fanNowW;
    ledger.controllerJ += h * controllerNowW;
    ledger.otherLoadsJ += h * otherW;
    ledger.chargeLossJ += h * chargeLossW;
    ledger.inverterLossJ += h * inverterLossW;
    double a = bus.batteryA();
    ledger.wiringLossJ += h * (heaterWireW + a * a * leadOhm);
    battery.hold(a, ocvMidV, h, ledger);
    currentBeforeA = a;
    battery.follow(placeC, h);
    dead = deadNext;
  }

  /** Brings shore power or takes it away, from the next step on. */
  public void setShore(boolean present) {
    shorePresent = present && shore.powerW() > 0;
  }

  /** Whether shore power feeds the bus. */
  public boolean shorePresent() {
    return shorePresent;
  }

  /** Whether the bus is without power. */
  public boolean dead() {
    return dead;
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

  /** Whether charging is held back because the battery takes no more. */
  public boolean full() {
    return bus.usedShare() < 1 && battery.stateOfCharge() > 0.95;
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
    return heaterW + heaterWireW + fanNowW + controllerNowW + otherW + inverterLossW;
  }
}
