package org.broodbench.power;

/**
 * The inverter in operation: awake, asleep in search mode, or off by one of its trips. After some
 * returns from low volts it waits until the volts show that something charges. An overload switches
 * it off for the waiting time after 10 s (own choice).
 */
final class InverterUnit {
  private static final double OVERLOAD_S = 10;

  private final InverterSpec spec;
  private final CutOut low;
  private final CutOut high;
  private final CutOut overload;
  private int restarts;

  private boolean broken;
  private boolean running;
  private double askedW;
  private double outputW;
  private double inputW;

  InverterUnit(InverterSpec spec) {
    this.spec = spec;
    InverterSpec.Trips t = spec.trips();
    low =
        new CutOut(
            "inverter_low_volts", "too few volts at its input", t.returnsByItself(), 0, t.waitS());
    high =
        new CutOut(
            "inverter_high_volts",
            "too many volts at its input",
            t.returnsByItself(),
            0,
            t.waitS());
    overload =
        new CutOut(
            "inverter_overload",
            "more load than its rating",
            t.returnsByItself(),
            OVERLOAD_S,
            t.waitS());
  }

  boolean fitted() {
    return spec.ratedW() > 0;
  }

  CutOut[] cutOuts() {
    return new CutOut[] {low, high, overload};
  }

  /** Takes what is asked of it in a step, W. */
  void ask(boolean enabled, double loadW) {
    running = fitted() && !broken && enabled && !low.open() && !high.open() && !overload.open();
    askedW = running ? loadW : 0;
    boolean asleep = askedW < spec.search().wakeW();
    outputW = asleep ? 0 : askedW;
    inputW = !running ? 0 : asleep ? spec.search().drawW() : Inverter.inputW(spec, outputW);
  }

  /** Trips for a cause of its own and does not return while it is broken. */
  void setBroken(boolean nowBroken) {
    broken = nowBroken;
  }

  boolean running() {
    return running;
  }

  /** What it delivers, W. */
  double outputW() {
    return outputW;
  }

  /** What it draws, W. */
  double inputW() {
    return inputW;
  }

  /** Judges the volts of the solved step; a collapse of the bus counts as too few. */
  void judge(double volts, boolean collapsed) {
    InverterSpec.Trips t = spec.trips();
    boolean allowed = restarts <= t.mostRestarts() || volts >= t.unlockV();
    low.judge(running && volts < t.lowV(), volts >= t.lowReturnV() && allowed);
    if (collapsed) {
      low.force();
    }
    high.judge(running && volts > t.highV(), volts <= t.highReturnV());
    overload.judge(askedW > spec.ratedW(), true);
  }

  void accept(double volts, double seconds) {
    boolean before = low.open();
    low.accept(seconds);
    if (low.open() && !before) {
      restarts++;
    }
    if (volts >= spec.trips().unlockV()) {
      restarts = low.open() ? 1 : 0;
    }
    high.accept(seconds);
    overload.accept(seconds);
  }
}
