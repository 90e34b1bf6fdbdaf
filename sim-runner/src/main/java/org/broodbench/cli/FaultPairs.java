package org.broodbench.cli;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.broodbench.input.BadInput;
import org.broodbench.input.DidYouMean;
import org.broodbench.input.Problem;
import org.broodbench.rig.Scenario;
import org.broodbench.stress.StressCase;
import org.broodbench.stress.StressPlan;

/** Reads which two faults are to come at once. */
final class FaultPairs {
  private final List<String> all = StressCase.all().stream().map(StressCase::key).toList();
  private final List<StressCase> ofRig;
  private final List<String> namesOfRig;
  private final List<Problem> problems = new ArrayList<>();

  private FaultPairs(Scenario s) {
    ofRig = StressCase.of(s);
    namesOfRig = ofRig.stream().map(StressCase::key).toList();
  }

  /**
   * The pairs as results name them: the fault that comes first there first, each pair once.
   *
   * @throws BadInput with everything that is wrong in any of them
   */
  static List<String> of(List<String> texts, Scenario s) {
    FaultPairs pairs = new FaultPairs(s);
    Set<String> found = new LinkedHashSet<>();
    texts.forEach(text -> found.add(pairs.pair(text)));
    if (!pairs.problems.isEmpty()) {
      throw new BadInput(pairs.problems);
    }
    return List.copyOf(found);
  }

  private String pair(String text) {
    String[] names = text.split("\\" + StressPlan.AND, -1);
    if (names.length != 2) {
      return refuse(text, "two faults joined by a plus, such as relay_welded+probe_stuck", "");
    }
    int first = index(names[0].strip());
    int second = index(names[1].strip());
    if (first < 0 || second < 0) {
      return "";
    }
    if (ofRig.get(first).kind() == ofRig.get(second).kind()) {
      return refuse(text, "two faults of different things", "A thing breaks in one way at a time.");
    }
    return namesOfRig.get(Math.min(first, second))
        + StressPlan.AND
        + namesOfRig.get(Math.max(first, second));
  }

  private int index(String name) {
    int index = namesOfRig.indexOf(name);
    if (index < 0 && all.contains(name)) {
      refuse(name, "what this rig has: " + String.join(", ", namesOfRig), "");
    } else if (index < 0) {
      refuse(
          name,
          "the name of a fault",
          DidYouMean.closest(name, all)
              .map(near -> "Did you mean " + near + "?")
              .orElse("Known: " + String.join(", ", all) + "."));
    }
    return index;
  }

  private String refuse(String found, String allowed, String hint) {
    String shown = found.isEmpty() ? "an empty text" : found;
    problems.add(new Problem("--pair", 0, 0, "", shown, allowed, hint));
    return "";
  }
}
