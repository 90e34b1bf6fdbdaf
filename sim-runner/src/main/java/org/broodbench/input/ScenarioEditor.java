package org.broodbench.input;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tomlj.MutableTomlArray;
import org.tomlj.MutableTomlTable;
import org.tomlj.Toml;
import org.tomlj.TomlParseResult;

/** Changes single values in the text of a scenario; comments and layout stay. */
public final class ScenarioEditor {
  private final Keys keys;

  /** An editor for files of one registry. */
  public ScenarioEditor(Keys keys) {
    this.keys = keys;
  }

  /**
   * The text with one value changed or added.
   *
   * @param text a text that reads without syntax problems
   * @param path dotted key; a row of a repeated table by its number, which must exist
   * @param valueText the value as {@code --set} takes it
   * @throws BadInput if the key, the value or the text cannot be used
   */
  public String set(String text, String path, String valueText) {
    Optional<Key> key = keys.find(path);
    if (key.isEmpty()) {
      throw refused(Strangers.problem(keys, path, false, new Spot(Spot.OPTION, 0, 0)));
    }
    Object value;
    try {
      value = ValueReader.readText(key.get(), valueText);
    } catch (ValueReader.Refused e) {
      throw refused(new Problem(Spot.OPTION, 0, 0, path, valueText, e.allowed(), e.hint()));
    }
    TomlParseResult parsed = Toml.parse(text);
    if (parsed.hasErrors()) {
      SyntaxProblems syntax = new SyntaxProblems("", text);
      throw new BadInput(parsed.errors().stream().map(syntax::word).toList());
    }
    setIn(parsed, path, value instanceof Quantity ? valueText.strip() : value);
    return parsed.toToml();
  }

  private void setIn(MutableTomlTable root, String path, Object value) {
    MutableTomlTable table = root;
    List<String> inTable = new ArrayList<>();
    for (String part : path.split("\\.")) {
      if (!part.matches("\\d+")) {
        inTable.add(part);
        continue;
      }
      MutableTomlArray rows = table.getArray(inTable);
      int row = Integer.parseInt(part);
      if (rows == null || row >= rows.size()) {
        int count = rows == null ? 0 : rows.size();
        throw refused(
            new Problem(Spot.OPTION, 0, 0, path, "row " + row, "one of " + count + " rows", ""));
      }
      table = (MutableTomlTable) rows.get(row);
      inTable.clear();
    }
    table.set(inTable, value);
  }

  private static BadInput refused(Problem problem) {
    return new BadInput(List.of(problem));
  }
}
