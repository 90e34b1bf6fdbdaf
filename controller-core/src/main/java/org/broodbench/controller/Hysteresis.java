package org.broodbench.controller;

/** On at or above one threshold, off at or below the other. */
final class Hysteresis implements Part {
  private final int onAt;
  private final int offAt;
  private boolean on;

  Hysteresis(int onAt, int offAt) {
    this.onAt = onAt;
    this.offAt = offAt;
  }

  /** Off while the value is not known. */
  boolean step(boolean known, int value) {
    if (!known || value <= offAt) {
      on = false;
    } else if (value >= onAt) {
      on = true;
    }
    return on;
  }

  @Override
  public void reset() {
    on = false;
  }

  @Override
  public void save(Words out) {
    out.put(on);
  }

  @Override
  public void restore(Words in) {
    on = in.takeFlag();
  }
}
