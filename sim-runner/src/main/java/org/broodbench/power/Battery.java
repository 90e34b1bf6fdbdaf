package org.broodbench.power;

import org.broodbench.matter.Portable;

/**
 * A battery bank: two wells, open-circuit curve on the level of the available well, resistance and
 * usable charge by temperature, charge acceptance, self-discharge.
 *
 * <p>Well constants were fitted to capacities on data sheets: flooded 185/207/225/250 Ah at
 * 5/10/20/100 h (worst residual 0.6 %), AGM 24/34/37.2/40 Ah at 1/5/10/20 h (0.96 %); gel is taken
 * as AGM; lithium iron phosphate has no bound well. Resistance 1.5 times at 0 °C and 2 times at −20
 * °C: from memory, low confidence. Usable charge 100 % at 25 °C, less 0.7 points per kelvin to 10
 * °C and 0.8 below (lead-acid, from an AGM data sheet); 80 % at 0 °C and 70 % at −20 °C (lithium
 * iron phosphate, a maker's figure): the rest is locked, not lost. Charging efficiency of lead-acid
 * falls from 80 % state of charge to a half at full: J. W. Stevens and G. P. Corey, 25th IEEE PVSC
 * (1996), figures from memory. Self-discharge halves with every 10 K less: 3 % a month at 20 °C,
 * 1.5 % at 10 °C on the data sheet of a glass-mat battery.
 */
public final class Battery {
  private static final double MONTH_S = 30.44 * 86_400;

  /** ln 2 over 10 K. */
  private static final double LEAK_PER_K = 0.0693147180559945;

  /** Capacities an hour that a lithium battery could store at the absorption volts. */
  private static final double LITHIUM_PER_H = 4;

  private final BatterySpec spec;
  private final TwoWells wells;
  private OpenCircuit curve;
  private double capacityAh;
  private final double leakPerS;
  private final double gassingA;
  private double grownOhm = 1;
  private double temperatureC;

  /** A rested battery at its initial state of charge and the temperature of its place. */
  public Battery(BatterySpec spec, double placeC) {
    this.spec = spec;
    this.temperatureC = placeC;
    this.curve = new OpenCircuit(spec.chemistry(), spec.nominalV());
    double c;
    double kPerH;
    switch (spec.chemistry()) {
      case FLOODED -> {
        c = 0.59565;
        kPerH = 0.25722;
      }
      case AGM, GEL -> {
        c = 0.46054;
        kPerH = 0.93750;
      }
      default -> {
        c = 1;
        kPerH = 1;
      }
    }
    capacityAh = spec.capacityAh() * fullPerRated(spec.chemistry());
    wells = new TwoWells(c, kPerH, capacityAh, spec.initialSoc());
    gassingA =
        spec.capacityAh()
            * switch (spec.chemistry()) {
              case FLOODED -> 0.005;
              case AGM, GEL -> 0.001;
              case LFP -> 0.0005;
            };
    // a month leaves 1 − share, whatever the steps
    leakPerS = -StrictMath.log(1 - spec.selfDischargePerMonth()) / MONTH_S;
  }

  /** Charge of both wells when full over the capacity at the 20-hour rate; of the fits above. */
  public static double fullPerRated(Chemistry chemistry) {
    return switch (chemistry) {
      case FLOODED -> 1.138;
      case AGM, GEL -> 1.056;
      case LFP -> 1;
    };
  }

  /** State of charge, 0 to 1. */
  public double stateOfCharge() {
    return wells.stateOfCharge();
  }

  /** Open-circuit volts now, V. */
  public double ocvV() {
    return curve.volts(wells.availableHead());
  }

  /** Mean open-circuit volts over a step of a current, V. */
  public double meanOcvV(double currentA, double hours) {
    double stored = currentA < 0 ? -storedA(-currentA) : currentA;
    return curve.meanV(wells.availableHead(), wells.headAfter(stored, hours));
  }

  /** Internal resistance at its temperature, Ω. */
  public double resistanceOhm() {
    return spec.resistanceOhm() * coldFactor(temperatureC) * grownOhm;
  }

  /** Factor on the internal resistance at 25 °C. */
  public static double coldFactor(double temperatureC) {
    double t = temperatureC;
    return t >= 25 ? 1 : t >= 0 ? 1.5 - 0.02 * t : 1.5 - 0.025 * t;
  }

  /** Share of the charge that cold locks up, 0 to 1. */
  public double lockedShare() {
    return lockedShare(spec.chemistry(), temperatureC);
  }

  /** Share of the charge of a kind of battery that is locked at a temperature, 0 to 1. */
  public static double lockedShare(Chemistry chemistry, double temperatureC) {
    double t = temperatureC;
    double usable;
    if (chemistry.leadAcid()) {
      usable = t >= 25 ? 1 : t >= 10 ? 1 - 0.007 * (25 - t) : 0.895 - 0.008 * (10 - t);
    } else {
      usable = t >= 25 ? 1 : t >= 0 ? 0.8 + 0.008 * t : 0.8 + 0.005 * t;
    }
    return usable > 0.2 ? 1 - usable : 0.8;
  }

  /** Whether nothing more can be drawn at this temperature. */
  public boolean empty() {
    return wells.availableHead() <= lockedShare();
  }

  /** Level of the available well above what cold locks up. */
  double headroom() {
    return wells.availableHead() - lockedShare();
  }

  /**
   * Resistance that charging meets, Ω. At the absorption volts the battery takes what its available
   * well can store within an hour (a quarter of an hour for lithium, own choice), and the gassing
   * current on top; below these volts in proportion. So the volts rise while it fills and the
   * current tapers off at the set volts. Never less than the internal resistance.
   */
  public double chargeOhm() {
    double overV =
        spec.charge().absorptionV()
            + spec.charge().compensationVPerK() * (temperatureC - 25)
            - ocvV();
    double ohm = overV / (storableA() / chargeEfficiency() + gassingA);
    double inner = resistanceOhm();
    return ohm > inner ? ohm : inner;
  }

  private double storableA() {
    double a =
        spec.chemistry().leadAcid()
            ? -wells.mostChargeA(1)
            : (1 - wells.stateOfCharge()) * capacityAh * LITHIUM_PER_H;
    return a > 0 ? a : 0;
  }

  /** Part of a charging current that is stored; the rest makes gas or balances cells. */
  private double storedA(double chargeA) {
    double a = chargeEfficiency() * chargeA;
    double most = storableA();
    return a < most ? a : most;
  }

  private double chargeEfficiency() {
    double s = wells.stateOfCharge();
    if (!spec.chemistry().leadAcid() || s <= 0.8) {
      return spec.coulombicEfficiency();
    }
    double fall = (s - 0.8) / 0.2;
    fall = fall < 1 ? fall : 1;
    return spec.coulombicEfficiency() + fall * (0.5 - spec.coulombicEfficiency());
  }

  /**
   * Holds a current over a step and books what became of it. Every amount of charge is weighed with
   * the exact mean of the open-circuit volts over the way its level went, so that the terms add up.
   *
   * @param currentA at the terminals, discharge positive
   * @param ocvV open-circuit volts that the current was worked out with: {@link #meanOcvV}
   * @param seconds length of the step
   */
  void hold(double currentA, double ocvV, double seconds, PowerLedger ledger) {
    double hours = seconds / 3600;
    double headBefore = wells.availableHead();
    double boundBefore = wells.boundHead();
    double availableAhBefore = wells.availableAh();
    double boundAhBefore = wells.boundAh();
    if (currentA >= 0) {
      ledger.batteryLossJ += currentA * currentA * resistanceOhm() * seconds;
      wells.hold(currentA, hours);
      ledger.chargeOutAh += currentA * hours;
    } else {
      double stored = storedA(-currentA);
      double lost = -currentA - stored;
      ledger.batteryLossJ += (currentA * currentA * chargeOhm() + lost * ocvV) * seconds;
      wells.hold(-stored, hours);
      ledger.chargeInAh -= currentA * hours;
      ledger.chargeLostAh += lost * hours;
    }
    double availableV = curve.meanV(headBefore, wells.availableHead());
    double boundV = curve.meanV(boundBefore, wells.boundHead());
    double movedAh = boundAhBefore - wells.boundAh();
    ledger.batteryLossJ += 3600 * movedAh * (boundV - availableV);
    ledger.batteryChangeJ +=
        3600 * ((wells.availableAh() - availableAhBefore) * availableV - movedAh * boundV);
    leak(leakPerS * Portable.exp(LEAK_PER_K * (temperatureC - 25)) * seconds, ledger);
    ledger.chargeStoredAh +=
        wells.availableAh() - availableAhBefore + (wells.boundAh() - boundAhBefore);
  }

  /**
   * It is as an old one from now on: less capacity, and resistance that has grown in proportion
   * (own choice). The charge that has nowhere to be any more is booked as lost.
   *
   * @param shareLeft of its capacity, above 0 to 1
   */
  void age(double shareLeft, PowerLedger ledger) {
    double gone = 1 - shareLeft;
    lose(gone * storedWh(), ledger);
    double goneAh = gone * (wells.availableAh() + wells.boundAh());
    ledger.chargeLostAh += goneAh;
    ledger.chargeStoredAh -= goneAh;
    wells.shrink(shareLeft);
    capacityAh *= shareLeft;
    grownOhm /= shareLeft;
  }

  /** One of the cells in series is shorted from now on; what was in it is booked as lost. */
  void loseCell(PowerLedger ledger) {
    // 2 V lead-acid cells, 3.2 V lithium iron phosphate cells
    double cells = spec.nominalV() / (spec.chemistry().leadAcid() ? 2 : 3);
    lose(storedWh() / cells, ledger);
    curve = curve.without(1 / cells);
  }

  /** Energy between empty and the present levels, Wh. */
  private double storedWh() {
    return wells.availableAh() * curve.meanV(0, wells.availableHead())
        + wells.boundAh() * curve.meanV(0, wells.boundHead());
  }

  private static void lose(double wh, PowerLedger ledger) {
    ledger.batteryLossJ += 3600 * wh;
    ledger.batteryChangeJ -= 3600 * wh;
  }

  private void leak(double share, PowerLedger ledger) {
    double leakA = wells.availableAh() * share;
    double leakB = wells.boundAh() * share;
    double head = wells.availableHead();
    double bound = wells.boundHead();
    double lostJ =
        3600
            * (leakA * curve.meanV(head, head * (1 - share))
                + leakB * curve.meanV(bound, bound * (1 - share)));
    ledger.batteryLossJ += lostJ;
    ledger.batteryChangeJ -= lostJ;
    ledger.chargeLostAh += leakA + leakB;
    wells.set(wells.availableAh() - leakA, wells.boundAh() - leakB);
  }

  /** Lets its temperature follow that of its place. */
  void follow(double placeC, double seconds) {
    temperatureC += (placeC - temperatureC) * (1 - Portable.exp(-seconds / spec.timeConstantS()));
  }

  /** Its temperature, °C. */
  public double temperatureC() {
    return temperatureC;
  }
}
