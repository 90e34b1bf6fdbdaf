package org.broodbench.input;

import java.util.HashSet;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.tomlj.TomlParseError;

/** Words the parser's complaints for a keeper: names the key they are about and what to write. */
final class SyntaxProblems {
  private static final Pattern EXPECTED = Pattern.compile("(?s)Unexpected (.*?), expected (.*)");
  private static final Pattern TWICE =
      Pattern.compile("(.*) (?:previously|already) defined at line (\\d+), column \\d+");
  private static final Pattern HEADER =
      Pattern.compile("\\s*(\\[{1,2})\\s*([^\\]#]*?)\\s*\\]*\\s*(#.*)?");
  private static final Pattern PAIR =
      Pattern.compile("\\s*([A-Za-z0-9_.\"' -]+?)\\s*[=:]\\s*(.*?)\\s*");

  private static final Pattern LONE = Pattern.compile("\\s*([A-Za-z0-9_.-]+)\\s*");
  private static final Pattern ESCAPED = Pattern.compile("\\\\[uU]([0-9a-fA-F]{4,8})");

  private final Set<Integer> secondTables = new HashSet<>();
  private final String file;
  private final String[] lines;

  SyntaxProblems(String file, String text) {
    this.file = file;
    this.lines = text.split("\r\n|\n|\r", -1);
  }

  Problem word(TomlParseError error) {
    int line = error.position().line();
    int column = error.position().column();
    String message = String.valueOf(error.getMessage());
    String key = keyAt(line);
    Matcher twice = TWICE.matcher(message);
    if (twice.matches()) {
      if (line(line).strip().startsWith("[")) {
        secondTables.add(line);
      }
      return new Problem(
          file,
          line,
          column,
          key,
          "a second " + twice.group(1),
          "each key and table once",
          "It stands in line " + twice.group(2) + " already. Keep one of the two.");
    }
    Matcher expected = EXPECTED.matcher(message);
    if (expected.matches()) {
      return new Problem(
          file,
          line,
          column,
          key,
          unescaped(expected.group(1)),
          unescaped(expected.group(2)),
          hint(line));
    }
    return new Problem(file, line, column, key, message, "", hint(line));
  }

  /** Whether a key in this line may hang in a table that it was not written for. */
  boolean isAstray(int number) {
    for (int i = Math.min(number, lines.length); i >= 1; i--) {
      if (HEADER.matcher(line(i)).matches()) {
        return secondTables.contains(i);
      }
    }
    return false;
  }

  /** The parser writes what is not ASCII as a backslash, u and the code. */
  private static String unescaped(String text) {
    return ESCAPED
        .matcher(text)
        .replaceAll(
            m -> Matcher.quoteReplacement(Character.toString(Integer.parseInt(m.group(1), 16))));
  }

  private String line(int number) {
    return number >= 1 && number <= lines.length ? lines[number - 1] : "";
  }

  /** The dotted key that a line is about, as far as the text of the lines above tells. */
  private String keyAt(int number) {
    String own = line(number);
    if (own.strip().startsWith("[")) {
      Matcher header = HEADER.matcher(own);
      return header.matches() ? header.group(2) : "";
    }
    Matcher pair = PAIR.matcher(own);
    Matcher lone = LONE.matcher(own);
    if (!pair.matches() && !lone.matches()) {
      return "";
    }
    String name = pair.matches() ? pair.group(1) : lone.group(1);
    String table = tableAbove(number);
    return table.isEmpty() ? name : table + "." + name;
  }

  private String tableAbove(int number) {
    for (int i = number - 1; i >= 1; i--) {
      Matcher header = HEADER.matcher(line(i));
      if (header.matches()) {
        return header.group(1).length() == 1
            ? header.group(2)
            : header.group(2) + "." + rowsAbove(i, header.group(2));
      }
    }
    return "";
  }

  private int rowsAbove(int number, String name) {
    int rows = 0;
    for (int i = 1; i < number; i++) {
      Matcher header = HEADER.matcher(line(i));
      if (header.matches() && header.group(1).length() == 2 && header.group(2).equals(name)) {
        rows++;
      }
    }
    return rows;
  }

  private String hint(int number) {
    String own = line(number).strip();
    if (own.startsWith("[")) {
      return own.startsWith("[[")
          ? "A repeated table begins with two brackets and ends with two: [[event]]."
          : "A table begins with one bracket and ends with one: [battery].";
    }
    Matcher pair = PAIR.matcher(own);
    if (!pair.matches()) {
      return "A line is a key, an equals sign and a value: capacity = \"100 Ah\".";
    }
    String name = pair.group(1);
    String value = pair.group(2).replaceAll("\\s+#.*$", "");
    if (own.indexOf('=') < 0) {
      return "An equals sign stands between key and value: " + name + " = " + value;
    }
    if (value.isEmpty()) {
      return "The value is missing. Leave the whole line out to take the default.";
    }
    if (value.matches("(?i)(true|yes|on)")) {
      return "Write " + name + " = true";
    }
    if (value.matches("(?i)(false|no|off)")) {
      return "Write " + name + " = false";
    }
    if (value.matches("[“”„‘’].*")) {
      return "Only straight quotes are read: "
          + name
          + " = \""
          + value.replaceAll("[“”„‘’]", "")
          + "\"";
    }
    if (value.startsWith("\"") || value.startsWith("'")) {
      return "A text stands between two straight quotes, with nothing after it.";
    }
    if (value.matches("[+-]?\\d+,\\d+.*")) {
      return "The decimal sign is a point: " + name + " = " + value.replace(',', '.');
    }
    if (value.matches("[+-]?\\.?\\d.*[^\\d.eE_+-].*")) {
      return "A value with a unit is a text in quotes: " + name + " = \"" + value + "\"";
    }
    if (value.matches("[+-]?(\\.\\d+|\\d+\\.)")) {
      return "A digit stands on both sides of the decimal point: 0.5, 1.0.";
    }
    if (value.matches("0\\d+")) {
      return "Leave the leading zero out.";
    }
    if (value.matches("\\p{L}.*")) {
      return "A text stands in quotes: " + name + " = \"" + value + "\"";
    }
    return "";
  }
}
