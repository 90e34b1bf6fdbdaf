package org.broodbench.power;

/**
 * Something in the chain that opens by itself when it must, and closes again by a stated rule, or
 * never. A step is judged before it is accepted; the change holds from the next step on.
 */
public final class CutOut {
  private final String name;
  private final String why;
  private final boolean returnsByItself;
  private final double tripDelayS;
  private final double returnDelayS;

  private boolean open;
  private boolean trip;
  private boolean clear;
  private boolean forced;
  private double tripS;
  private double clearS;
  private int trips;
  private double openS;

  /**
   * A closed one.
   *
   * @param name what it is, in small letters with underscores
   * @param why what makes it open, for people
   * @param returnsByItself whether it ever closes again without a hand
   * @param tripDelayS time that its cause must stand before it opens, s
   * @param returnDelayS time that the cause must be gone before it closes, s
   */
  CutOut(String name, String why, boolean returnsByItself, double tripDelayS, double returnDelayS) {
    this.name = name;
    this.why = why;
    this.returnsByItself = returnsByItself;
    this.tripDelayS = tripDelayS;
    this.returnDelayS = returnDelayS;
  }

  /** Notes whether, in the solved step, it has cause to open, or leave to close. */
  void judge(boolean causeToOpen, boolean leaveToClose) {
    trip = causeToOpen;
    clear = leaveToClose;
    forced = false;
  }

  /** After {@link #judge}: opens when the step is accepted, whatever the delay. */
  void force() {
    forced = true;
  }

  /** Opens at once by a cause from outside, or is put back by a hand. */
  void set(boolean opened) {
    trips += opened && !open ? 1 : 0;
    open = opened;
    tripS = 0;
    clearS = 0;
  }

  void accept(double seconds) {
    if (open) {
      openS += seconds;
      clearS = clear && returnsByItself ? clearS + seconds : 0;
      if (clear && returnsByItself && clearS >= returnDelayS) {
        open = false;
        tripS = 0;
      }
    } else {
      tripS = trip ? tripS + seconds : 0;
      if (forced || (trip && tripS >= tripDelayS)) {
        open = true;
        trips++;
        clearS = 0;
      }
    }
  }

  /** Whether it is open now. */
  public boolean open() {
    return open;
  }

  /** What it is. */
  public String name() {
    return name;
  }

  /** What makes it open, for people. */
  public String why() {
    return why;
  }

  /** Whether it closes again without a hand. */
  public boolean returnsByItself() {
    return returnsByItself;
  }

  /** How often it opened. */
  public int trips() {
    return trips;
  }

  /** How long it was open, s. */
  public double openS() {
    return openS;
  }
}
