package org.broodbench.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.broodbench.loop.Trace;
import org.junit.jupiter.api.Test;

/**
 * The page of the result files knows every format and every name that is written. That its paths
 * and kinds are those of real results is held by {@link ResultsPageCampaignTest}.
 */
class ResultsPageTest {
  static final Path PAGE = Path.of("docs", "results.md");
  private static final Path OUTPUT = Path.of("src/main/java/org/broodbench/output");

  private static final Pattern NAME =
      Pattern.compile(
          "\\b(?:text|number|whole|flag|nothing|object|texts|objects)\\(\\s*(?:json,\\s*)?\"([a-z0-9_]+)\"");

  private static List<Path> writers(String end) throws Exception {
    try (Stream<Path> files = Files.list(OUTPUT)) {
      return files.filter(f -> f.getFileName().toString().endsWith(end)).sorted().toList();
    }
  }

  @Test
  void everyFormatHasItsPart() throws Exception {
    Set<String> written = new TreeSet<>();
    for (Path file : writers(".java")) {
      Matcher format = Pattern.compile("broodbench-[a-z]+/[0-9]+").matcher(Files.readString(file));
      while (format.find()) {
        written.add(format.group());
      }
    }
    Set<String> told = new TreeSet<>();
    for (String line : Pages.lines(PAGE)) {
      Matcher format = Pattern.compile("^## `(broodbench-[a-z]+/[0-9]+)`").matcher(line);
      if (format.find()) {
        told.add(format.group(1));
      }
    }
    assertTrue(written.size() >= 10, written.toString());
    assertEquals(written, told);
  }

  @Test
  void everyNameInJsonIsOnThePage() throws Exception {
    Set<String> told = new TreeSet<>();
    for (Pages.Fence fence : Pages.fences(PAGE)) {
      for (String line : fence.lines()) {
        for (String part : line.split("  ")[0].split("[.\\[\\]]+")) {
          told.add(part);
        }
      }
    }
    Matcher named = Pattern.compile("`([a-z0-9_]+)`").matcher(Files.readString(PAGE));
    while (named.find()) {
      told.add(named.group(1));
    }
    List<String> missing = new ArrayList<>();
    int names = 0;
    for (Path file : writers("Json.java")) {
      Matcher name = NAME.matcher(Files.readString(file));
      while (name.find()) {
        names++;
        if (!told.contains(name.group(1)) && !name.group(1).equals("format")) {
          missing.add(file.getFileName() + ": " + name.group(1));
        }
      }
    }
    assertTrue(names > 400, "found " + names);
    assertEquals(List.of(), missing);
  }

  @Test
  void everyColumnIsOnThePage() throws Exception {
    String page = Files.readString(PAGE);
    List<String> columns = new ArrayList<>(Trace.COLUMNS);
    columns.add("time");
    for (String name : List.of("StressCsv.java", "EventsCsv.java")) {
      String head = Files.readString(OUTPUT.resolve(name));
      head = head.substring(head.indexOf(".writeRecord("));
      Matcher column =
          Pattern.compile("\"([a-z_]+)\"").matcher(head.substring(0, head.indexOf(");")));
      while (column.find()) {
        columns.add(column.group(1));
      }
    }
    assertTrue(columns.size() > 45, columns.toString());
    assertEquals(List.of(), columns.stream().filter(c -> !page.contains("`" + c + "`")).toList());
  }
}
