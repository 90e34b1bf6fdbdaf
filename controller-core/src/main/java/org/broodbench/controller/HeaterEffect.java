package org.broodbench.controller;

/**
 * Judges once a run whether the heater heats (rules E1 to E6). Proven by a rise of the pan from its
 * lowest in the run, by a pan well above brood and outdoors, or by heater current.
 */
final class HeaterEffect implements Part {
  private static final int NO_PAN = Integer.MIN_VALUE;

  private final int judgeMillis;
  private final int riseCentiK;
  private final int aboveCentiK;
  private final int ratedMilliA;

  private boolean running;
  private boolean proven;
  private boolean unproven;
  private int runMillis;
  private int lowestPanCentiC;
  private int lastPanCentiC;

  HeaterEffect(Settings settings) {
    judgeMillis = settings.get(Setting.EFFECT_JUDGE_MILLIS);
    riseCentiK = settings.get(Setting.EFFECT_RISE_CENTI_K);
    aboveCentiK = settings.get(Setting.EFFECT_ABOVE_CENTI_K);
    ratedMilliA = settings.get(Setting.HEATER_RATED_MILLI_A);
  }

  void step(
      int tripMillis,
      boolean heaterWasOn,
      SampleJudge pan,
      Governing brood,
      SampleJudge outdoor,
      SampleJudge current) {
    int panCentiC = pan.trusted() ? pan.value() : NO_PAN;
    if (heaterWasOn) {
      if (!running) {
        running = true;
        proven = false;
        runMillis = 0;
        lowestPanCentiC = lastPanCentiC;
      }
      runMillis = Span.up(runMillis, tripMillis, judgeMillis);
      judge(panCentiC, brood, outdoor, current);
    } else {
      running = false;
    }
    lastPanCentiC = panCentiC;
  }

  private void judge(int panCentiC, Governing brood, SampleJudge outdoor, SampleJudge current) {
    boolean pan = panCentiC != NO_PAN && lowestPanCentiC != NO_PAN;
    if (pan && panCentiC < lowestPanCentiC) {
      // heat takes minutes through a deep pan, and its top goes on falling meanwhile
      lowestPanCentiC = panCentiC;
    }
    boolean rose = pan && panCentiC - lowestPanCentiC >= riseCentiK;
    boolean above =
        panCentiC != NO_PAN
            && brood.known()
            && panCentiC - brood.stopCentiC() >= aboveCentiK
            && (!outdoor.trusted() || panCentiC - outdoor.value() >= aboveCentiK);
    // Twice the current is at most 400 000 mA.
    boolean flows = current.usable() && 2 * current.raw() >= ratedMilliA;
    if (rose || above || flows) {
      proven = true;
      unproven = false;
    } else if (!proven && runMillis >= judgeMillis && (pan || current.trusted())) {
      unproven = true;
    }
  }

  /** The heater was seen to do nothing in a whole run, and has not been proven since. */
  boolean unproven() {
    return unproven;
  }

  @Override
  public void reset() {
    running = false;
    proven = false;
    unproven = false;
    runMillis = 0;
    lowestPanCentiC = NO_PAN;
    lastPanCentiC = NO_PAN;
  }

  @Override
  public void save(Words out) {
    out.put(running);
    out.put(proven);
    out.put(unproven);
    out.put(runMillis);
    out.put(lowestPanCentiC);
    out.put(lastPanCentiC);
  }

  @Override
  public void restore(Words in) {
    running = in.takeFlag();
    proven = in.takeFlag();
    unproven = in.takeFlag();
    runMillis = in.takeMillis();
    lowestPanCentiC = takePan(in);
    lastPanCentiC = takePan(in);
  }

  private static int takePan(Words in) {
    int word = in.take(NO_PAN, 30000);
    return word < -30000 ? NO_PAN : word;
  }
}
