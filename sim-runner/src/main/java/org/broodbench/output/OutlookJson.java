package org.broodbench.output;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.broodbench.loop.ColonyDay;
import org.broodbench.study.Course;
import org.broodbench.study.Outlook;

/** The outlook's part of the verdict. */
final class OutlookJson {
  private OutlookJson() {}

  static void write(JsonText json, Outlook o) throws IOException {
    json.object("outlook", j -> body(j, o));
  }

  private static void body(JsonText json, Outlook o) throws IOException {
    json.whole("weeks", o.weeks())
        .text("from", Stamps.of(o.fromEpochS(), 0))
        .number("bees_start", o.beesAtStart())
        .text("gain", o.gain().name().toLowerCase(Locale.ROOT))
        .text("advice", o.advice().name().toLowerCase(Locale.ROOT))
        .text("headline", OutlookWords.headline(o))
        .texts("words", OutlookWords.sentences(o));
    json.object(
        "next_box_due_day",
        j -> {
          dayOrNull(j, "low_loss", o.nextBox().get(0));
          dayOrNull(j, "own", o.nextBox().get(1));
          dayOrNull(j, "high_loss", o.nextBox().get(2));
        });
    if (o.weaning() == null) {
      json.nothing("weaning");
    } else {
      json.object("weaning", j -> weaning(j, o.weaning()));
    }
    dayOrNull(json, "heater_rests_from_day", o.heaterRestsFrom());
    json.whole("broodless_heated_days", o.broodlessHeatedDays());
    List<JsonText.Body> courses = new ArrayList<>();
    for (Course c : o.courses()) {
      courses.add(
          j -> {
            j.text("name", c.key()).text("what", c.what());
            j.objects("low_loss", weeks(c.lowLoss()));
            j.objects("own", weeks(c.own()));
            j.objects("high_loss", weeks(c.highLoss()));
          });
    }
    json.objects("courses", courses);
  }

  private static void weaning(JsonText j, Outlook.Weaning w) throws IOException {
    dayOrNull(j, "start_day", w.startDay());
    j.flag("tried", w.tried())
        .flag("at_high_loss_too", w.atHighLossToo())
        .number("from_c", w.fromC())
        .number("to_c", w.toC())
        .number("step_k", w.stepK())
        .whole("every_days", w.everyDays())
        .number("abort_hours_below_32_c", w.abortHours());
  }

  private static void dayOrNull(JsonText j, String key, int day) throws IOException {
    if (day < 0) {
      j.nothing(key);
    } else {
      j.whole(key, day);
    }
  }

  /** The last day of each week. */
  private static List<JsonText.Body> weeks(List<ColonyDay> days) {
    List<JsonText.Body> all = new ArrayList<>();
    for (int i = 6; i < days.size(); i += 7) {
      ColonyDay d = days.get(i);
      all.add(
          j ->
              j.whole("day", d.day())
                  .number("bees", d.bees())
                  .number("foragers", d.foragers())
                  .number("brood", d.brood())
                  .number("eggs_laid", d.laid())
                  .number("brood_lost_to_cold", d.lostToCold())
                  .number("brood_lost_to_heat", d.lostToHeat())
                  .number("stores_kg", d.storesKg())
                  .number("pollen_kg", d.pollenKg())
                  .number("water_kg", d.waterKg())
                  .number("brood_not_covered", d.uncovered()));
    }
    return all;
  }
}
