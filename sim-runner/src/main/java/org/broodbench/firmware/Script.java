package org.broodbench.firmware;

import java.util.List;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Settings;

/**
 * A vector that can be played again and again: settings, then entries from power-up on. Entries may
 * depend on what the reference commanded in the step before, so that heat warms the pan.
 */
public interface Script {
  /** What it is called in reports. */
  String name();

  /** What the controller is built with. */
  Settings settings();

  /** Begins to play from power-up. */
  Player play();

  /** One playing. */
  interface Player {
    /**
     * The next entry, or null at the end.
     *
     * @param last what the reference commanded in the step before
     */
    Tick next(Commands last);
  }

  /** A fixed list of entries. */
  record Fixed(String name, Settings settings, List<Tick> ticks) implements Script {
    /** Copies the list. */
    public Fixed {
      ticks = List.copyOf(ticks);
    }

    @Override
    public Player play() {
      int[] at = {0};
      return last -> at[0] < ticks.size() ? ticks.get(at[0]++) : null;
    }
  }
}
