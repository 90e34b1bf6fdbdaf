package org.broodbench.output;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.broodbench.study.Sure;
import org.broodbench.study.Unsure;

/** What an ensemble showed, as a part of the verdict. */
final class SureJson {
  private SureJson() {}

  static void write(JsonText j, Sure sure) throws IOException {
    j.whole("members", sure.members()).whole("seasons", sure.seasons());
    j.object("everything_met", x -> chance(x, sure.everything()));
    List<JsonText.Body> requirements = new ArrayList<>();
    for (Sure.OfRequirement q : sure.requirements()) {
      requirements.add(x -> requirement(x, q));
    }
    j.objects("requirements", requirements);
    List<JsonText.Body> ranges = new ArrayList<>();
    for (Unsure u : sure.ranges()) {
      ranges.add(
          x ->
              x.text("key", u.key())
                  .number("low", u.low())
                  .number("high", u.high())
                  .text("unit", u.unit())
                  .text("source", u.source()));
    }
    j.objects("varied", ranges);
  }

  private static void requirement(JsonText j, Sure.OfRequirement q) throws IOException {
    j.text("name", q.requirement().kind().key());
    j.object("met", x -> chance(x, q.met()));
    j.number("low_tenth", q.lowTenth());
    j.number("middle", q.middle());
    j.number("high_tenth", q.highTenth());
    List<JsonText.Body> weights = new ArrayList<>();
    for (Sure.Weight w : q.weights()) {
      weights.add(
          x ->
              x.text("what", w.what())
                  .number("variance_share", w.share())
                  .text("settled_by", w.settledBy()));
    }
    j.objects("depends_on", weights);
  }

  private static void chance(JsonText j, Sure.Chance c) throws IOException {
    j.number("share", c.share()).number("low", c.low()).number("high", c.high());
  }
}
