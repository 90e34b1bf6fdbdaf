package org.broodbench.controller;

/** Counters for the keeper's daily look, since the last short press (rules Y1 to Y3). */
final class DailyLook implements Part {
  private static final int MOST = 1000000000;

  private int lowestCentiC;
  private int highestCentiC;
  private int heaterSeconds;
  private int heaterMillis;
  private int starts;
  private int sheds;

  void step(
      int tripMillis, boolean heaterWasOn, Governing brood, boolean heaterStarted, boolean shed) {
    if (heaterWasOn) {
      int seconds = tripMillis / 1000;
      heaterMillis += tripMillis % 1000;
      if (heaterMillis >= 1000) {
        heaterMillis -= 1000;
        seconds++;
      }
      heaterSeconds = Span.up(heaterSeconds, seconds, MOST);
    }
    if (brood.known()) {
      boolean first = lowestCentiC == Commands.NO_TEMPERATURE;
      if (first || brood.callCentiC() < lowestCentiC) {
        lowestCentiC = brood.callCentiC();
      }
      if (first || brood.stopCentiC() > highestCentiC) {
        highestCentiC = brood.stopCentiC();
      }
    }
    if (heaterStarted) {
      starts = Span.up(starts, 1, MOST);
    }
    if (shed) {
      sheds = Span.up(sheds, 1, MOST);
    }
  }

  void show(Commands out) {
    out.lowestBroodCentiC = lowestCentiC;
    out.highestBroodCentiC = highestCentiC;
    out.heaterSeconds = heaterSeconds;
    out.heaterStarts = starts;
    out.sheds = sheds;
  }

  @Override
  public void reset() {
    lowestCentiC = Commands.NO_TEMPERATURE;
    highestCentiC = Commands.NO_TEMPERATURE;
    heaterSeconds = 0;
    heaterMillis = 0;
    starts = 0;
    sheds = 0;
  }

  @Override
  public void save(Words out) {
    out.put(lowestCentiC);
    out.put(highestCentiC);
    out.put(heaterSeconds);
    out.put(heaterMillis);
    out.put(starts);
    out.put(sheds);
  }

  @Override
  public void restore(Words in) {
    lowestCentiC = in.take(Commands.NO_TEMPERATURE, 30000);
    highestCentiC = in.take(Commands.NO_TEMPERATURE, 30000);
    heaterSeconds = in.take(0, MOST);
    heaterMillis = in.take(0, 999);
    starts = in.take(0, MOST);
    sheds = in.take(0, MOST);
  }
}
