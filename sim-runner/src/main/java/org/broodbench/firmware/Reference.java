package org.broodbench.firmware;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.Commands;
import org.broodbench.controller.Readings;
import org.broodbench.controller.Settings;
import org.broodbench.loop.ReferenceController;

/** The reference controller, stepped by the entries of a vector. */
final class Reference {
  private final ReferenceController controller;
  private final Readings readings = new Readings();
  private final Commands commands = new Commands();

  Reference(Settings settings) {
    controller = new ReferenceController(settings);
  }

  /** Plays one entry; the commands stay as they were over a restart. */
  Commands play(Tick tick) {
    switch (tick.kind()) {
      case STEP -> {
        tick.put(readings);
        controller.step(tick.nowMillis(), readings, commands);
      }
      case RESTART -> controller.restart(false);
      case POWER_LOSS -> controller.restart(true);
      case SETTING -> controller.keyIn(tick.setting(), tick.settingValue());
    }
    return commands;
  }

  Commands commands() {
    return commands;
  }

  /** The first so many entries of a script, as a list. */
  static Script.Fixed record(Script script, long count) {
    Reference reference = new Reference(script.settings());
    Script.Player player = script.play();
    List<Tick> ticks = new ArrayList<>();
    while (ticks.size() < count) {
      Tick tick = player.next(reference.commands());
      if (tick == null) {
        break;
      }
      ticks.add(tick);
      reference.play(tick);
    }
    return new Script.Fixed(script.name(), script.settings(), ticks);
  }
}
