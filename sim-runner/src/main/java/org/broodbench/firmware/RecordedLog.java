package org.broodbench.firmware;

import java.util.List;
import java.util.Set;

/**
 * What a controller in the field wrote down: readings and commands at times of its own.
 *
 * @param file where it comes from
 * @param fields the commands that the log has
 * @param channels the readings that it has
 * @param rows in the order of time
 */
public record RecordedLog(
    String file, List<CommandField> fields, Set<Channel> channels, List<Row> rows) {
  /**
   * One row.
   *
   * @param line line in the file, first is 1
   * @param atMillis time since the first row
   * @param tick the readings
   * @param commands by {@link CommandField}; only those that the log has mean something
   */
  public record Row(int line, long atMillis, Tick tick, int[] commands) {}

  /** Readings that these settings expect and the log does not have. */
  public List<Channel> missing(org.broodbench.controller.Settings settings) {
    return java.util.Arrays.stream(Channel.values())
        .filter(c -> c.fitted(settings) && !channels.contains(c))
        .toList();
  }
}
