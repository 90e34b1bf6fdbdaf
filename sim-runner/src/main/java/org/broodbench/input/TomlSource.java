package org.broodbench.input;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/** Reads TOML along a registry of keys: every value with its place, every stranger refused. */
final class TomlSource {
  private final Keys keys;
  private final SyntaxProblems syntax;
  private final String file;
  private final List<Problem> problems = new ArrayList<>();
  private final Map<String, RawScenario.Raw> values = new LinkedHashMap<>();
  private final Map<String, Integer> rows = new LinkedHashMap<>();
  private final Map<String, Spot> tables = new LinkedHashMap<>();

  private TomlSource(Keys keys, String file, String text) {
    this.keys = keys;
    this.syntax = new SyntaxProblems(file, text);
    this.file = file;
  }

  /** Reads a text; what is wrong with it becomes problems of the result. */
  static RawScenario read(Keys keys, String file, String text) {
    String clean = text.startsWith("\ufeff") ? text.substring(1) : text;
    TomlSource source = new TomlSource(keys, file, clean);
    TomlParseResult parsed;
    try {
      parsed = Toml.parse(clean);
    } catch (RuntimeException | StackOverflowError e) {
      // the parser has no other way to give up; any text may come in here, lists in lists as well
      source.problems.add(
          new Problem(file, 0, 0, "", "a text that cannot be read as TOML", "TOML", ""));
      return RawScenario.empty(source.problems);
    }
    for (TomlParseError error : parsed.errors()) {
      source.problems.add(source.syntax.word(error));
    }
    source.walk(parsed, "");
    return new RawScenario(
        source.values, source.rows, source.tables, source.problems, parsed.hasErrors());
  }

  private void walk(TomlTable table, String path) {
    for (String name : table.keySet()) {
      String full = path.isEmpty() ? name : path + "." + name;
      Object value = table.get(List.of(name));
      Spot key = spot(table.inputPositionOf(List.of(name)));
      if (!(value instanceof TomlTable) && syntax.isAstray(key.line())) {
        // under a table that was refused as a second one: the parser hangs it somewhere else
        continue;
      }
      Optional<Keys.Table> inner = keys.table(full);
      if (keys.find(full).isPresent()) {
        readValue(table, name, full, value, key);
      } else if (inner.isEmpty()) {
        problems.add(Strangers.problem(keys, full, value instanceof TomlTable, key));
      } else if (inner.get().repeated()) {
        walkRows(full, value, key);
      } else if (value instanceof TomlTable child) {
        tables.put(full, key);
        walk(child, full);
      } else {
        problems.add(wrongShape(key, full, value, "a table: [" + full + "]"));
      }
    }
  }

  private void readValue(TomlTable table, String name, String full, Object value, Spot key) {
    if (value instanceof TomlTable || value instanceof TomlArray) {
      problems.add(wrongShape(key, full, value, "one value: " + name + " = ..."));
      return;
    }
    Spot place = spot(table.entry(List.of(name)).value().position());
    values.put(full, new RawScenario.Raw(value, key, place));
  }

  private void walkRows(String full, Object value, Spot key) {
    if (!(value instanceof TomlArray array)) {
      problems.add(wrongShape(key, full, value, "a repeated table: [[" + full + "]]"));
      return;
    }
    for (int i = 0; i < array.size(); i++) {
      String row = full + "." + i;
      if (array.get(i) instanceof TomlTable child) {
        tables.put(row, spot(array.inputPositionOf(i)));
        walk(child, row);
      } else {
        problems.add(wrongShape(key, full, array.get(i), "tables: [[" + full + "]]"));
      }
    }
    rows.put(full, array.size());
  }

  private static Problem wrongShape(Spot spot, String key, Object value, String allowed) {
    return new Problem(spot.file(), spot.line(), spot.column(), key, shape(value), allowed, "");
  }

  private static String shape(Object value) {
    if (value instanceof TomlTable) {
      return "a table";
    }
    return value instanceof TomlArray ? "a list" : String.valueOf(value);
  }

  private Spot spot(TomlPosition position) {
    return position == null
        ? new Spot(file, 0, 0)
        : new Spot(file, position.line(), position.column());
  }
}
