package org.broodbench.firmware;

import org.broodbench.controller.Settings;

/** The firmware alone, entry by entry, from power-up; nothing is compared. */
final class Conversation {
  private final Dialogue dialogue;
  private int number;

  Conversation(Dialogue dialogue, Settings wanted) throws FirmwareFault {
    this.dialogue = dialogue;
    dialogue.begin(wanted);
  }

  /** Tells one entry; the commands of the firmware, or null after a restart. */
  int[] tell(Tick tick) throws FirmwareFault {
    dialogue.wire.entry(number, tick);
    dialogue.keyed(tick);
    byte[] request = dialogue.wire.take();
    Answer answer = dialogue.ask(request, Wire.letter(tick), "entry " + number, number);
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
        dialogue.reported[i] = false;
      } else {
        got[i] = (int) answer.number(2 + i);
      }
    }
    dialogue.lastHeater = got[CommandField.HEATER.ordinal()];
    return got;
  }

  /** After a fault: whether the heater was seen to be off within three ticks. */
  boolean watch() {
    dialogue.watchHeater();
    return dialogue.failedOff;
  }

  boolean[] reported() {
    return dialogue.reported.clone();
  }
}
