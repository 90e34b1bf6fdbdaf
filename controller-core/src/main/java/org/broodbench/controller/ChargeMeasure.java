package org.broodbench.controller;

/**
 * What tells how full the battery is (rules B1 to B4): volts corrected for load, or state of
 * charge. Owns no state of its own.
 */
final class ChargeMeasure {
  private final boolean byStateOfCharge;
  private final int milliOhm;
  private final int baseMilliA;
  private final int heaterMilliA;
  private final int fanMilliA;
  private final int emergencyMilliV;
  private final int chargingMilliA;
  private final int chargingMilliW;

  private boolean trusted;
  private int value;
  private int correctedMilliV;
  private boolean emergency;
  private boolean charging;
  private boolean chargingKnown;

  ChargeMeasure(Settings settings) {
    byStateOfCharge = settings.is(Setting.SHED_BY_STATE_OF_CHARGE);
    milliOhm = settings.get(Setting.BATTERY_MILLI_OHM);
    baseMilliA = settings.get(Setting.BATTERY_BASE_LOAD_MILLI_A);
    heaterMilliA = settings.get(Setting.HEATER_RATED_MILLI_A);
    fanMilliA = settings.get(Setting.FAN_RATED_MILLI_A);
    emergencyMilliV = settings.get(Setting.SHED_EMERGENCY_MILLI_V);
    chargingMilliA = settings.get(Setting.BATTERY_CHARGING_MILLI_A);
    chargingMilliW = settings.get(Setting.BATTERY_CHARGING_MILLI_W);
  }

  /**
   * @param fromShore whether shore power fed the loads in the interval that ends now
   */
  void step(
      Probes probes,
      boolean chargerFull,
      boolean heaterWasOn,
      boolean fanWasOn,
      boolean fromShore) {
    SampleJudge volts = probes.volts;
    SampleJudge current = probes.batteryCurrent;
    SampleJudge stateOfCharge = probes.stateOfCharge;
    SampleJudge panelPower = probes.panelPower;
    int milliA;
    if (current.trusted()) {
      milliA = current.value();
    } else {
      milliA = -baseMilliA;
      if (heaterWasOn && !fromShore) {
        milliA -= heaterMilliA;
      }
      if (fanWasOn && !fromShore) {
        milliA -= fanMilliA;
      }
    }
    // At most 300 000 mA by 1 000 mOhm: 3e8, inside 32 bits. The quotient is cut towards zero.
    correctedMilliV = volts.trusted() ? volts.value() - milliA * milliOhm / 1000 : 0;
    trusted = byStateOfCharge ? stateOfCharge.trusted() : volts.trusted();
    value = byStateOfCharge ? stateOfCharge.value() : correctedMilliV;
    emergency = volts.usable() && volts.raw() <= emergencyMilliV;
    boolean currentIn = current.trusted() && current.value() >= chargingMilliA;
    boolean panelIn = panelPower.trusted() && panelPower.value() >= chargingMilliW;
    charging = currentIn || panelIn || chargerFull;
    chargingKnown = current.trusted() || panelPower.trusted();
  }

  boolean trusted() {
    return trusted;
  }

  /** Millivolts or per mille, whichever thresholds are in use. */
  int value() {
    return value;
  }

  /** Volts corrected for load; 0 while volts are not trusted. */
  int correctedMilliV() {
    return correctedMilliV;
  }

  /** Raw volts at or below the emergency threshold. */
  boolean emergency() {
    return emergency;
  }

  /** Charge flows in, or the part that would show it is missing. */
  boolean chargingOrUnknown() {
    return charging || !chargingKnown;
  }
}
