package org.broodbench.input;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.broodbench.scenarios.ScenarioHead;
import org.junit.jupiter.api.Test;

/**
 * Holds {@code scenarios/README.md} equal to the heads of the scenarios and to the registry of
 * keys. To write both parts anew: {@code mvn -pl sim-runner -am test -Dtest=KeyPageTest
 * -Dsurefire.failIfNoSpecifiedTests=false -Dbroodbench.rewrite=true}.
 */
class KeyPageTest {
  private static final Path PAGE = Path.of("..", "scenarios", "README.md");
  private static final String SCENARIOS = "<!-- scenarios: written by KeyPageTest -->\n";
  private static final String END = "<!-- end of scenarios -->\n";
  private static final String MARK = "<!-- key tables: written by KeyPageTest -->\n";

  @Test
  void thePageIsThatOfTheScenariosAndTheRegistry() throws IOException {
    String page = Files.readString(PAGE);
    int from = page.indexOf(SCENARIOS) + SCENARIOS.length();
    int end = page.indexOf(END);
    int mark = page.indexOf(MARK) + MARK.length();
    String paragraphs =
        ScenarioHead.all().stream().map(ScenarioHead::markdown).collect(Collectors.joining("\n"));
    String expected =
        page.substring(0, from)
            + "\n"
            + paragraphs
            + "\n"
            + page.substring(end, mark)
            + "\n"
            + KeyPage.markdown(ScenarioKeys.all());
    if (Boolean.getBoolean("broodbench.rewrite")) {
      Files.writeString(PAGE, expected);
      return;
    }
    assertEquals(expected, page, "scenarios/README.md is stale; see the comment of this test");
  }
}
