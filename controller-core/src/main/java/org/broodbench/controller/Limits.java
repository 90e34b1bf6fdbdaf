package org.broodbench.controller;

/**
 * Limits on pan and brood (rules L1 to L8). A raw value at a limit takes heat away in the same
 * step, trusted or not; heat comes back below the differential.
 */
final class Limits implements Part {
  /** Places for trips in the rolling day; the most that latching may be set to. */
  private static final int TRIP_PLACES = 8;

  private final int panCentiC;
  private final int panReleaseCentiC;
  private final int panTripCentiC;
  private final int tripsToLatch;
  private final int broodACentiC;
  private final int broodBCentiC;
  private final int broodDifferentialCentiK;

  private boolean panHigh;
  private boolean panTripped;
  private boolean broodHigh;
  private boolean latched;
  private final RollingCount trips;

  Limits(Settings settings, int dayMillis) {
    trips = new RollingCount(TRIP_PLACES, dayMillis);
    panCentiC = settings.get(Setting.LIMIT_PAN_CENTI_C);
    panReleaseCentiC = panCentiC - settings.get(Setting.LIMIT_PAN_DIFFERENTIAL_CENTI_K);
    panTripCentiC = settings.get(Setting.LIMIT_PAN_TRIP_CENTI_C);
    tripsToLatch = settings.get(Setting.LIMIT_TRIPS_TO_LATCH);
    broodACentiC = settings.get(Setting.LIMIT_BROOD_CENTI_C);
    broodBCentiC =
        settings.get(
            settings.is(Setting.BROOD_B_LIKE_PLACE)
                ? Setting.LIMIT_BROOD_CENTI_C
                : Setting.LIMIT_BROOD_B_CENTI_C);
    broodDifferentialCentiK = settings.get(Setting.LIMIT_BROOD_DIFFERENTIAL_CENTI_K);
  }

  /**
   * @param panUntrusted whether heat runs in its share because the pan is not believed: the pan
   *     limit then holds nothing back on an old reading
   */
  void step(
      int releaseMillis, SampleJudge a, SampleJudge b, SampleJudge pan, boolean panUntrusted) {
    trips.step(releaseMillis);
    boolean rawPan = pan.usable();
    if (rawPan && pan.raw() >= panTripCentiC) {
      if (!panTripped) {
        trips.add();
      }
      panTripped = true;
    }
    if (rawPan && pan.raw() >= panCentiC) {
      panHigh = true;
    } else if (panUntrusted || pan.value() <= panReleaseCentiC) {
      panHigh = false;
      panTripped = false;
    }
    boolean high = atLimit(a, broodACentiC) || atLimit(b, broodBCentiC);
    if (high) {
      broodHigh = true;
    } else if (below(a, broodACentiC) && below(b, broodBCentiC)) {
      broodHigh = false;
    }
    if (trips.count() >= tripsToLatch) {
      latched = true;
    }
  }

  private static boolean atLimit(SampleJudge probe, int limitCentiC) {
    return probe.usable() && probe.raw() >= limitCentiC;
  }

  private boolean below(SampleJudge probe, int limitCentiC) {
    int releaseCentiC = limitCentiC - broodDifferentialCentiK;
    return (!probe.usable() || probe.raw() <= releaseCentiC)
        && (!probe.trusted() || probe.value() <= releaseCentiC);
  }

  /** The brood limit ended a run: that counts as a trip (rule L6). */
  void countBroodTrip() {
    trips.add();
  }

  /** Clears the latch and forgets the trips, unless the cause lasts. */
  void clearLatch() {
    if (!panHigh && !broodHigh) {
      latched = false;
      trips.reset();
    }
  }

  boolean panHigh() {
    return panHigh;
  }

  boolean panTripped() {
    return panTripped;
  }

  boolean broodHigh() {
    return broodHigh;
  }

  boolean latched() {
    return latched;
  }

  @Override
  public void reset() {
    panHigh = false;
    panTripped = false;
    broodHigh = false;
    latched = false;
    trips.reset();
  }

  @Override
  public void save(Words out) {
    out.put(panHigh);
    out.put(panTripped);
    out.put(broodHigh);
    out.put(latched);
    trips.save(out);
  }

  @Override
  public void restore(Words in) {
    panHigh = in.takeFlag();
    panTripped = in.takeFlag();
    broodHigh = in.takeFlag();
    latched = in.takeFlag();
    trips.restore(in);
  }
}
