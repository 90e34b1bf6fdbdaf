package org.broodbench.output;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.broodbench.hive.HiveSection;
import org.broodbench.loop.Judge;
import org.broodbench.loop.RunResult;
import org.broodbench.loop.Trace;
import org.broodbench.rig.Requirement;
import org.broodbench.study.Outcome;

/**
 * What the drawing of the hive shows, by time: temperatures in °C, humidity in percent, condensing
 * water in g/h; one column a part, one row a picture.
 */
final class SectionData {
  /** Steps a unit that are kept; 0.05 K, 0.05 %, 0.05 g/h. */
  private static final int PER_UNIT = 20;

  private final List<HiveSection> sections;
  private final Map<String, ToDoubleFunction<HiveSection>> columns = new LinkedHashMap<>();
  private final int boxes;
  private final int worstRow;
  private final HeatScale scale;
  private final double worstCo2Percent;

  SectionData(Outcome o) {
    RunResult r = o.main();
    sections = r.trace().sections();
    boxes = sections.stream().mapToInt(s -> s.boxes().size()).max().orElse(0);
    columns.put("outdoor", HiveSection::outdoorC);
    columns.put("nest", HiveSection::nestC);
    columns.put("mantle", HiveSection::mantleC);
    columns.put("plate", HiveSection::plateC);
    columns.put("core", HiveSection::panCoreC);
    columns.put("contact", HiveSection::contactC);
    face("lid", HiveSection::lid);
    face("floor", HiveSection::floor);
    for (int b = 0; b < boxes; b++) {
      int i = b;
      columns.put("air" + b, s -> box(s, i) == null ? Double.NaN : box(s, i).airC());
      columns.put("comb" + b, s -> box(s, i) == null ? Double.NaN : box(s, i).combC());
      columns.put("rh" + b, s -> box(s, i) == null ? Double.NaN : box(s, i).rhPercent());
      face("wall" + b, s -> box(s, i) == null ? null : box(s, i).wall());
    }
    double atS = worstAtS(o);
    worstRow = Math.max(0, Math.min(sections.size() - 1, row(atS)));
    scale = scale();
    double[] co2 = r.trace().column("co2_percent");
    int row = (int) Math.round(worstAtS() / r.trace().intervalS());
    worstCo2Percent = co2[Math.max(0, Math.min(co2.length - 1, row))];
  }

  /** Carbon dioxide between the brood combs at the worst moment, percent. */
  double worstCo2Percent() {
    return worstCo2Percent;
  }

  /** When the brood was worst off: coldest or hottest, whichever was further out of its band. */
  static double worstAtS(Outcome o) {
    return Judge.measure(Requirement.Kind.BROOD_IN_BAND, o.main(), o.scenario()).atS();
  }

  private static int row(double atS) {
    return (int) Math.round(atS / Trace.SECTION_INTERVAL_S) - 1;
  }

  private static HiveSection.Box box(HiveSection s, int i) {
    return i < s.boxes().size() ? s.boxes().get(i) : null;
  }

  private void face(String name, java.util.function.Function<HiveSection, HiveSection.Face> face) {
    columns.put(name + "_in", s -> face.apply(s) == null ? Double.NaN : face.apply(s).insideC());
    columns.put(name + "_out", s -> face.apply(s) == null ? Double.NaN : face.apply(s).outsideC());
    columns.put(
        name + "_wet", s -> face.apply(s) == null ? Double.NaN : face.apply(s).condensingGH());
  }

  /** From the coldest outdoors to the hottest that bees can touch, in tens of degrees. */
  private HeatScale scale() {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (HiveSection s : sections) {
      low = Math.min(low, s.outdoorC());
      high = Math.max(high, Math.max(s.nestC(), s.outdoorC()));
      high = Double.isNaN(s.contactC()) ? high : Math.max(high, s.contactC());
    }
    return new HeatScale(10 * Math.floor(low / 10), 10 * Math.ceil(high / 10 + 1e-9));
  }

  /** Whether there is anything to draw. */
  boolean isEmpty() {
    return sections.isEmpty();
  }

  int boxes() {
    return boxes;
  }

  HeatScale heatScale() {
    return scale;
  }

  /** Seconds since the start of the picture at the worst moment. */
  double worstAtS() {
    return (worstRow + 1.0) * Trace.SECTION_INTERVAL_S;
  }

  /** A value at the worst moment. */
  double worst(String column) {
    return columns.get(column).applyAsDouble(sections.get(worstRow));
  }

  /** Names of the columns. */
  List<String> names() {
    return List.copyOf(columns.keySet());
  }

  /** A column, one value a picture. */
  double[] column(String name) {
    return sections.stream().mapToDouble(columns.get(name)).toArray();
  }

  /** All of it for the script. */
  String json() {
    StringBuilder out = new StringBuilder("{\"step\":").append(Trace.SECTION_INTERVAL_S);
    out.append(",\"rows\":").append(sections.size());
    out.append(",\"low\":").append(Json.number(scale.lowC()));
    out.append(",\"high\":").append(Json.number(scale.highC()));
    out.append(",\"colours\":[");
    String comma = "";
    for (String c : HeatScale.colours()) {
      out.append(comma).append(Json.string(c));
      comma = ",";
    }
    out.append("],\"columns\":{");
    comma = "";
    for (Map.Entry<String, ToDoubleFunction<HiveSection>> e : columns.entrySet()) {
      double[] v = sections.stream().mapToDouble(e.getValue()).toArray();
      out.append(comma).append(Json.string(e.getKey())).append(':');
      out.append(ChartData.column(v, PER_UNIT));
      comma = ",";
    }
    return out.append("}}").toString();
  }
}
