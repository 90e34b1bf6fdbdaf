package org.broodbench.output;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.broodbench.loop.Trace;

/** What the charts of the report draw, packed: needs the trace alone, so it can be made early. */
public final class ChartData {
  private final List<ChartPlan> charts;
  private final String columns;

  /** Plans the charts of a trace and packs their columns. */
  public ChartData(Trace trace) {
    charts = ChartPlan.all(trace);
    columns = packed(trace, charts);
  }

  List<ChartPlan> charts() {
    return charts;
  }

  /** JSON: an object of packed columns by name. */
  String columns() {
    return columns;
  }

  private static String packed(Trace t, List<ChartPlan> charts) {
    StringBuilder out = new StringBuilder("{");
    Map<String, Integer> wanted = new TreeMap<>();
    for (ChartPlan c : charts) {
      for (Line l : c.lines()) {
        wanted.merge(l.column(), l.perUnit(), Math::max);
      }
    }
    String comma = "";
    for (Map.Entry<String, Integer> w : wanted.entrySet()) {
      out.append(comma)
          .append(Json.string(w.getKey()))
          .append(':')
          .append(column(t.column(w.getKey()), w.getValue()));
      comma = ",";
    }
    return out.append('}').toString();
  }

  /** A column as [steps a unit, packed steps, packed gaps where there are any]. */
  static String column(double[] v, int perUnit) {
    int[] steps = new int[v.length];
    int[] gaps = new int[v.length];
    boolean anyGap = false;
    for (int i = 0; i < v.length; i++) {
      boolean gap = !Double.isFinite(v[i]);
      anyGap |= gap;
      gaps[i] = gap ? 1 : 0;
      steps[i] = gap ? (i > 0 ? steps[i - 1] : 0) : (int) Math.rint(v[i] * perUnit);
    }
    return "["
        + perUnit
        + ",\""
        + ColumnPacker.pack(steps)
        + '"'
        + (anyGap ? ",\"" + ColumnPacker.pack(gaps) + '"' : "")
        + ']';
  }
}
