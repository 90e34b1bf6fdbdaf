package org.broodbench.firmware;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Setting;
import org.broodbench.controller.Settings;

/**
 * One connection to firmware: hello, settings, vectors played and compared. Lines are sent ahead
 * where the firmware allows it and the transport loses nothing; else one at a time, and again when
 * no whole answer came.
 */
public final class Session implements AutoCloseable {
  /** Lines of chatter between two answers that are passed over. */
  private static final int CHATTER_LINES = 2000;

  private static final int SEND_BYTES = 1 << 14;
  private static final int TRIES = 4;

  /**
   * Ticks of a second (or of the time-out, if shorter) for which a silent firmware is watched (see
   * {@link #heaterFailedOff}).
   */
  private static final int WATCHED_TICKS = 3;

  private static final int WATCHED_TICK_MILLIS = 1000;

  /** What looks on. */
  interface Watcher {
    /** An entry that was the same in both. */
    void played(Tick tick, Commands expected);
  }

  private final Link link;
  private final long timeoutMillis;
  private final int paceMillis;
  private final int mostAhead;
  private final Wire wire = new Wire();
  private final Wire expectedWire = new Wire();
  private final boolean[] reported = new boolean[CommandField.COUNT];
  private final Board board;

  private Settings settings;
  private int runs;
  private long resent;
  private long chatter;
  private int lastHeater;
  private boolean toldOff;
  private Boolean failedOff;

  private Session(Link link, long timeoutMillis, int paceMillis, int mostAhead)
      throws FirmwareFault {
    this.link = link;
    this.mostAhead = mostAhead;
    this.timeoutMillis = timeoutMillis;
    this.paceMillis = paceMillis;
    Arrays.fill(reported, true);
    board = hello();
    if (board.settings() != Setting.values().length) {
      throw new FirmwareFault(
          FirmwareFault.Kind.NONSENSE,
          "it knows " + board.settings() + " settings, SPEC.md has " + Setting.values().length);
    }
    settings = board.fixed() ? readSettings() : null;
  }

  /**
   * Opens a transport and says hello.
   *
   * @param timeoutMillis longest wait for one answer
   * @param paceMillis pause before every step, 0 for none: for a board that runs in real time
   * @throws FirmwareFault CANNOT_START where there is nothing to talk to
   */
  public static Session open(Transport.Opener opener, long timeoutMillis, int paceMillis)
      throws FirmwareFault {
    return open(opener, timeoutMillis, paceMillis, Integer.MAX_VALUE);
  }

  /** The same with at most so many lines ahead. */
  static Session open(Transport.Opener opener, long timeoutMillis, int paceMillis, int mostAhead)
      throws FirmwareFault {
    Transport transport;
    try {
      transport = opener.open();
    } catch (IOException e) {
      throw new FirmwareFault(FirmwareFault.Kind.CANNOT_START, String.valueOf(e.getMessage()));
    }
    Link link = new Link(transport);
    try {
      return new Session(link, timeoutMillis, paceMillis, mostAhead);
    } catch (FirmwareFault fault) {
      boolean never = fault.kind() == FirmwareFault.Kind.CRASH && link.neverBegan();
      link.close();
      throw never ? new FirmwareFault(FirmwareFault.Kind.CANNOT_START, fault.getMessage()) : fault;
    }
  }

  /** The same firmware once more, a line at a time. */
  Session again(Transport.Opener opener) throws FirmwareFault {
    return open(opener, timeoutMillis, paceMillis, 1);
  }

  /** What the firmware said of itself. */
  public Board board() {
    return board;
  }

  /** The firmware's own settings where it keeps them, else those of the last vector, or null. */
  public Settings settings() {
    return settings;
  }

  /** How many lines may be on their way. */
  int ahead() {
    boolean quick = link.reliable() && !board.ownClock() && paceMillis == 0;
    return quick ? Math.min(mostAhead, board.ahead()) : 1;
  }

  // ---- one question, one answer ----

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
  private Answer ask(byte[] request, char letter, String what, int least) throws FirmwareFault {
    int junk = 0;
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
        if (answer != null && answer.letter() == letter) {
          if (least >= 0 && answer.number(0) < least) {
            continue;
          }
          return answer;
        }
        if (answer != null && answer.letter() == 'N') {
          String why = answer.fields().length > 1 ? answer.fields()[1] : "";
          if (!why.equals("c")) {
            throw answer.nonsense("it refused " + what);
          }
          break;
        }
        boolean expectable = answer != null && answer.letter() == 'O';
        if (!expectable && ++junk > CHATTER_LINES) {
          throw new FirmwareFault(
              FirmwareFault.Kind.NONSENSE,
              "it sent " + CHATTER_LINES + " lines that are not of the protocol");
        }
      }
    }
    if (junk > 0 || link.partial()) {
      throw new FirmwareFault(
          FirmwareFault.Kind.NONSENSE,
          "it never gave "
              + what
              + "; it sent "
              + (junk > 0 ? junk + " lines that are not of the protocol" : "half a line"));
    }
    throw new FirmwareFault(
        FirmwareFault.Kind.HANG, "no answer to " + what + " in " + timeoutMillis / 1000.0 + " s");
  }

  private Settings readSettings() throws FirmwareFault {
    Settings found =
        Settings.defaults(
            org.broodbench.controller.ProbePlace.BROOD_COMB,
            org.broodbench.controller.Chemistry.AGM);
    Setting[] all = Setting.values();
    for (int first = 0; first < all.length; first += Wire.VALUES_A_LINE) {
      Answer values = ask(Wire.line("G " + first), 'V', "settings from number " + first, first);
      for (int i = first; i < Math.min(first + Wire.VALUES_A_LINE, all.length); i++) {
        found = found.with(all[i], (int) values.number(1 + i - first));
      }
    }
    if (!found.problems().isEmpty()) {
      throw new FirmwareFault(
          FirmwareFault.Kind.NONSENSE, "its own settings: " + found.problems().get(0));
    }
    return found;
  }

  /** Sends settings where they changed, and puts the firmware to power-up. */
  private void begin(Settings wanted) throws FirmwareFault {
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
    Answer begun = ask(Wire.line("B " + runs), 'B', "the order to begin");
    while (begun.number(0) != runs) {
      begun = ask(Wire.line("B " + runs), 'B', "the order to begin");
    }
    if (begun.number(1) >= 0) {
      throw begun.nonsense("it refuses the setting " + begun.number(1));
    }
    String digest = String.format("%08x", Wire.digest(wanted));
    if (begun.fields().length < 3 || !begun.fields()[2].equals(digest)) {
      throw begun.nonsense("the settings' digest is " + digest);
    }
    lastHeater = 0;
  }

  // ---- vectors ----

  /** A vector being played, with what is still to be answered. */
  private final class Run {
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

    Run(Script script, long most, Watcher watcher) {
      this.script = script;
      this.most = most;
      this.watcher = watcher;
      reference = new Reference(script.settings());
      player = script.play();
      ahead = ahead();
      ticks = new Tick[ahead];
      expected = new int[ahead][];
    }

    Difference go() throws FirmwareFault {
      begin(script.settings());
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
            link.send(wire.take(), timeoutMillis);
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
      keyed(tick);
      sent++;
    }

    /** Takes answers until half of what was sent ahead is left. */
    private Difference answers() throws FirmwareFault {
      long until = over ? sent : sent - ahead / 2;
      do {
        byte[] line = link.receive(timeoutMillis);
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
      for (int attempt = 0; attempt < TRIES; attempt++) {
        if (attempt > 0) {
          resent++;
          wire.entry((int) number, ticks[0]);
          link.sendNow(wire.take());
        }
        long until = link.waitedMillis() + Math.max(1, timeoutMillis / TRIES);
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

    private boolean again;

    private Difference answer(byte[] line, int length) throws FirmwareFault {
      int place = (int) (answered % ahead);
      Tick tick = ticks[place];
      if (!board.ownClock()) {
        expectedWire.expected((int) answered, tick, expected[place]);
        byte[] right = expectedWire.take();
        if (length == right.length - 1 && Arrays.equals(line, 0, length, right, 0, length)) {
          same(tick, expected[place]);
          return null;
        }
      }
      Answer answer = Answer.of(line, length);
      if (answer == null) {
        chatter++;
        if (++junk > CHATTER_LINES) {
          throw new FirmwareFault(
              FirmwareFault.Kind.NONSENSE,
              "it sent " + CHATTER_LINES + " lines that are not of the protocol, or damaged");
        }
        return null;
      }
      return switch (answer.letter()) {
        case 'O' -> heaterTold(answer);
        case '!' ->
            throw new FirmwareFault(
                FirmwareFault.Kind.CRASH, "it began anew by itself after entry " + (answered - 1));
        case 'N' -> refused(answer);
        case 'B' -> begunAgain(answer);
        case 'C', 'K', 'L', 'T' -> compare(answer, tick, place);
        default -> throw answer.nonsense("no such answer was asked for");
      };
    }

    /** The second answer to an order to begin that was sent twice. */
    private Difference begunAgain(Answer answer) throws FirmwareFault {
      if (answered > 0 || answer.number(0) != runs) {
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
        return null; // the second answer to a line that was sent twice
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
          reported[i] = false;
          continue;
        }
        got[i] = (int) answer.number(2 + i);
        equal &= got[i] == expected[place][i];
      }
      lastHeater = got[CommandField.HEATER.ordinal()];
      if (equal) {
        same(played, expected[place]);
        return null;
      }
      long entry = answered;
      answered++;
      return new Difference(entry, played, expected[place].clone(), got, reported.clone());
    }

    private void same(Tick tick, int[] commands) {
      junk = 0;
      answered++;
      if (tick.isStep()) {
        lastHeater = commands[CommandField.HEATER.ordinal()];
      }
      if (watcher != null) {
        watcher.played(tick, fill(commands));
      }
    }

    private FirmwareFault silence() {
      boolean half = link.partial();
      boolean talked = junk > 0;
      if (ahead == 1) {
        watchHeater();
      }
      if (half || talked) {
        return new FirmwareFault(
            FirmwareFault.Kind.NONSENSE,
            "no whole answer to entry "
                + answered
                + ": "
                + (half ? "half a line" : junk + " lines that are damaged or not of the protocol"));
      }
      return new FirmwareFault(
          FirmwareFault.Kind.HANG,
          "no answer to entry " + answered + " in " + timeoutMillis / 1000.0 + " s");
    }
  }

  private final Commands shown = new Commands();

  private Commands fill(int[] values) {
    for (CommandField field : CommandField.values()) {
      field.set(shown, values[field.ordinal()]);
    }
    return shown;
  }

  /** After a change of a setting the firmware has to be given all of them anew. */
  private void keyed(Tick tick) {
    if (tick.kind() == Tick.Kind.SETTING) {
      settings = null;
    }
  }

  private Difference heaterTold(Answer answer) throws FirmwareFault {
    lastHeater = (int) answer.number(0);
    toldOff = lastHeater == 0;
    return null;
  }

  private void pause() {
    try {
      Thread.sleep(paceMillis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /**
   * Heat has to fail off: a silent firmware is watched for three ticks of a second for a line that
   * tells that the heater output is open, or that it began anew.
   */
  private void watchHeater() {
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

  /** The firmware alone, entry by entry, from power-up; nothing is compared. */
  final class Conversation {
    private int number;

    private Conversation(Settings wanted) throws FirmwareFault {
      begin(wanted);
    }

    /** Tells one entry; the commands of the firmware, or null after a restart. */
    int[] tell(Tick tick) throws FirmwareFault {
      wire.entry(number, tick);
      keyed(tick);
      byte[] request = wire.take();
      Answer answer = ask(request, Wire.letter(tick), "entry " + number);
      while (answer.number(0) < number) {
        answer = ask(request, Wire.letter(tick), "entry " + number);
      }
      if (answer.number(0) != number) {
        throw answer.nonsense("it answers another entry than " + number);
      }
      number++;
      if (!tick.isStep()) {
        return null;
      }
      if (answer.fields().length != 2 + CommandField.COUNT) {
        throw answer.nonsense("an answer has " + (2 + CommandField.COUNT) + " fields");
      }
      int[] got = new int[CommandField.COUNT];
      for (CommandField field : CommandField.values()) {
        int i = field.ordinal();
        if (answer.fields()[2 + i].equals("-") && !field.output()) {
          reported[i] = false;
        } else {
          got[i] = (int) answer.number(2 + i);
        }
      }
      lastHeater = got[CommandField.HEATER.ordinal()];
      return got;
    }

    /** After a fault: whether the heater was seen to be off within three ticks. */
    boolean watch() {
      watchHeater();
      return failedOff;
    }

    boolean[] reported() {
      return reported.clone();
    }
  }

  Conversation converse(Settings wanted) throws FirmwareFault {
    return new Conversation(wanted);
  }

  /**
   * Plays a vector and compares every step.
   *
   * @param most at most so many entries
   * @return the first difference, or null
   * @throws FirmwareFault where the firmware hangs, ends or talks nonsense
   */
  public Difference run(Script script, long most) throws FirmwareFault {
    return run(script, most, null);
  }

  Difference run(Script script, long most, Watcher watcher) throws FirmwareFault {
    Run run = new Run(script, most, watcher);
    try {
      Difference difference = run.go();
      drain(run.sent - run.answered);
      return difference;
    } catch (FirmwareFault fault) {
      if (failedOff == null) {
        failedOff = lastHeater == 0;
      }
      throw fault;
    } finally {
      wire.take();
      lastAnswered = run.answered;
    }
  }

  private long lastAnswered;

  /** Entries of the last vector that were answered. */
  public long answered() {
    return lastAnswered;
  }

  /** Passes over the answers that are still to come after a difference. */
  private void drain(long answers) {
    try {
      for (long left = answers; left > 0; ) {
        byte[] line = link.receive(timeoutMillis);
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

  /** Fields that the firmware never reports; they were not compared. */
  public List<CommandField> notReported() {
    return Arrays.stream(CommandField.values()).filter(f -> !reported[f.ordinal()]).toList();
  }

  /** Lines that had to be sent again. */
  public long resent() {
    return resent;
  }

  /** Lines that were damaged or none of the protocol's. */
  public long chatter() {
    return chatter;
  }

  /** After a fault: whether the heater was seen to be off within three ticks; null before. */
  public Boolean heaterFailedOff() {
    return failedOff;
  }

  /** Time spent waiting for the firmware. */
  public long waitedMillis() {
    return link.waitedMillis();
  }

  @Override
  public void close() {
    link.close();
  }
}
