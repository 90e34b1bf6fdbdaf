package org.broodbench.firmware;

import org.broodbench.controller.Commands;

/**
 * A vector being played, with what is still to be answered. Lines go ahead where that is allowed;
 * else one at a time, and again when no whole answer came.
 */
final class Play {
  /** What looks on. */
  interface Watcher {
    /** An entry that was the same in both. */
    void played(Tick tick, Commands expected);
  }

  private static final int SEND_BYTES = 1 << 14;

  /** Firmware that makes the bench wait so many time-outs in all is too slow for its vectors. */
  private static final int PATIENCE = 60;

  private final Dialogue dialogue;
  private final Link link;
  private final Wire wire;
  private final Wire right = new Wire();
  private final Board board;
  private final int paceMillis;
  private final Commands shown = new Commands();
  private final Script script;
  private final Reference reference;
  private final Script.Player player;
  private final Watcher watcher;
  private final long most;
  private final int ahead;
  private final Tick[] ticks;
  private final int[][] expected;
  private long sent;
  private long answered;
  private boolean over;
  private int junk;
  private int damaged;
  private boolean again;

  /**
   * @param ahead how many lines may be on their way
   * @param paceMillis pause before every step
   * @param most at most so many entries
   * @param watcher sees every entry that is the same in both; or null
   */
  Play(Dialogue dialogue, int ahead, int paceMillis, Script script, long most, Watcher watcher) {
    this.dialogue = dialogue;
    this.link = dialogue.link;
    this.wire = dialogue.wire;
    this.board = dialogue.board;
    this.ahead = ahead;
    this.paceMillis = paceMillis;
    this.script = script;
    this.most = most;
    this.watcher = watcher;
    reference = new Reference(script.settings());
    player = script.play();
    ticks = new Tick[ahead];
    expected = new int[ahead][];
  }

  Difference go() throws FirmwareFault {
    dialogue.begin(script.settings());
    while (true) {
      while (!over && sent - answered < ahead && wire.length() < SEND_BYTES) {
        queue();
      }
      if (wire.length() > 0) {
        if (paceMillis > 0) {
          pause();
        }
        if (ahead == 1) {
          link.sendNow(wire.take());
        } else {
          link.send(wire.take(), dialogue.timeoutMillis);
        }
      }
      if (sent == answered) {
        return null;
      }
      Difference difference = ahead == 1 ? askUntilAnswered() : answers();
      if (difference != null) {
        return difference;
      }
    }
  }

  private void queue() {
    Tick tick = sent < most ? player.next(reference.commands()) : null;
    if (tick == null) {
      over = true;
      return;
    }
    int place = (int) (sent % ahead);
    ticks[place] = tick;
    if (!board.ownClock()) {
      expected[place] = CommandField.values(reference.play(tick));
    }
    wire.entry((int) sent, tick);
    dialogue.keyed(tick);
    sent++;
  }

  /** Takes answers until half of what was sent ahead is left. */
  private Difference answers() throws FirmwareFault {
    long until = over ? sent : sent - ahead / 2;
    if (link.waitedMillis() > PATIENCE * dialogue.timeoutMillis) {
      throw new FirmwareFault(
          FirmwareFault.Kind.HANG,
          "it is too slow: waited for it "
              + link.waitedMillis() / 1000
              + " s in all; try fewer --ticks");
    }
    do {
      byte[] line = link.receive(dialogue.timeoutMillis);
      if (line == null) {
        throw silence();
      }
      Difference difference = answer(line, link.lineLength());
      if (difference != null) {
        return difference;
      }
    } while (answered < until);
    return null;
  }

  /** One line at a time: sent again when nothing whole came back. */
  private Difference askUntilAnswered() throws FirmwareFault {
    long number = answered;
    for (int attempt = 0; attempt < Dialogue.TRIES; attempt++) {
      if (attempt > 0) {
        dialogue.resent++;
        wire.entry((int) number, ticks[0]);
        link.sendNow(wire.take());
      }
      long until = link.waitedMillis() + Math.max(1, dialogue.timeoutMillis / Dialogue.TRIES);
      while (link.waitedMillis() < until) {
        byte[] line = link.receive(until - link.waitedMillis());
        if (line == null) {
          continue;
        }
        Difference difference = answer(line, link.lineLength());
        if (difference != null || answered > number) {
          return difference;
        }
        if (again) {
          again = false;
          break;
        }
      }
    }
    throw silence();
  }

  private Difference answer(byte[] line, int length) throws FirmwareFault {
    int place = (int) (answered % ahead);
    Tick tick = ticks[place];
    if (!board.ownClock()) {
      right.expected((int) answered, tick, expected[place]);
      if (right.equalsLine(line, length)) {
        same(tick, expected[place]);
        return null;
      }
    }
    Answer answer = Answer.of(line, length);
    if (answer == null) {
      dialogue.chatter++;
      damaged++;
      return passOver();
    }
    return switch (answer.letter()) {
      case 'O' -> {
        dialogue.heaterTold(answer);
        yield passOver();
      }
      case '!' ->
          throw new FirmwareFault(
              FirmwareFault.Kind.CRASH, "it began anew by itself after entry " + (answered - 1));
      case 'N' -> refused(answer);
      case 'B' -> begunAgain(answer);
      case 'C', 'K', 'L', 'T' -> compare(answer, tick, place);
      default -> throw answer.nonsense("no such answer was asked for");
    };
  }

  /** A line that is no answer; there may be some of them, but not without end. */
  private Difference passOver() throws FirmwareFault {
    if (++junk > Dialogue.CHATTER_LINES) {
      throw new FirmwareFault(
          FirmwareFault.Kind.NONSENSE,
          "it sent " + Dialogue.CHATTER_LINES + " lines that are no answer, or damaged");
    }
    return null;
  }

  /** The second answer to an order to begin that was sent twice. */
  private Difference begunAgain(Answer answer) throws FirmwareFault {
    if (answered > 0 || answer.number(0) != dialogue.runs) {
      throw answer.nonsense("no such answer was asked for");
    }
    return null;
  }

  private Difference refused(Answer answer) throws FirmwareFault {
    String why = answer.fields().length > 1 ? answer.fields()[1] : "";
    boolean damaged = why.equals("c") || why.equals("s");
    if (damaged && ahead == 1) {
      again = true;
      return null;
    }
    throw answer.nonsense(
        switch (why) {
          case "c" -> "it found a checksum wrong that is right";
          case "u" -> "it does not do restarts or new settings";
          default -> "it refused entry " + answered;
        });
  }

  private Difference compare(Answer answer, Tick tick, int place) throws FirmwareFault {
    long number = answer.number(0);
    if (ahead == 1 && number < answered) {
      return passOver(); // the second answer to a line that was sent twice
    }
    if (number != answered) {
      throw answer.nonsense("it answers entry " + number + " while " + answered + " was due");
    }
    if (answer.letter() != Wire.letter(tick)) {
      throw answer.nonsense("it answers as to another kind of entry");
    }
    if (!tick.isStep()) {
      if (board.ownClock()) {
        expected[place] = CommandField.values(reference.play(tick));
      }
      same(tick, expected[place]);
      return null;
    }
    if (answer.fields().length != 2 + CommandField.COUNT) {
      throw answer.nonsense("an answer has " + (2 + CommandField.COUNT) + " fields");
    }
    Tick played = tick;
    if (board.ownClock()) {
      played = tick.at((int) answer.number(1));
      expected[place] = CommandField.values(reference.play(played));
    } else if (answer.number(1) != Integer.toUnsignedLong(tick.nowMillis())) {
      throw answer.nonsense("it stepped at another time than it was told");
    }
    int[] got = expected[place].clone();
    boolean equal = true;
    for (CommandField field : CommandField.values()) {
      int i = field.ordinal();
      if (answer.fields()[2 + i].equals("-")) {
        if (field.output()) {
          throw answer.nonsense("the output " + field.key() + " is not reported");
        }
        dialogue.reported[i] = false;
        continue;
      }
      got[i] = answer.word(2 + i);
      equal &= got[i] == expected[place][i];
    }
    dialogue.lastHeater = got[CommandField.HEATER.ordinal()];
    if (equal) {
      same(played, expected[place]);
      return null;
    }
    long entry = answered;
    answered++;
    return new Difference(entry, played, expected[place].clone(), got, dialogue.reported.clone());
  }

  private void same(Tick tick, int[] commands) {
    junk = 0;
    damaged = 0;
    answered++;
    if (tick.isStep()) {
      dialogue.lastHeater = commands[CommandField.HEATER.ordinal()];
    }
    if (watcher != null) {
      watcher.played(tick, fill(commands));
    }
  }

  private FirmwareFault silence() {
    boolean half = link.partial();
    boolean talked = damaged > 0;
    if (ahead == 1) {
      dialogue.watchHeater();
    }
    if (half || talked) {
      return new FirmwareFault(
          FirmwareFault.Kind.NONSENSE,
          "no whole answer to entry "
              + answered
              + ": "
              + (half
                  ? "half a line"
                  : damaged + " lines that are damaged or not of the protocol"));
    }
    return new FirmwareFault(
        FirmwareFault.Kind.HANG,
        "no answer to entry " + answered + " in " + dialogue.timeoutMillis / 1000.0 + " s");
  }

  long answered() {
    return answered;
  }

  /** Passes over the answers that are still to come after a difference. */
  void drain() {
    try {
      for (long left = sent - answered; left > 0; ) {
        byte[] line = link.receive(dialogue.timeoutMillis);
        if (line == null) {
          return;
        }
        Answer answer = Answer.of(line, link.lineLength());
        if (answer != null && "CKLTN".indexOf(answer.letter()) >= 0) {
          left--;
        }
      }
    } catch (FirmwareFault gone) {
      // the difference that was found first is what counts
      return;
    }
  }

  private Commands fill(int[] values) {
    for (CommandField field : CommandField.values()) {
      field.set(shown, values[field.ordinal()]);
    }
    return shown;
  }

  private void pause() {
    try {
      Thread.sleep(paceMillis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
