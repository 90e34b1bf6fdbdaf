package org.broodbench.firmware;

import java.util.ArrayList;
import java.util.List;

/** What the reference commands along a vector. */
public final class Expected {
  private Expected() {}

  /** The commands after each entry, by {@link CommandField}. */
  public static List<int[]> of(Script.Fixed vector) {
    Reference reference = new Reference(vector.settings());
    List<int[]> all = new ArrayList<>();
    for (Tick tick : vector.ticks()) {
      all.add(CommandField.values(reference.play(tick)));
    }
    return all;
  }
}
