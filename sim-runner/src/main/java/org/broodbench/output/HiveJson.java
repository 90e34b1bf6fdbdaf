package org.broodbench.output;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.hive.HiveSection;
import org.broodbench.loop.RunResult;

/** The hive's own part of the verdict: hot surfaces, probes, water by surface, heat by its ways. */
final class HiveJson {
  private HiveJson() {}

  static void write(JsonText json, RunResult r, long fromEpochS) throws IOException {
    json.object("hot_parts", j -> hotParts(j, r));
    List<JsonText.Body> probes = new ArrayList<>();
    for (RunResult.ProbeTruth p : r.probes()) {
      probes.add(
          j ->
              j.text("role", word(p.role()))
                  .text("place", word(p.place()))
                  .number("mean_c", p.meanC())
                  .number("above_brood_k", p.aboveBroodK())
                  .number("most_behind_k", p.mostBehindK()));
    }
    json.objects("probes", probes);
    List<JsonText.Body> films = new ArrayList<>();
    for (HiveSection.Film f : r.films()) {
      films.add(j -> film(j, f, fromEpochS));
    }
    json.objects("water_on_surfaces", films);
    List<JsonText.Body> ways = new ArrayList<>();
    for (HiveSection.Way w : r.ways()) {
      ways.add(
          j ->
              j.text("way", w.way())
                  .number("area_m2", w.areaM2())
                  .number("out_wh", w.outJ() / 3600)
                  .number("sun_wh", w.sunJ() / 3600));
    }
    json.objects("heat_ways", ways);
    if (r.coldest() == null) {
      json.nothing("section_when_coldest");
    } else {
      json.object("section_when_coldest", j -> section(j, r.coldest()));
    }
  }

  private static void hotParts(JsonText j, RunResult r) throws IOException {
    RunResult.HotParts hot = r.hot();
    j.number("contact_max_c", r.pan().value())
        .number("contact_limit_c", hot.limits().contactC())
        .number("hours_contact_over", hot.hoursContactOver())
        .number("pan_max_c", hot.filling().value())
        .number("plate_max_c", r.plate().value())
        .number("plate_limit_c", hot.limits().plateC())
        .number("hours_plate_over", hot.hoursPlateOver())
        .number("plate_max_w_m2", hot.plateWM2().value())
        .number("plate_limit_w_m2", hot.limits().plateWM2());
  }

  private static void film(JsonText j, HiveSection.Film f, long fromEpochS) throws IOException {
    j.text("surface", f.surface())
        .number("condensed_g", f.condensedG())
        .number("evaporated_g", f.evaporatedG())
        .number("ran_off_g", f.ranOffG())
        .number("standing_g", f.standingG())
        .number("hours_condensing", f.hoursCondensing())
        .number("hours_wet", f.hoursWet());
    if (f.mostAtS() >= 0) {
      j.text("first_at", Stamps.of(fromEpochS, f.firstAtS()))
          .number("most_g_h", f.mostGH())
          .text("most_at", Stamps.of(fromEpochS, f.mostAtS()));
    }
  }

  private static void section(JsonText j, HiveSection s) throws IOException {
    j.number("outdoor_c", s.outdoorC())
        .number("nest_c", s.nestC())
        .number("mantle_c", s.mantleC())
        .number("plate_c", s.plateC())
        .number("pan_filling_c", s.panCoreC())
        .number("pan_top_c", s.contactC())
        .number("through_l_min", s.throughM3S() * 60_000)
        .number("two_way_l_min", s.twoWayM3S() * 60_000);
    List<JsonText.Body> boxes = new ArrayList<>();
    for (HiveSection.Box b : s.boxes()) {
      boxes.add(
          o -> {
            o.number("height_m", b.heightM())
                .number("air_c", b.airC())
                .number("combs_c", b.combC())
                .number("rh_percent", b.rhPercent());
            face(o, "wall", b.wall());
          });
    }
    j.objects("boxes", boxes);
    face(j, "lid", s.lid());
    face(j, "floor", s.floor());
  }

  private static void face(JsonText j, String name, HiveSection.Face f) throws IOException {
    j.object(
        name,
        o ->
            o.number("inside_c", f.insideC())
                .number("outside_c", f.outsideC())
                .number("condensing_g_h", f.condensingGH()));
  }

  private static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT);
  }
}
