package org.broodbench.controller;

/**
 * Decides once a step whether the brood heater is wanted (rules H1 to H7).
 *
 * <pre>
 *  OFF -> ON    call temperature &lt;= working set point minus differential
 *  ON  -> OFF   stop temperature &gt;= working set point
 * </pre>
 *
 * The working set point follows its target upwards at a stated rate and downwards at once.
 */
final class HeatDemand implements Part {
  private static final int MILLIS_PER_HOUR = 3600000;

  private final int differentialCentiK;
  private final int rampCentiKPerHour;
  private final int floorCentiC;
  private final int rebaseMillis;

  private boolean calling;
  private boolean started;
  private int workingCentiC;
  private int rampRemainder;
  private int unheatedMillis;

  HeatDemand(int differentialCentiK, int rampCentiKPerHour, int floorCentiC, int rebaseMillis) {
    this.differentialCentiK = differentialCentiK;
    this.rampCentiKPerHour = rampCentiKPerHour;
    this.floorCentiC = floorCentiC;
    this.rebaseMillis = rebaseMillis;
  }

  /**
   * @param heaterWasOn whether the heater was on in the interval that ends now
   * @param brood what the brood probes say
   */
  boolean step(
      int tripMillis, int releaseMillis, boolean heaterWasOn, Governing brood, int targetCentiC) {
    unheatedMillis = heaterWasOn ? 0 : Span.up(unheatedMillis, tripMillis, rebaseMillis + 1);
    if (!brood.known()) {
      calling = false;
      started = false;
      return false;
    }
    if (!started || unheatedMillis > rebaseMillis) {
      int base = brood.callCentiC() + differentialCentiK;
      workingCentiC = base > floorCentiC ? base : floorCentiC;
      rampRemainder = 0;
      started = true;
    } else {
      ramp(releaseMillis, targetCentiC);
    }
    if (workingCentiC >= targetCentiC) {
      workingCentiC = targetCentiC;
      rampRemainder = 0;
    }
    if (brood.stopCentiC() >= workingCentiC) {
      calling = false;
    } else if (brood.callCentiC() <= workingCentiC - differentialCentiK) {
      calling = true;
    }
    return calling;
  }

  /** At most 6 000 cK/h by 60 000 ms plus a remainder below 3.6e6: inside 32 bits. */
  private void ramp(int releaseMillis, int targetCentiC) {
    if (workingCentiC < targetCentiC) {
      int parts = rampRemainder + rampCentiKPerHour * releaseMillis;
      workingCentiC += parts / MILLIS_PER_HOUR;
      rampRemainder = parts % MILLIS_PER_HOUR;
    }
  }

  boolean calling() {
    return calling;
  }

  /** The working set point; means nothing before a brood probe was trusted. */
  int workingCentiC() {
    return workingCentiC;
  }

  boolean started() {
    return started;
  }

  @Override
  public void reset() {
    calling = false;
    started = false;
    workingCentiC = 0;
    rampRemainder = 0;
    unheatedMillis = 0;
  }

  @Override
  public void save(Words out) {
    out.put(calling);
    out.put(started);
    out.put(workingCentiC);
    out.put(rampRemainder);
    out.put(unheatedMillis);
  }

  @Override
  public void restore(Words in) {
    calling = in.takeFlag();
    started = in.takeFlag();
    workingCentiC = in.take(-30000, 30000);
    rampRemainder = in.take(0, MILLIS_PER_HOUR - 1);
    unheatedMillis = in.take(0, 86400001);
  }
}
