package org.broodbench.input.weather;

/** Numbers of one row, with their units turned and their range checked. */
final class Cells {
  private final Fields fields;
  private final ProblemList problems;
  private final int line;

  Cells(Fields fields, ProblemList problems, int line) {
    this.fields = fields;
    this.problems = problems;
    this.line = line;
  }

  /**
   * The number times a factor; NaN where the column is absent or the field is empty. A text or a
   * value out of range is a problem.
   *
   * @param column from 0, or -1 where the file has no such column
   */
  double scaled(int column, String key, double factor, double low, double high) {
    if (column < 0 || column >= fields.count() || fields.isEmpty(column)) {
      return Double.NaN;
    }
    return checked(column, key, fields.number(column), factor, low, high);
  }

  /** As {@link #scaled}, and NaN where the number is this missing code. */
  double coded(int column, String key, double missing, double factor, double low, double high) {
    if (column < 0 || column >= fields.count() || fields.isEmpty(column)) {
      return Double.NaN;
    }
    double raw = fields.number(column);
    return raw == missing ? Double.NaN : checked(column, key, raw, factor, low, high);
  }

  private double checked(
      int column, String key, double raw, double factor, double low, double high) {
    // dividing by 10 rounds better than multiplying by 0.1
    double value = factor < 1 ? raw / (1 / factor) : raw * factor;
    if (value >= low && value <= high) {
      return value;
    }
    problems.add(
        line,
        fields.column(column),
        key,
        fields.text(column),
        Double.isNaN(raw)
            ? "a number, or nothing where it is missing"
            : low / factor + " to " + high / factor,
        "");
    return Double.NaN;
  }
}
