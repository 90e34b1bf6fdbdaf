package org.broodbench.power;

import java.util.List;

/**
 * Everything in the supply chain.
 *
 * @param pv modules and charge controller
 * @param battery battery
 * @param inverter inverter
 * @param heater heater as a load
 * @param shore mains charger
 * @param wiring copper, contacts, fuses
 * @param board the controller's board as a load
 * @param fanW draw of the fan, W
 * @param loads further loads
 */
public record SupplySpec(
    PvSpec pv,
    BatterySpec battery,
    InverterSpec inverter,
    Heater heater,
    ShoreSpec shore,
    WiringSpec wiring,
    Board board,
    double fanW,
    List<LoadSpec> loads) {

  /**
   * The heater as the chain sees it.
   *
   * @param powerW rated power, W; 0 for none
   * @param ratedV rated volts, V
   * @param onInverter whether it hangs on the inverter
   * @param regulated whether its power is held whatever the volts
   */
  public record Heater(double powerW, double ratedV, boolean onInverter, boolean regulated) {}

  /**
   * The controller's board as the chain sees it.
   *
   * @param powerW draw with relay coils, W
   * @param brownOutV volts under which it resets and its relays open, V
   * @param restartV volts at which it starts again, V
   * @param bootS time at these volts until it runs, s
   */
  public record Board(double powerW, double brownOutV, double restartV, double bootS) {}

  /** Copies the list. */
  public SupplySpec {
    loads = List.copyOf(loads);
  }
}
