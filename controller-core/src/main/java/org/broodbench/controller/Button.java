package org.broodbench.controller;

/**
 * The button (rules K1 to K6). A press is judged when it ends: the time from its first to its last
 * sample is what is surely known of it at any tick.
 */
final class Button implements Part {
  private final int longMillis;
  private final int stuckMillis;
  private final int serviceMillis;

  private boolean seenUp;
  private boolean down;
  private int downMillis;
  private int serviceRemainingMillis;

  // Of this step only.
  private boolean shortPress;
  private boolean longPress;

  Button(Settings settings) {
    longMillis = settings.get(Setting.BUTTON_LONG_MILLIS);
    stuckMillis = settings.get(Setting.BUTTON_STUCK_MILLIS);
    serviceMillis = settings.get(Setting.SERVICE_HOLD_MILLIS);
  }

  void step(int tripMillis, int releaseMillis, boolean pressed) {
    serviceRemainingMillis = Span.down(serviceRemainingMillis, releaseMillis);
    shortPress = false;
    longPress = false;
    if (pressed) {
      downMillis = down ? Span.up(downMillis, tripMillis, stuckMillis) : 0;
      down = true;
      return;
    }
    if (down && seenUp) {
      shortPress = downMillis < longMillis;
      longPress = downMillis >= longMillis && downMillis < stuckMillis;
    }
    seenUp = true;
    down = false;
    downMillis = 0;
    if (shortPress) {
      serviceRemainingMillis = serviceRemainingMillis > 0 ? 0 : serviceMillis;
    }
  }

  /** A short press ended in this step. */
  boolean shortPress() {
    return shortPress;
  }

  /** A long press ended in this step. */
  boolean longPress() {
    return longPress;
  }

  /** Held down longer than anyone presses: wet or stuck. */
  boolean stuck() {
    return down && downMillis >= stuckMillis;
  }

  int serviceRemainingMillis() {
    return serviceRemainingMillis;
  }

  @Override
  public void reset() {
    seenUp = false;
    down = false;
    downMillis = 0;
    serviceRemainingMillis = 0;
    shortPress = false;
    longPress = false;
  }

  @Override
  public void save(Words out) {
    out.put(seenUp);
    out.put(down);
    out.put(downMillis);
    out.put(serviceRemainingMillis);
  }

  @Override
  public void restore(Words in) {
    seenUp = in.takeFlag();
    down = in.takeFlag();
    downMillis = in.takeMillis();
    serviceRemainingMillis = in.takeMillis();
  }
}
