package org.broodbench.controller;

/**
 * A condition that has to hold without a break for a stated time. The step in which the condition
 * appears counts nothing; each later step counts the time since the step before it (rule T6).
 */
final class Delay implements Part {
  private final int capMillis;
  private boolean running;
  private int elapsedMillis;

  /**
   * @param capMillis where the elapsed time saturates: the longest delay asked of this part
   */
  Delay(int capMillis) {
    this.capMillis = capMillis;
  }

  /** Counts {@code dtMillis} and answers whether the condition has held for {@code delayMillis}. */
  boolean step(boolean condition, int dtMillis, int delayMillis) {
    if (!condition) {
      reset();
      return false;
    }
    elapsedMillis = running ? Span.up(elapsedMillis, dtMillis, capMillis) : 0;
    running = true;
    return elapsedMillis >= delayMillis;
  }

  @Override
  public void reset() {
    running = false;
    elapsedMillis = 0;
  }

  @Override
  public void save(Words out) {
    out.put(running);
    out.put(elapsedMillis);
  }

  @Override
  public void restore(Words in) {
    running = in.takeFlag();
    elapsedMillis = in.takeMillis();
  }
}
