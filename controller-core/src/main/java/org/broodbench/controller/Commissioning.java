package org.broodbench.controller;

/**
 * The commissioning test (rules K7 to K10): on request, heater then fan, each for a stated time and
 * within all permits and guards; a phase that cannot start in the stated wait is skipped.
 */
final class Commissioning implements Part {
  static final int IDLE = 0;
  static final int HEATER = 1;
  static final int FAN = 2;

  private final int testMillis;
  private final int waitMillis;
  private final boolean fanFitted;

  private boolean requested;
  private int phase;
  private boolean ran;
  private int ranMillis;
  private int waitedMillis;

  Commissioning(Settings settings) {
    testMillis = settings.get(Setting.TEST_MILLIS);
    waitMillis = settings.get(Setting.TEST_WAIT_MILLIS);
    fanFitted = settings.is(Setting.FITTED_FAN);
  }

  /**
   * @param request acts by its rising edge
   * @param cancel a service hold or a stuck button ends the test
   */
  void step(
      int tripMillis, boolean request, boolean cancel, boolean heaterWasOn, boolean fanWasOn) {
    boolean edge = request && !requested;
    requested = request;
    if (cancel) {
      begin(IDLE);
    } else if (phase == IDLE) {
      if (edge) {
        begin(HEATER);
      }
    } else {
      boolean on = phase == HEATER ? heaterWasOn : fanWasOn;
      if (on) {
        ran = true;
        ranMillis = Span.up(ranMillis, tripMillis, testMillis);
      } else {
        waitedMillis = Span.up(waitedMillis, tripMillis, waitMillis);
      }
      if (ranMillis >= testMillis || waitedMillis >= waitMillis || (ran && !on)) {
        begin(phase == HEATER && fanFitted ? FAN : IDLE);
      }
    }
  }

  private void begin(int next) {
    phase = next;
    ran = false;
    ranMillis = 0;
    waitedMillis = 0;
  }

  /** One of the constants above. */
  int phase() {
    return phase;
  }

  @Override
  public void reset() {
    requested = false;
    begin(IDLE);
  }

  @Override
  public void save(Words out) {
    out.put(requested);
    out.put(phase);
    out.put(ran);
    out.put(ranMillis);
    out.put(waitedMillis);
  }

  @Override
  public void restore(Words in) {
    requested = in.takeFlag();
    phase = in.take(IDLE, FAN);
    ran = in.takeFlag();
    ranMillis = in.takeMillis();
    waitedMillis = in.takeMillis();
  }
}
