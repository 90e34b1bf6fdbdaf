package org.broodbench.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;

/**
 * Lets a study end in order when the keeper presses Ctrl-C or the system asks the program to end:
 * no further run begins, and what is there is written and told.
 */
final class Interrupt implements BooleanSupplier, AutoCloseable {
  /** Most time for that, s; own choice. */
  private static final int GRACE_S = 20;

  private final CountDownLatch written = new CountDownLatch(1);
  private final Thread hook = new Thread(this::ended, "end in order");
  private volatile boolean asked;

  Interrupt() {
    Runtime.getRuntime().addShutdownHook(hook);
  }

  private void ended() {
    asked = true;
    try {
      written.await(GRACE_S, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public boolean getAsBoolean() {
    return asked;
  }

  /** Everything is written. */
  @Override
  public void close() {
    written.countDown();
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException e) {
      asked = true; // the program is ending already, and the hook is under way
    }
  }
}
