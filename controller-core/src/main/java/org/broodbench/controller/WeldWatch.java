package org.broodbench.controller;

/**
 * Finds a relay that stays closed (rules D1 to D4): by heater current soon after off or, without a
 * current reading, by a pan that stays warm and does not fall long after off.
 */
final class WeldWatch implements Part {
  private final int afterMillis;
  private final int blankMillis;
  private final int aboveCentiK;
  private final int lookMillis;
  private final int ratedMilliA;

  private int offMillis;
  private boolean looking;
  private int lookedMillis;
  private int lookPanCentiC;
  private boolean cause;
  private boolean latched;

  WeldWatch(Settings settings) {
    afterMillis = settings.get(Setting.WELD_AFTER_MILLIS);
    blankMillis = settings.get(Setting.WELD_BLANK_MILLIS);
    aboveCentiK = settings.get(Setting.WELD_ABOVE_CENTI_K);
    lookMillis = settings.get(Setting.WELD_LOOK_MILLIS);
    ratedMilliA = settings.get(Setting.HEATER_RATED_MILLI_A);
  }

  /**
   * @param currentAgeMillis age of the current sample: a sample from before off proves nothing
   */
  void step(
      int tripMillis,
      boolean heaterWasOn,
      SampleJudge current,
      int currentAgeMillis,
      SampleJudge pan,
      Governing brood,
      SampleJudge outdoor) {
    if (heaterWasOn) {
      offMillis = 0;
      looking = false;
      cause = false;
      return;
    }
    offMillis = Span.up(offMillis, tripMillis, blankMillis);
    if (current.usable()) {
      looking = false;
      cause = offMillis - currentAgeMillis >= afterMillis && 2 * current.raw() > ratedMilliA;
    } else {
      byPan(tripMillis, pan, brood, outdoor);
    }
    latched = latched || cause;
  }

  private void byPan(int tripMillis, SampleJudge pan, Governing brood, SampleJudge outdoor) {
    boolean warm =
        offMillis >= blankMillis
            && pan.trusted()
            && brood.known()
            && pan.value() - brood.stopCentiC() >= aboveCentiK
            && (!outdoor.trusted() || pan.value() - outdoor.value() >= aboveCentiK);
    if (!warm) {
      looking = false;
      cause = false;
    } else if (!looking) {
      looking = true;
      lookedMillis = 0;
      lookPanCentiC = pan.value();
    } else {
      lookedMillis = Span.up(lookedMillis, tripMillis, lookMillis);
      if (lookedMillis >= lookMillis) {
        cause = pan.value() >= lookPanCentiC;
        lookedMillis = 0;
        lookPanCentiC = pan.value();
      }
    }
  }

  /** Clears the latch unless the cause lasts. */
  void clearLatch() {
    latched = cause;
  }

  boolean latched() {
    return latched;
  }

  @Override
  public void reset() {
    offMillis = 0;
    looking = false;
    lookedMillis = 0;
    lookPanCentiC = 0;
    cause = false;
    latched = false;
  }

  @Override
  public void save(Words out) {
    out.put(offMillis);
    out.put(looking);
    out.put(lookedMillis);
    out.put(lookPanCentiC);
    out.put(cause);
    out.put(latched);
  }

  @Override
  public void restore(Words in) {
    offMillis = in.takeMillis();
    looking = in.takeFlag();
    lookedMillis = in.takeMillis();
    lookPanCentiC = in.take(-30000, 30000);
    cause = in.takeFlag();
    latched = in.takeFlag();
  }
}
