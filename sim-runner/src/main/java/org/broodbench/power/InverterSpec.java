package org.broodbench.power;

/**
 * An inverter: input power = P + idle + linear P + quadratic P², with P the output power.
 *
 * @param ratedW rated output, W; 0 for none
 * @param idleW draw without load, W
 * @param linearLoss loss per watt of output
 * @param quadraticLossPerW loss per watt of output squared, 1/W
 * @param search search mode
 * @param trips when it switches itself off
 */
public record InverterSpec(
    double ratedW,
    double idleW,
    double linearLoss,
    double quadraticLossPerW,
    Search search,
    Trips trips) {

  /**
   * Search mode: it sleeps until a load asks for enough.
   *
   * @param wakeW least load that it wakes for, W; 0 for no search mode
   * @param drawW what it draws asleep, W
   */
  public record Search(double wakeW, double drawW) {
    /** Always awake. */
    public static final Search NONE = new Search(0, 0);
  }

  /**
   * When it switches itself off, and how it returns.
   *
   * @param lowV volts under which it goes off, V
   * @param lowReturnV volts at which it may return, V
   * @param highV volts over which it goes off, V
   * @param highReturnV volts under which it may return, V
   * @param waitS shortest time off, s
   * @param mostRestarts returns from low volts before it waits for {@code unlockV}
   * @param unlockV volts that show charging, V
   * @param returnsByItself whether it ever returns without a hand
   */
  public record Trips(
      double lowV,
      double lowReturnV,
      double highV,
      double highReturnV,
      double waitS,
      int mostRestarts,
      double unlockV,
      boolean returnsByItself) {
    /** It takes any volts. */
    public static final Trips NONE = new Trips(0, 0, 1e6, 1e6, 0, Integer.MAX_VALUE, 0, true);
  }

  /** Always awake, and at any volts. */
  public InverterSpec(double ratedW, double idleW, double linearLoss, double quadraticLossPerW) {
    this(ratedW, idleW, linearLoss, quadraticLossPerW, Search.NONE, Trips.NONE);
  }
}
