package org.broodbench.firmware;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Firmware behind a pair of pseudo terminals, as behind a serial line. */
class SerialLinkTest {
  /** Passes bytes on in both directions and swallows one now and then. */
  private static final String LOSSY =
      """
      #include <poll.h>
      #include <unistd.h>
      static long passed;
      static void pass(int from, int to) {
        char b[64]; char kept[64]; long n = read(from, b, sizeof b), k = 0;
        if (n <= 0) _exit(0);
        for (long i = 0; i < n; i++) if (++passed % 2503) kept[k++] = b[i];
        if (write(to, kept, k) < 0) _exit(0);
      }
      int main(int c, char **v) {
        int in[2], out[2];
        if (pipe(in) || pipe(out) || c < 2) return 1;
        if (!fork()) {
          dup2(in[0], 0); dup2(out[1], 1); close(in[1]); close(out[0]);
          execl(v[1], v[1], (char *)0);
        }
        close(in[0]); close(out[1]);
        struct pollfd p[2] = {{0, POLLIN, 0}, {out[0], POLLIN, 0}};
        for (;;) {
          poll(p, 2, -1);
          if (p[0].revents) pass(0, in[1]);
          if (p[1].revents) pass(out[0], 1);
        }
      }
      """;

  @TempDir Path folder;
  private Process socat;

  @AfterEach
  void end() throws InterruptedException {
    if (socat != null) {
      socat.descendants().forEach(ProcessHandle::destroy);
      socat.destroy();
      socat.waitFor(5, TimeUnit.SECONDS);
    }
  }

  /** A pseudo terminal with this command behind it. */
  private String port(String command) throws IOException, InterruptedException {
    Firmwares.need("socat");
    Path link = folder.resolve("port");
    socat =
        new ProcessBuilder("socat", "PTY,link=" + link + ",raw,echo=0", "EXEC:" + command)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    for (int i = 0; i < 100 && !Files.exists(link); i++) {
      Thread.sleep(50);
    }
    assertTrue(Files.exists(link), "socat made no terminal");
    return link.toRealPath().toString();
  }

  private static ConformReport check(String port, long timeoutMillis, long ticks)
      throws FirmwareFault {
    Transport.Opener opener = SerialTransport.of(port, 115_200);
    try (Session session = Session.open(opener, timeoutMillis, 0)) {
      Conformance conformance = new Conformance(session, opener, port);
      conformance.play(Suites.shipped(ticks));
      return conformance.report();
    }
  }

  @Test
  void aBoardOnASerialLineIsChecked() throws Exception {
    ConformReport report = check(port(Firmwares.reference(folder).toString()), 2000, 2000);
    assertTrue(report.equal(), report.faultText());
    assertTrue(report.steps() >= 2000, "steps " + report.steps());
    assertEquals(0, report.resent());
  }

  @Test
  void aLineThatLosesBytesIsBornWithResending() throws Exception {
    Path lossy = Firmwares.compiled(folder, LOSSY);
    String command = lossy + " " + Firmwares.reference(folder);
    ConformReport report = check(port(command), 400, 300);
    assertTrue(report.equal(), report.faultText());
    assertTrue(report.resent() > 10, "sent again " + report.resent());
  }

  @Test
  void aBugIsFoundAndMadeShortOnASerialLine() throws Exception {
    Path wrong =
        Firmwares.changed(
            folder,
            "bb_basics.c",
            "r->min_off_remaining_millis == 0 && starts_left",
            "r->min_off_remaining_millis <= 1000 && starts_left");
    ConformReport report = check(port(wrong.toString()), 2000, 20_000);
    assertEquals("R3", report.finding().rule());
    assertTrue(report.finding().shortest().ticks().size() < 30, "not made short");
  }

  @Test
  void aBoardThatFallsSilentIsAHang() throws Exception {
    Path silent =
        Firmwares.changed(
            folder,
            "bb_link.c",
            "      l->last_millis = l->now_millis;",
            "      l->last_millis = l->now_millis; if (l->next == 20) { for (volatile int i = 0;; i++) { } }");
    ConformReport report = check(port(silent.toString()), 400, 1000);
    assertEquals(FirmwareFault.Kind.HANG, report.fault());
    assertEquals(20, report.steps());
  }

  @Test
  void whereNoPortIsNothingIsStarted() {
    FirmwareFault fault =
        assertThrows(FirmwareFault.class, () -> check(folder + "/no-such-port", 400, 10));
    assertEquals(FirmwareFault.Kind.CANNOT_START, fault.kind());
  }
}
