package org.broodbench.firmware;

import java.util.ArrayList;
import java.util.List;

/**
 * Makes a vector shorter while the firmware still differs from the reference in the same field:
 * stretches are left out, with their time or without it, from half of the vector down to single
 * entries; then readings that play no part are held still. (Delta debugging: A. Zeller and R.
 * Hildebrandt, Simplifying and isolating failure-inducing input, 2002.)
 */
final class Shrinker {
  private static final long WAITED_MOST_MILLIS = 8000;

  /** An entry and the time since the step before it. */
  private record Piece(int dtMillis, Tick tick) {}

  private final Session session;
  private final Script.Fixed original;
  private final CommandField field;
  private final long waitedBefore;
  private long entriesLeft;
  private Difference shown;
  private List<Piece> pieces;
  private boolean complete = true;

  /**
   * @param vector ends with the entry that differs
   * @param field the field that differs there
   * @param entriesMost how many entries may be played on the way
   */
  Shrinker(Session session, Script.Fixed vector, CommandField field, long entriesMost) {
    this.session = session;
    this.original = vector;
    this.field = field;
    this.entriesLeft = entriesMost;
    this.waitedBefore = session.waitedMillis();
    this.pieces = pieces(vector.ticks());
  }

  /**
   * Shrinks.
   *
   * @return the shortest vector found; the original where the difference does not come again
   */
  Script.Fixed shrink() throws FirmwareFault {
    Difference again = tryOut(pieces);
    if (again == null) {
      complete = false;
      return original;
    }
    keep(pieces, again);
    for (int round = 0; round < 3 && budget(); round++) {
      int size = pieces.size();
      leaveOut();
      holdStill();
      if (pieces.size() == size && round > 0) {
        break;
      }
    }
    return vector(pieces);
  }

  /** The difference at the end of the shortest vector. */
  Difference shown() {
    return shown;
  }

  /** Whether nothing more could be left out within the bounds of the search. */
  boolean complete() {
    return complete;
  }

  private boolean budget() {
    if (entriesLeft > 0 && session.waitedMillis() - waitedBefore < WAITED_MOST_MILLIS) {
      return true;
    }
    complete = false;
    return false;
  }

  private static List<Piece> pieces(List<Tick> ticks) {
    List<Piece> pieces = new ArrayList<>();
    int last = 0;
    boolean first = true;
    for (Tick tick : ticks) {
      if (!tick.isStep()) {
        pieces.add(new Piece(0, tick));
      } else {
        pieces.add(new Piece(first ? 0 : tick.nowMillis() - last, tick));
        last = tick.nowMillis();
        first = false;
      }
    }
    return pieces;
  }

  private Script.Fixed vector(List<Piece> some) {
    List<Tick> ticks = new ArrayList<>();
    int now = 0;
    for (Piece piece : some) {
      now += piece.dtMillis();
      ticks.add(piece.tick().isStep() ? piece.tick().at(now) : piece.tick());
    }
    return new Script.Fixed(original.name() + ", shortened", original.settings(), ticks);
  }

  private Difference tryOut(List<Piece> some) throws FirmwareFault {
    entriesLeft -= some.size();
    Difference difference = session.run(vector(some), Long.MAX_VALUE);
    return difference != null && RuleFinder.field(difference) == field ? difference : null;
  }

  /** What comes after the difference plays no part. */
  private void keep(List<Piece> some, Difference difference) {
    pieces = new ArrayList<>(some.subList(0, (int) difference.entry() + 1));
    shown = difference;
  }

  private boolean accept(List<Piece> candidate) throws FirmwareFault {
    Difference difference = tryOut(candidate);
    if (difference == null) {
      return false;
    }
    keep(candidate, difference);
    return true;
  }

  private void leaveOut() throws FirmwareFault {
    for (int size = Math.max(1, pieces.size() / 2); size >= 1; size /= 2) {
      for (int from = 0; from < pieces.size() && budget(); ) {
        int to = Math.min(from + size, pieces.size());
        if (!accept(without(from, to, false)) && !accept(without(from, to, true))) {
          from = to;
        }
      }
    }
  }

  private List<Piece> without(int from, int to, boolean keepTime) {
    List<Piece> rest = new ArrayList<>(pieces.subList(0, from));
    long lost = 0;
    for (Piece piece : pieces.subList(from, to)) {
      lost += Math.max(0, piece.dtMillis());
    }
    for (Piece piece : pieces.subList(to, pieces.size())) {
      boolean takes = keepTime && lost > 0 && piece.tick().isStep();
      long dt = piece.dtMillis() + (takes ? lost : 0);
      if (takes) {
        lost = 0;
      }
      rest.add(new Piece((int) Math.min(dt, Integer.MAX_VALUE), piece.tick()));
    }
    return rest;
  }

  private void holdStill() throws FirmwareFault {
    Tick last = pieces.get(pieces.size() - 1).tick();
    if (!last.isStep()) {
      return;
    }
    for (Channel channel : Channel.values()) {
      if (budget() && channel.fitted(original.settings())) {
        accept(all(t -> t.with(channel, last)));
      }
    }
    for (int bit = 1; bit <= 8; bit *= 2) {
      int off = ~bit;
      if (budget()) {
        accept(all(t -> t.withSwitches(t.switches() & off)));
      }
    }
  }

  private List<Piece> all(java.util.function.UnaryOperator<Tick> change) {
    List<Piece> changed = new ArrayList<>();
    for (Piece piece : pieces) {
      changed.add(
          new Piece(
              piece.dtMillis(), piece.tick().isStep() ? change.apply(piece.tick()) : piece.tick()));
    }
    return changed;
  }
}
