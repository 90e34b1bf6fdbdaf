package org.broodbench.scenarios;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The comment at the head of a shipped scenario, taken at its word: what it is, what it teaches,
 * which requirements it misses, what mends it and what does not.
 *
 * @param file the scenario
 * @param headline its first line
 * @param story what it is
 * @param teaches the paragraph that begins with "It teaches:"
 * @param misses the paragraph that begins with "It misses"
 * @param missed the requirements that this paragraph names
 * @param cures settings of the command line, each list mends the scenario by itself
 * @param noCures settings that one may think of and that do not
 */
public record ScenarioHead(
    Path file,
    String headline,
    String story,
    String teaches,
    String misses,
    List<String> missed,
    List<List<String>> cures,
    List<List<String>> noCures) {
  private static final Path FOLDER = Path.of("..", "scenarios");
  private static final Pattern SETTING = Pattern.compile("--set (\\S+?=(\"[^\"]*\"|\\S+))");
  private static final String TEACHES = "It teaches: ";
  private static final String MISSES = "It misses ";

  /** All shipped scenarios by name. */
  public static List<ScenarioHead> all() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      List<ScenarioHead> heads = new ArrayList<>();
      for (Path file : files.filter(f -> f.toString().endsWith(".toml")).sorted().toList()) {
        heads.add(of(file));
      }
      return heads;
    }
  }

  static ScenarioHead of(Path file) throws IOException {
    List<List<String>> paragraphs = new ArrayList<>();
    paragraphs.add(new ArrayList<>());
    for (String line : Files.readAllLines(file)) {
      if (!line.startsWith("#")) {
        break;
      }
      String text = line.substring(1).strip();
      if (text.isEmpty()) {
        paragraphs.add(new ArrayList<>());
      } else {
        paragraphs.get(paragraphs.size() - 1).add(text);
      }
    }
    String misses = paragraph(paragraphs, MISSES);
    String names = misses.substring(MISSES.length(), misses.indexOf(':'));
    return new ScenarioHead(
        file,
        String.join(" ", paragraphs.get(0)),
        String.join(" ", paragraphs.get(1)),
        paragraph(paragraphs, TEACHES),
        misses,
        names.equals("nothing") ? List.of() : Arrays.asList(names.split(", | and ")),
        settings(paragraphs, "What mends it, each alone:"),
        settings(paragraphs, "What does not:"));
  }

  private static String paragraph(List<List<String>> paragraphs, String start) {
    return paragraphs.stream()
        .map(p -> String.join(" ", p))
        .filter(p -> p.startsWith(start))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no paragraph \"" + start + "...\""));
  }

  private static List<List<String>> settings(List<List<String>> paragraphs, String title) {
    List<List<String>> all = new ArrayList<>();
    for (List<String> p : paragraphs) {
      if (!p.isEmpty() && p.get(0).equals(title)) {
        for (String line : p.subList(1, p.size())) {
          List<String> one = new ArrayList<>();
          Matcher m = SETTING.matcher(line);
          while (m.find()) {
            one.add(m.group(1).replace("\"", ""));
          }
          if (!SETTING.matcher(line).replaceAll("").isBlank()) {
            throw new IllegalArgumentException("not a list of --set: " + line);
          }
          all.add(one);
        }
      }
    }
    return all;
  }

  String name() {
    return file.getFileName().toString();
  }

  /** What the page of scenarios says about it, Markdown. */
  public String markdown() {
    StringBuilder out = new StringBuilder();
    out.append("### [").append(name()).append("](").append(name()).append(")\n\n");
    out.append("**").append(headline).append("** ").append(story).append("\n\n");
    out.append(teaches).append("\n\n").append(misses);
    list(out, cures.size() > 1 ? " Each of these alone mends it: " : " This mends it: ", cures);
    list(out, " This does not: ", noCures);
    return out.append("\n").toString();
  }

  private static void list(StringBuilder out, String words, List<List<String>> settings) {
    if (!settings.isEmpty()) {
      out.append(words)
          .append(String.join("; ", settings.stream().map(ScenarioHead::code).toList()))
          .append('.');
    }
  }

  private static String code(List<String> settings) {
    StringBuilder out = new StringBuilder("`");
    for (String s : settings) {
      int equals = s.indexOf('=');
      out.append(out.length() > 1 ? " " : "").append("--set ").append(s, 0, equals + 1);
      String value = s.substring(equals + 1);
      out.append(value.contains(" ") ? '"' + value + '"' : value);
    }
    return out.append('`').toString();
  }
}
