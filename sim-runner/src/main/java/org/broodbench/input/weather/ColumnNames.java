package org.broodbench.input.weather;

import java.util.HashMap;
import java.util.Map;

/** Names of the columns of a table, from its header line. */
final class ColumnNames {
  private final Map<String, Integer> at = new HashMap<>();
  private final ProblemList problems;
  private final int line;
  private final int count;

  ColumnNames(Row header, ProblemList problems, int line) {
    this.problems = problems;
    this.line = line;
    count = header.count();
    for (int i = 0; i < count; i++) {
      if (!header.isEmpty(i) && at.putIfAbsent(header.text(i), i) != null) {
        problems.add(
            line, header.column(i), header.text(i), "a second column", "each column once", "");
      }
    }
  }

  /** Position of the column from 0, or -1. */
  int at(String name) {
    return at.getOrDefault(name, -1);
  }

  /** Position of a column that must be there. */
  int need(String name) {
    int i = at(name);
    if (i < 0) {
      problems.add(line, 1, name, "no such column", "a column " + name, "");
    }
    return i;
  }

  int count() {
    return count;
  }
}
