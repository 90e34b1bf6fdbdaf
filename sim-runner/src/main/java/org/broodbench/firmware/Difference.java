package org.broodbench.firmware;

import java.util.ArrayList;
import java.util.List;

/**
 * The first step in which firmware and reference differ.
 *
 * @param entry index of the entry in its vector
 * @param tick the entry as it was played
 * @param expected every command of the reference
 * @param got every command of the firmware
 * @param reported which of them the firmware reports
 */
public record Difference(long entry, Tick tick, int[] expected, int[] got, boolean[] reported) {
  /** The fields that differ, in the order of the protocol. */
  public List<CommandField> fields() {
    List<CommandField> fields = new ArrayList<>();
    for (CommandField field : CommandField.values()) {
      int i = field.ordinal();
      if (reported[i] && expected[i] != got[i]) {
        fields.add(field);
      }
    }
    return fields;
  }
}
