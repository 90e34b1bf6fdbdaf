package org.broodbench.output;

import java.io.IOException;
import org.broodbench.firmware.CommandField;
import org.broodbench.firmware.ConformReport;
import org.broodbench.firmware.Difference;
import org.broodbench.firmware.Finding;

/** The result of a check of firmware as JSON, format {@code broodbench-conform/1}. */
public final class ConformJson {
  private ConformJson() {}

  /**
   * The whole text.
   *
   * @param shortestFile where the shortest vector was written, or null
   */
  public static String of(ConformReport r, String shortestFile) {
    return JsonText.object(json -> write(json, r, shortestFile));
  }

  private static void write(JsonText json, ConformReport r, String shortestFile)
      throws IOException {
    json.text("format", "broodbench-conform/1").flag("equal", r.equal());
    text(json, "fault", r.fault() == null ? null : r.fault().key());
    text(json, "fault_text", r.faultText());
    json.whole("steps", r.steps());
    Finding f = r.finding();
    if (f == null) {
      json.nothing("first_difference").nothing("shortest_steps").nothing("shortest_file");
    } else {
      json.object("first_difference", j -> difference(j, f));
      json.whole("shortest_steps", f.shortest().ticks().size());
      text(json, "shortest_file", shortestFile);
      json.flag("shortest_is_complete", f.complete());
    }
    if (r.heaterFailedOff() == null) {
      json.nothing("heater_failed_off");
    } else {
      json.flag("heater_failed_off", r.heaterFailedOff());
    }
    json.text("target", r.target());
    if (r.board() == null) {
      json.nothing("firmware");
    } else {
      json.object(
          "firmware",
          j ->
              j.text("name", r.board().name())
                  .text("settings", r.board().fixed() ? "fixed" : "open")
                  .text("clock", r.board().ownClock() ? "own" : "host"));
    }
    json.whole("vectors", r.vectors());
    json.object(
        "rules",
        j ->
            j.texts("violated", r.violated())
                .texts("exercised", r.exercised())
                .texts("not_exercised", r.missed()));
    json.texts("not_reported", r.notReported().stream().map(CommandField::key).toList());
    json.whole("lines_sent_again", r.resent()).whole("lines_passed_over", r.chatter());
  }

  private static void difference(JsonText j, Finding f) throws IOException {
    Difference d = f.difference();
    int i = f.field().ordinal();
    Finding.Row row = f.rows().get(f.rows().size() - 1);
    j.whole("step", d.entry())
        .whole("time_ms", row.atMillis())
        .text("rule", f.rule())
        .text("field", f.field().key())
        .text("expected", String.valueOf(d.expected()[i]))
        .text("got", String.valueOf(d.got()[i]))
        .text("vector", f.vector().name())
        .whole("same_since_step", f.sinceEntry())
        .texts("fields", d.fields().stream().map(CommandField::key).toList());
  }

  private static void text(JsonText json, String key, String value) throws IOException {
    if (value == null) {
      json.nothing(key);
    } else {
      json.text(key, value);
    }
  }
}
