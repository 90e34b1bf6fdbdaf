package org.broodbench.input.weather;

import java.util.Optional;
import org.broodbench.sky.Place;

/** Head of our own tables of days or months: comment lines with the place, then column names. */
final class OwnTable {
  /**
   * A column of numbers.
   *
   * @param name what the header calls it
   * @param low lowest value
   * @param high highest value
   * @param needed whether the table must have it
   */
  record Column(String name, double low, double high, boolean needed) {}

  final CommentLines comments;
  final Fields fields = new Fields(',');
  final int key;
  final int[] at;
  final int count;
  final Place place;

  /**
   * Reads up to the header.
   *
   * @param keyName the column that says which day or month
   */
  OwnTable(LineSource lines, ProblemList problems, String keyName, Column... columns) {
    comments = new CommentLines(problems);
    if (!comments.read(lines)) {
      throw problems.fatal(
          lines.number(), 0, "", "no header", "a line that starts with " + keyName, "");
    }
    fields.split(lines);
    ColumnNames names = new ColumnNames(fields, problems, lines.number());
    count = names.count();
    key = names.need(keyName);
    at = new int[columns.length];
    for (int c = 0; c < at.length; c++) {
      at[c] = columns[c].needed() ? names.need(columns[c].name()) : names.at(columns[c].name());
    }
    Optional<Place> where = comments.place();
    if (where.isEmpty()) {
      problems.add(
          0, 0, "latitude_deg, longitude_deg, altitude_m", "not all three", "the place", "");
    }
    problems.throwIfAny();
    place = where.orElseThrow();
  }

  /** True where the current line has no value of the column. */
  boolean isEmpty(int c) {
    return at[c] < 0 || fields.isEmpty(at[c]);
  }
}
