package org.broodbench.rig;

import java.util.Optional;
import org.broodbench.power.Chemistry;

/**
 * What the rig has besides what a run simulates: protection, ratings, and parts that must not be
 * there. It is judged on paper only.
 *
 * @param cutOut independent thermal cut-out in series with the heater, on its plate
 * @param failsOff whether the heat goes off when the controller stops
 * @param relayA highest current of the contact that switches the heater, A
 * @param batteryWireMm2 cross-section of the leads at the battery, mm²
 * @param boxVentM2 free area of each of the two vents of the battery's box, above and below, m²; 0
 *     for a closed box
 * @param beside another battery side by side with the bank
 * @param startsOnOpenBoard whether the charge controller starts while the battery's protection is
 *     open
 * @param keepsLatches whether latches and the count of sheds outlive a loss of power
 */
public record PaperSpec(
    CutOut cutOut,
    Known failsOff,
    double relayA,
    double batteryWireMm2,
    double boxVentM2,
    Optional<Beside> beside,
    Known startsOnOpenBoard,
    Known keepsLatches) {

  /** How a thermal cut-out closes again. */
  public enum Kind {
    /** There is none. */
    NONE,
    /** By itself, when it has cooled. */
    SELF_RESETTING,
    /** By a hand. */
    MANUAL,
    /** Never: it is replaced. */
    ONE_SHOT
  }

  /**
   * A thermal cut-out.
   *
   * @param kind whether it is there, and how it closes again
   * @param opensC temperature of the plate at which it opens, °C
   * @param toleranceK how far off that it may be, K
   */
  public record CutOut(Kind kind, double opensC, double toleranceK) {}

  /**
   * A battery side by side with the bank.
   *
   * @param chemistry its kind
   * @param capacityAh its charge, Ah
   * @param charge its state of charge when the two are joined, 0 to 1
   * @param resistanceOhm its internal resistance, Ω
   */
  public record Beside(
      Chemistry chemistry, double capacityAh, double charge, double resistanceOhm) {}

  /** Nothing was said: no cut-out, a small relay, usual leads, a ventilated box. */
  public static final PaperSpec UNTOLD =
      new PaperSpec(
          new CutOut(Kind.NONE, 55, 3),
          Known.UNKNOWN,
          10,
          6,
          0.01,
          Optional.empty(),
          Known.UNKNOWN,
          Known.UNKNOWN);

  /** Whether a thermal cut-out stays open until somebody has looked. */
  public boolean cutOutStaysOpen() {
    return cutOut.kind() == Kind.MANUAL || cutOut.kind() == Kind.ONE_SHOT;
  }
}
