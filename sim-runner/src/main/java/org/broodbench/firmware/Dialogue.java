package org.broodbench.firmware;

import java.util.Arrays;
import org.broodbench.controller.Chemistry;
import org.broodbench.controller.ProbePlace;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;

/**
 * Question and answer with the firmware, and what is known of it: its hello, its settings, the
 * heater in its last answer.
 */
final class Dialogue {
  /** Lines that are no answer and are passed over between two answers. */
  static final int CHATTER_LINES = 2000;

  /** How often a line is sent before it counts as not answered. */
  static final int TRIES = 4;

  /**
   * Ticks of a second (or of the time-out, if shorter) for which a silent firmware is watched (see
   * {@link #watchHeater}).
   */
  private static final int WATCHED_TICKS = 3;

  private static final int WATCHED_TICK_MILLIS = 1000;

  final Link link;
  final long timeoutMillis;
  final Wire wire = new Wire();
  final boolean[] reported = new boolean[CommandField.COUNT];
  final Board board;
  Settings settings;
  int runs;
  long resent;
  long chatter;
  int lastHeater;
  Boolean failedOff;
  private boolean toldOff;

  Dialogue(Link link, long timeoutMillis) throws FirmwareFault {
    this.link = link;
    this.timeoutMillis = timeoutMillis;
    Arrays.fill(reported, true);
    board = hello();
    if (board.settings() != Setting.values().length) {
      throw new FirmwareFault(
          FirmwareFault.Kind.NONSENSE,
          "it knows " + board.settings() + " settings, SPEC.md has " + Setting.values().length);
    }
    settings = board.fixed() ? readSettings() : null;
  }

  private Board hello() throws FirmwareFault {
    return Board.of(ask(Wire.line("? " + Wire.VERSION), '!', "the hello"));
  }

  private Answer ask(byte[] request, char letter, String what) throws FirmwareFault {
    return ask(request, letter, what, -1);
  }

  /**
   * Asks until the right kind of answer comes or the time is over. With a least number, an answer
   * that begins with a lower one came late to a line that had been sent twice, and is passed over.
   */
  Answer ask(byte[] request, char letter, String what, int least) throws FirmwareFault {
    int junk = 0;
    int strange = 0;
    for (int attempt = 0; attempt < TRIES; attempt++) {
      if (attempt > 0) {
        resent++;
      }
      link.sendNow(request);
      long until = link.waitedMillis() + timeoutMillis / TRIES;
      while (link.waitedMillis() < until) {
        byte[] line = link.receive(until - link.waitedMillis());
        if (line == null) {
          continue;
        }
        Answer answer = Answer.of(line, link.lineLength());
        boolean late =
            answer != null && answer.letter() == letter && least >= 0 && answer.number(0) < least;
        if (answer != null && answer.letter() == letter && !late) {
          return answer;
        }
        if (answer != null && answer.letter() == 'N') {
          String why = answer.fields().length > 1 ? answer.fields()[1] : "";
          if (!why.equals("c")) {
            throw answer.nonsense("it refused " + what);
          }
          break;
        }
        if (answer != null && answer.letter() == 'O') {
          heaterTold(answer);
        } else {
          strange += late ? 0 : 1;
        }
        if (++junk > CHATTER_LINES) {
          throw new FirmwareFault(
              FirmwareFault.Kind.NONSENSE,
              "it sent " + CHATTER_LINES + " lines that are not of the protocol");
        }
      }
    }
    if (strange > 0 || link.partial()) {
      throw new FirmwareFault(
          FirmwareFault.Kind.NONSENSE,
          "it never gave "
              + what
              + "; it sent "
              + (strange > 0 ? strange + " lines that are not of the protocol" : "half a line"));
    }
    throw new FirmwareFault(
        FirmwareFault.Kind.HANG, "no answer to " + what + " in " + timeoutMillis / 1000.0 + " s");
  }

  private Settings readSettings() throws FirmwareFault {
    Settings found = Settings.defaults(ProbePlace.BROOD_COMB, Chemistry.AGM);
    Setting[] all = Setting.values();
    for (int first = 0; first < all.length; first += Wire.VALUES_A_LINE) {
      Answer values = ask(Wire.line("G " + first), 'V', "settings from number " + first, first);
      for (int i = first; i < Math.min(first + Wire.VALUES_A_LINE, all.length); i++) {
        found = found.with(all[i], values.word(1 + i - first));
      }
    }
    if (!found.problems().isEmpty()) {
      throw new FirmwareFault(
          FirmwareFault.Kind.NONSENSE, "its own settings: " + found.problems().get(0));
    }
    return found;
  }

  /** Sends settings where they changed, and puts the firmware to power-up. */
  void begin(Settings wanted) throws FirmwareFault {
    if (!wanted.equals(settings)) {
      if (board.fixed()) {
        throw new IllegalArgumentException("the board keeps its own settings");
      }
      for (int i = 0; i < Setting.values().length; i += Wire.VALUES_A_LINE) {
        Answer taken = ask(Wire.settings(wanted, i), 'S', "settings from number " + i, i);
        if (taken.number(0) != i) {
          throw taken.nonsense("settings from number " + i + " were sent");
        }
      }
      settings = wanted;
    }
    runs++;
    Answer begun = ask(Wire.line("B " + runs), 'B', "the order to begin", runs);
    if (begun.number(1) >= 0) {
      throw begun.nonsense("it refuses the setting " + begun.number(1));
    }
    String digest = String.format(java.util.Locale.ROOT, "%08x", Wire.digest(wanted));
    if (begun.fields().length < 3 || !begun.fields()[2].equals(digest)) {
      throw begun.nonsense("the settings' digest is " + digest);
    }
    lastHeater = 0;
  }

  /** After a change of a setting the firmware has to be given all of them anew. */
  void keyed(Tick tick) {
    if (tick.kind() == Tick.Kind.SETTING) {
      settings = null;
    }
  }

  /** The heater output tells of itself. */
  void heaterTold(Answer answer) throws FirmwareFault {
    lastHeater = answer.word(0);
    toldOff = lastHeater == 0;
  }

  /**
   * Heat has to fail off: a silent firmware is watched for three ticks of a second for a line that
   * tells that the heater output is open, or that it began anew.
   */
  void watchHeater() {
    toldOff = false;
    long until = link.waitedMillis() + WATCHED_TICKS * Math.min(timeoutMillis, WATCHED_TICK_MILLIS);
    try {
      for (int lines = 0; lines < CHATTER_LINES && link.waitedMillis() < until && !toldOff; ) {
        byte[] line = link.receive(until - link.waitedMillis());
        if (line == null) {
          continue;
        }
        lines++;
        Answer answer = Answer.of(line, link.lineLength());
        if (answer != null && answer.letter() == 'O') {
          heaterTold(answer);
        } else if (answer != null && answer.letter() == '!') {
          toldOff = true;
        }
      }
    } catch (FirmwareFault end) {
      // silent and then gone: nothing more will be told
      failedOff = lastHeater == 0;
      return;
    }
    failedOff = toldOff || lastHeater == 0;
  }
}
