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

  /** One row a probe, one column an other probe. */
  private final int[] markCentiC;

  // One bit a probe.
  private int otherMoved;
  private int stuck;

  /** Trusted values of the last step; no mark for what was not trusted. */
  private final int[] nowCentiC;

  /** Probes whose row of marks was held against these values: it need not be before one changes. */
  private int compared;

  /** Watches the fitted temperature probes. */
  StuckWatch(SampleJudge[] judges, int stuckMillis, int otherCentiK) {
    int probes = judges.length;
    this.judges = judges;
    this.stuckMillis = stuckMillis;
    this.otherCentiK = otherCentiK;
    this.lastCentiC = new int[probes];
    this.unchangedMillis = new int[probes];
    this.markCentiC = new int[probes * probes];
    this.nowCentiC = new int[probes];
  }

  /** Call after the judges; takes trust away from every stuck probe. */
  void step(int tripMillis) {
    look();
    for (int i = 0; i < judges.length; i++) {
      if (judges[i].good()) {
        step(i, judges[i].value(), tripMillis);
      }
    }
    if (stuck != 0) {
      for (int i = 0; i < judges.length; i++) {
        if ((stuck >> i & 1) != 0) {
          judges[i].distrust();
        }
      }
    }
  }

  private void look() {
    boolean changed = false;
    for (int i = 0; i < judges.length; i++) {
      int now = judges[i].trusted() ? judges[i].value() : NO_MARK;
      changed |= now != nowCentiC[i];
      nowCentiC[i] = now;
    }
    compared = changed ? 0 : compared;
  }

  private void step(int i, int centiC, int tripMillis) {
    int bit = 1 << i;
    if (centiC != lastCentiC[i]) {
      lastCentiC[i] = centiC;
      unchangedMillis[i] = 0;
      otherMoved &= ~bit;
      stuck &= ~bit;
      mark(i);
    } else {
      unchangedMillis[i] = Span.up(unchangedMillis[i], tripMillis, stuckMillis);
      if (((otherMoved | compared) & bit) == 0 && moved(i)) {
        otherMoved |= bit;
      }
      if ((otherMoved & bit) != 0 && unchangedMillis[i] >= stuckMillis) {
        stuck |= bit;
      } else {
        stuck &= ~bit;
      }
    }
    compared |= bit;
  }

  private void mark(int i) {
    int row = i * nowCentiC.length;
    for (int j = 0; j < nowCentiC.length; j++) {
      markCentiC[row + j] = nowCentiC[j];
    }
  }

  private boolean moved(int i) {
    int row = i * nowCentiC.length;
    boolean any = false;
    for (int j = 0; j < nowCentiC.length; j++) {
      int now = nowCentiC[j];
      if (j == i || now == NO_MARK) {
        continue;
      }
      if (markCentiC[row + j] == NO_MARK) {
        markCentiC[row + j] = now;
      }
      int change = now - markCentiC[row + j];
      any = any || change >= otherCentiK || change <= -otherCentiK;
    }
    return any;
  }

  /** Whether any watched probe is stuck. */
  boolean any() {
    return stuck != 0;
  }

  @Override
  public void reset() {
    for (int i = 0; i < judges.length; i++) {
      lastCentiC[i] = NO_MARK;
      unchangedMillis[i] = 0;
      nowCentiC[i] = NO_MARK;
    }
    otherMoved = 0;
    stuck = 0;
    compared = 0;
    for (int k = 0; k < markCentiC.length; k++) {
      markCentiC[k] = NO_MARK;
    }
  }

  @Override
  public void save(Words out) {
    for (int i = 0; i < judges.length; i++) {
      out.put(lastCentiC[i]);
      out.put(unchangedMillis[i]);
      out.put((otherMoved >> i & 1) != 0);
      out.put((stuck >> i & 1) != 0);
    }
    for (int k = 0; k < markCentiC.length; k++) {
      out.put(markCentiC[k]);
    }
  }

  @Override
  public void restore(Words in) {
    reset();
    for (int i = 0; i < judges.length; i++) {
      lastCentiC[i] = takeMark(in);
      unchangedMillis[i] = in.takeMillis();
      otherMoved |= in.takeFlag() ? 1 << i : 0;
      stuck |= in.takeFlag() ? 1 << i : 0;
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
