package org.broodbench.loop;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.function.Supplier;
import org.broodbench.hive.HiveSection;

/**
 * The trace of a run: columns of numbers by row, one row an interval. States stand at the stamp;
 * powers are means of the interval before it.
 */
public final class Trace {
  /** Column names after {@code time}, in their order in files. */
  public static final List<String> COLUMNS =
      List.of(
          "brood_c",
          "probe_a_c",
          "probe_b_c",
          "pan_c",
          "plate_c",
          "box_air_c",
          "top_c",
          "outdoor_c",
          "ghi_w_m2",
          "wind_m_s",
          "heater_w",
          "heater_on",
          "fan_on",
          "shed_level",
          "set_point_c",
          "soc",
          "battery_v",
          "battery_c",
          "pv_w",
          "load_w",
          "colony_w",
          "brood_rh_percent",
          "co2_percent",
          "film_g",
          "air_l_min",
          "pan_filling_c",
          "lid_inside_c",
          "wall_inside_c",
          "condensing_g_h");

  /** Time between pictures of the hive cut open, s. */
  public static final int SECTION_INTERVAL_S = 600;

  private final int intervalS;
  private final List<HiveSection> sections = new ArrayList<>();
  private final double[][] columns = new double[COLUMNS.size()][];
  private int rows;

  /** An empty trace for some number of rows. */
  Trace(int intervalS, int capacity) {
    this.intervalS = intervalS;
    for (int c = 0; c < columns.length; c++) {
      columns[c] = new double[capacity];
    }
  }

  void add(double[] row) {
    for (int c = 0; c < columns.length; c++) {
      columns[c][rows] = row[c];
    }
    rows++;
  }

  /** Keeps the hive cut open where a picture is due at a time, s since the start. */
  void section(double atS, Supplier<HiveSection> section) {
    if (atS >= (sections.size() + 1) * SECTION_INTERVAL_S - 1e-6) {
      sections.add(section.get());
    }
  }

  /** The hive cut open; the first {@link #SECTION_INTERVAL_S} after the start. */
  public List<HiveSection> sections() {
    return Collections.unmodifiableList(sections);
  }

  /** Time between rows, s; the first row stands at the start of the run. */
  public int intervalS() {
    return intervalS;
  }

  /** Number of rows. */
  public int rows() {
    return rows;
  }

  /** A value; not a number where there is no such part. */
  public double value(int column, int row) {
    return columns[column][row];
  }

  /** A copy of a column. */
  public double[] column(String name) {
    int c = COLUMNS.indexOf(name);
    if (c < 0) {
      throw new IllegalArgumentException("no column " + name);
    }
    return Arrays.copyOf(columns[c], rows);
  }
}
