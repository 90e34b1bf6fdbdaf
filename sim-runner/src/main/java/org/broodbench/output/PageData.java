package org.broodbench.output;

import java.util.List;
import java.util.Locale;
import org.broodbench.loop.Trace;
import org.broodbench.study.Outcome;

/** The data that the script of the report draws from, as JSON with packed columns. */
final class PageData {
  /** Global irradiance below which it counts as night, W/m²; own choice. */
  private static final double NIGHT_BELOW_W_M2 = 1;

  private PageData() {}

  static String json(Outcome o, ChartData data, SectionData section, EventList events) {
    List<ChartPlan> charts = data.charts();
    Trace t = o.main().trace();
    long from = o.scenario().window().fromEpochS();
    StringBuilder out = new StringBuilder(1 << 16);
    out.append("{\"start\":").append(from);
    out.append(",\"step\":").append(t.intervalS());
    out.append(",\"rows\":").append(t.rows());
    out.append(",\"block\":").append(ColumnPacker.BLOCK);
    out.append(",\"escape\":").append(ColumnPacker.ESCAPE);
    double worstAtS = SectionData.worstAtS(o);
    out.append(",\"worst\":").append(Json.number(worstAtS < 0 ? Double.NaN : from + worstAtS));
    out.append(",\"band\":[")
        .append(Json.number(o.scenario().run().bandLowC()))
        .append(',')
        .append(Json.number(o.scenario().run().bandHighC()))
        .append(']');
    out.append(",\"units\":{");
    String comma = "";
    for (Quantity q : Quantity.values()) {
      out.append(comma)
          .append(
              String.format(
                  Locale.ROOT,
                  "\"%s\":[%s,%s,%s,%s]",
                  q.key,
                  Json.number(q.factor),
                  Json.number(q.shift),
                  Json.string(q.metric),
                  Json.string(q.us)));
      comma = ",";
    }
    out.append("},\"nights\":").append(nights(t));
    charts(out, charts);
    out.append(",\"columns\":").append(data.columns());
    out.append(",\"section\":").append(section.isEmpty() ? "null" : section.json());
    out.append(",\"events\":").append(events.json());
    return out.append('}').toString();
  }

  private static void charts(StringBuilder out, List<ChartPlan> charts) {
    out.append(",\"charts\":[");
    String comma = "";
    for (ChartPlan c : charts) {
      out.append(comma)
          .append(
              String.format(
                  Locale.ROOT,
                  "{\"id\":%s,\"height\":%d,\"axis\":%s,\"band\":%b,\"lines\":[",
                  Json.string(c.id()),
                  c.heightPx(),
                  Json.string(c.axis()),
                  c.banded()));
      String inner = "";
      for (Line l : c.lines()) {
        out.append(inner)
            .append(
                String.format(
                    Locale.ROOT,
                    "{\"column\":%s,\"label\":%s,\"q\":%s,\"unit\":%s,\"factor\":%s,\"d\":%d,\"e\":%d,\"style\":%s,\"draw\":%s}",
                    Json.string(l.column()),
                    Json.string(l.label()),
                    l.quantity() == null ? "null" : Json.string(l.quantity().key),
                    Json.string(l.unit()),
                    Json.number(l.factor()),
                    l.decimals(),
                    l.quantity() == null ? l.decimals() : l.quantity().usDecimals(l.decimals()),
                    Json.string(l.style()),
                    Json.string(l.draw().name())));
        inner = ",";
      }
      out.append("]}");
      comma = ",";
    }
    out.append(']');
  }

  /** Rows from and to which it was dark, for shading. */
  private static String nights(Trace t) {
    double[] ghi = t.column("ghi_w_m2");
    StringBuilder out = new StringBuilder("[");
    int since = -1;
    for (int r = 0; r <= ghi.length; r++) {
      boolean dark = r < ghi.length && ghi[r] < NIGHT_BELOW_W_M2;
      if (dark && since < 0) {
        since = r;
      } else if (!dark && since >= 0) {
        out.append(out.length() > 1 ? "," : "")
            .append('[')
            .append(since)
            .append(',')
            .append(Math.min(r, ghi.length - 1))
            .append(']');
        since = -1;
      }
    }
    return out.append(']').toString();
  }
}
