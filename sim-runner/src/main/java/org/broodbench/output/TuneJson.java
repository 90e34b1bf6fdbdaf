package org.broodbench.output;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.rig.TuneSpec;
import org.broodbench.tune.Aim;
import org.broodbench.tune.Candidate;
import org.broodbench.tune.Judged;
import org.broodbench.tune.Scores;
import org.broodbench.tune.TuneReport;

/** A search for settings as JSON, format {@code broodbench-tune/1}. */
public final class TuneJson {
  private TuneJson() {}

  /** The whole text. */
  public static String of(TuneReport r) {
    return JsonText.object(json -> write(json, r));
  }

  private static void write(JsonText json, TuneReport r) throws IOException {
    json.text("format", "broodbench-tune/1")
        .object(
            "scenario",
            j ->
                j.text("title", r.scenario().title())
                    .text("file", r.scenario().fileName())
                    .text("sha256", r.scenario().sha256()))
        .text("weather", r.weather())
        .whole("seasons", r.spec().seasons())
        .whole("season_days", r.spec().seasonDays())
        .number("tick_s", r.tickS())
        .whole("seed", r.spec().seed())
        .whole("evaluations", r.evaluations())
        .whole("candidates", r.candidates())
        .flag("stopped", r.stopped());
    List<JsonText.Body> knobs = new ArrayList<>();
    for (TuneSpec.Knob k : r.spec().knobs()) {
      knobs.add(
          j ->
              j.text("setting", k.resultName())
                  .number("low", k.shown(k.low()))
                  .number("high", k.shown(k.high())));
    }
    json.objects("knobs", knobs);
    json.object("now", j -> judged(j, r, r.now()));
    if (r.recommended() == null) {
      json.nothing("recommended").nothing("recommended_scores");
    } else {
      json.object("recommended", j -> settings(j, r, r.recommended().candidate()))
          .object("recommended_scores", j -> scores(j, r.recommended().scores()));
    }
    json.text("why", r.why()).whole("refused_on_unseen_seasons", r.refused());
    List<JsonText.Body> front = new ArrayList<>();
    for (Judged x : r.front()) {
      front.add(j -> judged(j, r, x));
    }
    json.objects("front", front);
    if (r.unseenNow() == null) {
      json.nothing("unseen_seasons");
    } else {
      json.object(
          "unseen_seasons",
          j ->
              j.whole("seasons", r.spec().unseenSeasons())
                  .object("now", k -> scores(k, r.unseenNow()))
                  .object("recommended", k -> scores(k, r.unseenRecommended())));
    }
  }

  private static void judged(JsonText j, TuneReport r, Judged x) throws IOException {
    j.object("settings", k -> settings(k, r, x.candidate()))
        .object("scores", k -> scores(k, x.scores()));
  }

  private static void settings(JsonText j, TuneReport r, Candidate c) throws IOException {
    for (int i = 0; i < r.spec().knobs().size(); i++) {
      TuneSpec.Knob k = r.spec().knobs().get(i);
      j.number(k.resultName(), k.shown(c.counts().get(i)));
    }
  }

  private static void scores(JsonText j, Scores s) throws IOException {
    for (Aim aim : Aim.values()) {
      j.number(aim.key(), s.get(aim));
    }
  }
}
