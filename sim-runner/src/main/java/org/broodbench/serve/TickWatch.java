package org.broodbench.serve;

import org.broodbench.controller.Commands;
import org.broodbench.controller.Readings;
import org.broodbench.loop.SteppedController;
import org.broodbench.output.LivePicture;

/** Steps a controller and writes down what it says at every tick of a few minutes, as JSON. */
final class TickWatch implements SteppedController {
  /** Length of the stretch that is written down, ms; own choice. */
  static final int STRETCH_MS = 600_000;

  private final SteppedController watched;
  private final long fromMs;
  private final StringBuilder rows = new StringBuilder();

  TickWatch(SteppedController watched, long fromMs) {
    this.watched = watched;
    this.fromMs = fromMs;
  }

  @Override
  public void powerUp() {
    watched.powerUp();
  }

  @Override
  public void step(int nowMillis, Readings readings, Commands c) {
    watched.step(nowMillis, readings, c);
    if (nowMillis < fromMs || nowMillis >= fromMs + STRETCH_MS) {
      return;
    }
    double[] row = {
      nowMillis * 1e-3,
      c.heater ? 1 : 0,
      c.fan ? 1 : 0,
      c.heaterReason,
      c.heaterStopReason,
      c.fanReason,
      c.minOffRemainingMillis * 1e-3,
      c.minOnRemainingMillis * 1e-3,
      c.serviceRemainingMillis * 1e-3,
      celsius(c.governingCentiC),
      celsius(c.workingSetPointCentiC),
      c.shedLevel,
      c.alarms & (1 << Film.ALARM_BITS) - 1,
      c.alarms >>> Film.ALARM_BITS,
      c.isolation ? 0 : 1
    };
    rows.append(rows.isEmpty() ? "[" : ",[");
    for (int i = 0; i < row.length; i++) {
      rows.append(i == 0 ? "" : ",").append(LivePicture.number(row[i]));
    }
    rows.append(']');
  }

  private static double celsius(int centiC) {
    return centiC == Commands.NO_TEMPERATURE ? Double.NaN : centiC / 100.0;
  }

  @Override
  public boolean keyInSetPoint(double setPointC) {
    return watched.keyInSetPoint(setPointC);
  }

  /** What was written down: names of the columns, and one row a tick. */
  String json() {
    return "{\"names\":[\"at\",\"heater_on\",\"fan_on\",\"heater_reason\",\"heater_stop_reason\","
        + "\"fan_reason\",\"min_off_left_s\",\"min_on_left_s\",\"service_left_s\",\"governing_c\","
        + "\"set_point_c\",\"shed_level\",\"alarms_low\",\"alarms_high\",\"isolated\"],\"rows\":["
        + rows
        + "]}";
  }
}
