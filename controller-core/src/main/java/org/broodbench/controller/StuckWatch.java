package org.broodbench.controller;

/**
 * Finds a temperature probe that shows no change at all while another one moved (rule P7). For
 * every probe it keeps where the others stood when it last changed.
 */
final class StuckWatch implements Part {
  private static final int NO_MARK = Integer.MIN_VALUE;

  private final SampleJudge[] judges;
  private final int stuckMillis;
  private final int otherCentiK;
  private final int[] lastCentiC;
  private final int[] unchangedMillis;
  private final boolean[] otherMoved;
  private final boolean[] stuck;

  /** One row a probe, one column an other probe. */
  private final int[] markCentiC;

  /** Watches the fitted temperature probes. */
  StuckWatch(SampleJudge[] judges, int stuckMillis, int otherCentiK) {
    int probes = judges.length;
    this.judges = judges;
    this.stuckMillis = stuckMillis;
    this.otherCentiK = otherCentiK;
    this.lastCentiC = new int[probes];
    this.unchangedMillis = new int[probes];
    this.otherMoved = new boolean[probes];
    this.stuck = new boolean[probes];
    this.markCentiC = new int[probes * probes];
  }

  /** Call after the judges; takes trust away from every stuck probe. */
  void step(int tripMillis) {
    for (int i = 0; i < judges.length; i++) {
      if (!judges[i].good()) {
        continue;
      }
      if (judges[i].value() != lastCentiC[i]) {
        lastCentiC[i] = judges[i].value();
        unchangedMillis[i] = 0;
        otherMoved[i] = false;
        stuck[i] = false;
        mark(i);
      } else {
        unchangedMillis[i] = Span.up(unchangedMillis[i], tripMillis, stuckMillis);
        otherMoved[i] = otherMoved[i] || moved(i);
        stuck[i] = otherMoved[i] && unchangedMillis[i] >= stuckMillis;
      }
    }
    for (int i = 0; i < judges.length; i++) {
      if (stuck[i]) {
        judges[i].distrust();
      }
    }
  }

  private void mark(int i) {
    int row = i * judges.length;
    for (int j = 0; j < judges.length; j++) {
      markCentiC[row + j] = judges[j].trusted() ? judges[j].value() : NO_MARK;
    }
  }

  private boolean moved(int i) {
    int row = i * judges.length;
    boolean any = false;
    for (int j = 0; j < judges.length; j++) {
      if (j == i || !judges[j].trusted()) {
        continue;
      }
      if (markCentiC[row + j] == NO_MARK) {
        markCentiC[row + j] = judges[j].value();
      }
      int change = judges[j].value() - markCentiC[row + j];
      any = any || change >= otherCentiK || change <= -otherCentiK;
    }
    return any;
  }

  /** Whether any watched probe is stuck. */
  boolean any() {
    boolean any = false;
    for (int i = 0; i < stuck.length; i++) {
      any = any || stuck[i];
    }
    return any;
  }

  @Override
  public void reset() {
    for (int i = 0; i < judges.length; i++) {
      lastCentiC[i] = NO_MARK;
      unchangedMillis[i] = 0;
      otherMoved[i] = false;
      stuck[i] = false;
    }
    for (int k = 0; k < markCentiC.length; k++) {
      markCentiC[k] = NO_MARK;
    }
  }

  @Override
  public void save(Words out) {
    for (int i = 0; i < judges.length; i++) {
      out.put(lastCentiC[i]);
      out.put(unchangedMillis[i]);
      out.put(otherMoved[i]);
      out.put(stuck[i]);
    }
    for (int k = 0; k < markCentiC.length; k++) {
      out.put(markCentiC[k]);
    }
  }

  @Override
  public void restore(Words in) {
    for (int i = 0; i < judges.length; i++) {
      lastCentiC[i] = takeMark(in);
      unchangedMillis[i] = in.takeMillis();
      otherMoved[i] = in.takeFlag();
      stuck[i] = in.takeFlag();
    }
    for (int k = 0; k < markCentiC.length; k++) {
      markCentiC[k] = takeMark(in);
    }
  }

  /** A mark, or a temperature small enough that differences stay inside 32 bits. */
  private static int takeMark(Words in) {
    int word = in.take(NO_MARK, 30000);
    return word < -30000 ? NO_MARK : word;
  }
}
