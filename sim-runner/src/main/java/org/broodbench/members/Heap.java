package org.broodbench.members;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.BooleanSupplier;

/** Numbers of pieces that wait to be done, and how many are not done. */
final class Heap {
  private final Deque<Integer> waiting = new ArrayDeque<>();
  private final BooleanSupplier stop;
  private int open;

  Heap(int pieces, BooleanSupplier stop) {
    for (int i = 0; i < pieces; i++) {
      waiting.add(i);
    }
    open = pieces;
    this.stop = stop;
  }

  /**
   * The next piece; −1 when all are done or the study was stopped. Waits while others have the last
   * ones under way: they may come back.
   */
  synchronized int next() throws InterruptedException {
    while (waiting.isEmpty() && open > 0 && !stop.getAsBoolean()) {
      wait(1000); // looks at the stop now and then
    }
    return open == 0 || stop.getAsBoolean() ? -1 : waiting.poll();
  }

  /** A piece is done. */
  synchronized void done() {
    open--;
    notifyAll();
  }

  /** A piece was not done after all. */
  synchronized void putBack(int piece) {
    waiting.addFirst(piece);
    notifyAll();
  }
}
