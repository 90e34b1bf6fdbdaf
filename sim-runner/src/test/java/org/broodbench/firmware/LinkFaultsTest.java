package org.broodbench.firmware;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Firmware that does everything but what the protocol asks: each time a clear verdict, in time. */
class LinkFaultsTest {
  /** What is replaced to make the C form misbehave in the middle of a run. */
  private static final String STEP = "      l->last_millis = l->now_millis;";

  private static final long TIMEOUT_MILLIS = 400;

  @TempDir Path folder;

  private static ConformReport check(String command, long ticks) {
    // the time-out, three ticks of a second of watching, and room for a busy machine
    return assertTimeoutPreemptively(
        Duration.ofSeconds(20),
        () -> {
          Transport.Opener opener = ProcessTransport.of(command);
          try (Session session = Session.open(opener, TIMEOUT_MILLIS, 0)) {
            Conformance conformance = new Conformance(session, opener, command);
            conformance.play(Suites.shipped(ticks));
            return conformance.report();
          } catch (FirmwareFault fault) {
            return Conformance.failedHello(command, fault);
          }
        });
  }

  private ConformReport misbehaving(String misdeed) {
    Path program = Firmwares.changed(folder, "bb_link.c", STEP, STEP + "\n" + misdeed);
    return check(program.toString(), 20_000);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\0',
      textBlock =
          """
          sleep 60                              | HANG
          cat                                   | NONSENSE
          yes                                   | NONSENSE
          cat /dev/zero                         | NONSENSE
          cat /dev/urandom                      | NONSENSE
          true                                  | CRASH
          sh -c 'kill -9 $$'                    | CRASH
          sh -c 'printf half; sleep 60'         | NONSENSE
          sh -c 'sleep 60 & cat > /dev/null'    | HANG
          sh -c 'exec 1>&-; sleep 60'           | CRASH
          sh -c 'exec /no/such/program'         | CANNOT_START
          /no/such/program                      | CANNOT_START
          """)
  void whoeverIsNoFirmwareIsToldSo(String command, FirmwareFault.Kind kind) {
    Firmwares.need("sh");
    ConformReport report = check(command, 100);
    assertEquals(kind, report.fault(), report.faultText());
    assertFalse(report.equal());
  }

  @Test
  void whatAProgramStartedIsEndedWithIt() throws InterruptedException {
    Firmwares.need("sh");
    check("sh -c 'sleep 61.25 & cat > /dev/null'", 100);
    for (int i = 0; i < 50 && sleeping(); i++) {
      Thread.sleep(100);
    }
    assertFalse(sleeping(), "a child was left behind");
  }

  private static boolean sleeping() {
    return ProcessHandle.allProcesses()
        .anyMatch(p -> p.info().commandLine().orElse("").contains("sleep 61.25"));
  }

  @Test
  void hangingInARunIsAHang() {
    ConformReport report =
        misbehaving("if (l->next == 300) { for (volatile int i = 0;; i++) { } }");
    assertEquals(FirmwareFault.Kind.HANG, report.fault(), report.faultText());
    assertTrue(report.faultText().contains("entry 300"), report.faultText());
    assertEquals(300, report.steps());
  }

  @Test
  void crashingInARunIsACrash() {
    ConformReport report = misbehaving("if (l->next == 300) { *(volatile int *)0 = 1; }");
    assertEquals(FirmwareFault.Kind.CRASH, report.fault(), report.faultText());
    assertTrue(report.faultText().contains("signal 11"), report.faultText());
  }

  @Test
  void aHelloInARunIsARestart() {
    ConformReport report = misbehaving("if (l->next == 300) { hello(l); }");
    assertEquals(FirmwareFault.Kind.CRASH, report.fault(), report.faultText());
    assertTrue(report.faultText().contains("by itself"), report.faultText());
  }

  @Test
  void megabytesInARunAreNonsense() {
    ConformReport report =
        misbehaving(
            "if (l->next == 300) { for (long i = 0; i < 20000000; i++) l->board->put('x'); }");
    assertEquals(FirmwareFault.Kind.NONSENSE, report.fault(), report.faultText());
  }

  @Test
  void halfAnAnswerIsNonsense() {
    ConformReport report =
        misbehaving(
            "if (l->next == 300) { for (int i = 0; i < 40; i++) l->board->put('C');"
                + " l->next++; l->phase = SKIP; return; }");
    assertEquals(FirmwareFault.Kind.NONSENSE, report.fault(), report.faultText());
  }

  @Test
  void anAnswerToAnotherEntryIsNonsense() {
    ConformReport report = misbehaving("if (l->next == 300) { l->next += 2; }");
    assertEquals(FirmwareFault.Kind.NONSENSE, report.fault(), report.faultText());
    assertTrue(report.faultText().contains("while 300 was due"), report.faultText());
  }

  @Test
  void chatterBetweenAnswersIsPassedOver() {
    ConformReport report =
        misbehaving(
            "if (l->next % 100 == 0) { for (int i = 0; i < 9; i++) l->board->put(\"debug 42\\n\"[i]); }");
    assertNull(report.fault(), report.faultText());
    assertTrue(report.equal());
    assertTrue(report.chatter() > 50, "passed over " + report.chatter());
  }

  @Test
  void lateAnswersWithinTheTimeAreNoFault() {
    Firmwares.need("cc");
    Path program =
        Firmwares.changed(
            folder,
            "host_main.c",
            "    send_answers();\n  }",
            "    static int n; if (++n % 60 == 0) { struct timespec t = {0, 100000000};"
                + " nanosleep(&t, 0); }\n    send_answers();\n  }",
            "#include <stdio.h>",
            "#define _POSIX_C_SOURCE 199309L\n#include <time.h>\n#include <stdio.h>");
    ConformReport report = check(program.toString(), 2000);
    assertTrue(report.equal(), report.faultText());
  }

  /** Silent with the heater on: judged by what is seen of the output within three ticks. */
  @Test
  void heatHasToFailOff() {
    String silent =
        "static int on; on = l->out.heater ? on + 1 : 0; if (on > 3) { %s for (volatile int i = 0;; i++) { } }";
    ConformReport on = misbehaving(String.format(silent, ""));
    assertEquals(FirmwareFault.Kind.HANG, on.fault());
    assertEquals(false, on.heaterFailedOff(), "nothing told that it opened");
    ConformReport told =
        check(
            Firmwares.changed(
                    folder,
                    "bb_link.c",
                    STEP,
                    STEP + "\n" + String.format(silent, "bb_link_tell_heater(l, 0); flush();"),
                    "enum { START,",
                    "void flush(void);\nenum { START,",
                    "host_main.c",
                    "int main(void) {",
                    "void flush(void) { send_answers(); }\nint main(void) {")
                .toString(),
            20_000);
    assertEquals(FirmwareFault.Kind.HANG, told.fault());
    assertEquals(true, told.heaterFailedOff(), "a supervisor told that it opened");
    ConformReport off =
        misbehaving("if (!l->out.heater && l->next > 300) { for (volatile int i = 0;; i++) { } }");
    assertEquals(true, off.heaterFailedOff(), "it was off");
  }

  /** Settings that the firmware keeps are asked for and used. */
  @Test
  void aBoardWithItsOwnSettingsIsCheckedWithThem() throws FirmwareFault {
    Firmwares.need("cc");
    Path program =
        Firmwares.changed(
            folder,
            "host_main.c",
            "settings, 0, 2000, put_char}",
            "settings, 1, 2000, put_char}",
            "  bb_link_init(&link, &board);",
            "  settings[BB_RELAY_MIN_OFF_MILLIS] = 240000;\n  bb_link_init(&link, &board);");
    Transport.Opener opener = ProcessTransport.of(program.toString());
    try (Session session = Session.open(opener, 2000, 0)) {
      assertTrue(session.board().fixed());
      assertEquals(
          240_000, session.settings().get(org.broodbench.controller.Setting.RELAY_MIN_OFF_MILLIS));
      Conformance conformance = new Conformance(session, opener, "fixed");
      conformance.play(Suites.of("own", session.settings(), 20_000, false));
      assertTrue(conformance.report().equal());
    }
  }

  /** A board that steps by its own counter and does not report all. */
  @Test
  void aBoardWithItsOwnClockIsFollowed() throws FirmwareFault {
    Firmwares.need("cc");
    Path program =
        Firmwares.changed(
            folder,
            "bb_link.c",
            "put_text(l, \"host\");",
            "put_text(l, \"own\");",
            "      bb_controller_step(&l->controller, l->now_millis, &l->in, &l->out);",
            "      static uint32_t own;\n      l->now_millis = own += 1003;\n"
                + "      bb_controller_step(&l->controller, l->now_millis, &l->in, &l->out);",
            "  put_signed(l, c->leave_delay_millis);",
            "  put_text(l, \"-\");");
    Transport.Opener opener = ProcessTransport.of(program.toString());
    try (Session session = Session.open(opener, 2000, 0)) {
      Conformance conformance = new Conformance(session, opener, "own clock");
      conformance.play(Suites.shipped(5000));
      ConformReport report = conformance.report();
      assertTrue(report.equal(), report.faultText());
      assertEquals(java.util.List.of(CommandField.LEAVE_DELAY_MILLIS), report.notReported());
      assertTrue(report.exercised().contains("R3"), report.exercised().toString());
    }
  }
}
