package org.broodbench.tune;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.broodbench.controller.Settings;
import org.broodbench.rig.TuneSpec;

/**
 * Values for all knobs, in counts of the controller.
 *
 * @param counts in the order of the knobs
 */
public record Candidate(List<Integer> counts) {
  /** Copies the list. */
  public Candidate {
    counts = List.copyOf(counts);
  }

  /** What some settings have. */
  static Candidate of(Settings settings, List<TuneSpec.Knob> knobs) {
    List<Integer> counts = new ArrayList<>();
    for (TuneSpec.Knob k : knobs) {
      counts.add(settings.get(k.setting()));
    }
    return new Candidate(counts);
  }

  /** Settings with these values put in. */
  public Settings put(Settings into, List<TuneSpec.Knob> knobs) {
    Settings changed = into;
    for (int i = 0; i < knobs.size(); i++) {
      changed = changed.with(knobs.get(i).setting(), counts.get(i));
    }
    return changed;
  }

  /** Name in a journal. */
  String key() {
    return counts.stream().map(String::valueOf).collect(Collectors.joining(","));
  }
}
