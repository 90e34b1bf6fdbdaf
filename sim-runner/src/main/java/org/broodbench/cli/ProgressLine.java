package org.broodbench.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.broodbench.study.Progress;

/**
 * One line on standard error that tells how far a study has come and how long it still takes; only
 * on a terminal, or where it is asked for. The only place that looks at a clock: what it shows is
 * no result.
 */
final class ProgressLine implements Progress, AutoCloseable {
  /** Environment variable that, at 1, asks for the line where there is no terminal. */
  static final String ALWAYS = "BROODBENCH_PROGRESS";

  private static final long BETWEEN_NANOS = 200_000_000;

  private final Console console;
  private final boolean shown;
  private final long beganNanos = System.nanoTime();
  private long shownNanos;
  private int first = -1;
  private boolean written;

  ProgressLine(Console console) {
    this.console = console;
    shown = wanted();
  }

  /** Whether somebody sees standard error, or asks for the line all the same. */
  static boolean wanted() {
    return terminal() || "1".equals(System.getenv(ALWAYS));
  }

  /** Whether standard error is a terminal. */
  private static boolean terminal() {
    try {
      String target = Files.readSymbolicLink(Path.of("/proc/self/fd/2")).toString();
      return target.startsWith("/dev/pts/") || target.startsWith("/dev/tty");
    } catch (IOException | UnsupportedOperationException e) {
      return System.console() != null;
    }
  }

  @Override
  public void at(int done, int of) {
    first = first < 0 ? done : first;
    long now = System.nanoTime();
    if (!shown || (done < of && now - shownNanos < BETWEEN_NANOS)) {
      return;
    }
    shownNanos = now;
    written = true;
    console.err().print("\r" + words(done, of, first, (now - beganNanos) * 1e-9) + "   ");
    console.err().flush();
  }

  /** What the line says. */
  static String words(int done, int of, int before, double tookS) {
    String share = String.format(Locale.ROOT, "%d of %d", done, of);
    if (done <= before || done >= of) {
      return share;
    }
    double leftS = tookS / (done - before) * (of - done);
    return share
        + (leftS < 90
            ? String.format(Locale.ROOT, ", %.0f s left", leftS)
            : String.format(Locale.ROOT, ", %.0f min left", leftS / 60));
  }

  @Override
  public void close() {
    if (written) {
      console.err().println();
    }
  }
}
