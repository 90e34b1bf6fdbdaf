package org.broodbench.controller;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The tables of SPEC.md as data: for each header line the rows under it. */
final class SpecTables {
  private final List<String> lines;

  SpecTables(String text) {
    lines = text.lines().toList();
  }

  static String text() {
    try {
      return Files.readString(Path.of("SPEC.md"), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new AssertionError("SPEC.md is not beside the pom", e);
    }
  }

  static SpecTables read() {
    return new SpecTables(text());
  }

  /** The table after the line that starts with {@code Table `name`}. */
  List<Map<String, String>> named(String name) {
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).startsWith("Table `" + name + "`")) {
        return after(i);
      }
    }
    throw new AssertionError("no table " + name);
  }

  /** The table whose first heading cells are these. */
  List<Map<String, String>> headed(String... cells) {
    String start = "| " + String.join(" | ", cells) + " |";
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).startsWith(start)) {
        return after(i);
      }
    }
    throw new AssertionError("no table headed " + start);
  }

  private List<Map<String, String>> after(int line) {
    int at = line;
    while (!lines.get(at).startsWith("|")) {
      at++;
    }
    List<String> heads = cells(lines.get(at));
    List<Map<String, String>> rows = new ArrayList<>();
    for (at += 2; at < lines.size() && lines.get(at).startsWith("|"); at++) {
      List<String> cells = cells(lines.get(at));
      if (cells.size() != heads.size()) {
        throw new AssertionError("SPEC.md:" + (at + 1) + ": " + cells.size() + " cells");
      }
      Map<String, String> row = new LinkedHashMap<>();
      for (int i = 0; i < heads.size(); i++) {
        row.put(heads.get(i), cells.get(i));
      }
      rows.add(row);
    }
    return rows;
  }

  private static List<String> cells(String line) {
    List<String> cells = new ArrayList<>();
    String[] parts = line.strip().split("\\|", -1);
    for (int i = 1; i < parts.length - 1; i++) {
      cells.add(parts[i].strip());
    }
    return cells;
  }
}
