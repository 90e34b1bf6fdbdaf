package org.broodbench.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every kind of mistake of {@code mistakes.txt} against its expected problems, field by field. */
class MistakesTest {
  private static final Pattern PLACE = Pattern.compile("(.*?):(\\d+):(\\d+) (.*)");

  /** One case of the table. */
  record Mistake(String name, String text, List<String> settings, List<Problem> expected) {
    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Mistake> mistakes() throws IOException {
    try (InputStream in = MistakesTest.class.getResourceAsStream("/input/mistakes.txt")) {
      String table = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return Arrays.stream(table.split("(?m)^== ")).skip(1).map(MistakesTest::mistake);
    }
  }

  private static Mistake mistake(String block) {
    String[] lines = block.split("\n", -1);
    String[] head = lines[0].split("\\|");
    List<String> settings = new ArrayList<>();
    if (head.length > 1) {
      Arrays.stream(head[1].split(";")).map(String::strip).forEach(settings::add);
    }
    String base = ScenarioReaderTest.LEAST;
    StringBuilder added = new StringBuilder();
    List<Problem> expected = new ArrayList<>();
    for (int i = 1; i < lines.length; i++) {
      if (lines[i].startsWith("-- ")) {
        expected.add(problem(lines, i));
        i += 3;
      } else if (lines[i].startsWith("~ ")) {
        String[] change = lines[i].substring(2).split(" => ");
        assertTrue(base.contains(change[0]), lines[i]);
        base = base.replace(change[0], change[1].replace("\\n", "\n"));
      } else if (i < lines.length - 1 || !lines[i].isEmpty()) {
        added.append(lines[i]).append('\n');
      }
    }
    String own = added.toString();
    String text = own.startsWith("!") ? own.substring(1).replace("{base}\n", base) : base + own;
    return new Mistake(head[0].strip(), text, settings, expected);
  }

  private static Problem problem(String[] lines, int at) {
    Matcher place = PLACE.matcher(lines[at].substring(3));
    assertTrue(place.matches(), lines[at]);
    return new Problem(
        place.group(1),
        Integer.parseInt(place.group(2)),
        Integer.parseInt(place.group(3)),
        place.group(4),
        lines[at + 1].substring("found: ".length()),
        lines[at + 2].substring("allowed: ".length()),
        lines[at + 3].substring("hint: ".length()));
  }

  @ParameterizedTest
  @MethodSource("mistakes")
  void givesTheProblemsExpected(Mistake mistake) {
    byte[] bytes = mistake.text().getBytes(StandardCharsets.UTF_8);
    BadInput refused =
        assertThrows(
            BadInput.class, () -> ScenarioReader.read("a.toml", bytes, mistake.settings()));
    assertEquals(mistake.expected(), refused.problems());
  }

  @Test
  void theTableIsLongAndNamesEachMistakeOnce() throws IOException {
    List<String> names = mistakes().map(Mistake::name).toList();
    Set<String> different = new LinkedHashSet<>(names);
    assertEquals(names.size(), different.size());
    assertTrue(names.size() >= 80, "mistakes: " + names.size());
  }

  @Test
  void bytesThatAreNoUtf8AreRefusedWhereTheyStand() {
    byte[] latin =
        (ScenarioReaderTest.LEAST + "title = \"33 °C\"\n").getBytes(StandardCharsets.ISO_8859_1);
    BadInput refused =
        assertThrows(BadInput.class, () -> ScenarioReader.read("a.toml", latin, List.of()));
    assertEquals(
        List.of(
            new Problem(
                "a.toml",
                13,
                13,
                "",
                "byte b0",
                "text in UTF-8",
                "Save the file as UTF-8, or write degC instead of the degree sign.")),
        refused.problems());
  }

  @Test
  void aFileThatIsNotThereIsRefusedByName() {
    BadInput refused =
        assertThrows(
            BadInput.class,
            () -> ScenarioReader.read(java.nio.file.Path.of("no-such.toml"), List.of()));
    assertEquals(
        List.of(new Problem("no-such.toml", 0, 0, "", "no such file", "", "")), refused.problems());
    assertEquals("no-such.toml: no such file\n1 problem; nothing was run.\n", refused.getMessage());
  }
}
