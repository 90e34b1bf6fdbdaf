package org.broodbench.serve;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.Commands;
import org.broodbench.loop.Onlooker;
import org.broodbench.plant.Plant;
import org.broodbench.rig.Scenario;

/**
 * What the controller thought and what the sky did, kept at the rows of the trace: columns of
 * numbers beside it.
 */
final class Film implements Onlooker {
  /** Column names, in order. Times in s, temperatures in °C, rain in mm/h. */
  static final List<String> COLUMNS =
      List.of(
          "heater_reason",
          "heater_stop_reason",
          "fan_reason",
          "min_off_left_s",
          "min_on_left_s",
          "service_left_s",
          "governing_c",
          "alarms_low",
          "alarms_high",
          "isolated",
          "dead",
          "shore",
          "direct_w_m2",
          "rain_mm_h",
          "battery_a");

  /** Alarm bits in one column: single precision holds that many exactly, and more. */
  static final int ALARM_BITS = 16;

  private final int intervalS;
  private final double[][] columns;
  private int rows;

  Film(Scenario s) {
    intervalS = s.run().traceIntervalS();
    columns = new double[COLUMNS.size()][86_400 * s.window().days() / intervalS + 1];
  }

  @Override
  public void step(double endS, double lengthS, Plant plant, Commands c) {
    // the start has no step of its own: the first one stands for it
    double due = rows == 0 ? 0 : (double) rows * intervalS;
    if (endS < due - 1e-6) {
      return;
    }
    var supply = plant.supply();
    var sky = plant.weather();
    int i = 0;
    columns[i++][rows] = c.heaterReason;
    columns[i++][rows] = c.heaterStopReason;
    columns[i++][rows] = c.fanReason;
    columns[i++][rows] = c.minOffRemainingMillis * 1e-3;
    columns[i++][rows] = c.minOnRemainingMillis * 1e-3;
    columns[i++][rows] = c.serviceRemainingMillis * 1e-3;
    columns[i++][rows] =
        c.governingCentiC == Commands.NO_TEMPERATURE ? Double.NaN : c.governingCentiC / 100.0;
    columns[i++][rows] = c.alarms & (1 << ALARM_BITS) - 1;
    columns[i++][rows] = c.alarms >>> ALARM_BITS;
    columns[i++][rows] = c.isolation ? 0 : 1;
    columns[i++][rows] = supply.dead() ? 1 : 0;
    columns[i++][rows] = supply.shorePresent() ? 1 : 0;
    columns[i++][rows] = sky.dniWM2;
    columns[i++][rows] = sky.precipMmPerH;
    columns[i][rows] = supply.batteryA();
    rows++;
  }

  /** The columns, as long as the run went. */
  List<double[]> columns() {
    List<double[]> all = new ArrayList<>();
    for (double[] c : columns) {
      all.add(java.util.Arrays.copyOf(c, rows));
    }
    return all;
  }
}
