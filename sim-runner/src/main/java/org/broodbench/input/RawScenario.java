package org.broodbench.input;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The values of a file before their meaning is checked.
 *
 * @param values by path with row numbers
 * @param rows number of rows of each repeated table that is there
 * @param tables where each table begins
 * @param problems what was wrong so far
 * @param damaged whether parts of the text could not be read, so that keys may be missing from here
 *     though they stand in the file
 */
record RawScenario(
    Map<String, Raw> values,
    Map<String, Integer> rows,
    Map<String, Spot> tables,
    List<Problem> problems,
    boolean damaged) {

  /**
   * One value.
   *
   * @param value text, whole number, number, truth value, date or time
   * @param key where the key stands
   * @param place where the value stands
   */
  record Raw(Object value, Spot key, Spot place) {}

  static RawScenario empty(List<Problem> problems) {
    return new RawScenario(
        new LinkedHashMap<>(), new LinkedHashMap<>(), new LinkedHashMap<>(), problems, true);
  }
}
