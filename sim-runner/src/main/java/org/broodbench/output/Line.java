package org.broodbench.output;

/**
 * One line of a chart.
 *
 * @param column column of the trace
 * @param label name as shown
 * @param quantity what kind of number, or null where its unit never changes
 * @param unit unit where it never changes, else empty
 * @param factor shown value over the value in the trace
 * @param decimals decimals as shown
 * @param style name of the stroke: colour, width and dash stand in style sheet and script
 * @param draw how it is drawn
 * @param perUnit whole steps a unit that the packed column keeps
 */
record Line(
    String column,
    String label,
    Quantity quantity,
    String unit,
    double factor,
    int decimals,
    String style,
    Draw draw,
    int perUnit) {

  /** Ways to draw. */
  enum Draw {
    /** Straight from row to row. */
    LINE,
    /** Held from row to row. */
    STEP,
    /** Hourly means while many days are shown. */
    MEAN,
    /** A second scale at the right. */
    RIGHT,
    /** A strip of its own, hourly share while many days are shown. */
    STRIP
  }

  static Line temperature(
      String column, String label, String style, Draw draw, int decimals, int perUnit) {
    return new Line(column, label, Quantity.TEMPERATURE, "", 1, decimals, style, draw, perUnit);
  }

  static Line of(
      String column,
      String label,
      String unit,
      double factor,
      int decimals,
      String style,
      Draw draw,
      int perUnit) {
    return new Line(column, label, null, unit, factor, decimals, style, draw, perUnit);
  }
}
