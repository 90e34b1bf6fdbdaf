package org.broodbench.output;

import java.util.ArrayList;
import java.util.List;
import org.broodbench.controller.ShedLevel;
import org.broodbench.loop.EventRow;
import org.broodbench.loop.RunResult;
import org.broodbench.loop.Trace;

/**
 * One day of a run, counted in spans of 24 h from its start. Temperatures, state of charge and
 * hours out of band come from the rows of the trace, energies from its means (so their sums are
 * exact), heater and shed hours from the events, to the tick.
 *
 * @param fromS start, s since the start of the run
 * @param broodMinC coldest brood comb, °C
 * @param broodMeanC mean brood comb, °C
 * @param broodMaxC warmest brood comb, °C
 * @param hoursBelow hours below the band
 * @param hoursAbove hours above the band
 * @param outdoorMinC coldest outdoors, °C
 * @param outdoorMaxC warmest outdoors, °C
 * @param heaterHours hours with the heater commanded on
 * @param starts starts of the heater
 * @param panelWh energy from the panel, Wh
 * @param loadWh energy taken by all loads, Wh
 * @param lowestSoc lowest state of charge, 0 to 1
 * @param shedHours hours with the heater shed or the bus dead
 */
record DayRow(
    double fromS,
    double broodMinC,
    double broodMeanC,
    double broodMaxC,
    double hoursBelow,
    double hoursAbove,
    double outdoorMinC,
    double outdoorMaxC,
    double heaterHours,
    int starts,
    double panelWh,
    double loadWh,
    double lowestSoc,
    double shedHours) {
  private static final double DAY_S = 86_400;

  /** All days of a run that carries a trace. */
  static List<DayRow> of(RunResult r, double bandLowC, double bandHighC) {
    Trace t = r.trace();
    int days = (int) Math.ceil(r.days() - 1e-9);
    double[] heaterS = new double[days];
    double[] shedS = new double[days];
    int[] starts = new int[days];
    spans(r, heaterS, shedS, starts);
    int perDay = (int) (DAY_S / t.intervalS());
    double[] brood = t.column("brood_c");
    double[] outdoor = t.column("outdoor_c");
    double[] soc = t.column("soc");
    double[] pv = t.column("pv_w");
    double[] load = t.column("load_w");
    double rowH = t.intervalS() / 3600.0;
    List<DayRow> out = new ArrayList<>();
    for (int d = 0; d < days; d++) {
      int first = d * perDay;
      int last = Math.min(t.rows() - 1, first + perDay);
      double below = 0;
      double above = 0;
      double sum = 0;
      double in = 0;
      double taken = 0;
      for (int i = first + 1; i <= last; i++) {
        below += brood[i] < bandLowC ? rowH : 0;
        above += brood[i] > bandHighC ? rowH : 0;
        sum += brood[i];
        in += pv[i] * rowH;
        taken += load[i] * rowH;
      }
      out.add(
          new DayRow(
              d * DAY_S,
              lowest(brood, first, last),
              sum / (last - first),
              -lowest(negative(brood), first, last),
              below,
              above,
              lowest(outdoor, first, last),
              -lowest(negative(outdoor), first, last),
              heaterS[d] / 3600,
              starts[d],
              in,
              taken,
              lowest(soc, first, last),
              shedS[d] / 3600));
    }
    return out;
  }

  private static double lowest(double[] v, int first, int last) {
    double low = v[first];
    for (int i = first; i <= last; i++) {
      low = Math.min(low, v[i]);
    }
    return low;
  }

  private static double[] negative(double[] v) {
    double[] out = new double[v.length];
    for (int i = 0; i < v.length; i++) {
      out[i] = -v[i];
    }
    return out;
  }

  /** Walks through the events and shares the time on and the time shed among the days. */
  private static void spans(RunResult r, double[] heaterS, double[] shedS, int[] starts) {
    double endS = r.days() * DAY_S;
    double onSince = -1;
    double shedSince = -1;
    boolean shed = false;
    boolean dead = false;
    for (EventRow e : r.events()) {
      switch (e.what()) {
        case "heater" -> {
          if (e.to().equals("on")) {
            onSince = e.atS();
            starts[Math.min(starts.length - 1, (int) (e.atS() / DAY_S))]++;
          } else {
            share(heaterS, onSince, e.atS());
            onSince = -1;
          }
        }
        case "shed level" -> shed = shedsHeat(e.to());
        case "bus" -> dead = e.to().equals("dead");
        default -> {
          // nothing that a day's line counts
        }
      }
      if ((shed || dead) && shedSince < 0) {
        shedSince = e.atS();
      } else if (!shed && !dead && shedSince >= 0) {
        share(shedS, shedSince, e.atS());
        shedSince = -1;
      }
    }
    share(heaterS, onSince, endS);
    share(shedS, shedSince, endS);
  }

  private static boolean shedsHeat(String level) {
    return level.equals(ShedLevel.name(ShedLevel.HEAT_SHED))
        || level.equals(ShedLevel.name(ShedLevel.FAN_SHED))
        || level.equals(ShedLevel.name(ShedLevel.STANDBY));
  }

  private static void share(double[] perDay, double fromS, double toS) {
    if (fromS < 0) {
      return;
    }
    for (int d = (int) (fromS / DAY_S); d < perDay.length && d * DAY_S < toS; d++) {
      perDay[d] += Math.min(toS, (d + 1) * DAY_S) - Math.max(fromS, d * DAY_S);
    }
  }
}
