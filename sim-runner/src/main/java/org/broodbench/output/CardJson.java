package org.broodbench.output;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.card.Expectation;
import org.broodbench.card.FieldCard;
import org.broodbench.card.Range;
import org.broodbench.card.Tonight;

/** Field card and tonight's answer as JSON, format {@code broodbench-card/1}. */
public final class CardJson {
  private CardJson() {}

  /** The card. */
  public static String of(FieldCard card) {
    return JsonText.object(
        json -> {
          json.text("format", "broodbench-card/1").text("title", card.scenario().title());
          json.text("weather", card.weather()).whole("days", card.days());
          List<JsonText.Body> expected = new ArrayList<>();
          for (Expectation e : card.expected()) {
            expected.add(j -> expectation(j, e));
          }
          json.objects("expected", expected);
          List<JsonText.Body> tonight = new ArrayList<>();
          for (List<Tonight.Answer> row : card.tonight()) {
            for (Tonight.Answer a : row) {
              tonight.add(j -> answer(j, a));
            }
          }
          json.objects("tonight", tonight);
          List<JsonText.Body> harvest = new ArrayList<>();
          for (FieldCard.AfterHarvest h : card.afterHarvest()) {
            harvest.add(
                j -> {
                  j.text("sort", word(h.sort())).number("soc_at_dusk", h.dusk());
                  range(j, "heat_h", h.heatH());
                  range(j, "full_heat_h", h.fullH());
                  range(j, "controller_h", h.boardH());
                  j.number("looked_h", h.lookedH());
                });
          }
          json.objects("after_harvest", harvest);
          json.texts("stays_open", card.notBack());
          json.texts("season_plan", card.plan().map(PlanWords::lines).orElse(List.of()));
        });
  }

  /** One night. */
  public static String of(Tonight.Answer a) {
    return JsonText.object(
        json -> {
          json.text("format", "broodbench-tonight/1");
          answer(json, a);
        });
  }

  private static void expectation(JsonText j, Expectation e) throws IOException {
    j.text("sort", word(e.sort())).whole("nights", e.nights());
    range(j, "low_c", e.lowC());
    range(j, "dusk_v", e.duskV());
    range(j, "dusk_probe_c", e.duskProbeC());
    range(j, "day_heater_h", e.dayHeaterH());
    range(j, "day_starts", e.dayStarts());
    range(j, "dawn_v", e.dawnV());
    range(j, "dawn_probe_c", e.dawnProbeC());
    range(j, "dawn_pan_c", e.dawnPanC());
    range(j, "night_heater_h", e.nightHeaterH());
    range(j, "night_starts", e.nightStarts());
    j.whole("highest_shed_level", e.highestLevel());
  }

  private static void answer(JsonText j, Tonight.Answer a) throws IOException {
    j.number("dusk_v", a.volts()).number("low_c", a.lowC()).number("night_h", a.nightH());
    range(j, "heat_h", a.heatH());
    range(j, "dawn_level", a.dawnLevel());
    range(j, "dawn_v", a.dawnV());
  }

  private static void range(JsonText j, String name, Range r) throws IOException {
    j.object(name, x -> x.number("low", r.low()).number("high", r.high()));
  }

  private static String word(Expectation.Sort sort) {
    return sort.name().toLowerCase(Locale.ROOT);
  }
}
