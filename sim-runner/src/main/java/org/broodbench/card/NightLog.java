package org.broodbench.card;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.ShedLevel;
import org.broodbench.loop.Trace;
import org.broodbench.rig.Scenario;
import org.broodbench.sky.Nights;

/**
 * One simulated night and the day after it, as a keeper with gauges sees them. What changes with
 * every start of the heater is a range over half an hour around dusk or dawn.
 *
 * @param duskS dusk, s since the start of the run
 * @param dawnS dawn
 * @param lowC lowest outdoor temperature of the night
 * @param dusk gauges at dusk
 * @param dawn gauges at dawn
 * @param nightHeaterH hours with the heater on from dusk to dawn
 * @param nightStarts starts from dusk to dawn
 * @param dayHeaterH hours with the heater on from dawn to the next dusk, or to the end of the run
 * @param dayStarts starts in that time
 * @param shedHours hours of the night with the heat shed
 * @param highestLevel highest shed level of the night
 */
public record NightLog(
    double duskS,
    double dawnS,
    double lowC,
    Gauges dusk,
    Gauges dawn,
    double nightHeaterH,
    double nightStarts,
    double dayHeaterH,
    double dayStarts,
    double shedHours,
    int highestLevel) {
  /** A gauge is read within so long of dusk or dawn, s; own choice. */
  private static final double LOOK_S = 900;

  /**
   * What the gauges show.
   *
   * @param volts battery volts
   * @param probeC first brood probe, °C
   * @param panC top of the thermal mass, °C
   * @param soc state of charge, 0 to 1
   */
  public record Gauges(Range volts, Range probeC, Range panC, double soc) {}

  /** All nights of a run that has a trace. */
  public static List<NightLog> of(Scenario s, Trace trace, List<Nights.Night> nights) {
    Columns c = new Columns(s, trace);
    List<NightLog> logs = new ArrayList<>();
    for (int k = 0; k < nights.size(); k++) {
      int dusk = c.row(nights.get(k).duskEpochS());
      int dawn = c.row(nights.get(k).dawnEpochS());
      int next = k + 1 < nights.size() ? c.row(nights.get(k + 1).duskEpochS()) : c.rows - 1;
      logs.add(c.night(dusk, dawn, next));
    }
    return logs;
  }

  private static final class Columns {
    final long fromEpochS;
    final int stepS;
    final int rows;
    final double[] volts;
    final double[] probe;
    final double[] pan;
    final double[] outdoor;
    final double[] heaterOn;
    final double[] heaterW;
    final double[] soc;
    final double[] level;

    Columns(Scenario s, Trace t) {
      fromEpochS = s.window().fromEpochS();
      stepS = t.intervalS();
      rows = t.rows();
      volts = t.column("battery_v");
      probe = t.column("probe_a_c");
      pan = t.column("pan_c");
      outdoor = t.column("outdoor_c");
      heaterOn = t.column("heater_on");
      heaterW = t.column("heater_w");
      soc = t.column("soc");
      level = t.column("shed_level");
    }

    int row(long epochS) {
      long row = Math.round((double) (epochS - fromEpochS) / stepS);
      return (int) Math.max(0, Math.min(rows - 1, row));
    }

    NightLog night(int dusk, int dawn, int next) {
      double low = Double.POSITIVE_INFINITY;
      int shed = 0;
      int highest = 0;
      for (int i = dusk; i <= dawn; i++) {
        low = Math.min(low, outdoor[i]);
        shed += level[i] >= ShedLevel.HEAT_SHED ? 1 : 0;
        highest = Math.max(highest, (int) level[i]);
      }
      double hour = 3600.0 / stepS;
      return new NightLog(
          dusk * (double) stepS,
          dawn * (double) stepS,
          low,
          gauges(dusk),
          gauges(dawn),
          on(dusk, dawn) / hour,
          starts(dusk, dawn),
          on(dawn, next) / hour,
          starts(dawn, next),
          shed / hour,
          highest);
    }

    /** Rows whose interval before them had the heater on, by halves where it switched. */
    double on(int a, int b) {
      double on = 0;
      for (int i = a + 1; i <= b; i++) {
        on += heaterW[i] > 0 ? 0.5 * (heaterOn[i - 1] + heaterOn[i]) : 0;
      }
      return on;
    }

    double starts(int a, int b) {
      int starts = 0;
      for (int i = a + 1; i <= b; i++) {
        starts += heaterOn[i] > heaterOn[i - 1] ? 1 : 0;
      }
      return starts;
    }

    Gauges gauges(int at) {
      int look = (int) (LOOK_S / stepS);
      Range v = Range.NONE;
      Range a = Range.NONE;
      Range p = Range.NONE;
      for (int i = Math.max(0, at - look); i <= Math.min(rows - 1, at + look); i++) {
        v = v.with(volts[i]);
        a = a.with(probe[i]);
        p = p.with(pan[i]);
      }
      return new Gauges(v, a, p, soc[at]);
    }
  }
}
