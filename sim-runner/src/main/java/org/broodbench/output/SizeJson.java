package org.broodbench.output;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.size.SizeReport;
import org.broodbench.size.Trial;

/** What sizing found, as JSON, format {@code broodbench-size/1}. */
public final class SizeJson {
  private SizeJson() {}

  /** The whole text. */
  public static String of(SizeReport r) {
    return JsonText.object(
        j -> {
          j.text("format", "broodbench-size/1").flag("whole", r.whole());
          j.whole("seasons", r.seasons()).whole("days", r.days());
          j.whole("combinations", r.candidates()).whole("simulated", r.trials().size());
          j.whole("seasons_simulated", r.seasonsRun());
          j.number("loss_of_load_limit_hours_per_season", r.spec().lossOfLoadH());
          j.number("reliability", r.spec().reliability());
          j.text("currency", r.spec().currency());
          if (r.best() == null) {
            j.nothing("best");
          } else {
            j.object("best", x -> trial(x, r, r.best()));
          }
          if (r.autonomy() == null) {
            j.nothing("one_more_day");
          } else {
            j.object("one_more_day", x -> autonomy(x, r.autonomy()));
          }
          j.objects("curve", trials(r, r.curve()));
          j.objects("cheapest_by_first_part", trials(r, r.byFirst()));
          j.objects("choices", trials(r, r.trials()));
        });
  }

  private static List<JsonText.Body> trials(SizeReport r, List<Trial> all) {
    List<JsonText.Body> bodies = new ArrayList<>();
    for (Trial t : all) {
      bodies.add(x -> trial(x, r, t));
    }
    return bodies;
  }

  private static void autonomy(JsonText j, SizeReport.Autonomy a) throws IOException {
    j.number("hardest_day_wh", a.dayWh()).number("battery_wh", a.batteryWh());
    if (a.larger().isEmpty()) {
      j.nothing("larger");
    } else {
      j.text("larger", a.larger()).number("price", a.price()).number("days", a.days());
    }
  }

  private static void trial(JsonText j, SizeReport r, Trial t) throws IOException {
    j.number("pv.power_w", t.pvW()).number("battery.capacity_wh", t.batteryWh());
    j.texts("settings", t.settings()).flag("met", t.met());
    j.number("loss_of_load_hours_per_season", t.lossOfLoadH());
    j.number("loss_of_load_share", r.lossOfLoadShare(t));
    j.whole("seasons_tried", t.tried()).whole("seasons_met", t.seasonsMet());
    j.number("daily_wh", t.dailyWh());
    j.number("price", t.price()).number("mass_kg", t.massKg());
  }
}
