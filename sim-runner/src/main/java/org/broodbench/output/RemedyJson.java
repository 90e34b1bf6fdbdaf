package org.broodbench.output;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.study.Remedy;
import org.broodbench.study.RemedySearch;

/** The remedies of a verdict, best first, and how they were searched for. */
final class RemedyJson {
  private RemedyJson() {}

  /** {@code remedies} and {@code remedy_search}. */
  static void write(JsonText json, RemedySearch search) throws IOException {
    List<JsonText.Body> remedies = new ArrayList<>();
    for (Remedy r : search.helpful()) {
      remedies.add(j -> remedy(j, r));
    }
    json.objects("remedies", remedies);
    if (search.tried() == 0) {
      json.nothing("remedy_search");
      return;
    }
    json.object(
        "remedy_search",
        j ->
            j.whole("tried", search.tried())
                .whole("helpful", search.helpful().size())
                .text("cluster_heat_loss", search.lossName())
                .number("cluster_loss_factor", search.lossFactor())
                .number("controller_tick_s", search.tickMillis() / 1000.0));
  }

  private static void remedy(JsonText j, Remedy r) throws IOException {
    j.text("what", r.change().what()).texts("set", r.change().settings());
    boolean meets = r.reach() != Remedy.Reach.NONE;
    j.flag("met_as_tried", meets);
    switch (r.reach()) {
      case EVERY_COLONY -> j.flag("met_for_every_colony", true);
      case TRIED_COLONY_ONLY_LOOKED_AT -> j.nothing("met_for_every_colony");
      default -> j.flag("met_for_every_colony", false);
    }
    j.number("left_of_what_was_missed", r.left());
    List<JsonText.Body> effects = new ArrayList<>();
    for (Remedy.Effect e : r.effects()) {
      effects.add(
          o ->
              o.text("name", e.requirement().kind().key())
                  .number("before", e.before())
                  .number("after", e.after())
                  .text("unit", e.requirement().kind().unit())
                  .flag("met_before", e.metBefore())
                  .flag("met_after", e.metAfter()));
    }
    j.objects("effects", effects);
  }
}
