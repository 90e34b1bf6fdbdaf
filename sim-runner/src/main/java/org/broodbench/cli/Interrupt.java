package org.broodbench.cli;

import java.io.IOException;
import java.io.OutputStream;
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

  /** Environment variable: 1 to end in order when standard input ends. */
  static final String ENDS_WITH_INPUT = "BROODBENCH_ENDS_WITH_INPUT";

  /** Exit code of a study that was ended, as after Ctrl-C. */
  private static final int ENDED = 130;

  private final CountDownLatch written = new CountDownLatch(1);
  private final Thread hook = new Thread(this::ended, "end in order");
  private volatile boolean asked;

  Interrupt() {
    Runtime.getRuntime().addShutdownHook(hook);
    if ("1".equals(System.getenv(ENDS_WITH_INPUT))) {
      Thread watch = new Thread(Interrupt::untilInputEnds, "end with who started this");
      watch.setDaemon(true);
      watch.start();
    }
  }

  /** Whoever started this may be killed without a word; then nobody waits for the results. */
  private static void untilInputEnds() {
    try {
      System.in.transferTo(OutputStream.nullOutputStream());
    } catch (IOException e) {
      // an input that cannot be read has ended
    }
    System.exit(ENDED);
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
