package org.broodbench.controller;

/**
 * Judges one analogue reading (rules P1 to P6): whether the raw value may act on limits ({@link
 * #usable}), whether it is believed ({@link #trusted}), and the value to work with ({@link
 * #value}).
 */
final class SampleJudge implements Part {
  /** After so long without a good sample any value in range is taken as a new start. */
  static final int RATE_VOID_MILLIS = 60000;

  private final int lowest;
  private final int highest;
  private final int code1;
  private final int code2;
  private final int oldestMillis;
  private final int holdMillis;
  private final int gainMillis;
  private final int stepAllowed;
  private final int ratePerSecond;

  private boolean trusted;
  private boolean known;
  private boolean good;
  private int value;
  private int sinceGoodMillis;
  private int goodForMillis;

  // Of this step only, not state.
  private boolean usable;
  private int raw;

  /**
   * @param stepAllowed change that is always believed, in the unit of the sample; 0 switches the
   *     rate check off
   */
  SampleJudge(
      int lowest,
      int highest,
      int code1,
      int code2,
      int stepAllowed,
      int ratePerSecond,
      Settings settings) {
    this.lowest = lowest;
    this.highest = highest;
    this.code1 = code1;
    this.code2 = code2;
    this.stepAllowed = stepAllowed;
    this.ratePerSecond = ratePerSecond;
    this.oldestMillis = settings.get(Setting.TRUST_OLDEST_MILLIS);
    this.holdMillis = settings.get(Setting.TRUST_HOLD_MILLIS);
    this.gainMillis = settings.get(Setting.TRUST_GAIN_MILLIS);
  }

  /** A judge for a temperature. */
  static SampleJudge temperature(Settings settings) {
    return new SampleJudge(
        settings.get(Setting.TRUST_LOWEST_CENTI_C),
        settings.get(Setting.TRUST_HIGHEST_CENTI_C),
        settings.get(Setting.TRUST_CODE_1_CENTI_C),
        settings.get(Setting.TRUST_CODE_2_CENTI_C),
        settings.get(Setting.TRUST_STEP_CENTI_K),
        settings.get(Setting.TRUST_RATE_CENTI_K_PER_S),
        settings);
  }

  /** A judge for any other quantity: a range and an age, no codes, no rate. */
  static SampleJudge ranged(int lowest, int highest, Settings settings) {
    return new SampleJudge(lowest, highest, Integer.MIN_VALUE, Integer.MIN_VALUE, 0, 0, settings);
  }

  void step(Sample sample, int tripMillis, int releaseMillis) {
    raw = sample.value;
    usable =
        sample.valid
            && sample.ageMillis >= 0
            && sample.ageMillis <= oldestMillis
            && raw >= lowest
            && raw <= highest
            && raw != code1
            && raw != code2;
    sinceGoodMillis = Span.up(sinceGoodMillis, tripMillis, RATE_VOID_MILLIS);
    if (usable && slowEnough()) {
      goodForMillis = good ? Span.up(goodForMillis, releaseMillis, gainMillis) : 0;
      trusted = trusted || goodForMillis >= gainMillis;
      good = true;
      known = true;
      value = raw;
      sinceGoodMillis = 0;
    } else {
      good = false;
      goodForMillis = 0;
      trusted = trusted && sinceGoodMillis <= holdMillis;
    }
  }

  /** Both values are in range here, so the difference stays inside 32 bits; so does the product. */
  private boolean slowEnough() {
    if (stepAllowed == 0 || !known || sinceGoodMillis >= RATE_VOID_MILLIS) {
      return true;
    }
    int change = raw - value;
    if (change <= stepAllowed && change >= -stepAllowed) {
      return true; // as nearly always; the rest only allows more
    }
    int allowed = stepAllowed + ratePerSecond * sinceGoodMillis / 1000;
    return change <= allowed && change >= -allowed;
  }

  /** Takes trust away until the reading has been good for the stated time. */
  void distrust() {
    trusted = false;
    good = false;
    goodForMillis = 0;
  }

  /** Whether the raw value of this step is fresh, in range and no known code. */
  boolean usable() {
    return usable;
  }

  /** The raw value of this step; means nothing unless {@link #usable}. */
  int raw() {
    return raw;
  }

  /** Whether the sample of this step was good: usable and not faster than the physical rate. */
  boolean good() {
    return good;
  }

  /** Whether the reading is believed. */
  boolean trusted() {
    return trusted;
  }

  /** The last good value. */
  int value() {
    return value;
  }

  @Override
  public void reset() {
    trusted = false;
    known = false;
    good = false;
    value = 0;
    sinceGoodMillis = 0;
    goodForMillis = 0;
    usable = false;
    raw = 0;
  }

  @Override
  public void save(Words out) {
    out.put(trusted);
    out.put(known);
    out.put(good);
    out.put(value);
    out.put(sinceGoodMillis);
    out.put(goodForMillis);
  }

  @Override
  public void restore(Words in) {
    trusted = in.takeFlag();
    known = in.takeFlag();
    good = in.takeFlag();
    value = in.take(lowest < 0 ? lowest : 0, highest);
    sinceGoodMillis = in.take(0, RATE_VOID_MILLIS);
    goodForMillis = in.takeMillis();
  }
}
