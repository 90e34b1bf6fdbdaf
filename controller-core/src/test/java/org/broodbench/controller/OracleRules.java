package org.broodbench.controller;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;

/**
 * A table of SPEC.md whose rows say when they apply: terms joined by "and", each maybe with "not".
 */
final class OracleRules {
  private record Row(List<BooleanSupplier> terms, Map<String, String> cells) {}

  private final List<Row> rows = new ArrayList<>();

  OracleRules(
      List<Map<String, String>> table, String whenColumn, Map<String, BooleanSupplier> conditions) {
    for (Map<String, String> cells : table) {
      List<BooleanSupplier> terms = new ArrayList<>();
      for (String term : cells.get(whenColumn).split(" and ")) {
        boolean not = term.startsWith("not ");
        String name = not ? term.substring(4) : term;
        BooleanSupplier condition = conditions.get(name);
        if (condition == null) {
          throw new AssertionError("SPEC.md names a condition that is not known: " + name);
        }
        terms.add(not ? () -> !condition.getAsBoolean() : condition);
      }
      rows.add(new Row(terms, cells));
    }
  }

  /** The cell of the first row that applies, or null. */
  String first(String column) {
    return first(column, null, null);
  }

  /** The same among the rows that have {@code value} in {@code filter}. */
  String first(String column, String filter, String value) {
    for (Row row : rows) {
      if (filter != null && !value.equals(row.cells().get(filter))) {
        continue;
      }
      boolean all = true;
      for (BooleanSupplier term : row.terms()) {
        all = all && term.getAsBoolean();
      }
      if (all) {
        return row.cells().get(column);
      }
    }
    return null;
  }
}
