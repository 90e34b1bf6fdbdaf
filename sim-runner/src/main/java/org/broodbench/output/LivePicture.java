package org.broodbench.output;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.broodbench.loop.Trace;
import org.broodbench.rig.Requirement;
import org.broodbench.study.JudgedRequirement;
import org.broodbench.study.Outcome;
import org.broodbench.study.Remedy;
import org.broodbench.study.RemedySearch;

/**
 * A run for the live page. The bytes are the length of a head (four bytes, low end first), the head
 * as JSON padded with blanks to a multiple of four, and the columns that it lists, one after the
 * other, as numbers of single precision, low end first: drawn at once, without unpacking.
 */
public final class LivePicture {
  private static final List<String> TRACE =
      List.of(
          "brood_c",
          "probe_a_c",
          "pan_c",
          "box_air_c",
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
          "pv_w",
          "load_w",
          "colony_w",
          "brood_rh_percent",
          "co2_percent");

  private LivePicture() {}

  /**
   * The bytes.
   *
   * @param o the run; it carries a trace
   * @param more further columns, as long as the trace
   * @param inFull whether the run has the scenario's own pace
   * @param command the command line that gives the same run
   */
  public static byte[] bytes(
      Outcome o, Map<String, double[]> more, boolean inFull, String command) {
    Trace t = o.main().trace();
    SectionData section = new SectionData(o);
    List<String> names = new ArrayList<>();
    List<double[]> columns = new ArrayList<>();
    for (String name : TRACE) {
      names.add(name);
      columns.add(t.column(name));
    }
    more.forEach(
        (name, column) -> {
          names.add(name);
          columns.add(column);
        });
    if (!section.isEmpty()) {
      for (String name : section.names()) {
        names.add("section " + name);
        columns.add(section.column(name));
      }
    }
    byte[] head = head(o, section, names, columns, inFull, command);
    int padded = (head.length + 3) / 4 * 4;
    int numbers = columns.stream().mapToInt(c -> c.length).sum();
    ByteBuffer out = ByteBuffer.allocate(4 + padded + 4 * numbers).order(ByteOrder.LITTLE_ENDIAN);
    out.putInt(padded).put(head);
    while (out.position() < 4 + padded) {
      out.put((byte) ' ');
    }
    for (double[] c : columns) {
      for (double v : c) {
        out.putFloat((float) v);
      }
    }
    return out.array();
  }

  private static byte[] head(
      Outcome o,
      SectionData section,
      List<String> names,
      List<double[]> columns,
      boolean inFull,
      String command) {
    Markup m = new Markup(false);
    Trace t = o.main().trace();
    StringBuilder out = new StringBuilder("{\"start\":");
    out.append(o.scenario().window().fromEpochS())
        .append(",\"step\":")
        .append(t.intervalS())
        .append(",\"rows\":")
        .append(t.rows())
        .append(",\"inFull\":")
        .append(inFull)
        .append(",\"command\":")
        .append(Json.string(command))
        .append(",\"band\":[")
        .append(Json.number(o.scenario().run().bandLowC()))
        .append(',')
        .append(Json.number(o.scenario().run().bandHighC()))
        .append("],\"worst\":")
        .append(Json.number(SectionData.worstAtS(o)))
        .append(",\"weather\":")
        .append(Json.string(o.weather().source()));
    verdict(out, o, m);
    section(out, o, section, m);
    out.append(",\"columns\":[");
    for (int i = 0; i < names.size(); i++) {
      out.append(i == 0 ? "" : ",")
          .append('[')
          .append(Json.string(names.get(i)))
          .append(',')
          .append(columns.get(i).length)
          .append(']');
    }
    out.append("],\"events\":").append(new EventList(o.main().events()).json());
    return out.append('}').toString().getBytes(StandardCharsets.UTF_8);
  }

  private static void verdict(StringBuilder out, Outcome o, Markup m) {
    VerdictPart verdict = new VerdictPart(o, m);
    out.append(",\"met\":")
        .append(o.met())
        .append(",\"headline\":")
        .append(Json.string(verdict.headline()))
        .append(",\"lead\":")
        .append(Json.string(verdict.lead()))
        .append(",\"flags\":[");
    String comma = "";
    for (String f : o.flags()) {
      out.append(comma).append(Json.string(m.prose(f)));
      comma = ",";
    }
    out.append("],\"requirements\":[");
    comma = "";
    for (JudgedRequirement r : o.requirements()) {
      Requirement.Kind kind = r.requirement().kind();
      out.append(comma)
          .append("{\"kind\":")
          .append(Json.string(kind.name()))
          .append(",\"name\":")
          .append(Json.string(Markup.capital(RequirementWords.brief(kind))))
          .append(",\"state\":")
          .append(Json.string(r.met() ? "met" : r.dependsOnColony() ? "depends" : "missed"))
          .append(",\"mark\":")
          .append(
              Json.string(
                  VerdictPart.mark(r.met() ? "met" : r.dependsOnColony() ? "depends" : "missed")))
          .append(",\"atLeast\":")
          .append(kind.atLeast())
          .append(",\"number\":")
          .append(Json.number(r.value()))
          .append(",\"value\":")
          .append(Json.string(RequirementWords.value(kind, r.value(), m)))
          .append(",\"wanted\":")
          .append(Json.string(RequirementWords.wanted(r.requirement(), m)))
          .append(",\"at\":")
          .append(Json.number(r.worstAtS() < 0 ? Double.NaN : r.worstAtS()))
          .append(",\"why\":")
          .append(Json.string(m.prose(Markup.capital(r.why()))))
          .append('}');
      comma = ",";
    }
    out.append(']');
  }

  private static void section(StringBuilder out, Outcome o, SectionData section, Markup m) {
    if (section.isEmpty()) {
      out.append(",\"section\":null");
      return;
    }
    HeatScale scale = section.heatScale();
    out.append(",\"section\":{\"step\":")
        .append(Trace.SECTION_INTERVAL_S)
        .append(",\"low\":")
        .append(Json.number(scale.lowC()))
        .append(",\"high\":")
        .append(Json.number(scale.highC()))
        .append(",\"wet\":")
        .append(Json.number(SectionPart.WET_GH))
        .append(",\"colours\":[");
    String comma = "";
    for (String c : HeatScale.colours()) {
      out.append(comma).append(Json.string(c));
      comma = ",";
    }
    out.append("],\"svg\":")
        .append(Json.string(new SectionPicture(o.scenario(), section, m).svg()))
        .append('}');
  }

  /** How numbers of each kind change between the two sets of units, as JSON. */
  public static String units() {
    StringBuilder out = new StringBuilder("{");
    for (Quantity q : Quantity.values()) {
      out.append(out.length() > 1 ? "," : "")
          .append(
              String.format(
                  Locale.ROOT,
                  "\"%s\":[%s,%s,%s,%s]",
                  q.key,
                  Json.number(q.factor),
                  Json.number(q.shift),
                  Json.string(q.metric),
                  Json.string(q.us)));
    }
    return out.append('}').toString();
  }

  /** What came of a search for single changes, as JSON. */
  public static String remedies(RemedySearch search) {
    Markup m = new Markup(false);
    StringBuilder out = new StringBuilder("{\"words\":");
    out.append(Json.string(search.tried() == 0 ? "" : m.prose(RemedyWords.winner(search))))
        .append(",\"how\":")
        .append(Json.string(search.tried() == 0 ? "" : m.prose(RemedyWords.how(search))))
        .append(",\"list\":[");
    String comma = "";
    for (Remedy r : search.helpful()) {
      StringBuilder effects = new StringBuilder();
      for (Remedy.Effect e : RemedyWords.told(r)) {
        effects.append(effects.isEmpty() ? "" : "; ").append(RemedyWords.effect(e, m));
      }
      out.append(comma)
          .append("{\"what\":")
          .append(Json.string(m.prose(r.change().what())))
          .append(",\"effects\":")
          .append(Json.string(effects.toString()))
          .append(",\"reach\":")
          .append(Json.string(Markup.capital(RemedyWords.reach(r))))
          .append(",\"settings\":[");
      String inner = "";
      for (String s : r.change().settings()) {
        out.append(inner).append(Json.string(s));
        inner = ",";
      }
      out.append("]}");
      comma = ",";
    }
    return out.append("]}").toString();
  }

  /** A text as JSON. */
  public static String string(String text) {
    return Json.string(text);
  }

  /** A number as JSON; null where it is not one. */
  public static String number(double value) {
    return Json.number(value);
  }
}
