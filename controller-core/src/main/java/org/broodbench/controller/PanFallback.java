package org.broodbench.controller;

/**
 * Holds the pan at a temperature that cannot cook brood while no brood probe is trusted (rules W5
 * to W7).
 */
final class PanFallback implements Part {
  private final boolean allowed;
  private final int differentialCentiK;
  private boolean active;
  private boolean calling;

  PanFallback(boolean allowed, int differentialCentiK) {
    this.allowed = allowed;
    this.differentialCentiK = differentialCentiK;
  }

  /**
   * @param panTrusted whether the pan is believed and the heater's effect on it is not in doubt
   */
  boolean step(boolean broodKnown, boolean panTrusted, int panCentiC, int targetCentiC) {
    active = allowed && !broodKnown && panTrusted;
    if (!active || panCentiC >= targetCentiC) {
      calling = false;
    } else if (panCentiC <= targetCentiC - differentialCentiK) {
      calling = true;
    }
    return calling;
  }

  boolean active() {
    return active;
  }

  @Override
  public void reset() {
    active = false;
    calling = false;
  }

  @Override
  public void save(Words out) {
    out.put(calling);
  }

  @Override
  public void restore(Words in) {
    calling = in.takeFlag();
  }
}
