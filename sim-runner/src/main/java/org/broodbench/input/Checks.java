package org.broodbench.input;

import java.util.List;

/** Checks that need more than one key. A check that touches an unsound value is passed over. */
final class Checks {
  private final Values values;
  private final List<Problem> problems;

  Checks(Values values, List<Problem> problems) {
    this.values = values;
    this.problems = problems;
  }

  /** Runs one check. */
  void run(Runnable check) {
    try {
      check.run();
    } catch (Values.Unsound e) {
      // the value has its own problem in the list already
      return;
    }
  }

  /**
   * Reports a value that does not fit others.
   *
   * @param key the key to blame; where it was left at its default, the first other key that was
   *     given is blamed instead, since that is the line to change
   * @param others keys that it was compared with
   */
  void refuse(String key, List<String> others, String allowed, String hint) {
    String blamed = key;
    if (!values.has(key) || values.isAssumed(key)) {
      blamed =
          others.stream()
              .filter(other -> values.has(other) && !values.isAssumed(other))
              .findFirst()
              .orElse(key);
    }
    Spot spot = values.spot(blamed);
    String found = values.shown(blamed);
    String fits = allowed;
    String advice = hint;
    if (!blamed.equals(key)) {
      fits = "what fits " + key + " = " + values.shown(key) + " (" + values.whence(key) + ")";
      advice = (key + " would have to be " + allowed + ". " + hint).strip();
    }
    problems.add(new Problem(spot.file(), spot.line(), spot.column(), blamed, found, fits, advice));
  }
}
