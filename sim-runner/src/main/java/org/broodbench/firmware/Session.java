package org.broodbench.firmware;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import org.broodbench.controller.Settings;

/** One connection to firmware: hello, settings, vectors played and compared. */
public final class Session implements AutoCloseable {
  private final Link link;
  private final Dialogue dialogue;
  private final int paceMillis;
  private final int mostAhead;
  private long lastAnswered;

  private Session(Link link, long timeoutMillis, int paceMillis, int mostAhead)
      throws FirmwareFault {
    this.link = link;
    this.paceMillis = paceMillis;
    this.mostAhead = mostAhead;
    dialogue = new Dialogue(link, timeoutMillis);
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
    return open(opener, dialogue.timeoutMillis, paceMillis, 1);
  }

  /** What the firmware said of itself. */
  public Board board() {
    return dialogue.board;
  }

  /** The firmware's own settings where it keeps them, else those of the last vector, or null. */
  public Settings settings() {
    return dialogue.settings;
  }

  /** How many lines may be on their way. */
  int ahead() {
    boolean quick = link.reliable() && !dialogue.board.ownClock() && paceMillis == 0;
    return quick ? Math.min(mostAhead, dialogue.board.ahead()) : 1;
  }

  Conversation converse(Settings wanted) throws FirmwareFault {
    return new Conversation(dialogue, wanted);
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

  Difference run(Script script, long most, Play.Watcher watcher) throws FirmwareFault {
    Play play = new Play(dialogue, ahead(), paceMillis, script, most, watcher);
    try {
      Difference difference = play.go();
      play.drain();
      return difference;
    } catch (FirmwareFault fault) {
      if (dialogue.failedOff == null) {
        dialogue.failedOff = dialogue.lastHeater == 0;
      }
      throw fault;
    } finally {
      dialogue.wire.take();
      lastAnswered = play.answered();
    }
  }

  /** Entries of the last vector that were answered. */
  public long answered() {
    return lastAnswered;
  }

  /** Fields that the firmware never reports; they were not compared. */
  public List<CommandField> notReported() {
    return Arrays.stream(CommandField.values())
        .filter(f -> !dialogue.reported[f.ordinal()])
        .toList();
  }

  /** Lines that had to be sent again. */
  public long resent() {
    return dialogue.resent;
  }

  /** Lines that were damaged or none of the protocol's. */
  public long chatter() {
    return dialogue.chatter;
  }

  /** After a fault: whether the heater was seen to be off within three ticks; null before. */
  public Boolean heaterFailedOff() {
    return dialogue.failedOff;
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
