package org.broodbench.input;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/**
 * Holds the key tables of {@code scenarios/README.md} equal to the registry. To write them anew:
 * {@code mvn -pl sim-runner -am test -Dtest=KeyPageTest -Dsurefire.failIfNoSpecifiedTests=false
 * -Dbroodbench.rewrite=true}.
 */
class KeyPageTest {
  private static final Path PAGE = Path.of("..", "scenarios", "README.md");
  private static final String MARK = "<!-- key tables: written by KeyPageTest -->\n";

  @Test
  void theKeyTablesAreThoseOfTheRegistry() throws IOException {
    String page = Files.readString(PAGE);
    int mark = page.indexOf(MARK);
    String head = page.substring(0, mark + MARK.length());
    String expected = head + "\n" + KeyPage.markdown(ScenarioKeys.all());
    if (Boolean.getBoolean("broodbench.rewrite")) {
      Files.writeString(PAGE, expected);
      return;
    }
    assertEquals(expected, page, "scenarios/README.md is stale; see the comment of this test");
  }
}
