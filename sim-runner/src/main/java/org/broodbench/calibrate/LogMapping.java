package org.broodbench.calibrate;

import java.util.List;

/**
 * How to read a field log: a table with one header line.
 *
 * @param separator between the fields
 * @param decimalComma whether 3,5 means three and a half
 * @param skipLines lines above the header
 * @param timeColumns columns with date and time, joined by a blank
 * @param timeOrder order of the numbers in them, of the letters y m d h n (minute) s, or {@code
 *     unix}; empty for ISO 8601
 * @param clockAheadS the logger's clock minus UTC at the first row, s
 * @param clockAheadAtEndS the same at the last row: a clock that drifts, s
 * @param columns which columns to read; empty to go by the names that the program itself writes
 * @param missing texts that mean missing, besides an empty field
 */
public record LogMapping(
    char separator,
    boolean decimalComma,
    int skipLines,
    List<String> timeColumns,
    String timeOrder,
    double clockAheadS,
    double clockAheadAtEndS,
    List<Column> columns,
    List<String> missing) {
  /** The names that the program itself writes, in UTC. */
  public static final LogMapping OWN =
      new LogMapping(',', false, 0, List.of("time"), "", 0, 0, List.of(), List.of());

  /**
   * One column.
   *
   * @param name as in the header
   * @param what what it holds
   * @param unit its unit
   * @param offset reading minus truth where the keeper knows it, in °C, V, A or percent
   */
  public record Column(String name, LogColumn what, String unit, double offset) {}

  /** Copies the lists. */
  public LogMapping {
    timeColumns = List.copyOf(timeColumns);
    columns = List.copyOf(columns);
    missing = List.copyOf(missing);
  }
}
