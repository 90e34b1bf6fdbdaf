package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The steps of the tutorial: its blocks in order, and the scenario as it grows. */
final class Tutorial {
  static final Path PAGE = Path.of("docs", "tutorial.md");

  /** A command line of the page, with the scenario as it stands when it is typed. */
  record Step(Pages.Fence fence, String scenario, List<String> commands) {}

  private Tutorial() {}

  static List<Step> steps() {
    List<Step> steps = new ArrayList<>();
    String scenario = "";
    for (Pages.Fence fence : Pages.fences(PAGE)) {
      switch (fence.language()) {
        case "toml" ->
            scenario += (scenario.isEmpty() ? "" : "\n") + String.join("\n", fence.lines()) + "\n";
        case "diff" -> {
          String old = marked(fence, '-');
          int at = scenario.indexOf(old);
          assertTrue(at >= 0 && scenario.indexOf(old, at + 1) < 0, "not there once: " + old);
          scenario = scenario.replace(old, marked(fence, '+'));
        }
        case "sh" -> steps.add(new Step(fence, scenario, fence.lines()));
        default -> {
          // what was printed
        }
      }
    }
    return steps;
  }

  private static String marked(Pages.Fence fence, char mark) {
    StringBuilder text = new StringBuilder();
    for (String line : fence.lines()) {
      if (line.charAt(0) == mark) {
        text.append(line, 1, line.length()).append('\n');
      }
    }
    return text.toString();
  }
}
