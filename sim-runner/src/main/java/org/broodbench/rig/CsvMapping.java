package org.broodbench.rig;

import java.util.List;
import java.util.Optional;
import org.broodbench.sky.Place;
import org.broodbench.sky.Variable;

/**
 * Describes any comma-separated file of even steps, so that it can be read.
 *
 * @param delimiter between fields; with a decimal comma this is usually a semicolon
 * @param decimalComma true where 3,5 means three and a half
 * @param skipLines lines above the header
 * @param timeColumns names of the columns that hold date and time, joined by a blank
 * @param timeOrder order of the numbers in them, of the letters y m d h n (minute) s; or {@code
 *     unix} for seconds since 1970
 * @param utcOffsetS the clock of the file minus UTC, seconds, the same all year; daylight saving is
 *     not a clock that weather can be kept in
 * @param stamp which instant of its interval a row is stamped with
 * @param stepS length of an interval
 * @param columns which columns to read
 * @param missing texts that mean missing, besides an empty field
 * @param windHeightM height of the anemometer
 * @param place where it was measured
 * @param source who measured it
 */
public record CsvMapping(
    char delimiter,
    boolean decimalComma,
    int skipLines,
    List<String> timeColumns,
    String timeOrder,
    int utcOffsetS,
    Stamped stamp,
    int stepS,
    List<Column> columns,
    List<String> missing,
    double windHeightM,
    Optional<Place> place,
    String source) {

  /** Where the stamp of a row stands. */
  public enum Stamped {
    /** At the end of the interval. */
    END,
    /** At its start. */
    START,
    /** In its middle. */
    CENTRE
  }

  /**
   * One column.
   *
   * @param name as in the header
   * @param variable what it is
   * @param unit as the weather readers know it, such as degC, degF, K, percent, m/s, km/h, W/m2,
   *     J/cm2, mm, hPa
   * @param spot true where it is a spot value at the stamp, false for a mean or sum of the interval
   */
  public record Column(String name, Variable variable, String unit, boolean spot) {}

  /** Copies the lists. */
  public CsvMapping {
    timeColumns = List.copyOf(timeColumns);
    columns = List.copyOf(columns);
    missing = List.copyOf(missing);
    boolean known = timeOrder.equals("unix") || timeOrder.matches("[ymdhns]{3,6}");
    if (!known || timeColumns.isEmpty() || stepS < 1 || stepS > 86400) {
      throw new IllegalArgumentException(
          "a mapping needs time columns, their order and a step of up to a day");
    }
  }
}
